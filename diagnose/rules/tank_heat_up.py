"""Heating up a tank by the watch, against the minutes that volume, degrees, heat and losses make."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.demand import RefusedError
from diagnose.physics.tanks import time_to_temperature
from diagnose.rules.bands import normal_share
from diagnose.rules.booster_supply import Heat
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.tank_heat import RINSE, WASH, Tank, heat_into, rated_into
from diagnose.rules.told import limit_si, plates_told, reading_told
from diagnose.units import Quantity, parse_quantity

__all__ = ["TANKS", "expected_heat_up", "heat_up"]

TANKS = {tank.time: tank for tank in (WASH, RINSE)}
SLOW_FROM, FAR_FROM = 1.3, 2.5  # times the minutes computed; judgement
KNOWN = 0.10  # of the time: volume on the plate, heat taken by the metal, losses; judgement
LOSS = 35.0  # W/K: 1.5 to 2 kW of a hot tank; judgement
ROOM = parse_quantity("75 °F", "temperature").si  # judgement
UNREAD = tuple(parse_quantity(t, "temperature").si for t in ("60 °F", "100 °F", "135 °F"))  # a fill nobody measured
FILL, INLET = "tank_control.fill_temperature", "supply_water.inlet_temperature"
OVERFLOW = "drain_overflow.overflow_rate"
FAHRENHEIT = parse_quantity("60 °F", "temperature").unit
MINUTE = parse_quantity("1 min", "time").unit


@dataclass(frozen=True)
class _Case:
    """All that the minutes of one tank stand on, SI."""

    volume: float
    starts: tuple[float, ...]
    least: float
    inflow: float
    entering: float
    heat: Heat
    rated: Heat
    consults: tuple[Reading, ...]

    def minutes(self, start: float, measured: bool = True) -> float:
        """Minutes with the heat and overflow measured, or with the plate's heat and no overflow; inf: never."""
        power, inflow = (self.heat.power, self.inflow) if measured else (self.rated.power, 0.0)
        try:
            return time_to_temperature(
                self.volume, start, self.least, power, LOSS, ROOM, inflow, self.entering
            ) / 60.0  # fmt: skip
        except RefusedError:
            return math.inf

    def working(self, start: float, system: str) -> tuple[str, ...]:
        """The calculation; where the tank never gets there, where it settles."""
        values = {"volume": self.volume, "start": start, "power": self.heat.power, "loss": LOSS, "room": ROOM}
        flow = {"inflow": self.inflow, "inflow_temperature": self.entering}
        if math.isinf(self.minutes(start)):
            settled = said("tank-settles", system, **{k: values[k] for k in ("power", "loss", "room")}, **flow)
            return (*settled, "It settles below its least figure and never gets there.")
        if self.inflow > 0:
            return said("heat-up-overflow", system, **values, target=self.least, **flow)
        return said("heat-up-loss", system, **values, target=self.least)


def heat_up(facts: Facts, check_id: str) -> Finding | Silent | None:
    """Judge the minutes of heating up by what this tank's litres, degrees and kilowatts make.

    Purpose: forty minutes are in order for 30 gal and 10 kW and a fault for 22 gal and 15 kW. Where currents, steam,
    gas or overflow were measured, minutes that fit them are told apart from minutes that are slow besides.
    Formula: t = C / K ln((T_start - T_settled) / (T_least - T_settled)), K = U + ρ c q; slow from 1.3, far too slow
    from 2.5 times that. A fill nobody measured is taken as anything from 60 to 135 °F.
    Source: conservation of energy; loss of 35 W/K, room of 75 °F, 1.3 and 2.5 are judgement.
    Fires: single_tank_electric_208 (wash_tank_volume = 22 gal, tank_power = 15 kW):
      tank_control.fill_temperature = 60 F; tank_control.heat_up_time = 40 min -> too_slow
    Fires: single_tank_electric_208 (wash_tank_volume = 30 gal, tank_power = 10 kW, wash_temperature = 150 F):
      tank_control.fill_temperature = 60 F; tank_control.heat_up_time = 40 min -> as_computed
    Silent: single_tank_gas_208 (tank_gas_input = 0 BTU/h): tank_control.heat_up_time = 40 min
    """
    reading, check, tank = facts.fresh(check_id), facts.check(check_id), TANKS[check_id]
    if reading is None or check is None:
        return None
    case = _case(facts, tank)
    if isinstance(case, Silent):
        return Silent(f"{check.title}: {case.why}")
    own = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    seen = reading.value.si / 60.0
    parts = [_weights(case, seen, start, own) for start in case.starts]
    weights = {o: sum(p[o] for p in parts) / len(parts) for o in parts[0]}
    outcome = max(weights, key=lambda o: weights[o])
    start, system = case.starts[0], _system(facts, tank)
    computed = case.minutes(start)
    share = "" if math.isinf(computed) else f" = {seen / computed * 100:.0f} % of that"
    working = [
        *_told(facts, case, tank),
        *case.heat.lines,
        *case.working(start, system),
        f"Read: {reading.value}{share} ({case.heat.words}).",
    ]
    if outcome == "slow_explained":
        working.append(f"With the plate's heat and a dry overflow it would be {case.minutes(start, False):.0f} min.")
    plates = facts.assumed(tank.volume, *case.heat.plate)
    return facts.conclude(
        check_id, weights, check_id, [reading], case.consults, [*working, *plates], _SAYS[outcome]
    )  # fmt: skip


def _weights(case: _Case, seen: float, start: float, own: float) -> dict[str, float]:
    """Shares of the time read over the edges, in the logarithm of its ratio to the time computed."""
    error = math.hypot(KNOWN, case.heat.error, min(own, 0.3))
    now, rated = case.minutes(start), case.minutes(start, measured=False)
    slow, far = _over(seen, SLOW_FROM * now, error), _over(seen, FAR_FROM * now, error)
    known = case.heat.read or case.inflow > 0
    explained = _over(seen, SLOW_FROM * rated, error) if known else 0.0
    return {
        "as_computed": (1 - slow) * (1 - explained),
        "slow_explained": (1 - slow) * explained,
        "too_slow": slow - far,
        "far_too_slow": far,
    }


def _over(seen: float, edge: float, error: float) -> float:
    return 0.0 if math.isinf(edge) else normal_share(math.log(seen / edge) / error)


def _case(facts: Facts, tank: Tank) -> _Case | Silent:
    volume, heat, rated = facts.plate(tank.volume), heat_into(facts, tank), rated_into(facts, tank)
    if isinstance(rated, Silent):
        return rated
    if isinstance(heat, Silent):
        heat = rated  # currents like no state of the bank: slower than the plate's heat is still a finding
    if volume is None or volume.si <= 0:
        return Silent(f"the water held by the {tank.name} must be known")
    fill, inlet, overflow = facts.now(FILL), facts.now(INLET), facts.now(OVERFLOW)
    warm = fill or inlet
    unit = warm.value.unit if warm else FAHRENHEIT
    try:
        least = limit_si(facts, tank.limit, "low", unit)
    except LookupError as error:
        return Silent(str(error))
    starts = (warm.value.si,) if warm else UNREAD
    starts = tuple(s for s in starts if s < least)
    if not starts:
        return Silent("the tank is filled as hot as it has to be")
    entering = inlet.value.si if inlet else starts[0]
    read = [r for r in (warm, inlet if overflow else None, overflow, *heat.consults) if r is not None]
    inflow = overflow.value.si if overflow else 0.0
    return _Case(volume.si, starts, least, inflow, entering, heat, rated, tuple(read))


def _told(facts: Facts, case: _Case, tank: Tank) -> tuple[str, ...]:
    """Where each figure comes from."""
    read = dict.fromkeys(line for r in case.consults for line in reading_told(facts, r))
    unread = ("Temperature of the fill: not measured, reckoned from 60 °F, and from 100 and 135 °F besides.",)
    return (
        *plates_told(facts, tank.volume, *case.heat.plate),
        *read,
        *(unread if len(case.starts) > 1 else ()),
        "Loss of 35 W/C° (66 BTU/(h·F°)) to a room of 75 °F: judgement.",
    )


def _system(facts: Facts, tank: Tank) -> str:
    volume = facts.plate(tank.volume)
    return system_of(volume.unit) if volume else "us"


def expected_heat_up(facts: Facts, check: str) -> Expected | None:
    """The minutes this tank takes, from the fill measured or from a cold and a hot one."""
    tank = TANKS[check]
    case = _case(facts, tank)
    if isinstance(case, Silent):
        return None
    system, cold, hot = _system(facts, tank), case.starts[0], case.starts[-1]
    degrees = "°C" if system == "si" else "°F"
    slowest, quickest = case.minutes(cold), case.minutes(hot)
    if math.isinf(slowest):
        return Expected(
            (f"never: {case.heat.words} does not get it there",), None, None, facts.assumed(*case.heat.plate),
            "conservation of energy", (*_told(facts, case, tank), *case.working(cold, system)),
        )  # fmt: skip
    line = f"{slowest:.0f} min from {_degrees(cold, degrees)} ({case.heat.words})"
    if len(case.starts) > 1:
        line = f"{quickest:.0f} min from {_degrees(hot, degrees)}, {line}"
    low, high = Quantity(quickest, MINUTE), Quantity(slowest * SLOW_FROM, MINUTE)
    working = (*_told(facts, case, tank), *case.heat.lines, *case.working(cold, system))
    plates = facts.assumed(tank.volume, *case.heat.plate)
    return Expected((line,), low, high, plates, "conservation of energy; a third more is slow", working)


def _degrees(si: float, unit: str) -> str:
    value = Quantity.of_si(si, "temperature", unit)
    return f"{value.value:.0f} {unit}"


_SAYS = {
    "as_computed": "It heats as fast as its kilowatts make it: no fault of the heater.",
    "slow_explained": "Slow, and just as slow as the heat or the overflow that was measured makes it.",
    "too_slow": "Slower than computed: heat is missing, is lost, or is read wrongly.",
    "far_too_slow": "Far slower than computed: most of the heat is missing, or it is cut before.",
}
