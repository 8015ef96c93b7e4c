"""What the feed of the whole machine should carry: all its loads, by their plates, against the breaker."""

from __future__ import annotations

import math
from collections.abc import Mapping

from diagnose.formulas import said
from diagnose.physics.motor_supply import breaker_share
from diagnose.rules.facts import Facts
from diagnose.units import show_number

__all__ = ["loads_of", "sum_of_loads"]

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
