"""What the feed of the whole machine should carry, all its loads by their plates: beside the breaker, and as read."""

from __future__ import annotations

import math
from collections.abc import Mapping

from diagnose.formulas import said
from diagnose.model import Finding
from diagnose.physics.motor_supply import breaker_share
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import show_number

__all__ = ["feed_amps", "loads_of", "sum_of_loads"]

CHECK = "breaker_earth_leakage.feed_amps"
CONTINUOUS = 0.8  # of a breaker, for loads of hours
MORE = 1.15  # times the sum of all plates: beyond what volts, tolerance and a warm motor make; judgement
PLATES = 0.06  # how far a sound machine may stand off the sum of its plates; judgement

HEATERS: Mapping[
    str, tuple[str, Mapping[str, object]]
] = {  # plate figure of a heater -> its name, and the trait it needs
    "booster_power": ("booster", {"booster": "electric", "booster_place": "built in"}),
    "tank_power": ("wash-tank heater", {"tank_heat": "electric"}),
    "rinse_tank_power": ("rinse-tank heater", {"tank_heat": "electric", "tanks": 2}),
}
MOTORS = {
    "wash_motor_amps": "wash pump",
    "rinse_motor_amps": "rinse pump",
    "prewash_motor_amps": "pre-wash pump",
    "drive_motor_amps": "conveyor",
    "fan_motor_amps": "exhaust fan",
}


def loads_of(facts: Facts) -> list[tuple[str, float]]:
    """Each load on the machine's feed with the amps it takes from a line, by plate figures alone."""
    volts = facts.plate("volts")
    if volts is None or volts.si <= 0:
        return []
    lines = math.sqrt(3.0) if facts.machine.trait("phases") == 3 else 1.0
    loads = []
    for figure, (name, needs) in HEATERS.items():
        power = facts.plate(figure)
        if power is not None and all(facts.machine.trait(t) == wanted for t, wanted in needs.items()):
            loads.append((f"{name} {power}", power.si / (lines * volts.si)))
    for figure, name in MOTORS.items():
        amps = facts.plate(figure)
        if amps is not None:
            loads.append((name, amps.si))
    return [(name, amps) for name, amps in loads if amps > 0]


def sum_of_loads(facts: Facts) -> tuple[str, tuple[str, ...]] | None:
    """Everything on at once by the plates: a line for the prompt, and its working; None where nothing is known."""
    loads, volts = loads_of(facts), facts.plate("volts")
    if not loads or volts is None:
        return None
    total = sum(amps for _, amps in loads)
    root = " × 1.732" if facts.machine.trait("phases") == 3 else ""
    line = f"all its loads by their plates: about {show_number(total, 3)} A"
    working = [
        f"Heaters: watts ÷ ({volts}{root}); motors: full-load amps of their plates. Those with feeds of their own are "
        "to be left out.",
        *(f"{name[0].upper()}{name[1:]}: {show_number(amps, 3)} A." for name, amps in loads),
    ]
    breaker = facts.plate("breaker_amps")
    if breaker is not None and breaker.si > 0:
        amps = [amps for _, amps in loads]
        working += said("breaker-load", "us", loads=amps, rating=breaker.si)
        line += f", {breaker_share(amps, breaker.si) * 100:.0f} % of the breaker"
    assumed = facts.assumed(*HEATERS, *MOTORS, "breaker_amps")
    return line, (*working, *assumed)


def feed_amps(facts: Facts) -> Finding | Silent | None:
    """Judge the fullest line of the feed by the breaker and by the sum of the machine's own plates.

    Purpose: a line that is full because the plates add up to it wants another breaker; one that carries more than
    all plates together carries something that is not this machine's, or a part that draws too much.
    Formula: share = I / I_breaker, 0.8 the most for hours; beyond where I > 1.15 × (sum of heaters W / (1.732 U)
    and motors' plate amps).
    Source: NEC 210.20 and 215.3 for the 80 %, from memory; 1.15 is judgement.
    Fires: two_tank_electric_208 (breaker_amps = 225 A): breaker_earth_leakage.feed_amps = 206 A -> near
    Fires: two_tank_steam_208 (breaker_amps = 20 A): breaker_earth_leakage.feed_amps = 19 A -> beyond
    Fires: two_tank_steam_208 (breaker_amps = 20 A): breaker_earth_leakage.feed_amps = 13.5 A -> within
    Silent: two_tank_steam_208 (breaker_amps = 0 A): breaker_earth_leakage.feed_amps = 13.5 A
    """
    reading, check, breaker = facts.fresh(CHECK), facts.check(CHECK), facts.plate("breaker_amps")
    if reading is None or check is None:
        return None
    total = sum(amps for _, amps in loads_of(facts))
    if breaker is None or breaker.si <= 0 or total <= 0:
        return Silent(f"{check.title}: needs the breaker's rating and the plates of what hangs on it")
    amps = reading.value.si
    sigma = spread(check, reading.value, reading) * reading.value.unit.factor
    over = normal_share((amps - breaker.si) / sigma)
    full = normal_share((amps - CONTINUOUS * breaker.si) / sigma)
    more = normal_share((amps / total - MORE) / math.hypot(sigma / total, PLATES))
    weights = {
        "within": 1 - full,
        "near": (full - over) * (1 - more),
        "over": over * (1 - more),
        "beyond": full * more,
    }
    outcome = max(weights, key=lambda o: weights[o])
    told = sum_of_loads(facts)
    working = [
        f"Fullest line {reading.value}, breaker {breaker}: {amps / breaker.si * 100:.0f} % of it, 80 % for hours.",
        *(() if told is None else told[1]),
        f"All plates together {show_number(total, 3)} A; {show_number(amps, 3)} ÷ {show_number(total, 3)} = "
        f"{show_number(amps / total, 3)}, and over {MORE:g} is more than they explain.",
    ]
    return facts.conclude(CHECK, weights, CHECK, [reading], [], working, _SAYS[outcome])


_SAYS = {
    "within": "The breaker is not full.",
    "near": "The breaker is over 80 % full with what the machine's own plates add up to.",
    "over": "The machine's own plates are more than the breaker bears.",
    "beyond": "The breaker carries more than all plates of the machine: something else, or a part that draws too much.",
}
