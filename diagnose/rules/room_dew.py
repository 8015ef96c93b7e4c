"""Surfaces that drip: the dew point of the room's air against the surface."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics.air_state import dew_point_of_air, humidity_of_two
from diagnose.physics.moist_air import SEA_LEVEL
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import limit_si, shown
from diagnose.units import parse_quantity

__all__ = ["expected_surface", "sweating"]

SWEATING = "room_air.sweating"
USUAL = "dish_room_dew_point"
NEAR = parse_quantity("1 F°", "temperature difference").si  # a probe on a wet surface reads a shade warm; judgement


def sweating(facts: Facts) -> Finding | Silent | None:
    """Judge a surface that drips by the dew point of the air before it.

    Purpose: the same wet tile is a roof without insulation under ordinary air, escaped steam under wet air, and
    no matter of air at all where it is warmer than the dew point.
    Formula: humidity from dry and wet thermometer, its dew point; a surface under it sweats; a dew point over
    the limit of a dish room is wet air.
    Source: moist air of ASHRAE Fundamentals chapter 1; the limit is judgement.
    Fires: two_tank_electric_208: room_air.sweating = 84 80 72 -> wet_air
    Silent: two_tank_electric_208: room_air.end_draught = 20 fpm
    """
    reading, check = facts.fresh(SWEATING), facts.check(SWEATING)
    if reading is None or check is None:
        return None
    air, wet, surface = (q for q in reading.values.values())
    try:
        humidity = humidity_of_two(air.si, min(wet.si, air.si))
        dew = dew_point_of_air(air.si, min(humidity, 1.0))
        usual = limit_si(facts, USUAL, "high", surface.unit)
    except (LookupError, ValueError) as error:
        return Silent(f"{check.title}: {error}")
    sigma = spread(check, surface, reading) * surface.unit.factor
    sweats = normal_share((dew + NEAR - surface.si) / (sigma * math.sqrt(3.0)))
    humid = normal_share((dew - usual) / (sigma * math.sqrt(2.0)))
    weights = {"no_sweat": 1 - sweats, "wet_air": sweats * humid, "cold_surface": sweats * (1 - humid)}
    outcome = max(weights, key=lambda o: weights[o])
    system, sign = system_of(surface.unit), surface.unit.symbol
    working = [
        *said("air-humidity-two", system, temperature=air.si, wet_bulb=min(wet.si, air.si), pressure=SEA_LEVEL),
        *said("dew-point", system, temperature=air.si, humidity=min(humidity, 1.0), pressure=SEA_LEVEL),
        f"Surface {surface}, dew point {shown(dew, 'temperature', sign)}; up to "
        f"{shown(usual, 'temperature', sign)} is usual in a dish room.",
    ]
    return facts.conclude(SWEATING, weights, SWEATING, [reading], (), working, _SAYS[outcome])


def expected_surface(facts: Facts, check: str) -> Expected | None:
    """The dew point up to which a dish room's air is in order, and what is then wet."""
    entry = facts.check(check)
    if entry is None or entry.reading is None:
        return None
    unit = parse_quantity(f"1 {entry.reading.unit}", "temperature").unit
    try:
        usual = limit_si(facts, USUAL, "high", unit)
    except LookupError:
        return None
    line = f"dew point up to {shown(usual, 'temperature', unit.symbol)}; a surface over it stays dry"
    return Expected(
        (line,), None, None, (), "judgement", ("The dew point is worked out from air and wet thermometer.",)
    )


_SAYS = {
    "no_sweat": "The surface is warmer than the dew point: what drips is no water out of this air.",
    "wet_air": "It sweats because the air is far too wet: steam gets into the room.",
    "cold_surface": "It sweats because the surface is cold: the air is no wetter than usual.",
}
