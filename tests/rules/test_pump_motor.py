"""Motor currents: lost phase, unbalance, too much, too little."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, Reading, load_book
from diagnose.rules import findings
from diagnose.units import parse_quantity
from tests.rulebook import expect, machine, run

SHIPPED = load_book()
HERE = Machine("under test", SHIPPED.machines["two_tank_electric_208"], {"wash_motor_amps": "6.8 A"})
PUMP, DRIVE, FAN = "pump_motor.line_amps", "drive_motor.line_amps", "exhaust_fan.line_amps"


@pytest.mark.parametrize(
    ("check", "seen", "outcome"),
    [
        (PUMP, "5.9 6.0 5.8", "healthy"),
        (PUMP, "6.8 6.8 6.8", "healthy"),
        (PUMP, "11.6 11.9 0", "phase_lost"),
        (PUMP, "0 9.9 10.2", "phase_lost"),
        (PUMP, "8.4 8.5 8.3", "high"),
        (PUMP, "3.3 3.2 3.4", "low"),
        (PUMP, "5.2 6.6 5.4", "unbalanced"),
        (DRIVE, "0.62 0.60 0.61", "healthy"),  # a light conveyor is no fault
        (DRIVE, "1.9 1.9 1.8", "high"),
        (FAN, "1.9 1.9 1.9", "healthy"),
        (FAN, "1.0 1.0 1.0", "low"),
    ],
)
def test_three_phases(check: str, seen: str, outcome: str) -> None:
    assert run(machine(), (check, seen)).findings[0].outcome == outcome


@pytest.mark.parametrize(("seen", "outcome"), [("8.6", "healthy"), ("12", "high"), ("4.2", "low"), ("0", "none")])
def test_single_phase(seen: str, outcome: str) -> None:
    assert run(machine("single"), (f"{PUMP}_single", seen)).findings[0].outcome == outcome


def test_voltage_unbalance_is_consulted() -> None:
    volts = "supply_power.line_volts"
    explained = run(machine(), (volts, "205 208 202"), (PUMP, "5.2 6.6 5.6")).findings
    found = next(f for f in explained if f.check == PUMP)
    assert found.consults == (f"{volts} at 0",)
    assert any("the supply explains it" in line for line in found.working)
    alone = run(machine(), (volts, "208 208 208"), (PUMP, "5.2 6.6 5.6")).findings
    assert any("look at the motor" in line for line in next(f for f in alone if f.check == PUMP).working)


def test_low_volts_are_told_beside_a_high_current() -> None:
    found = run(machine(), ("supply_power.line_volts", "190 190 190"), (PUMP, "7.6 7.6 7.5")).findings
    pump = next(f for f in found if f.check == PUMP)
    assert pump.outcome == "high"
    assert any("104 to 109 % of the nameplate" in line for line in pump.working)


def test_two_lines_and_one_double_point_upstream() -> None:
    working = run(machine(), (PUMP, "5.5 5.6 11")).findings[0].working
    assert any("ahead of a transformer" in line for line in working)


@pytest.mark.parametrize("check", [PUMP, DRIVE, FAN])
def test_a_motor_without_current_is_not_fed(check: str) -> None:
    found = run(machine(), (check, "0 0 0")).findings[0]
    assert found.weights == {"none": 1.0}
    assert any("start it and read again" in line for line in found.working)


def test_five_per_cent_of_one_line_is_current_enough_to_judge() -> None:
    assert run(machine(), (PUMP, "0.3 0.3 0.3")).findings[0].outcome == "none"
    assert run(machine(), (PUMP, "0.5 0.5 0.5")).findings[0].outcome == "low"


def test_unequal_volts_tell_how_unequal_the_currents_may_be() -> None:
    shown = expect(machine(), PUMP, ("supply_power.line_volts", "205 208 202"))
    assert shown is not None
    assert shown.lines[1].startswith("9 to 15 % between them")  # 1.46 % of volts
    assert any("10 × 1.463" in line for line in shown.working)


def test_expected() -> None:
    shown = expect(machine(), PUMP)
    assert shown is not None
    assert shown.lines == ("4.08 to 7.14 A each, within 10 % of their mean (6.8 A nameplate)",)


@pytest.mark.parametrize(
    ("volts", "heaviest"),
    [
        ("208 208 208", "beyond_supply"),
        ("204 209 206", "beyond_supply"),  # 1.29 %: 15 % and 3 % of their own, seen 23 %
        ("202 212 206", "unbalanced"),  # 2.58 %: up to 31 %
    ],
)
def test_unequal_beyond_what_the_volts_explain(volts: str, heaviest: str) -> None:
    taken = [given("supply_power.line_volts", volts), given(PUMP, "5.6 5.8 7.9")]
    found = next(f for f in findings(SHIPPED, HERE, taken).findings if f.check == PUMP)
    assert found.outcome == heaviest
    assert found.weights[heaviest] > 0.85


def test_volts_not_read_leave_it_open() -> None:
    found = findings(SHIPPED, HERE, [given(PUMP, "5.6 5.8 7.9")]).findings[0]
    assert found.weights["unbalanced"] == pytest.approx(found.weights["beyond_supply"])


def given(check: str, figures: str) -> Reading:
    spec = SHIPPED.checks[check].reading
    assert spec is not None
    pairs = zip(spec.each, figures.split(), strict=True)
    return Reading(f"{check} at 0", check, {n: parse_quantity(f"{v} {spec.unit}", spec.quantity) for n, v in pairs})
