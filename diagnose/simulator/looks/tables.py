"""What can be seen and measured of the load and clean tables."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
# Figures of sound tables and of gross faults: judgement.
_STEP, _STEPS = 0.0004, 0.008  # m
_PITCH, _STEEPER, _FALLS_AWAY = 0.0156, 0.06, 0.03  # m/m; 3/16 inch a foot stands between the limits' ends
_LEVEL, _LEANS = 0.0012, 0.03  # m/m


@look("tables.exit_look", conveyor=_RACKS)
def exit_look(bench: Bench) -> Answer:
    """The clean table and its switch."""
    found = {"full_once": bench.sign("clean table full"), "full_again": bench.sign("clean table fills again")}
    return bench.worst(found, "free", sure=0.95)


@look("tables.unload_watch", conveyor=_RACKS)
def unload_watch(bench: Bench) -> Answer:
    """Time that the table stood full in ten minutes of rush, [s]."""
    full = 15.0 + 330.0 * bench.sign("clean table fills again") + 45.0 * bench.sign("clean table full")
    return bench.value("watch", full)


@look("tables.table_push", conveyor=_RACKS)
def table_push(bench: Bench) -> Answer:
    """A full rack pushed by hand along the tables."""
    found = {
        "hangs_entrance": bench.sign("step at the entrance"),
        "hangs_exit": bench.sign("step at the exit"),
        "hangs_in_turn": bench.sign("table turn drags"),
        "hangs_on_table": max(0.8 * bench.sign("table seam stands up"), 0.7 * bench.sign("table leans across")),
    }
    return bench.worst(found, "glides", sure=0.95)


@look("tables.joint_entrance", conveyor=_RACKS)
def joint_entrance(bench: Bench) -> Answer:
    """Step at the entrance."""
    return bench.value("feeler gauge", _STEP + _STEPS * bench.sign("step at the entrance"))


@look("tables.joint_exit", conveyor=_RACKS)
def joint_exit(bench: Bench) -> Answer:
    """Step at the exit."""
    return bench.value("feeler gauge", _STEP + _STEPS * bench.sign("step at the exit"))


@look("tables.seam_feel", conveyor=_RACKS)
def seam_feel(bench: Bench) -> Answer:
    """A rule's edge along the table."""
    return bench.worst({"catches": bench.sign("table seam stands up")}, "smooth", sure=0.97)


@look("tables.level_across", conveyor=_RACKS)
def level_across(bench: Bench) -> Answer:
    """Slope across the way of the racks."""
    return bench.value("level", _LEVEL + _LEANS * bench.sign("table leans across"))


@look("tables.pitch", conveyor=_RACKS)
def pitch(bench: Bench) -> Answer:
    """Fall of the clean table towards the machine."""
    rises, falls = bench.sign("table rises steeply"), bench.sign("table falls away")
    return bench.value("level", _PITCH + _STEEPER * rises - _FALLS_AWAY * falls - (0.006 if falls > 0.0 else 0.0))


@look("tables.turn_look", conveyor=_RACKS, table_turn=(True,))
def turn_look(bench: Bench) -> Answer:
    """Rollers and inner guide of the turn."""
    return bench.worst({"some_stand": bench.sign("table turn drags")}, "all_spin", sure=0.97)
