"""A settled tank: heat put in against the heat that leaves at the temperature read; and panel against reference."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.exhaust import TANK_AIR, heat_of_exhaust
from diagnose.physics.heat import TRADE_HEAT
from diagnose.physics.tanks import power_to_hold
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.tank_heat import RINSE, WASH, Tank, heat_into
from diagnose.rules.tank_heat_up import INLET, LOSS, OVERFLOW, ROOM
from diagnose.rules.told import limit_si, plates_told, reading_told
from diagnose.units import Quantity

__all__ = ["LEAST", "against_least", "compared", "expected_least", "heat_balance", "holding", "tank_meant"]

BALANCE, COMPARED = "tank_control.heat_balance", "tank_thermometer.compared"
REFERENCE, WHICH = "tank_thermometer.reference_reading", "tank_heater_electric.which_tank"
# Panel and second thermometer as they are read for a tank that is too hot.
HOT_PAIRS = (
    ("tank_control.tank_panel", "tank_control.tank_reference"),
    ("tank_control.tank_panel_chemical", "tank_control.tank_reference_chemical"),
)
# Check read with a second thermometer -> its outcomes under and over the least figure of the tank meant.
LEAST = {REFERENCE: ("low", "good"), "tank_control.stop_temperature": ("early", "right")}
VENTS = (("vent_dampers.flow_entrance", "vent_entrance"), ("vent_dampers.flow_exit", "vent_exit"))
AIR_ERROR, LOSS_ERROR = 0.4, 0.3  # of the heat taken by air, and lost to the room; judgement
AIR_SLOPE = 0.05  # of that heat for each K of the tank: 10 K take half as much again
INLET_UNREAD = 15.0  # K, the water running in where nobody measured it; judgement
AWAY_K = 15.0  # K a thermometer that is off may be off by; judgement


def tank_meant(facts: Facts) -> Tank:
    """The tank the readings are of: as was said, else the one whose own temperature alone was read."""
    chosen = facts.chosen(WHICH)
    if chosen is not None:
        return RINSE if chosen == RINSE.which else WASH
    if facts.check(RINSE.settled) is None:
        return WASH
    read = [any(facts.known(c) is not None for c in (tank.settled, tank.time)) for tank in (WASH, RINSE)]
    return RINSE if read == [False, True] else WASH


def heat_balance(facts: Facts) -> Finding | Silent | None:
    """Set the heat put into a cold tank against the heat that leaves it at the temperature read.

    Purpose: a healthy heater and a cold tank: an overflow of 1 gpm holds 5 kW down at 90 °F and 15 kW near 150.
    As much out as in: it settles there, and what takes the heat is known. More in than out: the heat is cut, goes
    where nobody measured, or the thermometer lies.
    Formula: P_in against U (T - T_room) + ρ c q (T - T_in) + what the vents take.
    Source: conservation of energy; 35 W/K and 3 % of the air are judgement, with errors of 30 and 40 %.
    Fires: single_tank_electric_208 (tank_power = 15 kW): tank_heater_electric.line_amps = 41.6 41.5 41.8 A;
      drain_overflow.overflow_rate = 0 gpm; tank_thermometer.reference_reading = 120 F -> truly_colder
    Fires: single_tank_electric_208 (tank_power = 15 kW): tank_heater_electric.line_amps = 41.6 41.5 41.8 A;
      drain_overflow.overflow_rate = 1.4 gpm; supply_water.inlet_temperature = 60 F;
      tank_control.wash_temperature = 120 F -> panel_agrees
    Silent: single_tank_electric_208 (tank_power = 15 kW): tank_heater_electric.line_amps = 41.6 41.5 41.8 A;
      tank_control.wash_temperature = 120 F
    """
    tank, check = tank_meant(facts), facts.check(BALANCE)
    reference = facts.fresh(REFERENCE)
    reading = reference or facts.fresh(tank.settled)
    own = facts.check(reading.check) if reading else None
    if check is None or reading is None or own is None or (reference is None and facts.now(REFERENCE) is not None):
        return None
    heat, overflow = heat_into(facts, tank), facts.now(OVERFLOW)
    if isinstance(heat, Silent) or overflow is None or not heat.read:
        why = heat.why if isinstance(heat, Silent) else "the heat put in and the overflow must both be measured"
        return Silent(f"{check.title}: {why}")
    unit = reading.value.unit
    try:
        least = limit_si(facts, tank.limit, "low", unit)
    except LookupError as error_:
        return Silent(f"{check.title}: {error_}")
    if reading.value.si >= least:
        return Silent(f"{check.title}: the tank is at its figure")
    error = spread(own, reading.value, reading) * unit.factor
    out = _leaving(facts, reading.value.si, system_of(unit), error)
    off = math.hypot(out.error, heat.error * heat.power)
    weights = _weights(heat.power - out.power, off, heat.power, reference is not None)
    outcome = max(weights, key=lambda o: weights[o])
    balance = f"{heat.power / 1e3:.1f} kW in ({heat.words}), {out.power / 1e3:.1f} kW out at {reading.value}"
    working = [*heat.lines, *out.lines, f"{balance}: {_VERDICT[outcome]}."]
    plates = facts.assumed(*heat.plate, *out.plate, *(plate for check_, plate in VENTS if facts.now(check_) is None))
    consults = [overflow, *out.consults, *heat.consults]
    return facts.conclude(BALANCE, weights, BALANCE, [reading], consults, [*working, *plates], _SAYS[outcome])


@dataclass(frozen=True)
class _Leaving:
    """Heat that leaves a tank at one temperature, its error, and how it was worked out."""

    power: float
    error: float
    lines: tuple[str, ...]
    consults: tuple[Reading, ...]
    plate: tuple[str, ...]


def _leaving(facts: Facts, temperature: float, system: str, error: float = 0.0) -> _Leaving:
    """What room, running water and vents take; `error` is that of the temperature in K."""
    overflow, inlet, plate = facts.now(OVERFLOW), facts.now(INLET), facts.plate("booster_inlet")
    flow = overflow.value.si if overflow else 0.0
    entering = inlet.value.si if inlet else plate.si if plate else ROOM
    held = power_to_hold(temperature, ROOM, LOSS, flow, entering)
    room = LOSS * (temperature - ROOM)
    lines = said("tank-power", system, temperature=temperature, room=ROOM, loss=LOSS, inflow=flow,
                 inflow_temperature=entering)  # fmt: skip
    air, air_lines, read = _air(facts, temperature, system)
    check, rate = facts.check(OVERFLOW), 0.0
    if overflow is not None and check is not None:
        rate = spread(check, overflow.value, overflow) * overflow.value.unit.factor
    spread_ = math.sqrt(
        (LOSS_ERROR * room) ** 2
        + (AIR_ERROR * air) ** 2
        + (TRADE_HEAT * rate * (temperature - entering)) ** 2
        + (0.0 if inlet else TRADE_HEAT * flow * INLET_UNREAD) ** 2
        + ((LOSS + TRADE_HEAT * flow) * error + AIR_SLOPE * air * error) ** 2
    )
    consults = [r for r in (inlet if flow > 0 else None, *read) if r is not None]
    stands = ("booster_inlet",) if flow > 0 and inlet is None else ()
    return _Leaving(held + air, spread_, (*lines, *air_lines), tuple(consults), stands)


def holding(facts: Facts, tank: Tank) -> tuple[str, tuple[str, ...]] | None:
    """Beside a tank's least figure: what holding it takes of the heat put in, and the calculation."""
    plate = facts.plate("wash_temperature" if tank is WASH else "rinse_tank_temperature")
    heat = heat_into(facts, tank)
    if plate is None or isinstance(heat, Silent) or heat.power <= 0:
        return None
    out = _leaving(facts, plate.si, system_of(plate.unit))
    line = f"holding {plate} without racks takes about {out.power / 1e3:.0f} of {heat.power / 1e3:.3g} kW"
    read = dict.fromkeys(line for r in (*out.consults, *heat.consults) for line in reading_told(facts, r))
    stands = f"Loss of 35 W/C° to a room of 75 °F and {TANK_AIR:.0%} of the air swept through the spray: judgement."
    told = (*plates_told(facts, *heat.plate, *(p for _, p in VENTS)), *read, *heat.lines, *out.lines, stands)
    return line, told


def _air(facts: Facts, temperature: float, system: str) -> tuple[float, list[str], list[Reading]]:
    """This tank's part of what the vents take, by the flows measured or else the plate's."""
    total, read = 0.0, []
    for check, plate in VENTS:
        reading, figure = facts.now(check), facts.plate(plate)
        if reading is not None:
            read.append(reading)
        total += reading.value.si if reading is not None else figure.si if figure is not None else 0.0
    tanks = int(facts.machine.trait("tanks"))
    if total <= 0 or temperature <= ROOM:
        return 0.0, [], read
    heat = heat_of_exhaust(total / tanks, temperature, ROOM, tank_air=TANK_AIR)
    part = "" if tanks == 1 else f", half of it from each of {tanks} tanks"
    lines = said("exhaust-tank-heat", system, flow=total / tanks, tank_temperature=temperature,
                 room_temperature=ROOM, tank_air=TANK_AIR)  # fmt: skip
    return heat, [f"Taken by the vents{part}:", *lines], read


def _weights(surplus: float, error: float, power: float, truly: bool) -> dict[str, float]:
    """Density of the surplus round nought, against anything up to the heater's power beyond it."""
    error, reach = max(error, 100.0), max(power, 3e3)
    agrees = math.exp(-0.5 * (surplus / error) ** 2) / (error * math.sqrt(2 * math.pi))
    colder, hotter = normal_share(surplus / error - 1) / reach, normal_share(-surplus / error - 1) / reach
    total, kind = agrees + colder + hotter, "truly" if truly else "panel"
    return {f"{kind}_agrees": agrees / total, f"{kind}_colder": colder / total, "hotter": hotter / total}


def compared(facts: Facts) -> Finding | Silent | None:
    """Set the panel's figure against the second thermometer's in the same water.

    Purpose: only a thermometer that lies differs from the second one; whatever is wrong with heat shows on both.
    Formula: panel less reference against the errors of both; a thermometer that is off may be off by up to 15 C°.
    Source: errors of the instruments; 15 C° is judgement.
    Fires: single_tank_electric_208: tank_control.wash_temperature = 145 F;
      tank_thermometer.reference_reading = 163 F -> panel_low
    Fires: two_tank_electric_208: tank_control.tank_panel = 186 F; tank_control.tank_reference = 161 F -> panel_high
    Silent: single_tank_electric_208: tank_control.wash_temperature = 145 F
    """
    check = facts.check(COMPARED)
    panel, reference = _side_by_side(facts)
    if check is None or panel is None:
        return None
    mine, other = facts.check(panel.check), facts.check(reference.check) if reference is not None else None
    if reference is None or mine is None or other is None:
        return Silent(f"{check.title}: a second thermometer was not read")
    error = math.hypot(spread(mine, panel.value, panel) * panel.value.unit.factor,
                       spread(other, reference.value, reference) * reference.value.unit.factor)  # fmt: skip
    off = panel.value.si - reference.value.si
    agree = math.exp(-0.5 * (off / error) ** 2) / (error * math.sqrt(2 * math.pi))
    low, high = normal_share(-off / error - 1) / AWAY_K, normal_share(off / error - 1) / AWAY_K
    total = agree + low + high
    weights = {"agree": agree / total, "panel_low": low / total, "panel_high": high / total}
    outcome = max(weights, key=lambda o: weights[o])
    shown = off * 1.8 if system_of(panel.value.unit) == "us" else off
    unit = "F°" if system_of(panel.value.unit) == "us" else "C°"
    working = [f"Panel {panel.value}, second thermometer {reference.value}: {shown:+.0f} {unit}."]
    return facts.conclude(COMPARED, weights, COMPARED, [panel], [reference], working, _OFF[outcome])


def _side_by_side(facts: Facts) -> tuple[Reading | None, Reading | None]:
    """The tank's settled figure and its second thermometer; else the pair that was read for a tank too hot.

    Where both pairs were read, one of them has said it.
    """
    if facts.finding(COMPARED) is not None:
        return None, None
    settled = facts.fresh(tank_meant(facts).settled)
    if settled is not None and facts.now(REFERENCE) is not None:
        return settled, facts.now(REFERENCE)
    for panel, second in HOT_PAIRS:
        if facts.fresh(panel) is not None and facts.now(second) is not None:
            return facts.fresh(panel), facts.now(second)
    return settled, None


def against_least(facts: Facts, check_id: str) -> Finding | Silent | None:
    """Judge a second thermometer's figure by the least of the tank it was held into.

    Purpose: wash and power-rinse tank have different figures; which tank it was is taken from the other readings.
    Formula: share of the reading, with its instrument's error, under the plate's least figure of that tank.
    Source: data plate, else the limits of the tanks.
    Fires: two_tank_electric_208: tank_control.rinse_tank_temperature = 155 F;
      tank_thermometer.reference_reading = 155 F -> low
    Fires: two_tank_electric_208: tank_control.wash_temperature = 155 F;
      tank_thermometer.reference_reading = 155 F -> good
    Fires: two_tank_electric_208: tank_control.rinse_tank_temperature = 155 F;
      tank_control.stop_temperature = 156 F -> early
    Silent: two_tank_electric_208: tank_control.wash_temperature = 155 F
    """
    reading, check, tank = facts.fresh(check_id), facts.check(check_id), tank_meant(facts)
    if reading is None or check is None:
        return None
    unit = reading.value.unit
    try:
        least = limit_end(facts.book, facts.machine, tank.limit, "low", unit).value
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    low = normal_share((least - reading.value.value) / spread(check, reading.value, reading))
    under, over = LEAST[check_id]
    weights = {over: 1 - low, under: low}
    outcome = under if low > 0.5 else over
    words = "under that" if outcome == under else "at that or over"
    working = [f"Least figure of the {tank.name}: {least:.0f} {unit.symbol}; read {reading.value}: {words}."]
    says = f"{reading.value}: {check.outcomes[outcome].title}."
    return facts.conclude(check_id, weights, check_id, [reading], (), working, says)


def expected_least(facts: Facts, check: str) -> Expected | None:
    """The least figure of the tank that is meant."""
    tank = tank_meant(facts)
    plate = facts.plate("wash_temperature" if tank is WASH else "rinse_tank_temperature")
    if plate is None:
        return None
    figure = "wash_temperature" if tank is WASH else "rinse_tank_temperature"
    read = facts.known(tank.settled)
    told = (*plates_told(facts, figure), *reading_told(facts, read))
    line = f"{plate} or more ({tank.name})"
    low = Quantity(plate.value, plate.unit)
    return Expected((line,), low, None, facts.assumed(figure), "the plate's least figure", told)


_VERDICT = {
    "panel_agrees": "it settles there",
    "truly_agrees": "it settles there",
    "panel_colder": "it should be climbing",
    "truly_colder": "it should be climbing",
    "hotter": "it could not stay so hot",
}
_SAYS = {
    "panel_agrees": "Heat in and heat out balance just there: what takes the heat, or what is missing, is known.",
    "truly_agrees": "Heat in and heat out balance just there: what takes the heat, or what is missing, is known.",
    "panel_colder": "More heat goes in than leaves at this figure: it is cut, lost elsewhere, or the panel lies.",
    "truly_colder": "More heat goes in than leaves at this temperature: it is cut before, or lost elsewhere.",
    "hotter": "Hotter than the heat put in could hold it: measure both again.",
}
_OFF = {
    "agree": "Panel and second thermometer agree.",
    "panel_low": "The panel reads lower than the water is.",
    "panel_high": "The panel reads higher than the water is.",
}
