"""Currents and ohms of heaters: every state of a bank is told from its reading."""

from __future__ import annotations

import math

import pytest

from diagnose.model import Machine, load_book
from diagnose.physics.element_bank import BankState, bank_currents, bank_resistances, element_resistance
from diagnose.rules import RuleRun, findings
from tests.rulebook import expect, machine, reading, run

SHIPPED = load_book()

AMPS, OHMS = "booster_electric.line_amps", "booster_electric.terminal_ohms"
DELTA = {
    "healthy": BankState(),
    "one_element_out": BankState(frozenset({1})),
    "two_elements_out": BankState(frozenset({0, 2})),
    "one_line_out": BankState(lost_line=1),
}


def _typed(values: tuple[float, ...]) -> str:
    return " ".join(f"{v:.1f}" for v in values)


@pytest.mark.parametrize("outcome", DELTA)
@pytest.mark.parametrize(("power", "volts"), [(15, 208), (30, 208), (18, 240), (36, 480)])
def test_delta_states_at_any_power_and_voltage(outcome: str, power: int, volts: int) -> None:
    own = machine(booster_power=f"{power} kW", volts=f"{volts} V", booster_volts=f"{volts} V")
    seen = bank_currents(power * 1e3, volts, "delta", DELTA[outcome])
    (found,) = run(own, (AMPS, _typed(seen))).findings
    assert found.outcome == outcome
    assert found.weights[outcome] > 0.98


def test_wye_currents_leave_line_and_element_equally_likely() -> None:
    found = run(machine("wye"), (AMPS, "33.8 33.8 0")).findings[0]
    assert found.weights["one_element_out"] == pytest.approx(found.weights["one_line_out"], rel=0.01)
    assert found.weights["one_element_out"] == pytest.approx(0.5, abs=0.01)


def test_working_can_be_followed() -> None:
    found = run(machine(), (AMPS, "48 48 83")).findings[0]
    assert found.working[0] == "30 kW at 208 V in delta: 83.3 A in each line."
    assert "58 %, 58 %, 100 %" in found.working[1]
    assert "two thirds of the heat" in found.working[2]
    assert any("data plate governs" in line for line in found.working)


def test_plate_read_on_the_machine_is_not_called_assumed() -> None:
    own = machine(booster_power="30 kW", volts="208 V", booster_volts="208 V")
    assert not any("governs" in line for line in run(own, (AMPS, "83 83 83")).findings[0].working)


def test_elements_for_240_volts_on_208_are_judged_by_the_square() -> None:
    """36 kW at 240 V is 27.0 kW and 75.1 A on 208 V: such a bank is healthy there."""
    own = machine(booster_power="36 kW", booster_volts="240 V")
    assert run(own, (AMPS, "75 75 75")).findings[0].outcome == "healthy"


def test_low_volts_measured_explain_low_currents() -> None:
    low = run(machine(), ("supply_power.line_volts", "180 181 180"), (AMPS, "72 72 72"))
    found = next(f for f in low.findings if f.check == AMPS)
    assert found.outcome == "all_low"
    assert found.consults == ("supply_power.line_volts at 0",)
    pattern = run(machine(), ("supply_power.line_volts", "180 181 180"), (AMPS, "41.6 41.6 72"))
    assert next(f for f in pattern.findings if f.check == AMPS).outcome == "one_element_out"


def test_nothing_and_nonsense() -> None:
    assert run(machine(), (AMPS, "0 0 0.3")).findings[0].outcome == "none"
    assert run(machine(), (AMPS, "60 40 95")).findings[0].weights["unlike"] > 0.9


def test_silent_without_a_power() -> None:
    assert run(machine("steam"), (AMPS, "48 48 83")).findings == ()
    missing = run(machine(booster_power="0 kW"), (AMPS, "48 48 83"))
    assert missing.findings == ()
    assert "power" in missing.unanswered[0].why


@pytest.mark.parametrize(
    ("amps", "outcome"), [("62", "healthy"), ("31", "part_out"), ("41.5", "part_out"), ("0", "none"), ("52", "all_low")]
)
def test_single_phase(amps: str, outcome: str) -> None:
    assert run(machine("single"), (f"{AMPS}_single", amps)).findings[0].outcome == outcome


@pytest.mark.parametrize("connection", ["delta", "wye"])
@pytest.mark.parametrize(
    ("outcome", "opened"), [("healthy", ()), ("one_element_open", (2,)), ("two_elements_open", (0, 1))]
)
def test_ohms(connection: str, outcome: str, opened: tuple[int, ...]) -> None:
    power, volts = (30e3, 208.0) if connection == "delta" else (27e3, 400.0)
    pairs = bank_resistances(element_resistance(power, volts, connection), connection, frozenset(opened))
    typed = " ".join("900000" if math.isinf(r) else f"{r:.1f}" for r in pairs)
    found = run(machine(connection), (OHMS, typed)).findings[0]
    if connection == "wye" and outcome == "two_elements_open":
        assert found.weights["two_elements_open"] == pytest.approx(found.weights["all_open"], rel=0.05)
    else:
        assert found.outcome == outcome


def test_ohms_name_the_element() -> None:
    working = run(machine(), (OHMS, "4.3 4.3 8.6")).findings[0].working
    assert any("across T3-T1" in line for line in working)


def test_expected_stands_beside_the_prompt() -> None:
    shown = expect(machine(), AMPS)
    assert shown is not None
    assert shown.lines == ("83.3 A each (30 kW, delta, 208 V)",)
    assert shown.assumptions
    measured = expect(machine(), AMPS, ("supply_power.line_volts", "200 200 200"))
    assert measured is not None
    assert measured.lines == ("80.1 A each (30 kW, delta, 200 V measured, elements for 208 V)",)
    ohms = expect(machine(), OHMS)
    assert ohms is not None
    assert ohms.lines == ("2.88 ohm between any two terminals (30 kW, delta, 208 V)",)
    assert expect(machine("steam"), AMPS) is None


TANK, TANK_OHMS = "tank_heater_electric.line_amps", "tank_heater_electric.terminal_ohms"


def _shipped(kind: str, *typed: tuple[str, str], **own: str) -> RuleRun:
    return findings(SHIPPED, Machine("m", SHIPPED.machines[kind], own), [reading(*t, book=SHIPPED) for t in typed])


@pytest.mark.parametrize(
    ("power", "volts", "elements", "outcome"),
    [
        ("20 kW", "208 V", "208 V", "all_low"),  # 55.5 A wanted
        ("20 kW", "208 V", "240 V", "healthy"),  # 41.7 A wanted
        ("15 kW", "208 V", "208 V", "healthy"),  # 41.6 A wanted
        ("18 kW", "240 V", "240 V", "healthy"),  # 43.3 A wanted
    ],
)
def test_the_same_tank_amps_on_other_plates(power: str, volts: str, elements: str, outcome: str) -> None:
    done = _shipped("two_tank_electric_208", (TANK, "42 42 42"), tank_power=power, volts=volts, tank_volts=elements)
    assert done.findings[0].outcome == outcome


def test_the_power_rinse_tank_goes_by_its_own_plate() -> None:
    which = ("tank_heater_electric.which_tank", "rinse_tank")
    own = {"tank_power": "20 kW", "rinse_tank_power": "10 kW", "volts": "208 V"}
    alone = _shipped("two_tank_electric_208", (TANK, "27.8 27.8 27.8"), **own)
    told = _shipped("two_tank_electric_208", which, (TANK, "27.8 27.8 27.8"), **own)
    assert alone.findings[0].outcome == "all_low"
    assert next(f for f in told.findings if f.check == TANK).outcome == "healthy"
    unknown = _shipped(
        "two_tank_electric_208", which, (TANK, "27.8 27.8 27.8"), tank_power="20 kW", rinse_tank_power="0 kW"
    )
    assert any("power-rinse tank" in u.why for u in unknown.unanswered)


@pytest.mark.parametrize(("amps", "legs"), [("63.7 63.7 83.3", "2 elements"), ("69.9 69.9 83.3", "3 elements")])
def test_a_leg_short_of_one_of_several_elements(amps: str, legs: str) -> None:
    """Two side by side, one out: 76, 76 and 100 %; three: 84, 84 and 100 %."""
    found = run(machine(), (AMPS, amps)).findings[0]
    assert found.outcome == "one_element_out"
    assert any(legs in line and "T1-T2: 1 of" in line for line in found.working)


def test_why_this_number() -> None:
    shown = expect(machine(booster_power="30 kW"), AMPS, ("supply_power.line_volts", "200 200 200"))
    assert shown is not None
    assert shown.working[0] == "Booster, rated power: 30 kW (data plate)."
    assert "30 kW × (200 V ÷ 208)² = 27.74 kW" in shown.working
    assert shown.working[-1] == "27.74 kW × 1000 ÷ (1.732 × 200 V) = 80.07 A"
    ohms = expect(machine(), OHMS)
    assert ohms is not None
    assert ohms.working[-2:] == (
        "3 × 1 × 208² ÷ (30 kW × 1000) = 4.326 ohm",
        "4.326 ohm × 2 ÷ 3 = 2.884 ohm between two terminals in delta.",
    )


@pytest.mark.parametrize(("amps", "outcome"), [("41.7", "all_low"), ("18.5", "all_third"), ("13.9", "all_low")])
def test_a_star_for_a_delta_is_told_from_wrong_volts(amps: str, outcome: str) -> None:
    """55.5 A wanted: 75 % is 240 V elements, 33 % a star, 25 % 480 V elements on half their volts."""
    done = _shipped("two_tank_electric_208", (TANK, " ".join([amps] * 3)), tank_power="20 kW", volts="208 V")
    assert done.findings[0].outcome == outcome


def test_single_phase_elements_for_higher_volts() -> None:
    """46.9 of 62.5 A is 75 %: no half and no third, but (208/240)²."""
    done = run(machine("single"), ("supply_power.line_volts_single", "240"), (f"{AMPS}_single", "46.9"))
    assert next(f for f in done.findings if f.check == f"{AMPS}_single").outcome == "all_low"
