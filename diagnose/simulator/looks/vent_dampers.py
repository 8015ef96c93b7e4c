"""What can be read of the vents at both ends and their dampers."""

from __future__ import annotations

from diagnose.simulator.airing import air_now
from diagnose.simulator.airway import ENDS
from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_BOTH = ("both ends",)
_WEAK = 0.75  # share of the wanted air under which a tissue hangs: judgement
_TRAVERSE = "vent traverse"


def _flow(bench: Bench, end: str) -> Answer:
    flow = air_now(bench).exhaust[end]
    return Answer({"": max(0.0, bench.senses.measure(_TRAVERSE, flow))})


@look("vent_dampers.flow_entrance", vents=_BOTH)
def flow_entrance(bench: Bench) -> Answer:
    """Air over the entrance, the fan running."""
    return _flow(bench, "entrance")


@look("vent_dampers.flow_exit", vents=_BOTH)
def flow_exit(bench: Bench) -> Answer:
    """Air over the exit, the fan running."""
    return _flow(bench, "exit")


@look("vent_dampers.slot_tissue", vents=_BOTH)
def slot_tissue(bench: Bench) -> Answer:
    """A tissue at the slot of each end."""
    air = air_now(bench)
    weak = [end for end in ENDS if air.exhaust[end] < _WEAK * bench.plant.air.wanted[end]]
    if len(weak) == 2:
        return bench.seen("both_weak", "exit_weak", sure=0.95)
    if weak:
        return bench.seen(f"{weak[0]}_weak", "both_well", "both_weak", sure=0.93)
    return bench.seen("both_well", "both_weak", sure=0.97)


def _handle(bench: Bench, end: str) -> Answer:
    found = {
        "too_shut": bench.sign(f"{end} handle towards shut"),
        "too_open": bench.sign(f"{end} handle towards open"),
        "blade_loose": bench.sign(f"{end} blade loose"),
    }
    return bench.worst(found, "at_mark", sure=0.97)


@look("vent_dampers.entrance_handle", vents=_BOTH)
def entrance_handle(bench: Bench) -> Answer:
    """The entrance damper turned to both stops."""
    return _handle(bench, "entrance")


@look("vent_dampers.exit_handle", vents=_BOTH)
def exit_handle(bench: Bench) -> Answer:
    """The exit damper turned to both stops."""
    return _handle(bench, "exit")
