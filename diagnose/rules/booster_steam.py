"""Steam booster: what a clean coil gives at the steam there is, and what rise and condensate say of it."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.heat import TRADE_HEAT
from diagnose.physics.steam import steam_for_rise
from diagnose.physics.steam_coil import coil_rise
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.booster_rise import expected_rise, judge_rise
from diagnose.rules.booster_supply import Heat
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rinse_arms import flow_now
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import Quantity, find_unit

__all__ = ["condensate", "expected_coil_rise", "expected_condensate", "heat_now", "rated_heat", "rise"]

COIL_ERROR = 0.08  # of a coil's rating: sized with something in hand; judgement
NO_STEAM = 0.1  # of the plate's pressure: under this there is no steam to speak of; judgement
SHORT_FROM, MUCH_FROM = 0.75, 1.5  # of the condensate reckoned; judgement
FULL_FROM = 0.8  # of the plate's pressure: from here the steam is not short; judgement
PRESSURE, INLET = "booster_steam.coil_pressure", "supply_water.inlet_temperature"
RISE, CONDENSATE, TRAP = "booster_steam.rise", "booster_steam.rise_and_condensate", "booster_steam.trap_temperature"
_PLATE = ("steam_pressure", "booster_inlet", "rinse_flow", "rinse_temperature")


def heat_now(facts: Facts) -> Heat | Silent:
    """What a clean coil of the plate's rating gives at the pressure read at it, else at the plate's."""
    pressure, check = facts.now(PRESSURE), facts.check(PRESSURE)
    if pressure is None or check is None:
        return rated_heat(facts)
    plate = facts.plate("steam_pressure")
    if plate is not None and pressure.value.si < NO_STEAM * plate.si:
        return Heat(0.0, COIL_ERROR, True, f"{pressure.value} at the coil: no steam to speak of", (pressure,))
    own = spread(check, pressure.value, pressure) * pressure.value.unit.factor
    return _clean_coil(facts, pressure.value, own, pressure)


def rated_heat(facts: Facts) -> Heat | Silent:
    """What a clean coil gives at the plate's pressure, with the water and the flow there are."""
    plate = facts.plate("steam_pressure")
    return Silent("the steam pressure of the plate must be known") if plate is None else _clean_coil(facts, plate)


def _clean_coil(facts: Facts, gauge: Quantity, off: float = 0.0, read: Reading | None = None) -> Heat | Silent:
    flow, steam, water = flow_now(facts), facts.plate("steam_pressure"), facts.plate("booster_inlet")
    rated_flow = facts.plate("rinse_flow")
    if flow is None or steam is None or water is None or rated_flow is None:
        return Silent("steam pressure, inlet temperature and rinse flow of the plate must be known")
    try:
        least = limit_end(facts.book, facts.machine, "rinse_temperature", "low", water.unit)
    except LookupError as error:
        return Silent(str(error))
    inlet = facts.now(INLET)
    values = {
        "gauge": gauge.si,
        "inlet": (inlet.value if inlet else water).si,
        "flow": flow.value,
        "rated_gauge": steam.si,
        "rated_inlet": water.si,
        "rated_flow": rated_flow.si,
        "rated_rise": Quantity(least.value, water.unit).si - water.si,
    }
    gained = coil_rise(**values)
    swing = abs(coil_rise(**{**values, "gauge": gauge.si + off}) / gained - 1) if off else 0.0
    words = f"clean coil at {gauge}{'' if read else ' as on the plate'}"
    consults = tuple(r for r in (read, inlet, *flow.consults) if r is not None)
    lines = said("coil-rise", system_of(water.unit), **values)
    off_by = math.hypot(COIL_ERROR, swing)
    return Heat(TRADE_HEAT * flow.value * gained, off_by, read is not None, words, consults, _PLATE, lines)


def rise(facts: Facts) -> Finding | Silent | None:
    """Judge the rise over the steam booster by what a clean coil gives at the steam there is.

    Purpose: steam at full pressure and a rise that is short is a coil that does not take the heat: limed,
    flooded, or full of air; a rise as small as the steam is short acquits the coil.
    Formula: rise = (T_steam - T_in) (1 - exp(-N)), N from the plate's rise at the plate's pressure; under 80 %
    of it the heat is not taken, under 85 % of the rated rise the booster gives too little.
    Source: steam table (IAPWS R7-97); exchanger with condensing steam; 80 and 85 % are judgement.
    Fires: two_tank_steam_208: booster_steam.coil_pressure = 20 psi; supply_water.inlet_temperature = 140 F;
      rinse_arms.flow_measured = 4.5 gpm; booster_steam.rise = 24 F -> short_for_input
    Silent: two_tank_steam_208: booster_steam.coil_pressure = 20 psi
    """
    return judge_rise(facts, RISE, heat_now(facts), rated_heat(facts))


def expected_coil_rise(facts: Facts, check: str) -> Expected | None:
    """The rise a clean coil gives at the pressure read, or the plate's."""
    return expected_rise(facts, heat_now(facts))


def condensate(facts: Facts) -> Finding | Silent | None:
    """Judge the condensate weighed by what the rated heat at this water and flow makes.

    Purpose: condensate is the heat the coil gives off; short, with steam and trap hot, it is limed; short
    with the coil cool, no steam gets there or water stands in it; far too much is rinse water leaking in.
    Formula: lb/h = 500 x gpm x rise / latent heat, rise as a clean coil gives it at the plate's pressure.
    Source: steam table (IAPWS R7-97); 75 and 150 % are judgement.
    Fires: two_tank_steam_208: booster_steam.coil_pressure = 20 psi; booster_steam.trap_temperature = working;
      booster_steam.rise_and_condensate = 58 lb/h -> short_and_hot
    Silent: two_tank_steam_208: booster_steam.coil_pressure = 20 psi
    """
    reading, check = facts.fresh(CONDENSATE), facts.check(CONDENSATE)
    if reading is None or check is None:
        return None
    wanted = _reckoned(facts)
    if isinstance(wanted, Silent):
        return Silent(f"{check.title}: {wanted.why}")
    heat, made, lines = wanted
    flow = flow_now(facts)
    own = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    ratio = reading.value.si / made
    error = math.hypot(min(own, 0.2), heat.error, flow.error if flow else 0.0) * max(ratio, 0.2)
    short, much = normal_share((SHORT_FROM - ratio) / error), normal_share((ratio - MUCH_FROM) / error)
    hot, heard = _steam_is_there(facts)
    weights = {
        "as_reckoned": max(1 - short - much, 0.0),
        "short_and_hot": short * hot,
        "short_and_cool": short * (1 - hot),
        "too_much": much,
    }
    outcome = max(weights, key=lambda o: weights[o])
    working = [*lines, f"Read: {reading.value} = {ratio * 100:.0f} % of that; from 75 to 150 % they agree."]
    consults = [*heat.consults, *heard]
    plates = facts.assumed(*_PLATE)
    return facts.conclude(CONDENSATE, weights, CONDENSATE, [reading], consults, [*working, *plates], _SAYS[outcome])


def expected_condensate(facts: Facts, check: str) -> Expected | None:
    """What the rated heat makes at the water and flow there are."""
    wanted, plate = _reckoned(facts), facts.plate("rinse_flow")
    if isinstance(wanted, Silent) or plate is None:
        return None
    unit = find_unit("kg/h" if system_of(plate.unit) == "si" else "lb/h", "mass flow")
    if unit is None:
        return None
    made = unit.from_si(wanted[1])
    line = f"about {made:.0f} {unit.symbol}, {made / 30:.1f} {unit.symbol[:2]} in two minutes"
    low, high = Quantity(made * SHORT_FROM, unit), Quantity(made * MUCH_FROM, unit)
    read = [told for reading in wanted[0].consults for told in reading_told(facts, reading)]
    working = (*plates_told(facts, *_PLATE), *dict.fromkeys(read), *wanted[2])
    return Expected((line,), low, high, facts.assumed(*_PLATE), "steam table and the plate", working)


def _reckoned(facts: Facts) -> tuple[Heat, float, tuple[str, ...]] | Silent:
    """Rated heat, the condensate it makes, and the working."""
    heat, flow, plate = rated_heat(facts), flow_now(facts), facts.plate("steam_pressure")
    if isinstance(heat, Silent):
        return heat
    if flow is None or plate is None:
        return Silent("steam pressure and rinse flow must be known")
    gained = heat.power / (TRADE_HEAT * flow.value)
    made = steam_for_rise(flow.value, gained, plate.si)
    water = facts.plate("booster_inlet")
    system = system_of(water.unit) if water else "us"
    line = said("steam-needed", system, flow=flow.value, rise=gained, gauge=plate.si)[0]
    return heat, made, (*heat.lines, f"{line} of condensate ({heat.words}; flow {flow.origin}).")


def _steam_is_there(facts: Facts) -> tuple[float, tuple[Reading, ...]]:
    """How surely the coil has its steam and sheds its water: by the trap, else by the pressure; and what told."""
    trap = facts.newest.get((facts.stage, TRAP))
    if trap is not None and trap.outcome is not None:
        return (0.9 if trap.outcome == "working" else 0.08), (trap,)
    pressure, plate = facts.now(PRESSURE), facts.plate("steam_pressure")
    if pressure is None or plate is None:
        return 0.5, ()
    return (0.7 if pressure.value.si >= FULL_FROM * plate.si else 0.08), (pressure,)


_SAYS = {
    "as_reckoned": "The coil makes the condensate that the rated heat makes.",
    "short_and_hot": "The coil has its steam and makes too little condensate: it does not give its heat off.",
    "short_and_cool": "Too little condensate: steam does not get in, or water or air keeps it out.",
    "too_much": "Far more than the heat can make: water gets into the coil, or steam blows through.",
}
