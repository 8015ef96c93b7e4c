"""A few words, with slips, find what was meant."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.model import Machine, fits, load_book
from diagnose.terminal.matcher import clear_winner, find

BOOK = load_book()
# As offered on a two-tank machine whose racks are pushed by a bar.
HERE = Machine("", BOOK.machines["two_tank_electric_208"])
COMPLAINTS = {c.id: [c.title, *c.kitchen] for c in BOOK.complaints.values() if fits(HERE, c.fits)}


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        ("watter not hott at the end", "rinse_cold"),
        ("the dial says 160", "rinse_cold"),
        ("plates come lukewarm", "rinse_cold"),
        ("booster broken", "rinse_cold"),
        ("STEAM EVERYWHERE!!", "steam_out"),
        ("fog", "steam_out"),
        ("rak jamed", "racks_jam"),
        ("baskets stuck inside", "racks_jam"),
        ("have to push reset", "motor_trips"),
        ("overlod trips", "motor_trips"),
        ("pump stops", "motor_trips"),
    ],
)
def test_kitchen_words_find_the_complaint(words: str, meant: str) -> None:
    assert clear_winner(find(words, COMPLAINTS)) == meant


@pytest.mark.parametrize(("words", "meant"), [("cold rinse", "rinse_cold"), ("it is like a sauna", "steam_out")])
def test_words_of_two_complaints_ask_back_with_the_likelier_first(words: str, meant: str) -> None:
    matches = find(words, COMPLAINTS)
    assert clear_winner(matches) is None
    assert matches[0].id == meant


@pytest.mark.parametrize(
    ("words", "meant"),
    [("rinse is not hot", "rinse_cold"), ("rinse is too hot", "rinse_hot"), ("ware not dry", "not_dry")],
)
def test_a_denied_word_is_its_opposite(words: str, meant: str) -> None:
    assert find(words, COMPLAINTS)[0].id == meant


@pytest.mark.parametrize("words", ["xyzzy", "", "?!", "the", "12", "the inspector ate lunch"])
def test_nothing_is_found_in_nothing(words: str) -> None:
    assert clear_winner(find(words, COMPLAINTS)) is None


def test_vague_words_offer_a_choice() -> None:
    matches = find("conveyor stops", COMPLAINTS)
    assert clear_winner(matches) is None
    assert {m.id for m in matches[:4]} >= {"conveyor_dead", "stops_table_empty"}


def test_checks_are_found_by_their_titles() -> None:
    titles = {c.id: [c.title, c.ask] for c in BOOK.checks.values()}
    for check in list(BOOK.checks.values())[::31]:
        same_title = {c.id for c in BOOK.checks.values() if c.title == check.title}
        assert {m.id for m in find(check.title, titles, 3)} & same_title, check.title


@given(st.text(max_size=80))
def test_any_text_is_survived(words: str) -> None:
    assert all(0 <= m.score <= 1.0001 for m in find(words, COMPLAINTS))
