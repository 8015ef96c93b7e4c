"""What can be read of the motors' contactors."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import control_share, draws_in, drop_share, starts
from diagnose.simulator.control_parts import Coil
from diagnose.simulator.motoring import coil_share, rattles
from diagnose.simulator.passage import passage
from diagnose.simulator.protecting import dark
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.starting import STIRS, standing

__all__: list[str] = []

_THREE = (3,)
_COIL_OHMS = 0.0166  # ohm for each volt squared of a coil's label: 240 ohm at 120 V; judgement
_OVER = 2.0  # V across a closed contact from which it is poor: common practice


def _pole_open(bench: Bench) -> str:
    """The motor with a pole that does not make: pump, drive, "" for none."""
    motors = bench.plant.motors
    if any(not all(motors[name].poles) for name in bench.plant.pumps):
        return "pump"
    return "drive" if not all(motors["drive"].poles) else ""


def _welded(bench: Bench) -> bool:
    return any(motor.welded for motor in bench.plant.motors.values())


@look("contactor.pole_drop", phases=_THREE)
def pole_drop(bench: Bench) -> Answer:
    """Volts across each closed pole under load."""
    truth = {"pump": "pump_pole", "drive": "drive_pole", "": "all_small"}[_pole_open(bench)]
    return bench.seen(truth, "all_small", sure=0.97)


@look("contactor.contact_look")
def contact_look(bench: Bench) -> Answer:
    """Contacts of the contactor in question, cover off."""
    if _welded(bench):
        return bench.seen("welded", "pitted_all", sure=0.94)
    if _pole_open(bench):
        return bench.seen("burnt", "pitted_all", "usable", sure=0.92)
    return bench.noticed("contacts pitted", "pitted_all", "usable", sure=0.9)


@look("contactor.chatter_listen")
def chatter_listen(bench: Bench) -> Answer:
    """At the closed box as motors start and run."""
    if bench.sign("contactor buzz") > 0.15 or bench.sign("contactor held hum") > 0.15:
        return bench.seen("buzz", "rattle", sure=0.93)
    return bench.seen("rattle" if rattles(bench) else "quiet", "quiet", sure=0.94)


@look("contactor.coil_volts")
def coil_volts(bench: Bench) -> Answer:
    """At its coil, the lowest while it is in and all runs; a poor contact jumps, and lowers it further."""
    volts = bench.plant.plate["control_volts"]
    live = 0.0 if dark(bench) else volts * coil_share(bench)
    return Answer({"": max(0.0, bench.senses.measure("voltmeter", live))})


@look("contactor.tap_look")
def tap_look(bench: Bench) -> Answer:
    """Tap of the control transformer against the supply."""
    above = bench.plant.power.control_share < 0.93
    return bench.seen("tap_above" if above else "right_tap", "right_tap", sure=0.98)


@look("contactor.control_drop")
def control_drop(bench: Bench) -> Answer:
    """Across each closed contact of the coil's circuit."""
    belt, volts = bench.plant.conveyor, bench.plant.plate["control_volts"]
    worst = max(drop_share(bench.plant).values(), default=0.0) * volts
    wet = belt.jam.damp > 0.0 or belt.table.damp > 0.0
    return bench.seen("one_poor" if worst > _OVER or wet else "none_over", "none_over", sure=0.96)


@look("contactor.ring_look")
def ring_look(bench: Bench) -> Answer:
    """Magnet drawn, faces and rings under a lamp."""
    hurt = min(motor.coil.ring for motor in bench.plant.motors.values()) < 0.8
    return bench.seen("broken_or_dirty" if hurt else "whole", "whole", sure=0.98)


@look("contactor.stop_and_clamp")
def stop_and_clamp(bench: Bench) -> Answer:
    """A clamp at the motor's lines as stop is pressed."""
    return bench.seen("stays_on" if _welded(bench) else "goes_dead", "goes_dead", sure=0.99)


@look("contactor.runs_after_stop")
def runs_after_stop(bench: Bench) -> Answer:
    """A minute after stop, by ear."""
    return bench.seen("hums_on" if _welded(bench) else "silent", "silent", sure=0.96)


def _silent_coil(bench: Bench) -> Coil | None:
    """The coil of the contactor that stays out though its circuit gives it volts."""
    name = standing(bench)
    return bench.plant.motors[name].coil if name else None


@look("contactor.pull_in")
def pull_in(bench: Bench) -> Answer:
    """A1-A2 of the contactor whose motor stands, and what it does."""
    coil = _silent_coil(bench)
    if dark(bench) or not starts(bench.plant) or (standing(bench) == "drive" and passage(bench).stands == "contact"):
        return bench.seen("no_volts", "goes_in", sure=0.97)
    if coil is None or draws_in(coil):
        return bench.seen("goes_in", "no_volts", sure=0.98)
    if coil.ohms > 1e3 or (coil.free > 0.9 and control_share(bench.plant) / coil.label < STIRS):
        return bench.seen("silent_with_volts", "hums_with_volts", sure=0.97)
    return bench.seen("hums_with_volts", "silent_with_volts", sure=0.95)


@look("contactor.coil_label")
def coil_label(bench: Bench) -> Answer:
    """Volts on the coil's label against the circuit's."""
    label = (_silent_coil(bench) or Coil()).label
    return bench.seen("agrees" if 1 / 1.1 < label < 1 / 0.85 else "other", "agrees", sure=0.99)


@look("contactor.armature_push")
def armature_push(bench: Bench) -> Answer:
    """The silent contactor's armature under the thumb."""
    free = (_silent_coil(bench) or Coil()).free
    return bench.seen("free" if free > 0.9 else "stuck", "free", sure=0.97)


@look("contactor.coil_ohms")
def coil_ohms(bench: Bench) -> Answer:
    """The silent contactor's coil, one wire off."""
    coil = _silent_coil(bench) or Coil()
    volts = bench.plant.plate["control_volts"] * coil.label
    return bench.value("ohmmeter", min(1e9, coil.ohms * _COIL_OHMS * volts**2))
