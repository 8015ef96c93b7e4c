"""A tank at rest: what its falling level says is lost, and whether the waste pipe accounts for it."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.filling import leak_of_level
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import limit_si, reading_told, shown
from diagnose.units import Quantity, parse_quantity

__all__ = ["expected_drop", "level_drop"]

DROP, WASTE = "tank_body.level_drop", "drain_overflow.overflow_rate"
TEN_MINUTES = parse_quantity("10 min", "time").si  # as the check asks
GPM = parse_quantity("1 gpm", "flow").unit
MISSING = 0.30  # of what the level loses may miss at the waste pipe before it went elsewhere; judgement


def level_drop(facts: Facts) -> Finding | Silent | None:
    """Judge a level that falls with everything shut off, in gallons a minute, and against what the waste pipe gives.

    Purpose: a quarter of an inch is nothing in a small tank and a leak in a large one; and as much at the waste pipe
    as the level loses is drain or standpipe, less is the shell, a joint, or back into the supply.
    Formula: Q = L W h / 10 min against what drains back from pipes; elsewhere = over 30 % of Q misses at the waste.
    Source: conservation of volume; 30 % is judgement.
    Fires: two_tank_electric_208: tank_body.level_drop = 28 22 1 in -> lost
    Fires: two_tank_electric_208: tank_body.level_drop = 28 22 1 in; drain_overflow.overflow_rate = 0.26 gpm
      -> down_waste
    Fires: two_tank_electric_208: tank_body.level_drop = 28 22 1 in; drain_overflow.overflow_rate = 0 gpm
      -> elsewhere
    Fires: two_tank_electric_208: tank_body.level_drop = 28 22 0.05 in -> holds
    Silent: two_tank_electric_208: drain_overflow.overflow_rate = 0.3 gpm
    """
    reading, check = facts.fresh(DROP), facts.check(DROP)
    if reading is None or check is None:
        return None
    length, width, fall = (reading.values[name] for name in ("length", "width", "fall"))
    if length.si <= 0 or width.si <= 0:
        return Silent(f"{check.title}: length and width of the tank are wanted")
    loss = leak_of_level(length.si, width.si, fall.si, TEN_MINUTES)
    error = loss * 0.05 + leak_of_level(
        length.si, width.si, spread(check, fall, reading) * fall.unit.factor, TEN_MINUTES
    )
    try:
        least = limit_si(facts, "water_lost_at_rest", "high", GPM)
    except LookupError as missing:
        return Silent(f"{check.title}: {missing}")
    holds = normal_share((least - loss) / error)
    waste = facts.now(WASTE)
    away = _elsewhere(facts, waste, loss, error)
    weights = {"holds": holds}
    if away is None:
        weights["lost"] = 1 - holds
    else:
        weights |= {"down_waste": (1 - holds) * (1 - away), "elsewhere": (1 - holds) * away}
    system = system_of(fall.unit)
    flow = "gpm" if system == "us" else "L/min"
    working = [
        *said("leak-of-level", system, length=length.si, width=width.si, fall=fall.si, time=TEN_MINUTES),
        f"Up to {shown(least, 'flow', flow)} counts as holding.",
        *reading_told(facts, waste),
    ]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(DROP, weights, DROP, [reading], [waste], working, says)


def _elsewhere(facts: Facts, waste: Reading | None, loss: float, error: float) -> float | None:
    """How sure it is that more is lost than the waste pipe gives; None where nobody caught it there."""
    check = facts.check(WASTE)
    if waste is None or check is None:
        return None
    own = spread(check, waste.value, waste) * waste.value.unit.factor
    return normal_share((loss * (1 - MISSING) - waste.value.si) / math.hypot(error, own))


def expected_drop(facts: Facts, check: str) -> Expected | None:
    """The fall that counts as holding, for a tank of a usual size."""
    try:
        least = limit_si(facts, "water_lost_at_rest", "high", GPM)
    except LookupError:
        return None
    length, width, inch = (parse_quantity(text, "length") for text in ("28 in", "22 in", "1 in"))
    one = leak_of_level(length.si, width.si, inch.si, TEN_MINUTES)
    most = Quantity(least / one, inch.unit)
    working = (
        *said("leak-of-level", "us", length=length.si, width=width.si, fall=inch.si, time=TEN_MINUTES),
        f"Up to {shown(least, 'flow', 'gpm')}, {most.value:.2g} in here, drains back or is not seen (judgement).",
    )
    line = f"no fall to be seen; 1 in on a tank of {length} by {width} is {shown(one, 'flow', 'gpm', 2)}"
    return Expected((line,), None, most, (), "length, width and fall", working)


_SAYS = {
    "holds": "It holds: what is lost is lost while it runs.",
    "lost": "It loses water at rest: catch what runs at the waste pipe to say where to.",
    "down_waste": "What the level loses comes out at the waste pipe: drain seat or standpipe.",
    "elsewhere": "The level loses more than the waste pipe gives: shell, joint or seal, or back into the supply.",
}
