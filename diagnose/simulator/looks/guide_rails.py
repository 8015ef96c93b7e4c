"""What can be seen and measured of the racks' way, and of racks that stop on it."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.conveying import PULL
from diagnose.simulator.passage import passage
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.watching import Mishap, most_often

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_RACK = 89.0  # N, 20 lbf: the rack that is pulled along the track
_SQUEEZED = 0.006  # m free beside a rack below which swollen racks rub on both rails: judgement


def _run(mishap: Mishap) -> str:
    kind, which = mishap
    if kind in ("stands", "lapse", "weak"):
        return "all_stand"
    if kind == "loses":
        return "jerks"
    if kind == "table":
        return "stops_at_table"
    if kind in ("turned", "one chain", "hands") or which == "object":
        return "turns_or_climbs"
    return "stops_inside"


@look("guide_rails.rack_run", conveyor=_RACKS)
def rack_run(bench: Bench) -> Answer:
    """Ten racks as the kitchen loads them."""
    return most_often(bench, 10, "passes", _run)


def _place(mishap: Mishap) -> str:
    kind, which = mishap
    if kind == "own" or which == "light racks":
        return "certain_racks"
    fixed = (kind == "held" and which not in ("object", "squeeze")) or kind == "table" or which == "at one place"
    return "same_spot" if fixed else "anywhere"


@look("guide_rails.same_place", conveyor=_RACKS)
def same_place(bench: Bench) -> Answer:
    """Twenty racks, each stop marked with tape."""
    return most_often(bench, 20, "no_stop", _place)


@look("guide_rails.path_look")
def path_look(bench: Bench) -> Answer:
    """Along the track with a lamp."""
    return bench.strongest(
        "clear",
        0.96,
        spray_arm_hangs_in_the_way="arm_down",
        curtain_hangs_in_the_way="curtain_in",
        ware_on_the_track="ware_on_track",
    )


@look("guide_rails.curtain_tied", conveyor=_RACKS)
def curtain_tied(bench: Bench) -> Answer:
    """The curtain at the place of the stop tied up."""
    held = passage(bench).held
    if not held:
        return bench.seen("no_difference", "stops_still", sure=0.98)
    return bench.seen("passes_now" if "curtain" in held else "stops_still", "no_difference", sure=0.95)


@look("guide_rails.rail_straightedge", conveyor=_RACKS)
def rail_straightedge(bench: Bench) -> Answer:
    """Straightedge along each rail, and a push."""
    return bench.strongest("straight_and_firm", 0.97, rail_bowed="bowed", rail_loose="moves")


@look("guide_rails.rail_gap", conveyor=_RACKS)
def rail_gap(bench: Bench) -> Answer:
    """What is free beside a rack, [m]."""
    return bench.value("tape", max(0.0, bench.plant.conveyor.track.clearance))


@look("guide_rails.joint_step", conveyor=_RACKS)
def joint_step(bench: Bench) -> Answer:
    """Step where sections meet, [m]."""
    return bench.value("feeler gauge", bench.plant.conveyor.track.step)


@look("guide_rails.track_slide", conveyor=_RACKS)
def track_slide(bench: Bench) -> Answer:
    """Pull that slides a rack of 20 lb, [N]."""
    track = bench.plant.conveyor.track
    squeeze = 0.25 * PULL * (track.clearance < _SQUEEZED)
    return bench.value("pull scale", _RACK * track.friction + squeeze)
