"""Proof at the ware: labels beside the gauge, and a plate's own temperature."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, load_book
from diagnose.rules import expected
from tests.rulebook import run

BOOK = load_book()
LABEL, PANEL, TRACE = "rinse_thermometer.label_on_plate", "rinse_thermometer.panel_reading", "rinse_proof.trace"
SPEED = "conveyor_bar_pawls.rack_speed"


def two_tank(**own: str) -> Machine:
    return Machine("m", BOOK.machines["two_tank_electric_208"], own)


@pytest.mark.parametrize(
    ("gauge", "seen", "says"),
    [
        ("166 F", "all_turn", "the gauge lies"),
        ("184 F", "all_turn", "agree"),
        ("184 F", "none_turns", "racks too fast, too little water"),
        ("184 F", "some_turn", "racks too fast"),
        ("165 F", "none_turns", "the rinse is too cold"),
        ("199 F", "none_turns", "the spray breaks up"),
    ],
)
def test_label_beside_the_gauge(gauge: str, seen: str, says: str) -> None:
    done = run(two_tank(), (PANEL, gauge), (LABEL, seen), book=BOOK)
    (found,) = [f for f in done.findings if f.check == LABEL]
    assert (found.outcome, found.rule) == (seen, LABEL)
    assert says in found.says
    assert any("not the time at it" in line for line in found.working)
    assert found.consults == (f"{PANEL} at 0",)
    assert found.counts == (f"{LABEL} at 0",)


def test_label_alone_is_taken_as_chosen() -> None:
    (found,) = run(two_tank(), (LABEL, "all_turn"), book=BOOK).findings
    assert found.rule == "chosen_outcome"


@pytest.mark.parametrize(
    ("trace", "outcome"),
    [
        ("163 165 167 168 169 170 170 169 168 167 166 165", "enough"),
        ("151 155 160 162 163 164 164 163 162 160 158 153", "short"),  # turns a label all the same
        ("146 148 150 152 153 154 154 153 152 150 148 146", "cold"),
        ("73C 74C 75C 76C 77C 77C 77C 77C 76C 76C 75C 75C", "enough"),
    ],
)
def test_trace(trace: str, outcome: str) -> None:
    found = run(two_tank(), (TRACE, trace), book=BOOK).findings[0]
    assert (found.check, found.outcome) == (TRACE, outcome)


def test_near_the_dose_it_is_no_verdict() -> None:
    """3691 heat units are more than 3600 by less than half a degree of the logger's error."""
    weights = run(two_tank(), (TRACE, "160 163 165 165 165 166 165 165 165 165 165 164"), book=BOOK).findings[0].weights
    assert 0.1 < weights["enough"] < 0.9


def test_speed_is_consulted_and_shown() -> None:
    done = run(two_tank(conveyor_speed="5.8 ft/min", rinse_zone="12 in"), (SPEED, "7.5 ft/min"),
               (TRACE, "151 155 160 162 163 164 164 163 162 160 158 153"), book=BOOK)  # fmt: skip
    found = next(f for f in done.findings if f.check == TRACE)
    assert found.consults == (f"{SPEED} at 0",)
    assert any("8.0 s" in line for line in found.working)


def test_expected_tells_what_the_seconds_here_can_give() -> None:
    told = expected(BOOK, two_tank(), [], TRACE)
    assert told is not None
    assert any("10.4 s at 165 °F" in line for line in told.working)
    assert any("10.3 s" in line for line in told.working)
