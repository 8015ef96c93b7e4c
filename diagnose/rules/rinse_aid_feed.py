"""Rinse aid fed a rack: its strength in the rinse against the usual one."""

from __future__ import annotations

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rack_water import plate_water
from diagnose.rules.told import plates_told, shown
from diagnose.units import Quantity, parse_quantity, show_number

__all__ = ["expected_aid", "fed_per_rack"]

FED = "rinse_aid_feed.fed_per_rack"


def fed_per_rack(facts: Facts) -> Finding | Silent | None:
    """Judge rinse aid fed a rack by the strength it has in the rinse.

    Purpose: an acid rinse aid fed many times too much spoils the chlorine; the mL tell it only beside the water.
    Formula: ppm by volume = mL x 1000 / litres of rinse a rack.
    Source: conservation of volume; limit of rinse-aid strength (judgement); its label governs.
    Fires: single_tank_chemical_208 (rinse_per_rack = 1.1 gal): rinse_aid_feed.fed_per_rack = 6 mL -> too_much
    Silent: single_tank_chemical_208: water_quality.rinse_ph = 5 pH
    """
    reading, check, known = facts.fresh(FED), facts.check(FED), plate_water(facts)
    if reading is None or check is None:
        return None
    if known is None:
        return Silent(f"{check.title}: needs the rinse water a rack of the plate, or its flow and racks an hour")
    water, names = known
    low, high = _ends(facts)
    strength = reading.value.si * 1e6 / water.si
    error = spread(check, reading.value, reading) * reading.value.unit.factor * 1e6 / water.si
    short, much = normal_share((low - strength) / error), normal_share((strength - high) / error)
    weights = {"short": short, "as_wanted": max(1 - short - much, 0.0), "too_much": much}
    working = [
        *said("rinse-aid-dose", system_of(water.unit), strength=strength, water=water.si),
        f"Read: {reading.value}, that is {show_number(strength, 3)} ppm; usual are {low:.0f} to {high:.0f} ppm.",
        "The rinse aid's label governs.",
        *facts.assumed(*names),
    ]
    return facts.conclude(FED, weights, FED, [reading], (), working, _SAYS[max(weights, key=lambda o: weights[o])])


def expected_aid(facts: Facts, check: str) -> Expected | None:
    """The rinse aid a rack that gives the usual strength."""
    known = plate_water(facts)
    if known is None:
        return None
    water, names = known
    try:
        ends = _ends(facts)
    except LookupError:
        return None
    low, high = (Quantity.of_si(e * water.si / 1e6, "volume", "mL") for e in ends)
    strengths = f"{ends[0]:.0f} to {ends[1]:.0f} ppm"
    a_rack = shown(water.si, "volume", water.unit.symbol)
    line = f"{show_number(low.value, 2)} to {show_number(high.value, 2)} mL ({strengths}, {a_rack} a rack)"
    system = system_of(water.unit)
    working = tuple(w for e in ends for w in said("rinse-aid-dose", system, strength=e, water=water.si))
    working += (*plates_told(facts, *names), "The rinse aid's label governs.")
    return Expected((line,), low, high, facts.assumed(*names), "usual strength (judgement)", working)


def _ends(facts: Facts) -> tuple[float, float]:
    unit = parse_quantity("1 ppm", "concentration").unit
    low = limit_end(facts.book, facts.machine, "rinse_aid_strength", "low", unit).value
    return low, limit_end(facts.book, facts.machine, "rinse_aid_strength", "high", unit).value


_SAYS = {
    "short": "Less rinse aid than is usual.",
    "as_wanted": "The rinse aid fed is what is usual.",
    "too_much": "More rinse aid than is usual: foam, streaks, and an acid one spoils the chlorine.",
}
