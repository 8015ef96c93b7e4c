"""Volts at a contactor's coil, against its label and against the supply its transformer hangs on."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said
from diagnose.model import Finding, Reading
from diagnose.physics.cooling import coil_share
from diagnose.rules.bands import limit_share, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import Quantity, show_number

__all__ = ["coil_volts", "expected_coil"]

CHECK = "contactor.coil_volts"
# A 240 V tap on 208 V gives 0.867 of what the right one gives; a small transformer under load gives 0.97 (judgement).
FOLLOWS = 0.93
LOADED = 0.02  # how far a sound transformer's load moves that share; judgement
HOUSE = 0.06  # spread of the supply about its plate where it was not read; judgement


@dataclass(frozen=True)
class Supply:
    """The supply as a share of its plate, its spread, and the reading it comes from (none: not read)."""

    share: float
    error: float
    read: Reading | None


def coil_volts(facts: Facts) -> Finding | Silent | None:
    """Judge the lowest volts at a coil while its contactor is in.

    Purpose: a coil that is as low as its supply is the supply's; one lower than the supply explains hangs on the
    wrong tap or behind a poor contact, even while it still holds.
    Formula: share = V / V_label, 85 to 110 % in its band; follows = share / (mean line volts / plate volts), under
    0.93 lower than the supply explains.
    Source: TM 5-683, chapter 5 (85 to 110 %); 0.93 is judgement: a 240 V tap on 208 V makes 0.87.
    Fires: two_tank_electric_208 (control_volts = 120 V, volts = 208 V): supply_power.line_volts = 187 187 187 V;
      contactor.coil_volts = 94 V -> low_beyond
    Fires: two_tank_electric_208 (control_volts = 120 V, volts = 208 V): supply_power.line_volts = 168 168 168 V;
      contactor.coil_volts = 96 V -> low_with_supply
    Silent: two_tank_electric_208 (control_volts = 0 V): contactor.coil_volts = 94 V
    """
    reading, check, plate = facts.fresh(CHECK), facts.check(CHECK), facts.plate("control_volts")
    if reading is None or check is None:
        return None
    if plate is None or plate.si <= 0:
        return Silent(f"{check.title}: needs the volts on the coil's label")
    try:
        least, most = (limit_share(facts, "coil_volts", end) for end in ("low", "high"))
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    supply, share = _supply(facts), reading.value.si / plate.si
    if share <= 0:
        return Silent(f"{check.title}: no volts at the coil: it was not called; read it while the contactor is in")
    sigma = spread(check, reading.value, reading) * reading.value.unit.factor / plate.si
    low, high = normal_share((least - share) / sigma), normal_share((share - most) / sigma)
    follows = share / supply.share
    short = normal_share((FOLLOWS - follows) / (follows * math.hypot(sigma / share, supply.error, LOADED)))
    # Not read, the supply may be as low as the coil: that is not for this reading to tell.
    beyond = short if supply.read is not None else 0.5
    weights = {
        "low_beyond": low * beyond,
        "low_with_supply": low * (1 - beyond),
        "short_in_band": (1 - low - high) * short,
        "in_band": (1 - low - high) * (1 - short),
        "high": high,
    }
    outcome = max(weights, key=lambda o: weights[o])
    working = [*_told(facts, reading, plate, supply, follows), *facts.assumed("control_volts")]
    return facts.conclude(CHECK, weights, CHECK, [reading], [supply.read], working, _SAYS[outcome])


def _supply(facts: Facts) -> Supply:
    """The mean of the line volts over the plate's; as its plate where either is missing."""
    plate = facts.plate("volts")
    for name in ("supply_power.line_volts", "supply_power.line_volts_single"):
        read, check = facts.known(name), facts.check(name)
        if read is None or check is None or plate is None or plate.si <= 0:
            continue
        volts = [v.si for v in read.values.values()]
        mean = sum(volts) / len(volts)
        if min(volts) > 0.5 * mean > 0:  # a lost line is no level of the supply
            first = next(iter(read.values.values()))
            return Supply(mean / plate.si, spread(check, first, read) * first.unit.factor / mean, read)
    return Supply(1.0, HOUSE, None)


def _told(facts: Facts, reading: Reading, plate: Quantity, supply: Supply, follows: float) -> list[str]:
    lines = [f"Coil {reading.value}, label {plate}:"]
    lines += said("coil-volts", "us", voltage=reading.value.si, rated=plate.si)
    if supply.read is None:
        return [*lines, "The supply was not read beside it: whether the coil is as low as its supply stays open."]
    lines += reading_told(facts, supply.read)
    share, coil = supply.share * 100, coil_share(reading.value.si, plate.si) * 100
    return [
        *lines,
        f"The supply stands at {show_number(share, 3)} % of plate, the coil at {show_number(coil, 3)} % of label:",
        f"{show_number(coil, 4)} ÷ {show_number(share, 4)} = {show_number(coil / share, 3)}, "
        f"and under {FOLLOWS:g} is lower than the supply explains.",
    ]


def expected_coil(facts: Facts, check: str) -> Expected | None:
    """The band of the coil, and what the supply as read should make of it."""
    plate = facts.plate("control_volts")
    if plate is None or plate.si <= 0:
        return None
    try:
        least, most = (limit_share(facts, "coil_volts", end) for end in ("low", "high"))
    except LookupError:
        return None
    low, high = (Quantity(share * plate.value, plate.unit) for share in (least, most))
    lines = [f"{show_number(low.value, 3)} to {show_number(high.value, 3)} V ({plate} coil)"]
    working = [
        *plates_told(facts, "control_volts"),
        f"{least:g} × {plate} = {show_number(low.value)} V",
        f"{most:g} × {plate} = {show_number(high.value)} V",
    ]
    supply = _supply(facts)
    if supply.read is not None:
        follows = show_number(supply.share * plate.value, 3)
        lines.append(f"about {follows} V from this supply, with the right tap")
        working += reading_told(facts, supply.read)
        working += [f"{show_number(supply.share)} of its plate: {show_number(supply.share)} × {plate} = {follows} V"]
    assumed = facts.assumed("control_volts")
    return Expected(tuple(lines), low, high, assumed, "TM 5-683, chapter 5", tuple(working))


_SAYS = {
    "in_band": "The coil has the volts it needs, and what its supply should give it.",
    "short_in_band": "The coil holds, but lower than the supply explains: a high tap or a poor contact.",
    "low_beyond": "The coil is under its band and lower than the supply explains: tap or contact.",
    "low_with_supply": "The coil is under its band because its supply is as low.",
    "high": "The coil is over its band: it burns, whatever it switches.",
}
