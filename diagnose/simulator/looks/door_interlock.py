"""What can be read of the switches at the doors."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import OPEN, door_makes
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_LIFTED = 4e-3  # m that a door which is not latched stands up at its switch: judgement
_EDGE = 2.5e-3  # m from the reach of its switch within which a magnet is felt to flutter: judgement


@look("door_interlock.doors_pressed")
def doors_pressed(bench: Bench) -> Answer:
    """Every door shut anew and pressed home, start held."""
    control = bench.plant.control
    if bench.sign("door not latched") > 0.15:
        return bench.seen("shut_now", "only_pressed", sure=0.95)
    if not door_makes(control) and door_makes(control, pressed=True):
        return bench.seen("only_pressed", "no_door", sure=0.93)
    if door_makes(control) and not door_makes(control, shaken=True):
        return bench.seen("only_pressed", "no_door", sure=0.7)
    return bench.seen("no_door", "only_pressed", sure=0.98)


@look("door_interlock.magnet_gap")
def magnet_gap(bench: Bench) -> Answer:
    """Between switch and magnet at the worst door, all shut."""
    return bench.value("feeler gauge", bench.plant.control.door.gap + _LIFTED * bench.sign("door not latched"))


@look("door_interlock.switch_ohms")
def switch_ohms(bench: Bench) -> Answer:
    """At the switch's own leads, a magnet at its face."""
    return bench.value("ohmmeter", bench.plant.control.door.ohms)


@look("door_interlock.cable_bend")
def cable_bend(bench: Bench) -> Answer:
    """Read in the box while each door's cable is bent, then the door shaken."""
    door = bench.plant.control.door
    if door.frayed > 0.2:
        return bench.seen("jumps_bent", "steady", sure=0.94)
    edge = abs(door.gap - door.reach) < _EDGE and door.ohms < OPEN
    return bench.seen("flutters_door" if edge else "steady", "steady", sure=0.75 if edge else 0.98)
