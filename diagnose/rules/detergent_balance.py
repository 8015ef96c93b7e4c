"""Detergent fed, detergent found, and water that runs through the tank beside the rinse: which of them is short."""

from __future__ import annotations

import math

from diagnose.model import Finding, Reading
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.detergent_feed import DENSITY, ERROR, FED
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rack_water import plate_water
from diagnose.rules.told import plates_told, reading_told, shown
from diagnose.units import parse_quantity, show_number

__all__ = ["balance"]

BALANCE, TANK, OVERFLOW = "detergent_feed.balance", "detergent_feed.tank_strength", "drain_overflow.overflow_rate"
LOST = 0.4  # ln of fed over found: a third and more is missing; judgement
RUNS = 0.1  # ln of the strength without over the strength with the overflow: under it the overflow does not tell


def balance(facts: Facts) -> Finding | Silent | None:
    """Hold the strength found in the tank against what the feed gives and what an overflow at rest washes out.

    Purpose: a thin wash has a feed that gives too little, or water that carries it off, or a jug that is no detergent;
    the drop test alone can not part them, and the same mL a rack are right on one machine and thin on another.
    Formula: settled ppm = mL x 1.3 x 1000 / (litres of rinse a rack + litres of overflow between two racks).
    Source: conservation of mass; density of 1.3, a third missing, and the usual strengths are judgement.
    Fires: two_tank_electric_208: detergent_feed.tank_strength = 650 ppm; detergent_feed.fed_per_rack = 5 mL;
      drain_overflow.overflow_rate = 4 gpm -> washed
    Silent: two_tank_electric_208: detergent_feed.tank_strength = 650 ppm; detergent_feed.fed_per_rack = 5 mL
    """
    found, fed, runs = facts.fresh(TANK), facts.fresh(FED), facts.now(OVERFLOW)
    if found is None or fed is None or facts.check(BALANCE) is None:
        return None
    known, racks = plate_water(facts), facts.plate("racks_per_hour")
    if runs is None or known is None or racks is None or racks.si <= 0:
        return Silent(
            "Detergent fed and found: needs the overflow at rest, the rinse water a rack and the racks an hour"
        )
    water, names = known
    beside = runs.value.si / racks.si
    alone, settled = (fed.value.si * DENSITY * 1e6 / w for w in (water.si, water.si + beside))
    weights = _weights(facts, found, fed, alone, settled)
    litres, more = show_number(water.si * 1e3, 4), show_number(beside * 1e3, 3)
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        *reading_told(facts, found),
        *reading_told(facts, runs),
        *plates_told(facts, *dict.fromkeys((*names, "racks_per_hour"))),
        f"{fed.value} × 1.3 × 1000 ÷ {litres} L = {show_number(alone, 3)} ppm with the rinse alone.",
        f"{fed.value} × 1.3 × 1000 ÷ ({litres} L + {more} L) = {show_number(settled, 3)} ppm with the overflow too.",
        f"Found: {found.value}. Density 1.3 kg/L (judgement); the detergent's label governs.",
        f"Rinse water a rack: {shown(water.si, 'volume', water.unit.symbol)}.",
        *facts.assumed(*dict.fromkeys((*names, "racks_per_hour"))),
    ]
    return facts.conclude(BALANCE, weights, BALANCE, [found, fed], [runs], working, _SAYS[outcome])


def _weights(facts: Facts, found: Reading, fed: Reading, alone: float, settled: float) -> dict[str, float]:
    """How much speaks for each outcome, by the errors of kit, glass and density."""
    strength = max(found.value.si, 1.0)
    unit = parse_quantity("1 ppm", "concentration").unit
    low, high = (limit_end(facts.book, facts.machine, "detergent_strength", end, unit).value for end in ("low", "high"))
    kit = _error(facts, TANK, found) / strength
    given = math.hypot(_error(facts, FED, fed) / max(fed.value.si, 1e-9), ERROR)
    thin, strong = normal_share((low - strength) / (kit * strength)), normal_share((strength - high) / (kit * strength))
    short = normal_share(math.log(low / max(alone, 1.0)) / given)
    lost = normal_share((math.log(max(settled, 1.0) / strength) - LOST) / math.hypot(kit, given))
    washes = normal_share((math.log(max(alone, 1.0) / max(settled, 1.0)) - RUNS) / (RUNS / 2))
    rest = thin * (1 - short)
    return {
        "holds": max(1 - thin - strong, 0.0),
        "strong": strong,
        "fed_short": thin * short + rest * (1 - lost) * (1 - washes),
        "washed": rest * (1 - lost) * washes,
        "lost": rest * lost,
    }


def _error(facts: Facts, name: str, reading: Reading) -> float:
    """One standard deviation of a reading, in SI."""
    check = facts.check(name)
    return spread(check, reading.value, reading) * reading.value.unit.factor if check is not None else 0.0


_SAYS = {
    "holds": "The tank holds the usual strength.",
    "strong": "The tank is stronger than is usual.",
    "fed_short": "The tank is as thin as the feed makes it: too little is fed.",
    "washed": "Enough is fed for the racks; water running through the tank carries it off.",
    "lost": "Enough is fed and it is not there: what is fed is no detergent, or does not get into the tank.",
}
