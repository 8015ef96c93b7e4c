"""Time one rack keeps the final rinse on, against what its length and the speed make."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics.conveyor import arm_held_time
from diagnose.rules.bands import normal_share
from diagnose.rules.conveyor_bar_pawls import speed_now
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, show_number

__all__ = ["expected_run", "rinse_run"]

RUN = "rinse_actuator.rinse_run"
LONG, SHORT = 4.0, 0.8  # s a rinse may outlast the rack with its usual delay; share under which it is short; judgement
OVERLAP, DELAY = 0.0, 0.0


def rinse_run(facts: Facts) -> Finding | Silent | None:
    """Judge how long one rack keeps the rinse on.

    Purpose: the same seconds are right on a slow machine and twice the water on a fast one; a slow conveyor makes
    a long rinse though the actuator is sound.
    Formula: t = rack length / speed (timed where it was, else the plate's); up to 4 s more is the usual delay.
    Source: plate; the edges are judgement.
    Fires: two_tank_electric_208 (rack_length = 20 in, conveyor_speed = 5.8 ft/min):
      rinse_actuator.rinse_run = 30 s -> too_long
    Silent: two_tank_electric_208: conveyor_bar_pawls.zone_time = 24 s
    """
    reading, check, rack = facts.fresh(RUN), facts.check(RUN), facts.plate("rack_length")
    if reading is None or check is None:
        return None
    speed = speed_now(facts)
    if rack is None or isinstance(speed, Silent):
        return Silent(f"{check.title}: needs the rack's length and the conveyor's speed")
    wanted = arm_held_time(rack.si, OVERLAP, DELAY, speed.speed)
    read = spread(check, reading.value, reading) * reading.value.unit.factor
    sigma = math.hypot(read, wanted * speed.sigma / speed.speed)
    long = 1 - normal_share((wanted + LONG - reading.value.si) / sigma)
    short = normal_share((SHORT * wanted - reading.value.si) / sigma)
    weights = {"as_computed": max(1 - long - short, 0.0), "too_long": long, "too_short": short}
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        *speed.words,
        *said("rinse-time", system_of(rack.unit), rack=rack.si, overlap=OVERLAP, delay=DELAY, speed=speed.speed),
        f"Read: {reading.value}; {show_number(SHORT * wanted, 3)} to {show_number(wanted + LONG, 3)} s is in order.",
        *facts.assumed("rack_length"),
    ]
    return facts.conclude(RUN, weights, RUN, [reading], speed.read, working, _SAYS[outcome])


def expected_run(facts: Facts, check: str) -> Expected | None:
    """Seconds the rinse runs for one rack."""
    rack, speed = facts.plate("rack_length"), speed_now(facts)
    if rack is None or isinstance(speed, Silent):
        return None
    wanted = arm_held_time(rack.si, OVERLAP, DELAY, speed.speed)
    low, high = (Quantity.of_si(s, "time", "s") for s in (SHORT * wanted, wanted + LONG))
    line = f"{show_number(wanted, 3)} s, and up to {LONG:g} s more ({rack} rack)"
    stands = "type's figure, assumed" if facts.machine.assumed("rack_length") else "data plate"
    working = (
        *speed.words,
        f"Rack {rack} ({stands}).",
        *said("rinse-time", system_of(rack.unit), rack=rack.si, overlap=OVERLAP, delay=DELAY, speed=speed.speed),
    )
    return Expected((line,), low, high, facts.assumed("rack_length", "conveyor_speed"), "length over speed", working)


_SAYS = {
    "as_computed": "The rinse runs as long as a rack takes to pass.",
    "too_long": "The rinse outlasts the rack: delay, arm or switch, and the water and heat that go with it.",
    "too_short": "The rinse ends before the rack has passed: its last rows go out unrinsed.",
}
