"""Water that leaves with no rack in the machine: against the rinse's flow, and in heat against the tank's heater."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.overflow import heat_of_inflow
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rinse_arms import RinseFlow, flow_now
from diagnose.rules.tank_balance import tank_meant
from diagnose.rules.tank_heat import WASH, rated_into
from diagnose.rules.told import limit_si, plates_told, shown
from diagnose.units import Quantity, parse_quantity

__all__ = ["expected_rate", "overflow_rate"]

RATE, INLET = "drain_overflow.overflow_rate", "supply_water.inlet_temperature"
GPM = parse_quantity("1 gpm", "flow").unit
DRIP_SPREAD = parse_quantity("0.01 gpm", "flow").si
RINSE_BAND = 0.25  # within a quarter of the rinse's flow it may be the rinse itself; judgement
ROBS_FROM = 0.10  # of the tank heater's power; judgement
HEAT_ERROR = 0.20  # of the heat reckoned from plate temperatures; judgement


@dataclass(frozen=True)
class _Heat:
    """Heat that the running water takes, as a share of the tank's heater, and how it was reckoned."""

    share: float
    words: tuple[str, ...]
    plate: tuple[str, ...]
    consults: tuple[Reading, ...] = ()


def overflow_rate(facts: Facts) -> Finding | Silent | None:
    """Judge the water that leaves with no rack by what a closed machine should show: nothing.

    Purpose: as much as the rinse passes is the rinse held open; less is a valve or a drain, and whether it cools
    the tank depends on the water that comes in its stead and on the heater.
    Formula: share = ρ c Q (T_tank - T_in) ÷ P_heater; trade: 500 × gpm × F° ÷ 3412 in kW. Without temperatures or
    heater known, a tenth of the rinse's flow stands for a tenth of the heater.
    Source: conservation of energy; 0.05 gpm, a tenth and a quarter are judgement.
    Fires: two_tank_electric_208 (booster_inlet = 55 F, wash_temperature = 150 F, tank_power = 20 kW):
      drain_overflow.overflow_rate = 0.6 gpm -> robs
    Fires: two_tank_electric_208 (booster_inlet = 140 F, wash_temperature = 150 F, tank_power = 20 kW):
      drain_overflow.overflow_rate = 0.6 gpm -> trickle
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm): drain_overflow.overflow_rate = 4.1 gpm -> as_rinse
    Silent: two_tank_electric_208: rinse_gauge.flow_pressure = 20 psi
    """
    reading, check = facts.fresh(RATE), facts.check(RATE)
    if reading is None or check is None:
        return None
    rinse = flow_now(facts)
    if rinse is None:
        return Silent(f"{check.title}: needs the rated rinse flow of the plate")
    try:
        drip = limit_si(facts, "water_lost_at_rest", "high", reading.value.unit)
    except LookupError as missing:
        return Silent(f"{check.title}: {missing}")
    rate = reading.value.si
    own = math.hypot(spread(check, reading.value, reading) * reading.value.unit.factor, DRIP_SPREAD)
    still = normal_share((drip - rate) / own)
    ratio = rate / rinse.value
    error = max(math.hypot(own / rinse.value, rinse.error * ratio), 1e-3)
    more = normal_share((ratio - 1 - RINSE_BAND) / error)
    near = normal_share((ratio - 1 + RINSE_BAND) / error) - more
    heat = _heat(facts, rate, rinse, system_of(reading.value.unit))
    robs = normal_share((heat.share - ROBS_FROM) / (HEAT_ERROR * max(heat.share, 0.05)))
    less = max(1 - still - more - near, 0.0)
    weights = {"still": still, "trickle": less * (1 - robs), "robs": less * robs, "as_rinse": near, "far_more": more}
    unit = reading.value.unit.symbol
    working = [
        f"Read: {reading.value}; a closed machine shows next to nothing, up to {shown(drip, 'flow', unit)}.",
        f"The open rinse passes {shown(rinse.value, 'flow', unit)} ({rinse.origin}); this is {ratio:.0%} of it.",
        *heat.words,
        *facts.assumed(*dict.fromkeys((*rinse.plate, *heat.plate))),
    ]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(RATE, weights, RATE, [reading], [*rinse.consults, *heat.consults], working, says)


def _heat(facts: Facts, rate: float, rinse: RinseFlow, system: str) -> _Heat:
    """The heat to bring as much fresh water to the tank's temperature, against its heater."""
    source, figure = _figures(facts)
    tank, heater, inlet = facts.plate(figure), rated_into(facts, tank_meant(facts)), facts.now(INLET)
    feed = inlet.value if inlet is not None else facts.plate("booster_inlet")
    if tank is None or feed is None or isinstance(heater, Silent):
        unknown = "Heat not reckoned, as heater or temperatures are not known: judged by its share of the rinse."
        return _Heat(rate / rinse.value, (unknown,), ())
    rate = max(rate, 0.0)
    heat = max(heat_of_inflow(rate, feed.si, tank.si), 0.0)  # hotter water warms the tank: it takes nothing
    working = said("overflow-heat", system, inflow=rate, inflow_temperature=feed.si, temperature=tank.si)
    share, rated = heat / heater.power, shown(heater.power, "power", "kW")
    words = ("To warm what comes in its stead:", working[0], f"That is {share * 100:.0f} % of the heater's {rated}.")
    plate = (figure, source, *(() if inlet is not None else ("booster_inlet",)))
    return _Heat(share, words, plate, (inlet,) if inlet is not None else ())


def _figures(facts: Facts) -> tuple[str, str]:
    """Plate figures of the heater and the temperature of the tank that is meant."""
    meant = tank_meant(facts)
    power = "tank_gas_input" if facts.machine.trait("tank_heat") == "gas" else meant.power
    return power, "wash_temperature" if meant is WASH else "rinse_tank_temperature"


def expected_rate(facts: Facts, check: str) -> Expected | None:
    """Next to nothing; and what it would be with the rinse held open."""
    rinse = flow_now(facts)
    if rinse is None:
        return None
    plate = facts.plate("rinse_flow")
    unit = plate.unit if plate is not None else GPM
    try:
        drip = limit_si(facts, "water_lost_at_rest", "high", unit)
    except LookupError:
        return None
    most = Quantity(unit.from_si(drip), unit)
    line = f"nothing, or under {shown(drip, 'flow', unit.symbol, 2)}"
    cooler, tank = (parse_quantity(t, "temperature").si for t in ("140 F", "150 F"))
    one = said("overflow-heat", "us", inflow=GPM.to_si(1.0), inflow_temperature=cooler, temperature=tank)
    working = (
        line[0].upper() + line[1:] + ": with no rack in, nothing enters, so nothing leaves (the figure is judgement).",
        *plates_told(facts, "rinse_flow"),
        f"With the rinse held open it would be {shown(rinse.value, 'flow', unit.symbol)} ({rinse.origin}).",
        f"Each gpm that comes in 10 F° colder than the tank: {one[0]}.",
        *plates_told(facts, *_figures(facts), "booster_inlet"),
    )
    return Expected((line,), None, most, facts.assumed(*rinse.plate), "judgement", working)


_SAYS = {
    "still": "Next to nothing leaves: valves and drains shut.",
    "trickle": "Water leaves without a rack, but takes little of the tank's heat.",
    "robs": "Water leaves without a rack and takes a good part of the tank's heat: no fault of the heater.",
    "as_rinse": "As much leaves as the open rinse passes: look at what opens the rinse.",
    "far_more": "More leaves than the rinse can bring: the fill is open, or the drain.",
}
