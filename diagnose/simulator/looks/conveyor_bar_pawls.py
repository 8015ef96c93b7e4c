"""What can be seen and measured of bar, pawls and drive arm."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.watching import Mishap, most_often

__all__: list[str] = []

_BAR, _RACKS = ("pawl bar",), ("pawl bar", "chain")


def _next(mishap: Mishap) -> str:
    kind, which = mishap
    if mishap == ("lapse", "timer"):
        return "goes_on"  # the next rack lifts the timer's lever
    if kind in ("stands", "lapse", "weak") or which in ("slip", "creep"):
        return "nothing_moves"
    if kind in ("left", "hands"):
        return "goes_on"
    return "" if which == "jump" else "both_stand"


@look("conveyor_bar_pawls.next_rack", conveyor=_RACKS)
def next_rack(bench: Bench) -> Answer:
    """Whether the rack behind carries a standing one on."""
    return most_often(bench, 10, "none_stands", _next)


@look("conveyor_bar_pawls.pawl_row", conveyor=_BAR)
def pawl_row(bench: Bench) -> Answer:
    """Each pawl pressed down and let go."""
    return bench.strongest(
        "all_rise", 0.97, pawl_bent_or_gone="bent_or_missing", pawl_gritty="gritty_slow", pawl_limp="limp"
    )


@look("conveyor_bar_pawls.bar_seat", conveyor=_BAR)
def bar_seat(bench: Bench) -> Answer:
    """The bar pressed down along its length."""
    return bench.strongest("on_all", 0.97, bar_off_a_roller="off_one", bar_sinks_at_several_rollers="sinks")


@look("conveyor_bar_pawls.arm_play", conveyor=_BAR)
def arm_play(bench: Bench) -> Answer:
    """Play at the pin, [m]."""
    return bench.value("feeler gauge", bench.plant.conveyor.drive.arm_play)


@look("conveyor_bar_pawls.stroke_length", conveyor=_BAR)
def stroke_length(bench: Bench) -> Answer:
    """From dead point to dead point, [m]."""
    drive = bench.plant.conveyor.drive
    lost = 2.0 * max(0.0, drive.arm_play - 0.001)
    return bench.value("tape", bench.plant.plate["conveyor_stroke"] * drive.stroke - lost)


@look("conveyor_bar_pawls.lug_offset", conveyor=("chain",))
def lug_offset(bench: Bench) -> Answer:
    """How far two opposite lugs are apart along the track, [m]."""
    chains = bench.plant.conveyor.chains
    return bench.value("tape", 0.06 if chains.one_stands else chains.offset)  # a standing chain: by chance; judgement
