"""Seconds from the click to the standing bar: the way they carry the racks decides."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import RuleRun, expected
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
STOP, SPEED = "table_limit_switch.stop_seconds", "conveyor_bar_pawls.rack_speed"


def _machine(speed: str = "5.8 ft/min") -> Machine:
    return Machine("m", BOOK.machines["two_tank_electric_208"], {"conveyor_speed": speed})


def _run(speed: str, *typed: tuple[str, str]) -> RuleRun:
    return run_rules(_machine(speed), *typed, book=BOOK)


def _found(done: RuleRun) -> Finding:
    return next(f for f in done.findings if f.check == STOP)


@pytest.mark.parametrize(
    ("speed", "seconds", "outcome"),
    [
        ("5.8 ft/min", "1.6 s", "at_once"),  # 1.9 in
        ("12 ft/min", "1.6 s", "late"),  # 3.8 in: the same seconds
        ("3 ft/min", "4 s", "at_once"),  # 2.4 in
        ("5.8 ft/min", "4 s", "late"),  # 4.6 in
        ("1.8 m/min", "1.5 s", "at_once"),
        ("5.8 ft/min", "60 s", "never"),
        ("3 ft/min", "60 s", "never"),
    ],
)
def test_by_the_way_not_by_the_seconds(speed: str, seconds: str, outcome: str) -> None:
    found = _found(_run(speed, (STOP, seconds)))
    assert found.outcome == outcome
    assert found.weights[outcome] > 0.8


def test_near_the_edge_both_have_weight() -> None:
    weights = _found(_run("6 ft/min", (STOP, "2.5 s"))).weights  # 3 in to the dot
    assert 0.4 < weights["at_once"] < 0.6
    assert 0.4 < weights["late"] < 0.6


def test_a_conveyor_timed_faster_than_its_plate() -> None:
    done = _run("5.8 ft/min", (SPEED, "11 ft/min"), (STOP, "2 s"))  # 4.4 in instead of 2.3
    found = _found(done)
    assert found.outcome == "late"
    assert found.consults == (f"{SPEED} at 0",)
    assert _found(_run("5.8 ft/min", (STOP, "2 s"))).outcome == "at_once"


def test_without_a_speed_the_plain_band_answers() -> None:
    found = _found(_run("0 ft/min", (STOP, "6 s")))
    assert (found.rule, found.outcome) == ("plain_band", "late")


def test_expected_with_its_working() -> None:
    shown = expected(BOOK, _machine("6 ft/min"), [], STOP)
    assert shown is not None
    assert shown.lines == ("at once, 2.5 s at most",)
    assert any("= 2.5 s" in line for line in shown.working)
    timed = expected(BOOK, _machine("6 ft/min"), [reading(SPEED, "12 ft/min", book=BOOK)], STOP)
    assert timed is not None
    assert timed.high is not None
    assert timed.high.si == pytest.approx(1.25)
