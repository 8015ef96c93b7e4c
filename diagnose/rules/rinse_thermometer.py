"""Heat balance: does the panel's rinse reading fit the water coming in, the heat put in, and the flow?"""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.heat import rise_of_flow
from diagnose.rules import booster_gas, booster_steam
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.bank_heat import POWER_RATED, POWER_READ, STATES, SURE, heat_of_currents, heat_of_one_current
from diagnose.rules.booster_supply import Heat, supply_of
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rinse_arms import flow_now
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import Quantity, show_number

__all__ = ["heat_balance", "heat_now", "reach"]

LOSS = 1.0  # K, spread of what the pipe loses; its mean is about what the 500 rule reckons too little; judgement
AWAY = 30.0  # K, a thermometer that disagrees may be off by anything up to this; judgement


def heat_now(facts: Facts, kind: str = "electric") -> Heat | Silent:
    """Heat of the booster now: from its currents, its steam, or its gas; else what it is rated for."""
    if kind == "steam":
        return booster_steam.heat_now(facts)
    return booster_gas.heat_now(facts) if kind == "gas" else _electric(facts)


def _electric(facts: Facts) -> Heat | Silent:
    supply = supply_of(facts)
    if isinstance(supply, Silent):
        return supply
    single = facts.now("booster_electric.line_amps_single")
    if single is not None:
        return heat_of_one_current(supply, single)
    reading, finding = facts.now("booster_electric.line_amps"), facts.finding("booster_electric.line_amps")
    if reading is None or finding is None:
        words = f"rated power at {show_number(supply.volts)} V, currents not read"
        plate = ("booster_power", "booster_volts", "volts")
        return Heat(supply.power_now, POWER_RATED, False, words, (supply.read,) if supply.read else (), plate)
    if finding.outcome == "none":
        return Heat(0.0, POWER_READ, True, "no current in any line", (reading,))
    if finding.outcome not in STATES or finding.weights[finding.outcome] < SURE:
        return Silent("the booster's currents do not say clearly what state it is in")
    return heat_of_currents(facts, supply, reading, finding.outcome)


def heat_balance(facts: Facts, kind: str = "electric") -> Finding | Silent | None:
    """Set the panel's rinse reading against inlet plus the rise that the heat gives the flow.

    Purpose: with the heat and the flow known, the rise must be there; if not, the thermometer lies, or the
    heat was cut off, or lost, or the flow is another. The balance is a ceiling: a booster that reaches its
    thermostat's figure cycles. So "below" is said only with the heat measured (currents, steam at the coil,
    clocked gas), and a reading in good order within the ceiling is left to its plain band, which says more.
    A steam coil may be larger than its plate asks: hotter than reckoned says nothing there.
    Formula: T = T_in + P / (ρ c Q); trade: kW x 3412 / (500 x gpm) in F°; steam: what a clean coil of the
    plate's rating gives at this pressure; gas: three quarters of the input.
    Source: conservation of energy; errors of instruments, 3 or 6 % on electric power, 5 % on the share of the
    gas that goes into the water, 8 % on a coil's rating (judgement).
    Fires: two_tank_electric_208 (booster_power = 30 kW): supply_water.inlet_temperature = 140 F;
      booster_electric.line_amps = 48 48 83 A; rinse_arms.flow_measured = 4.2 gpm;
      rinse_thermometer.panel_reading = 172 F -> agrees
    Silent: two_tank_electric_208: booster_electric.line_amps = 48 48 83 A; rinse_thermometer.panel_reading = 172 F
    """
    name, panel = f"booster_{kind}.heat_balance", "rinse_thermometer.panel_reading"
    reading, panel_check, check = facts.fresh(panel), facts.check(panel), facts.check(name)
    if reading is None or panel_check is None or check is None:
        return None
    inlet, inlet_check = facts.now("supply_water.inlet_temperature"), facts.check("supply_water.inlet_temperature")
    if inlet is None or inlet_check is None:
        return Silent(f"{check.title}: the temperature of the water entering was not read")
    heat, flow, unit = heat_now(facts, kind), flow_now(facts), reading.value.unit
    if isinstance(heat, Silent) or flow is None:
        return Silent(f"{check.title}: {heat.why if isinstance(heat, Silent) else 'the rinse flow is not known'}")
    try:
        least = limit_end(facts.book, facts.machine, "rinse_temperature", "low", unit)
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    rise = rise_of_flow(heat.power, flow.value)
    ceiling, needed = inlet.value.si + rise, Quantity(least.value, unit).si
    sigma = math.sqrt(
        (spread(panel_check, reading.value, reading) * unit.factor) ** 2
        + (spread(inlet_check, inlet.value, inlet) * inlet.value.unit.factor) ** 2
        + (rise * math.hypot(heat.error, flow.error)) ** 2
        + LOSS**2
    )
    weights = _balance_weights(reading.value.si, min(ceiling, needed), ceiling, sigma)
    if kind == "steam":
        weights = {"agrees": 1 - weights["reads_below_balance"], "reads_below_balance": weights["reads_below_balance"]}
    outcome = max(weights, key=lambda o: weights[o])
    if outcome == "reads_below_balance" and not heat.read:
        return Silent(f"{check.title}: reads below what full heat gives; the heat itself must be measured to say more")
    if outcome != "reads_above_balance" and reading.value.si >= needed:
        return Silent(f"{check.title}: in good order and within what the heat can give")
    first, total = said("outlet-temperature", system_of(unit), inlet=inlet.value.si, power=heat.power, flow=flow.value)
    working = [
        *heat.lines,
        f"{first} of rise ({heat.words}; flow {flow.origin}).",
        f"{total}; you read {reading.value}: {_verdict(outcome, ceiling, reading)}.",
    ]
    plates = facts.assumed(*heat.plate, *flow.plate)
    consults = [inlet, *heat.consults, *flow.consults]
    return facts.conclude(name, weights, name, [reading], consults, [*working, *plates], _SAYS[outcome])


def reach(facts: Facts) -> tuple[str, tuple[str, ...]] | None:
    """How hot the rinse can get here from the water that comes in: a line for the prompt, and the working.

    None while the inlet was not read: then it is the inlet check that says what is needed.
    """
    inlet, flow = facts.now("supply_water.inlet_temperature"), flow_now(facts)
    kind = str(facts.machine.trait("booster"))
    if inlet is None or flow is None or kind == "none":
        return None
    heat = heat_now(facts, kind)
    if isinstance(heat, Silent):
        return None
    unit = inlet.value.unit
    top = unit.from_si(inlet.value.si + rise_of_flow(heat.power, flow.value))
    read = [line for r in (inlet, *heat.consults, *flow.consults) for line in reading_told(facts, r)]
    worked = said("outlet-temperature", system_of(unit), inlet=inlet.value.si, power=heat.power, flow=flow.value)
    plates = plates_told(facts, *dict.fromkeys((*heat.plate, *flow.plate)))
    line = f"from {inlet.value} this booster makes about {top:.0f} {unit.symbol} at most ({heat.words})"
    return line, (*plates, *dict.fromkeys(read), *heat.lines, *worked)


def _balance_weights(seen: float, low: float, high: float, error: float) -> dict[str, float]:
    """Densities of the reading: within [low, high] blurred by the error, or off to one side of it."""
    if high - low < error:
        middle = (low + high) / 2
        agrees = math.exp(-0.5 * ((seen - middle) / error) ** 2) / (error * math.sqrt(2 * math.pi))
    else:
        inside = normal_share((seen - low) / error) - normal_share((seen - high) / error)
        agrees = inside / (high - low)
    below = normal_share((low - seen) / error) / AWAY
    above = normal_share((seen - high) / error) / AWAY
    total = agrees + below + above
    return {
        "agrees": agrees / total,
        "reads_below_balance": below / total,
        "reads_above_balance": above / total,
    }


def _verdict(outcome: str, ceiling: float, reading: Reading) -> str:
    if outcome == "agrees" and abs(ceiling - reading.value.si) > 10 * 5 / 9:
        return "within what a booster gives that stops at its thermostat"
    return {
        "agrees": "they agree",
        "reads_below_balance": "colder than that",
        "reads_above_balance": "hotter than the heat can make it",
    }[outcome]


_SAYS = {
    "agrees": "The readings agree with one another.",
    "reads_below_balance": "The panel reads colder than heat and flow make the water.",
    "reads_above_balance": "The panel reads hotter than heat and flow can make the water.",
}
