"""How long the conveyor should run on, and how far that carries the last rack."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.rules.bands import normal_share
from diagnose.rules.conveyor_bar_pawls import speed_now
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, show_number

__all__ = ["expected_run_on", "run_on"]

LEAST = 0.8  # share of the plate's run-on that is still in order, as the check's band states it
IN_HAND = 5.0  # s, reserve; judgement


RUN_ON = "run_timer.run_on"


def run_on(facts: Facts) -> Finding | Silent | None:
    """Judge the run-on by its seconds and by how far they carry the last rack.

    Purpose: a few seconds less are no fault of the timer where the conveyor is timed faster than the plate, as
    they carry a rack as far.
    Formula: share = time / plate's, or where the conveyor is faster time x speed / (plate's time x speed); under
    0.8 it is short. A slow conveyor is not the timer's doing: then the seconds alone count.
    Source: plate; the fifth is judgement.
    Fires: two_tank_electric_208 (run_on = 30 s, conveyor_speed = 5.8 ft/min): run_timer.run_on = 18 s -> short
    Silent: two_tank_electric_208: run_timer.run_on_spread = 1 s
    """
    reading, check, plate = facts.fresh(RUN_ON), facts.check(RUN_ON), facts.plate("run_on")
    if reading is None or check is None:
        return None
    if plate is None or plate.si <= 0:
        return Silent(f"{check.title}: needs the plate's run-on")
    speed, wanted = speed_now(facts), facts.plate("conveyor_speed")
    faster, error = 1.0, 0.0
    read: tuple[Reading, ...] = ()
    words: tuple[str, ...] = ()
    if not isinstance(speed, Silent) and speed.read and wanted is not None and speed.speed > wanted.si:
        faster, error, read = speed.speed / wanted.si, speed.sigma / speed.speed, speed.read
        words = (*speed.words, f"{faster * 100:.0f} % of the plate's speed: a rack goes that much further in a second.")
    share = reading.value.si / plate.si * faster
    clock = spread(check, reading.value, reading) * reading.value.unit.factor / plate.si * faster
    sigma = math.hypot(clock, share * error)
    short = normal_share((LEAST - share) / max(sigma, 1e-6))
    working = [
        *words,
        f"{reading.value} of the plate's {plate}: {share * 100:.0f} % of the way; {LEAST * 100:.0f} % will do.",
        *facts.assumed("run_on"),
    ]
    weights = {"as_plate": 1 - short, "short": short}
    says = "Too short for the way the last rack has to go." if short > 0.5 else "The run-on is long enough."
    return facts.conclude(RUN_ON, weights, RUN_ON, [reading], read, working, says)


def expected_run_on(facts: Facts, check: str) -> Expected | None:
    """The plate's run-on, and the way it carries a rack at the speed there is."""
    plate, speed = facts.plate("run_on"), speed_now(facts)
    if plate is None:
        return None
    low = Quantity.of_si(LEAST * plate.si, "time", "s")
    stands = "type's figure, assumed" if facts.machine.assumed("run_on") else "data plate"
    working = [f"{LEAST:g} × {show_number(plate.si)} = {show_number(low.si, 3)} s; run-on {plate} ({stands})."]
    line = f"{show_number(low.si, 3)} s or more ({plate} {'assumed' if facts.machine.assumed('run_on') else 'plate'})"
    if not isinstance(speed, Silent):
        way, figure = speed.speed * max(plate.si - IN_HAND, 0.0), facts.plate("conveyor_speed")
        system = system_of(figure.unit) if figure else "us"
        working += [*speed.words, f"With {IN_HAND:g} s in hand it carries a rack this far:"]
        working += said("run-on", system, way=way, speed=speed.speed, in_hand=IN_HAND)
    return Expected((line,), low, None, facts.assumed("run_on", "conveyor_speed"), "plate less a fifth", tuple(working))
