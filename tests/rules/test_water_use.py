"""Gallons a rack by the meter, against the plate and against the rinse as measured."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import Expected, RuleRun, expected
from diagnose.rules.engine import run as run_engine
from diagnose.rules.registry import RULES
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
RACK, RUN, GAUGE = "water_use.per_rack", "rinse_actuator.rinse_run", "rinse_gauge.flow_pressure"
PLATE = {
    "rinse_flow": "4.2 gpm",
    "rinse_pressure": "20 psi",
    "rack_length": "20 in",
    "conveyor_speed": "5.8 ft/min",
}


def _machine(kind: str = "two_tank_electric_208", **own: str) -> Machine:
    return Machine("m", BOOK.machines[kind], {**PLATE, **own})


def _run(machine: Machine, *typed: tuple[str, str]) -> RuleRun:
    return run_rules(machine, *typed, book=BOOK)


def _found(machine: Machine, *typed: tuple[str, str]) -> Finding:
    return next(f for f in _run(machine, *typed).findings if f.check == RACK)


@pytest.mark.parametrize(
    ("flow", "speed", "outcome"),
    [
        ("4.2 gpm", "5.8 ft/min", "more"),  # 1.2 gal a rack
        ("4.2 gpm", "2.9 ft/min", "as_plate"),  # half the speed, 2.4 gal
        ("8 gpm", "5.8 ft/min", "as_plate"),  # 2.3 gal
        ("16 L/min", "1.8 m/min", "more"),  # 4.5 L against 9.1
    ],
)
def test_the_same_gallons_on_other_plates(flow: str, speed: str, outcome: str) -> None:
    found = _found(_machine(rinse_flow=flow, conveyor_speed=speed), (RACK, "2.4 gal"))
    assert found.outcome == outcome
    assert found.counts == (f"{RACK} at 0",)


@pytest.mark.parametrize(
    ("pressure", "seconds", "outcome"),
    [
        ("20 psi", "34 s", "rinse_takes_it"),  # 4.2 gpm for 34 s: 2.38 gal
        ("78 psi", "17 s", "rinse_takes_it"),  # √(78 ÷ 20) × 4.2 = 8.3 gpm: 2.35 gal
        ("20 psi", "17 s", "elsewhere"),  # 1.19 gal: half of it went another way
        ("11 psi", "34 s", "elsewhere"),  # 3.1 gpm: 1.77 gal
    ],
)
def test_what_the_rinse_as_measured_makes_of_it(pressure: str, seconds: str, outcome: str) -> None:
    found = _found(_machine(), (GAUGE, pressure), (RUN, seconds), (RACK, "2.4 gal"))
    assert found.outcome == outcome
    assert set(found.consults) == {f"{GAUGE} at 0", f"{RUN} at 0"}


def test_near_the_edge_both_have_weight() -> None:
    weights = _found(_machine(), (RACK, "1.51 gal")).weights  # 125 % of 1.207
    assert 0.35 < weights["more"] < 0.65


def test_the_plates_own_figure_goes_first() -> None:
    found = _found(_machine("single_tank_chemical_208", rinse_per_rack="2.3 gal"), (RACK, "2.4 gal"))
    assert found.outcome == "as_plate"
    assert any(line.startswith("Final-rinse water a rack: 2.3 gal") for line in found.working)


def test_silent_without_the_plate_and_on_a_flight_machine() -> None:
    assert _run(_machine(conveyor_speed="0 ft/min"), (RACK, "2.4 gal")).findings == ()
    assert not BOOK.checks[RACK].fits.get("conveyor", []).count("flight")


def test_the_rule_alone_answers() -> None:
    plain = [r for r in RULES if r.name == "plain_band"]
    assert run_engine(BOOK, _machine(), [reading(RACK, "2.4 gal", book=BOOK)], plain).findings == ()


def test_expected_with_its_working() -> None:
    told: Expected | None = expected(BOOK, _machine(), [], RACK)
    assert told is not None
    assert told.lines == ("about 1.2 gal a rack",)
    assert "4.2 gpm × 17.2 s ÷ 60 = 1.21 gal (by the plate)." in told.working
    read = expected(BOOK, _machine(), [reading(RUN, "34 s", book=BOOK)], RACK)
    assert read is not None
    assert read.lines == ("about 2.4 gal a rack",)
