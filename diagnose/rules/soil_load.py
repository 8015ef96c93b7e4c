"""Wash water that racks carry into the power-rinse tank, from the detergent found in both tanks."""

from __future__ import annotations

import math

from diagnose.model import Finding
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rack_water import RackWater, rack_water
from diagnose.rules.told import reading_told, shown
from diagnose.units import show_number

__all__ = ["carried", "carried_beside"]

CARRIED = "soil_load.carried"
DRIPS = 0.95e-3  # m3 a rack, a quart: what drips over from a full rack anyway; judgement
SHARE = 0.2  # of the wash's strength: more than that in the power rinse films the ware; judgement


def carried(facts: Facts) -> Finding | Silent | None:
    """Reckon how much wash water a rack carries into the power rinse, and whether enough fresh water stands against it.

    Purpose: the same share of detergent in the rinse tank comes from a rack that carries too much over or from a final
    rinse that runs too thin; only the gallons part them.
    Formula: share = rinse tank / wash tank; carried a rack = fresh water a rack x share / (1 - share).
    Source: conservation of mass in a tank at rest with itself; a quart a rack and a fifth are judgement.
    Fires: two_tank_electric_208: soil_load.carried = 1500 600 ppm; rinse_arms.flow_measured = 4.2 gpm -> much
    Silent: two_tank_electric_208: rinse_arms.flow_measured = 4.2 gpm
    """
    reading, check = facts.fresh(CARRIED), facts.check(CARRIED)
    if reading is None or check is None:
        return None
    wash, rinse = reading.values["wash"], reading.values["rinse"]
    if wash.si <= 0:
        return Silent(f"{check.title}: no detergent in the wash tank, nothing to go by")
    share = rinse.si / wash.si
    water = rack_water(facts)
    if water is None or water.si <= 0:
        return Silent(f"{check.title}: needs the rinse water a rack, or the rinse's flow and the racks an hour")
    if share >= 1:
        says = "The power rinse is as strong as the wash: the two waters mix freely."
        told = [*reading_told(facts, reading), "As much in the rinse tank as in the wash tank."]
        return facts.conclude(CARRIED, {"much": 1.0}, CARRIED, [reading], (), told, says)
    errors = [spread(check, each, reading) * each.unit.factor / each.si for each in (wash, rinse) if each.si > 0]
    error = max(share * math.hypot(*errors), 0.005)
    gallons = water.si * share / (1 - share)
    over = normal_share((gallons - DRIPS) / (water.si * error / (1 - share) ** 2))
    foul = normal_share((share - SHARE) / error)
    weights = _weights(over, foul, water)
    outcome = max(weights, key=lambda o: weights[o])
    words = [
        *reading_told(facts, reading),
        *water.working,
        f"{show_number(rinse.value, 4)} ÷ {show_number(wash.value, 4)} × 100 = {show_number(share * 100, 3)} %",
        f"{shown(water.si, 'volume', 'gal', 4)} × {show_number(share, 4)} ÷ (1 − {show_number(share, 4)})"
        f" = {shown(gallons, 'volume', 'gal')} carried over a rack; about {shown(DRIPS, 'volume', 'gal', 2)}"
        " drips over anyway (judgement).",
        *([] if water.measured else ["The flow now was not measured: a rinse that runs thin looks the same."]),
        *water.assumptions,
    ]
    return facts.conclude(CARRIED, weights, CARRIED, [reading], [water.measured], words, _SAYS[outcome])


def carried_beside(facts: Facts) -> tuple[str, tuple[str, ...]] | None:
    """What the power rinse holds when only drips come over: a line for the prompt, and its working."""
    water = rack_water(facts)
    if water is None:
        return None
    share = DRIPS / (DRIPS + water.si)
    line = f"the power rinse at no more than {show_number(share * 100, 2)} % of the wash"
    drip = shown(DRIPS, "volume", "gal", 2)
    sums = f"{drip} ÷ ({drip} + {shown(water.si, 'volume', 'gal')})"
    told = f"{sums} × 100 = {show_number(share * 100, 2)} %"
    return line, (*water.working, told, "A quart of drip a rack: judgement.")


def _weights(over: float, foul: float, water: RackWater) -> dict[str, float]:
    """Too much over; usual drip against too little fresh water; or neither. Unmeasured water leaves the first two."""
    thin = (1 - over) * foul
    little = max(1 - over - thin, 0.0)
    if water.measured is None:
        bad = over + thin
        over, thin = 0.6 * bad, 0.4 * bad  # judgement: how often the one, how often the other
    return {"little": little, "much": over, "thin_rinse": thin}


_SAYS = {
    "little": "No more wash water in the power rinse than drips over anyway.",
    "much": "Racks, or a gap between the tanks, bring far more wash water over than drips.",
    "thin_rinse": "Only the usual drip comes over; there is too little fresh water against it.",
}
