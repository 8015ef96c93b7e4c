"""Heat a bank of elements gives, by the currents of its lines: the same for booster and tank heater."""

from __future__ import annotations

from diagnose.model import Reading
from diagnose.physics.element_bank import BankState, bank_currents, bank_power
from diagnose.rules.booster_supply import Heat, Supply
from diagnose.rules.facts import Facts
from diagnose.units import show_number

__all__ = ["POWER_RATED", "POWER_READ", "STATES", "SURE", "heat_of_currents", "heat_of_one_current"]

POWER_READ, POWER_RATED = 0.03, 0.06  # error of the power from currents, and of the rating alone; judgement
SURE = 0.8  # the currents must say at least this clearly what state the bank is in

# Outcome of the line currents -> what is then so in the bank.
STATES = {
    "healthy": BankState(),
    "all_low": BankState(),
    "all_third": BankState(),
    "one_element_out": BankState(frozenset({0})),
    "two_elements_out": BankState(frozenset({0, 1})),
    "one_line_out": BankState(lost_line=0),
}


def heat_of_currents(facts: Facts, supply: Supply, reading: Reading, outcome: str) -> Heat:
    """The state's share of the heat, scaled by how far the currents stand off its pattern."""
    connection, state = str(facts.machine.trait("connection")), STATES[outcome]
    pattern = sum(bank_currents(supply.power_now, supply.volts, connection, state))
    scale = sum(v.si for v in reading.values.values()) / pattern
    power = bank_power(supply.power_now, supply.volts, connection, state) * scale
    read = ", ".join(show_number(v.si) for v in reading.values.values())
    share = bank_power(1.0, supply.volts, connection, state)
    words = f"currents {read} A: {share * 100:.0f} % of {show_number(supply.power_now / 1e3, 3)} kW"
    return Heat(power, POWER_READ, True, words, (reading, supply.read) if supply.read else (reading,))


def heat_of_one_current(supply: Supply, reading: Reading) -> Heat:
    """Volts times amperes of a single-phase bank."""
    words = f"{reading.value} at {show_number(supply.volts)} V"
    return Heat(reading.value.si * supply.volts, POWER_READ, True, words, (reading,))
