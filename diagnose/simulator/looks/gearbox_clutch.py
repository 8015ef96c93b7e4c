"""What can be seen, heard and measured from the conveyor motor's shaft to the bar, chain or belt."""

from __future__ import annotations

from functools import partial

from diagnose.simulator.bench import Bench
from diagnose.simulator.conveying import ARM, PULL
from diagnose.simulator.passage import passage, sinking
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.watching import Mishap, most_often, yields

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_STOP_AT = 3.75  # pull over the sound one at which one stops and writes 90 lbf or more: 94 lbf, judgement
_PARTED_PULLS = 0.2  # what a parted drive still drags along: judgement


def _stands(bench: Bench, mishap: Mishap) -> str:
    kind, which = mishap
    if kind in ("stands", "lapse", "weak"):
        return "motor_runs" if which in ("parted", "slips") else "all_silent"
    if kind == "loses":
        return "motor_runs"
    if kind == "held" or kind in ("turned", "own"):
        return {"jam": "all_silent", "drive": "all_silent", "clutch": "motor_runs"}.get(
            yields(bench, mishap), "bar_moves"
        )
    return "bar_moves"


@look("gearbox_clutch.when_it_stops", conveyor=_RACKS)
def when_it_stops(bench: Bench) -> Answer:
    """Bar and motor while a rack stands still."""
    return most_often(bench, 20, "no_stop", partial(_stands, bench))


@look("gearbox_clutch.sound")
def sound(bench: Bench) -> Answer:
    """The drive end with three full racks in."""
    found, drive = passage(bench), bench.plant.conveyor.drive
    marked = {
        "clicks": max(
            bench.sign("drive chain clicks and bangs"), bench.sign("gears growl and lurch"), 2.0 * found.jump
        ),
        "thumps": bench.sign("drive arm knocks at each end"),
        "squeals": max(bench.sign("clutch squeals"), bench.sign("drive belt squeals"), 0.8 * (found.slip > 0.15)),
    }
    if drive.parted == "gear":
        marked["clicks"] = 0.8
    return bench.worst(marked, "ordinary", sure=0.9)


@look("gearbox_clutch.witness_marks")
def witness_marks(bench: Bench) -> Answer:
    """Painted lines, run into the trouble."""
    found, parted = passage(bench), bench.plant.conveyor.drive.parted
    by = {"coupling": "coupling_parted", "gear": "output_stood", "hub": "hub_parted"}
    if parted:
        return bench.seen(by[parted], "lined_up", sure=0.97)
    slipped = found.slip > 0.05 or found.stands == "slips" or sinking(bench) == "clutch"
    return bench.seen("clutch_parted" if slipped else "lined_up", "lined_up", sure=0.96)


@look("gearbox_clutch.clutch_pull", conveyor=_RACKS)
def clutch_pull(bench: Bench) -> Answer:
    """Pull at which bar or motor stops, [N]: what gives way first, clutch, jam switch or a motor that can't."""
    belt = bench.plant.conveyor
    gives = belt.slips_at if belt.jam.bridged else min(belt.slips_at, belt.jam.gap / ARM)
    if belt.drive.parted:
        gives = _PARTED_PULLS
    elif passage(bench).stands in ("contact", "motor"):
        gives = 0.0
    return bench.value("pull scale", PULL * min(gives, _STOP_AT))


@look("gearbox_clutch.clutch_nut")
def clutch_nut(bench: Bench) -> Answer:
    """The nut against its paint mark."""
    return bench.strongest(
        "on_mark",
        0.96,
        clutch_nut_run_back="backed_off",
        clutch_nut_little_back="little_back",
        clutch_nut_run_down="run_down",
    )


@look("gearbox_clutch.clutch_faces")
def clutch_faces(bench: Bench) -> Answer:
    """Dry and thick, wet, or glazed."""
    return bench.strongest("dry_and_thick", 0.96, clutch_plates_wet="wet_or_oily", clutch_faces_glazed="glazed_or_thin")


@look("gearbox_clutch.shaft_and_key")
def shaft_and_key(bench: Bench) -> Answer:
    """Rocked from the crank back to the motor."""
    by = {"coupling": "coupling_free", "gear": "gear_free", "hub": "hub_free", "": "firm"}
    return bench.seen(by[bench.plant.conveyor.drive.parted], "firm", sure=0.97)


@look("gearbox_clutch.drive_chain_sag")
def drive_chain_sag(bench: Bench) -> Answer:
    """Of the drive chain's slack side, [m/m]."""
    return bench.value("level", bench.plant.conveyor.drive.sag)


@look("gearbox_clutch.gearing_look")
def gearing_look(bench: Bench) -> Answer:
    """Teeth and ratio against the sheet."""
    return bench.strongest("as_sheet", 0.97, geared_down="geared_down", geared_up="geared_up")


@look("gearbox_clutch.belt_thumb")
def belt_thumb(bench: Bench) -> Answer:
    """The belt between motor and reducer."""
    return bench.noticed("drive belt slack and shining", "slack", "firm", sure=0.97)
