"""Water entering: is it hot enough for the rise this booster can give?"""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics.heat import rise_of_flow
from diagnose.rules import booster_gas
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.booster_supply import supply_of
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rinse_arms import flow_now
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, Unit, find_unit

__all__ = ["expected_inlet", "inlet_temperature"]

RISE_ERROR = 0.04  # of the rise worked out from plate figures; judgement
MARGIN = 2.0  # F° by which water may miss a booster's plate figure for the inlet; judgement


@dataclass(frozen=True)
class _Wanted:
    low: float  # in `unit`
    high: float | None
    error: float
    unit: Unit
    words: tuple[str, ...]
    plate: tuple[str, ...]
    working: tuple[str, ...] = ()  # the calculation in full


def inlet_temperature(facts: Facts) -> Finding | Silent | None:
    """Judge the inlet temperature by the rise that this booster gives at its rated flow.

    Purpose: cold supply is no booster fault, and no new element helps.
    Formula: needed = rinse minimum - P / (ρ c Q), with rated power at the plate's volts and rated flow, gas at
    75 %; steam: the plate's inlet figure; no booster: the rinse minimum itself.
    Source: conservation of energy; limits of the rinse and of the inlet; 75 % of county plan check guide EHD 16-01.
    Fires: two_tank_electric_208 (booster_power = 30 kW, rinse_flow = 4.2 gpm):
      supply_water.inlet_temperature = 110 F -> too_cold
    Silent: two_tank_electric_208 (booster_power = 30 kW): booster_electric.line_amps = 83 83 83 A
    """
    name = "supply_water.inlet_temperature"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    wanted = _wanted(facts, reading.value.unit)
    if isinstance(wanted, Silent):
        return Silent(f"{check.title}: {wanted.why}")
    value = reading.value.value
    meter = spread(check, reading.value, reading)
    cold = normal_share((wanted.low - value) / math.hypot(meter, wanted.error))
    hot = 0.0 if wanted.high is None else normal_share((value - wanted.high) / meter)
    weights = {"enough": max(1 - cold - hot, 0.0), "too_cold": cold, "too_hot": hot}
    working = [*(wanted.working or wanted.words), f"Read: {reading.value}.", *_flow_words(facts, reading.value)]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(name, weights, name, [reading], (), [*working, *facts.assumed(*wanted.plate)], says)


def expected_inlet(facts: Facts, check: str) -> Expected | None:
    """The least inlet temperature that ends in a rinse hot enough."""
    plate = facts.plate("booster_inlet") or facts.plate("rinse_temperature")
    unit = plate.unit if plate else find_unit("°F", "temperature")
    if unit is None:
        return None
    wanted = _wanted(facts, unit)
    if isinstance(wanted, Silent):
        return None
    low = Quantity(wanted.low, unit)
    line = f"{wanted.low:.0f} {unit.symbol} or more: {wanted.words[0]}"
    told = (*(wanted.working or wanted.words), *plates_told(facts, *wanted.plate))
    return Expected((line,), low, None, facts.assumed(*wanted.plate), "heat balance and the plate", told)


def _wanted(facts: Facts, unit: Unit) -> _Wanted | Silent:
    booster, chemical = facts.machine.trait("booster"), facts.machine.trait("sanitising") == "chemical"
    try:
        limit = "rinse_temperature_chemical" if chemical else "rinse_temperature"
        rinse = limit_end(facts.book, facts.machine, limit, "low", unit)
        if booster == "none":
            high = limit_end(facts.book, facts.machine, limit, "high", unit).value
            text = f"No booster: the water must bring the {rinse} of the rinse itself ({rinse.stands})."
            return _Wanted(rinse.value, high, 1e-6, unit, (text,), ("rinse_temperature",))
        high = limit_end(facts.book, facts.machine, "booster_inlet", "high", unit).value
    except LookupError as error:
        return Silent(str(error))
    rated = _rated(facts)
    if rated is None:
        return _by_plate(facts, unit, high)
    power, flow, words = rated
    rise = rise_of_flow(power, flow.si) / unit.factor
    low = rinse.value - rise
    degree = f"{unit.symbol[-1]}°"
    text = f"{words} gives {rise:.0f} {degree}; {rinse.value:.0f} - {rise:.0f} = {low:.0f} {unit.symbol} needed"
    source = ("gas_input",) if booster == "gas" else ("booster_power", "booster_volts", "volts")
    target = Quantity(rinse.value, unit).si
    worked = said("inlet-needed", system_of(unit), target=target, power=power, flow=flow.si)
    working = (f"{words}; {rinse} is the least of the rinse ({rinse.stands}).", *worked)
    return _Wanted(low, high, rise * RISE_ERROR, unit, (text,), (*source, "rinse_flow", "rinse_temperature"), working)


def _rated(facts: Facts) -> tuple[float, Quantity, str] | None:
    """Heat into the water as rated, rated flow, and both in words; None where the plate does not tell."""
    flow = facts.plate("rinse_flow")
    if flow is None or flow.si <= 0:
        return None
    if facts.machine.trait("booster") == "gas":
        gas = facts.plate("gas_input")
        if gas is None:
            return None
        share = booster_gas.EFFICIENCY
        return gas.si * share, flow, f"{gas} of gas at {share * 100:.0f} % into {flow}"
    supply = supply_of(facts) if facts.machine.trait("booster") == "electric" else Silent("")
    if isinstance(supply, Silent):
        return None
    return supply.power_by_plate, flow, f"{supply.power_by_plate / 1e3:.3g} kW into {flow}"


def _by_plate(facts: Facts, unit: Unit, high: float) -> _Wanted | Silent:
    try:
        edge = limit_end(facts.book, facts.machine, "booster_inlet", "low", unit)
    except LookupError as error:
        return Silent(str(error))
    margin = MARGIN * (5 / 9) / unit.factor
    text = f"The booster is sized for {edge} ({edge.stands})."
    return _Wanted(edge.value - margin, high, margin / 2, unit, (text,), ("booster_inlet",))


def _flow_words(facts: Facts, inlet: Quantity) -> list[str]:
    """What arrives at the flow there is now, where that was read: the flow is another check's matter."""
    flow, rated = flow_now(facts), _rated(facts)
    if flow is None or rated is None or not flow.consults:
        return []
    worked = said("outlet-temperature", system_of(inlet.unit), inlet=inlet.si, power=rated[0], flow=flow.value)
    return [f"At the flow there is now ({flow.origin}), with full heat:", *worked]


_SAYS = {
    "enough": "The water comes in hot enough.",
    "too_cold": "The water comes in too cold: the booster can't make it up.",
    "too_hot": "The water comes in hotter than the machine is meant for.",
}
