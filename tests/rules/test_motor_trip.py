"""Time to the trip against what the class does with the current there is."""

from __future__ import annotations

import pytest

from diagnose.rules import expected
from tests.rule_examples import book, read_example, run_example

MACHINE = "two_tank_electric_208 (wash_motor_amps = 6.8 A, overload_class = 10 s)"


def outcome(readings: str, machine: str = MACHINE) -> dict[str, float]:
    done = run_example(read_example(f"Fires: {machine}: {readings} -> as_class"))
    found = [f for f in done.findings if f.check == "motor_overload.trip_time"]
    return dict(found[0].weights) if found else {}


@pytest.mark.parametrize(
    ("seconds", "amps", "heaviest"),
    [
        (110, "12 12 12", "as_class"),  # 12 / (1.12 x 6.8) = 1.58: 198 s at the most, 79 at the least
        (20, "12 12 12", "too_early"),
        (900, "12 12 12", "too_late"),
        (300, "6.6 6.5 6.6", "too_early"),  # under the nameplate: borne for ever
        (40, "12 12 0", "too_early"),
    ],
)
def test_time_and_current(seconds: int, amps: str, heaviest: str) -> None:
    weights = outcome(f"motor_overload.trip_time = {seconds} s; pump_motor.line_amps = {amps} A")
    assert max(weights, key=lambda o: weights[o]) == heaviest
    assert weights[heaviest] > 0.8


def test_near_the_pickup_it_is_no_verdict() -> None:
    """7.6 A is what a relay set to 6.8 A just bears: a clamp can't say on which side it lies."""
    weights = outcome("motor_overload.trip_time = 900 s; pump_motor.line_amps = 7.6 7.6 7.6 A")
    assert max(weights.values()) < 0.75


def test_the_same_seconds_on_another_class_or_plate_mean_another_thing() -> None:
    readings = "motor_overload.trip_time = 60 s; pump_motor.line_amps = 12 12 12 A"
    slow = "two_tank_electric_208 (wash_motor_amps = 6.8 A, overload_class = 30 s)"
    quick = "two_tank_electric_208 (wash_motor_amps = 5.4 A, overload_class = 10 s)"
    assert outcome(readings, slow)["too_early"] > 0.9
    assert outcome(readings, quick)["as_class"] > 0.8


def test_silent_without_currents() -> None:
    assert outcome("motor_overload.trip_time = 60 s") == {}


def test_the_motor_that_tripped_is_judged() -> None:
    readings = (
        "motor_overload.which_tripped = drive; drive_motor.line_amps = 2.4 2.4 2.4 A; motor_overload.trip_time = 100 s"
    )
    weights = outcome(readings, "two_tank_electric_208 (drive_motor_amps = 1.2 A, overload_class = 10 s)")
    assert max(weights, key=lambda o: weights[o]) == "as_class"


def test_expected_and_the_setting_it_acts_like() -> None:
    example = read_example(
        f"Fires: {MACHINE}: motor_overload.trip_time = 60 s; pump_motor.line_amps = 9 9 9 A -> too_early"
    )
    shown = expected(book(), example.machine, example.readings, "motor_overload.trip_time")
    assert shown is not None
    assert shown.low is not None
    assert shown.high is not None
    assert shown.low.si == pytest.approx(0.4 * shown.high.si)
    assert any("ln(" in line for line in shown.working)
    found = next(f for f in run_example(example).findings if f.check == "motor_overload.trip_time")
    assert any("set to about" in line for line in found.working)


HOT = "motor_overload.trip_time_hot"


def hot(seconds: int, amps: str, machine: str = MACHINE) -> dict[str, float]:
    readings = f"{HOT} = {seconds} s; pump_motor.line_amps = {amps} A"
    done = run_example(read_example(f"Fires: {machine}: {readings} -> as_class"))
    return dict(next(f for f in done.findings if f.check == HOT).weights)


@pytest.mark.parametrize(
    ("seconds", "amps", "heaviest"),
    [
        (40, "12 12 12", "as_class"),  # 11 to 120 s from a reset; 84 to 210 s from cold
        (3, "12 12 12", "too_early"),
        (400, "12 12 12", "too_late"),
        (40, "6.6 6.5 6.6", "too_early"),
    ],
)
def test_from_a_reset_it_is_quicker(seconds: int, amps: str, heaviest: str) -> None:
    weights = hot(seconds, amps)
    assert max(weights, key=lambda o: weights[o]) == heaviest
    assert weights[heaviest] > 0.8


def test_the_same_seconds_from_cold_mean_another_thing() -> None:
    cold = outcome("motor_overload.trip_time = 40 s; pump_motor.line_amps = 12 12 12 A")
    assert cold["too_early"] > 0.8
    assert hot(40, "12 12 12")["as_class"] > 0.8


def test_expected_from_a_reset_names_the_heat_left() -> None:
    done = run_example(read_example(f"Fires: {MACHINE}: {HOT} = 40 s; pump_motor.line_amps = 12 12 12 A -> as_class"))
    working = next(f for f in done.findings if f.check == HOT).working
    assert any("50 to 90 % is left at the reset" in line for line in working)
    assert any("from the reset between" in line for line in working)
