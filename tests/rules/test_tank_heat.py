"""Heat into a tank: currents, gas and steam read, else the plate; and whose readings they are."""

from __future__ import annotations

import pytest

from diagnose.rules import findings
from diagnose.rules.booster_supply import Heat
from diagnose.rules.facts import Facts, Silent, gather
from diagnose.rules.registry import RULES
from diagnose.rules.tank_heat import RINSE, WASH, Tank, heat_into, rated_into
from tests.rule_examples import book
from tests.rules.test_booster_rise import machine, readings

AMPS, VOLTS = "tank_heater_electric.line_amps", "supply_power.line_volts"
OHMS = "tank_heater_electric.terminal_ohms"
WHICH, CLOCKED = "tank_heater_electric.which_tank", "tank_heater_gas.gas_clocked"
CONDENSATE, COIL = "tank_heater_steam.condensate", "tank_heater_steam.coil_pressure"
TWO, GAS, STEAM, INJECTOR = (
    "two_tank_electric_208",
    "single_tank_gas_208",
    "two_tank_steam_208",
    "two_tank_injector_480",
)


def facts_of(kind: str, typed: dict[str, str], **plate: str) -> Facts:
    """Facts with what the rules found, as a rule further down sees them."""
    taken, of = readings(typed), machine(kind, **plate)
    found = {(f.stage, f.check): f for f in findings(book(), of, taken).findings}
    bare = gather(book(), of, taken)
    return Facts(bare.book, bare.machine, bare.stage, bare.newest, bare.spent, found)


def heat(kind: str, typed: dict[str, str], tank: Tank = WASH, **plate: str) -> Heat:
    got = heat_into(facts_of(kind, typed, **plate), tank)
    assert not isinstance(got, Silent)
    return got


@pytest.mark.parametrize(
    ("typed", "kilowatts", "read"),
    [
        ({}, 20.0, False),
        ({VOLTS: "187 187 187"}, 20.0 * 0.9**2, True),  # the volts act squared
        ({AMPS: "55.5 55.5 55.5"}, 20.0, True),
        ({AMPS: "32 32 55.5"}, 13.3, True),  # an element out
        ({AMPS: "48 48 0"}, 10.0, True),  # a line out
        ({AMPS: "0 0 0"}, 0.0, True),
    ],
)
def test_electric(typed: dict[str, str], kilowatts: float, read: bool) -> None:
    got = heat(TWO, typed)
    assert got.power / 1e3 == pytest.approx(kilowatts, rel=0.02, abs=0.01)
    assert got.read == read


@pytest.mark.parametrize(("ohms", "kilowatts"), [("4.3 4.3 4.3", 20.0), ("13 6.5 6.5", 13.3), ("13 6.5 6.6", 13.3)])
def test_ohms_stand_for_currents_nobody_read(ohms: str, kilowatts: float) -> None:
    got = heat(TWO, {OHMS: ohms})
    assert got.read == (kilowatts < 20)  # whole elements may still lack a line
    assert got.power / 1e3 == pytest.approx(kilowatts, rel=0.02)
    assert heat(TWO, {OHMS: ohms, AMPS: "48 48 0"}).power == pytest.approx(10e3, rel=0.02)  # the clamp sees it


def test_ohms_like_no_state_leave_the_plate() -> None:
    assert not heat(TWO, {OHMS: "2 40 9"}).read


def test_wye_bank_needs_no_name_for_its_state() -> None:
    """An element open and a line lost draw alike there, and leave the same half."""
    assert heat("two_tank_electric_400_50", {AMPS: "22.5 22.5 0"}).power == pytest.approx(9e3, rel=0.02)


def test_currents_like_no_state_say_no_heat() -> None:
    assert isinstance(heat_into(facts_of(TWO, {AMPS: "10 33 47"}), WASH), Silent)


def test_currents_belong_to_the_tank_that_was_named() -> None:
    typed = {WHICH: "rinse_tank", AMPS: "32 32 55.5"}
    assert not heat(TWO, typed, WASH).read
    assert heat(TWO, typed, RINSE).power == pytest.approx(13.3e3, rel=0.02)


def test_gas_and_steam() -> None:
    assert heat(GAS, {}).power == pytest.approx(0.7 * 80000 * 0.29307, rel=1e-3)
    assert heat(GAS, {CLOCKED: "40000"}).power == pytest.approx(0.7 * 40000 * 0.29307, rel=1e-3)
    assert heat(STEAM, {CONDENSATE: "46"}).power == pytest.approx(12.7e3, rel=0.01)
    assert heat(STEAM, {COIL: "7"}).power == pytest.approx(16.0e3, rel=0.02)  # steam 107 F° over the water for 133
    assert heat(STEAM, {COIL: "1"}).power == 0.0
    assert heat(INJECTOR, {COIL: "12"}).power == pytest.approx(24e3 * 26.7 / 34.7, rel=0.01)  # absolute pressures


def test_without_a_rating_nothing_is_said() -> None:
    assert isinstance(rated_into(facts_of(GAS, {}), RINSE), Silent)
    assert isinstance(rated_into(facts_of(STEAM, {}, tank_power="0 kW"), WASH), Silent)
    assert len({rule.name for rule in RULES}) == len(RULES)
