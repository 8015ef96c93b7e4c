"""What can be read of the switches that stop the conveyor: jam switch and run timer."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import starts
from diagnose.simulator.conveying import ARM, pull
from diagnose.simulator.conveyor_parts import RunTimer
from diagnose.simulator.passage import NEEDED, happens, passage
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__ = ["contact"]

_RACKS = ("pawl bar", "chain")
_CLOSED, _OPEN = 0.3, 5e6  # ohm of a dry contact: common practice
_SOONER = 12.0  # s between racks, by which a rack not felt shortens the run-on: judgement


def contact(bench: Bench, opened: bool, damp: float) -> Answer:
    """A contact's ohms; a wet one is neither closed nor open."""
    return bench.value("ohmmeter", damp if damp > 0.0 else _OPEN if opened else _CLOSED)


@look("jam_switch.which_open")
def which_open(bench: Bench) -> Answer:
    """Volts across each contact while the conveyor has stopped."""
    found = passage(bench)
    contact = found.contact if found.stands == "contact" else max(found.stops, key=found.stops.__getitem__, default="")
    if bench.sign("waits for a rack") > 0.15:
        contact = "timer"
    elif not contact and found.holds > 0.1 and _trips(bench):
        contact = "jam"
    by = {"jam": "jam_open", "table": "table_open", "timer": "timer_open", "": "none_open"}
    return bench.seen(by[contact], "none_open", sure=0.97)


def _trips(bench: Bench) -> bool:
    """Whether what holds racks is enough for the arm to reach the jam switch."""
    belt = bench.plant.conveyor
    bears = max(pull for _, pull in belt.track.held.values())
    return not belt.jam.bridged and min(pull(belt) + bears, belt.slips_at) > belt.jam.gap / ARM


@look("jam_switch.rest_ohms")
def rest_ohms(bench: Bench) -> Answer:
    """At rest, leads parted, machine empty, [ohm]."""
    jam = bench.plant.conveyor.jam
    return contact(bench, jam.stays and not jam.bridged, jam.damp)


@look("jam_switch.gap")
def gap(bench: Bench) -> Answer:
    """Between arm at rest and trip point, [m]."""
    jam = bench.plant.conveyor.jam
    return bench.value("feeler gauge", 0.0002 if jam.stays else jam.gap)


@look("jam_switch.insides")
def insides(bench: Bench) -> Answer:
    """Water, and the arm's way back."""
    return bench.strongest("dry_and_free", 0.97, jam_switch_wet="wet", torque_arm_stays_over="stays_over")


@look("jam_switch.over_ohms")
def over_ohms(bench: Bench) -> Answer:
    """Arm pushed fully over, [ohm]."""
    jam = bench.plant.conveyor.jam
    return contact(bench, not jam.bridged, jam.damp)


@look("jam_switch.racks_out", conveyor=_RACKS)
def racks_out(bench: Bench) -> Answer:
    """Every rack out, then run empty."""
    found, belt = passage(bench), bench.plant.conveyor
    if belt.jam.holds or (found.holds > 0.1 and _trips(bench) and happens(bench, found.holds, 3)):
        return bench.seen("held_then_runs", "free_and_runs", sure=0.96)
    if found.stands:
        return bench.seen("stays_dead", sure=0.98)
    if found.bar_empty < 0.9 * belt.pace:
        return bench.seen("weak_empty", "free_and_runs", sure=0.93)
    return bench.seen("free_and_runs", "weak_empty", sure=0.97)


def _run_on(bench: Bench, timer: RunTimer) -> float:
    """One run-on: the timer's own, its wavering, and a rack that was not felt."""
    if timer.dead:
        return 0.0
    missed = happens(bench, timer.misses, 1)
    return max(0.0, timer.run_on + (bench.senses.chance.random() - 0.5) * timer.spread - _SOONER * missed)


@look("run_timer.run_on")
def run_on(bench: Bench) -> Answer:
    """After the last rack has left the lever, [s]."""
    return bench.value("watch", _run_on(bench, bench.plant.conveyor.timer))


@look("run_timer.run_on_spread")
def run_on_spread(bench: Bench) -> Answer:
    """Longest less shortest of three, [s]."""
    three = [_run_on(bench, bench.plant.conveyor.timer) for _ in range(3)]
    return Answer({"": max(0.0, bench.senses.measure("watch", max(three) - min(three)))})


@look("run_timer.dial")
def dial(bench: Bench) -> Answer:
    """The dial against plate and way."""
    plate, belt = bench.plant.plate, bench.plant.conveyor
    enough = belt.timer.run_on >= max(0.95, NEEDED / max(belt.pace, 0.3)) * plate["run_on"]
    return bench.seen("enough" if enough else "below", "enough", sure=0.97)


@look("run_timer.lever_look")
def lever_look(bench: Bench) -> Answer:
    """Whether every rack moves it."""
    return bench.noticed("timer lever bent", "misses_some", "every_rack", sure=0.96)


@look("run_timer.rack_starts", conveyor=_RACKS)
def rack_starts(bench: Bench) -> Answer:
    """An empty rack pushed in against the lever."""
    if not starts(bench.plant):
        return bench.seen("nothing", sure=0.97)
    if bench.sign("waits for a rack") > 0.15:
        return bench.seen("all_starts", "nothing", sure=0.97)
    if bench.plant.conveyor.timer.dead:
        return bench.seen("nothing", "water_only", sure=0.8)
    return bench.seen("water_only" if passage(bench).stands else "runs_already", "runs_already", sure=0.96)


@look("run_timer.lever_ohms", conveyor=_RACKS)
def lever_ohms(bench: Bench) -> Answer:
    """Lever held over, [ohm]."""
    return contact(bench, bench.plant.conveyor.timer.dead, 0.0)
