"""What happens as start is pressed, and what stops the machine in the run and brings it back."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import chain, lost_at, shakes_open, starts
from diagnose.simulator.motoring import rattles, tripped
from diagnose.simulator.passage import passage
from diagnose.simulator.protecting import dark, opens

__all__ = ["STIRS", "lamps_lit", "silent_pump", "standing", "start_pressed", "stopped"]

_BEFORE_LAMPS = ("feed", "breaker", "transformer", "fuse")
# What opened the chain in the run -> what brought it back.
_BROUGHT_BACK = {
    "wire": "a_knock",
    "doors": "door_or_water",
    "door or water": "door_or_water",
    "stops": "start_at_once",
    "keys": "start_at_once",
    "permit": "after_heat",
}
STIRS = 0.45  # share of its volts below which a coil does not even stir its armature: judgement
_STOPS_PUMPS = 0.33  # of a tank: below it the low-water cut-out holds its pump; judgement


def lamps_lit(bench: Bench) -> bool:
    """Whether the panel's lamps get volts: from behind the power switch on."""
    lost = lost_at(bench.plant)
    if dark(bench) or lost in _BEFORE_LAMPS:
        return False
    return lost != "switch" or bench.sign("selector in fill or drain") > 0.0


def silent_pump(bench: Bench) -> str:
    """A pump whose contactor stays out though it is called, "" where none."""
    return next((name for name in bench.plant.pumps if not bench.plant.motors[name].coil_works), "")


def standing(bench: Bench) -> str:
    """The motor that does not run when all are called, for want of its contactor: pump, drive, ""."""
    if silent_pump(bench):
        return silent_pump(bench)
    found = passage(bench)
    return "drive" if not bench.plant.motors["drive"].coil_works or found.stands == "contact" else ""


def start_pressed(bench: Bench) -> str:
    """What the start button brings, by the outcomes of that look."""
    plant = bench.plant
    if not lamps_lit(bench):
        return "dark_dead"
    if lost_at(plant) or not plant.control.links["relay"] or chain(plant)["coil"] < STIRS:
        return "lamps_only"
    if not plant.control.holds:
        return "while_held"
    if not starts(plant) or rattles(bench):
        return "rattles"
    if silent_pump(bench):
        return "part_still"
    if bench.sign("waits for a rack") > 0.15:
        return "with_rack"
    return "dark_runs" if bench.sign("lamp stays dark") > 0.15 else "all_runs"


def stopped(bench: Bench) -> tuple[str, str]:
    """The last stop of its own: what stood (`all`, `part`, "" where there was none), and what brought it back."""
    plant = bench.plant
    if opens(bench)[0]:
        return "all", "breaker_reset"
    if not plant.control.links["fuse"]:
        return "all", "dark_then_fuse"
    if not starts(plant):
        return "", "never_stopped"
    if tripped(bench):
        return "part", "after_cooling"
    shaken = shakes_open(plant)
    if shaken in _BROUGHT_BACK:
        return "all", _BROUGHT_BACK[shaken]
    return _part(bench)


def _part(bench: Bench) -> tuple[str, str]:
    """Stops of one part alone."""
    if rattles(bench) or bench.sign("contactor buzz") > 0.15:
        return "part", "a_knock" if bench.sign("contactor buzz") > 0.15 else "start_at_once"
    found = passage(bench)
    if bench.sign("waits for a rack") > 0.15 or found.contact == "table" or "timer" in found.stops:
        return "part", "next_rack"
    if found.contact == "jam" or "jam" in found.stops:
        return "part", "jam_cleared"
    if "table" in found.stops:
        return "part", "next_rack"
    if bench.sign("cut-out says low") > 0.15:
        return "part", "a_knock"
    if any(level < _STOPS_PUMPS for level in bench.late[-1].levels.values()):
        return "part", "door_or_water"
    return "", "never_stopped"
