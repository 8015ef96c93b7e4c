"""How long the conveyor should run on, and how far that carries the last rack."""

from __future__ import annotations

from diagnose.formulas import said, system_of
from diagnose.rules.conveyor_bar_pawls import speed_now
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.units import Quantity, show_number

__all__ = ["expected_run_on"]

LEAST = 0.8  # share of the plate's run-on that is still in order, as the check's band states it
IN_HAND = 5.0  # s, reserve; judgement


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
