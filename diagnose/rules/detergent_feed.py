"""Detergent fed a rack: the strength it holds in the tank against the usual one."""

from __future__ import annotations

import math

from diagnose.model import Finding
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rack_water import plate_water
from diagnose.rules.told import plates_told, shown
from diagnose.units import Quantity, parse_quantity, show_number

__all__ = ["expected_fed", "fed_per_rack"]

DENSITY = 1.3  # kg/L of liquid detergent; judgement
ERROR = 0.15  # of the density and of the share of the rinse that runs into the wash tank; judgement
FED = "detergent_feed.fed_per_rack"


def fed_per_rack(facts: Facts) -> Finding | Silent | None:
    """Judge detergent fed a rack by the strength that it holds against the rinse water running in.

    Purpose: in service the tank settles where the feed replaces what the rinse carries off; the same mL are
    right for much rinse water and far too much for little, which makes the rinse alkaline.
    Formula: ppm = mL x 1.3 x 1000 / litres of rinse a rack.
    Source: conservation of mass; limit of detergent strength, density of 1.3 (judgement); its label governs.
    Fires: single_tank_chemical_208 (rinse_per_rack = 0.8 gal): detergent_feed.fed_per_rack = 14 mL -> too_much
    Silent: single_tank_chemical_208: water_quality.rinse_ph = 9 pH
    """
    reading, check, known = facts.fresh(FED), facts.check(FED), plate_water(facts)
    if reading is None or check is None:
        return None
    if known is None:
        return Silent(f"{check.title}: needs the rinse water a rack of the plate, or its flow and racks an hour")
    water, names = known
    low, high = _ends(facts)
    strength = reading.value.si * DENSITY * 1e6 / water.si
    read = spread(check, reading.value, reading) * reading.value.unit.factor * DENSITY * 1e6 / water.si
    error = math.hypot(read, ERROR * strength)
    short, much = normal_share((low - strength) / error), normal_share((strength - high) / error)
    weights = {"short": short, "as_wanted": max(1 - short - much, 0.0), "too_much": much}
    litres = show_number(water.si * 1e3, 4)
    working = [
        f"{reading.value} × 1.3 × 1000 ÷ {litres} L = {show_number(strength, 3)} ppm, which the tank settles at.",
        f"Usual: {low:.0f} to {high:.0f} ppm as supplied; the detergent's label governs.",
        "Density 1.3 kg/L, all rinse water running into the wash tank (assumed).",
        *facts.assumed(*names),
    ]
    return facts.conclude(FED, weights, FED, [reading], (), working, _SAYS[max(weights, key=lambda o: weights[o])])


def expected_fed(facts: Facts, check: str) -> Expected | None:
    """The detergent a rack that holds the usual strength."""
    known = plate_water(facts)
    if known is None:
        return None
    water, names = known
    try:
        ends = _ends(facts)
    except LookupError:
        return None
    low, high = (Quantity.of_si(e * water.si / (DENSITY * 1e6), "volume", "mL") for e in ends)
    strengths = f"{ends[0]:.0f} to {ends[1]:.0f} ppm"
    a_rack = shown(water.si, "volume", water.unit.symbol)
    line = f"{show_number(low.value, 2)} to {show_number(high.value, 2)} mL ({strengths}, {a_rack} a rack)"
    litres = show_number(water.si * 1e3, 4)
    working = tuple(
        f"{e:.0f} ppm × {litres} L ÷ (1.3 × 1000) = {show_number(q.value, 3)} mL"
        for e, q in zip(ends, (low, high), strict=True)
    )
    working += (*plates_told(facts, *names), "Density 1.3 kg/L (judgement); the detergent's label governs.")
    return Expected((line,), low, high, facts.assumed(*names), "what the rinse carries off", working)


def _ends(facts: Facts) -> tuple[float, float]:
    unit = parse_quantity("1 ppm", "concentration").unit
    low = limit_end(facts.book, facts.machine, "detergent_strength", "low", unit).value
    return low, limit_end(facts.book, facts.machine, "detergent_strength", "high", unit).value


_SAYS = {
    "short": "Less detergent than holds the usual strength.",
    "as_wanted": "The detergent fed holds the usual strength.",
    "too_much": "More detergent than the wash needs: it makes the rinse alkaline, and chlorine slow.",
}
