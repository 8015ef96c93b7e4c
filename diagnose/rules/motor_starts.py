"""Starts in an hour: what the overload of this motor bears beside its running current."""

from __future__ import annotations

from diagnose.formulas import said
from diagnose.physics.cooling import starts_allowed
from diagnose.physics.protection import PICKUP
from diagnose.rules.facts import Facts
from diagnose.rules.pump_motor import motor_of
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import show_number

__all__ = ["starts_borne"]

NAMED = {"drive": "drive_motor", "fan": "exhaust_fan"}  # which motor tripped -> its assembly; else a pump
START_TIMES, START_SECONDS = 6.0, 1.0  # times the nameplate, and how long: a small pump that starts freely; judgement


def starts_borne(facts: Facts) -> tuple[str, tuple[str, ...]] | None:
    """How many starts an hour an overload set to the nameplate bears at the current read: a line, and its working.

    None where the motor's currents or plate are not known, and where running alone brings it to its trip.
    """
    assembly = NAMED.get(facts.chosen("motor_overload.which_tripped") or "", "pump_motor")
    motor = motor_of(facts, assembly)
    read = facts.known(f"{assembly}.line_amps") or facts.known(f"{assembly}.line_amps_single")
    plate = facts.plate(motor.plate)
    if read is None or plate is None or plate.si <= 0:
        return None
    running, bears, start = max(v.si for v in read.values.values()), PICKUP * plate.si, START_TIMES * plate.si
    if not 0 < running < bears:
        return None
    values = {"setting": bears, "start_time": START_SECONDS, "start_current": start, "run_current": running}
    borne = 3600 * starts_allowed(**values)
    line = f"its overload bears about {show_number(borne, 2)} an hour beside {show_number(running)} A"
    working = (
        *plates_told(facts, motor.plate),
        *reading_told(facts, read),
        f"An overload set to it bears {PICKUP:g} × {show_number(plate.si)} A = {show_number(bears)} A for ever; "
        f"a start takes {START_TIMES:g} times the nameplate for {START_SECONDS:g} s (judgement):",
        *said("starts-allowed", "us", **values),
        "The motor's own limit, some 15 an hour, may be lower.",
    )
    return line, working
