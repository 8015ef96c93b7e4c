"""A heater's isolated resistances against the plate: the same rule for booster and tank heater."""

from __future__ import annotations

import math

from diagnose.formulas import said
from diagnose.model import Finding, Reading
from diagnose.physics.bank_states import resistance_likelihoods
from diagnose.physics.element_bank import bank_resistances, element_resistance
from diagnose.rules.bank_supply import ELEMENT_SPREAD, bank_of, fed, shares
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, show_number

__all__ = ["expected_ohms", "terminal_ohms"]

# One element open of a delta of three: the highest pair reads twice the others. One of two side by side: 4/3.
HALF_WAY = 1.65


def terminal_ohms(facts: Facts, assembly: str) -> Finding | Silent | None:
    """Name the open element by the resistances between the terminals of an isolated heater.

    Purpose: the last word on the elements; independent of the supply.
    Formula: delta R = 3 V²/P, healthy 2R/3 each pair, one open 2R, R, R; wye R = V²/P, healthy 2R each pair,
    one open 2R and two pairs without end.
    Source: Ohm's law; element rated volts and power from the plate.
    Fires: two_tank_electric_208 (booster_power = 30 kW, booster_volts = 208 V):
      booster_electric.terminal_ohms = 8.6 4.3 4.3 ohm -> one_element_open
    Silent: two_tank_electric_208 (booster_power = 0 kW): booster_electric.terminal_ohms = 8.6 4.3 4.3 ohm
    Fires: single_tank_electric_208 (tank_power = 10 kW, tank_volts = 208 V):
      tank_heater_electric.terminal_ohms = 8.6 8.7 8.7 ohm -> healthy
    Silent: single_tank_electric_208 (tank_power = 0 kW): tank_heater_electric.terminal_ohms = 8.6 8.7 8.7 ohm
    """
    name = f"{assembly}.terminal_ohms"
    reading, check, bank = facts.fresh(name), facts.check(name), bank_of(facts, assembly)
    if reading is None or check is None:
        return None
    supply, connection = fed(facts, bank), str(facts.machine.trait("connection"))
    if isinstance(supply, Silent):
        return Silent(f"{check.title}: {supply.why}")
    if connection not in ("delta", "wye") or len(reading.values) != 3:
        return Silent(f"{check.title}: needs three resistances of a delta or wye bank")
    element = element_resistance(supply.power, supply.rated_volts, connection)
    healthy = bank_resistances(element, connection)[0]
    middle = Quantity.of_si(healthy, "resistance", "ohm")
    meter = spread(check, middle, reading) / middle.value
    likely = resistance_likelihoods(
        [v.si for v in reading.values.values()], healthy, connection, math.hypot(meter, ELEMENT_SPREAD), 0.05
    )
    weights = shares(
        healthy=likely["healthy"],
        one_element_open=likely["one element open"],
        two_elements_open=likely["two elements open"],
        all_open=likely["all open"],
        all_high=likely["high"],
        triple=likely["triple"],
        unlike=likely["unlike"],
    )
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        f"{show_number(supply.power / 1e3)} kW at {show_number(supply.rated_volts)} V in {connection}: each element "
        f"{show_number(element)} ohm, {show_number(healthy)} ohm between any two terminals.",
        "Read: " + ", ".join(f"{n} {v}" for n, v in reading.values.items()) + ".",
        *_open_element(reading, connection, outcome),
        *facts.assumed(bank.power, bank.volts),
    ]
    return facts.conclude(name, weights, name, [reading], (), working, _SAYS[outcome])


def _open_element(reading: Reading, connection: str, outcome: str) -> list[str]:
    """Which element it is, in the words of the terminals."""
    if outcome != "one_element_open":
        return []
    pairs = {label: q.si for label, q in reading.values.items()}
    ends = min(pairs.values()), max(pairs.values())
    if connection == "delta" and ends[1] < HALF_WAY * ends[0]:
        weak = max(pairs, key=lambda p: pairs[p])
        return [f"One of several elements side by side is open in the leg {weak}, where the ohms are highest."]
    if connection == "delta":
        return [f"The open element sits across {max(pairs, key=lambda p: pairs[p])}, where the ohms are highest."]
    whole = min(pairs, key=lambda p: pairs[p])
    return [f"The pair {whole} is whole: the open element is on the terminal that is not in it."]


def expected_ohms(facts: Facts, check: str) -> Expected | None:
    """The resistance between any two terminals of the healthy, isolated heater."""
    bank, connection = bank_of(facts, check.partition(".")[0]), str(facts.machine.trait("connection"))
    supply = fed(facts, bank)
    if isinstance(supply, Silent) or connection not in ("delta", "wye"):
        return None
    element = element_resistance(supply.power, supply.rated_volts, connection)
    pair = Quantity.of_si(bank_resistances(element, connection)[0], "resistance", "ohm")
    plate = Quantity.of_si(supply.power, "power", "kW")
    shown = f"{show_number(pair.value, 3)} ohm between any two terminals"
    line = f"{shown} ({plate}, {connection}, {show_number(supply.rated_volts)} V)"
    figures = {"power": supply.power, "voltage": supply.rated_volts, "connection": connection, "per_leg": 1}
    joined = "2 ÷ 3" if connection == "delta" else "2"
    working = (
        *plates_told(facts, bank.power, bank.volts if facts.plate(bank.volts) else "volts"),
        *said("element-ohms", "us", **figures),
        f"{show_number(element)} ohm × {joined} = {show_number(pair.value)} ohm between two terminals in {connection}.",
    )
    assumed = facts.assumed(bank.power, bank.volts)
    return Expected((line,), pair, pair, assumed, "Ohm's law and the plate", working)


_SAYS = {
    "healthy": "The elements are whole.",
    "one_element_open": "One element is open.",
    "two_elements_open": "Two elements are open.",
    "all_open": "No path between any terminals: all elements open, or the links are off.",
    "all_high": "All pairs are alike but high: elements for more volts than the plate says.",
    "triple": "All pairs are alike at three times the figure: a delta bank linked as a star.",
    "unlike": "No state of this bank measures like that: look at the links and at what else is on the terminals.",
}
