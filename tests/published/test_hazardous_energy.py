"""29 CFR 1910.147(d) and 1910.333, control of hazardous energy; NAVEDTRA 14164, chapter 4, descaling.

(d): know, shut down, operate the isolating devices, lock and tag, relieve what is stored, verify, in that order.
1910.333(b)(2)(ii): push buttons, selector switches and interlocks do not isolate. 1910.333(a): live work only where
it can't be done dead, by qualified persons. NAVEDTRA 14164: descaling with face shield, goggles, gloves and apron.
"""

from __future__ import annotations

from diagnose.model import load_book
from tests.each import holds_for_each

BOOK = load_book()


def said(caution: str) -> str:
    return " ".join(BOOK.cautions[caution].text).casefold()


def test_isolating_goes_in_the_order_of_the_rule() -> None:
    steps = ["tell", "switch off", "disconnect", "lock", "stored", "prove dead"]
    places = [said("isolate").index(step) for step in steps]
    assert places == sorted(places)


def test_buttons_switches_and_interlocks_do_not_isolate() -> None:
    last = BOOK.cautions["isolate"].text[-1].casefold()
    assert all(word in last for word in ("stop button", "selector switch", "interlock", "do not isolate"))


def test_the_meter_is_proved_before_and_after() -> None:
    assert "proved on a live source before and after" in said("isolate")


def test_a_live_check_is_never_for_the_kitchen() -> None:
    def is_not(name: str) -> None:
        assert BOOK.checks[name].who != "operator"
        assert BOOK.checks[name].aloud is None, "never over the telephone"

    holds_for_each((n for n, c in BOOK.checks.items() if "live_parts" in c.cautions), is_not)


def test_a_repair_done_isolated_says_how_to_isolate() -> None:
    def says(name: str) -> None:
        assert "isolate" in BOOK.causes[name].cautions

    holds_for_each((n for n, c in BOOK.causes.items() if c.state == "isolated"), says)


def test_live_work_needs_a_word_typed() -> None:
    assert BOOK.cautions["live_parts"].word
    assert "qualified person" in said("live_parts")


def test_descaling_is_done_protected_and_never_on_chlorine() -> None:
    assert all(word in said("chemical") for word in ("face shield", "goggles", "gloves", "apron", "eyewash"))
    assert "never let acid meet chlorine" in said("chemical")
