"""What can be seen of how the machine is loaded, fed and unloaded, and of its racks."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_HANDLED = (
    "racks broken",
    "racks of two sizes",
    "ware overhangs",
    "racks fed askew",
    "racks pushed or pulled",
    "racks wrong side first",
)


@look("operation.sound_rack", conveyor=_RACKS)
def sound_rack(bench: Bench) -> Answer:
    """A sound, empty rack fed squarely: it stops where machine or table hold it, not for racks or hands."""
    belt = bench.plant.conveyor
    handled = max(bench.sign(name) for name in _HANDLED) > 0.12
    held = (belt.jams > 0.03 and not handled) or bench.restarted.standing.speed <= 0.0
    return bench.seen("stops_too", "passes", sure=0.85) if held else bench.seen("passes", "stops_too", sure=0.97)


@look("operation.racks_look", conveyor=_RACKS)
def racks_look(bench: Bench) -> Answer:
    """The racks that stopped, on a flat table."""
    found = {
        "broken_or_warped": bench.sign("racks broken"),
        "two_sizes": max(bench.sign("racks of two sizes"), 0.3 * bench.sign("racks wrong side first")),
    }
    return bench.worst(found, "sound_and_alike", sure=0.95)


@look("operation.rack_diagonals", conveyor=_RACKS)
def rack_diagonals(bench: Bench) -> Answer:
    """Difference of the two diagonals: 2 mm of a sound rack, up to 15 mm of a warped one."""
    return bench.value("tape", 0.002 + 0.013 * bench.sign("racks broken"))


@look("operation.load_look", conveyor=_RACKS)
def load_look(bench: Bench) -> Answer:
    """Ware over the rim or too high."""
    return bench.worst({"stands_out": bench.sign("ware overhangs")}, "within", sure=0.96)


@look("operation.feed_watch", conveyor=_RACKS)
def feed_watch(bench: Bench) -> Answer:
    """Ten racks fed and taken off at the rush."""
    found = {
        "askew": bench.sign("racks fed askew"),
        "pushed_or_pulled": bench.sign("racks pushed or pulled"),
        "wrong_way": bench.sign("racks wrong side first"),
    }
    return bench.worst(found, "square_and_free", sure=0.93)


@look("operation.rack_load")
def rack_load(bench: Bench) -> Answer:
    """Whether each piece stands free."""
    return bench.worst({"covered": bench.sign("ware nested")}, "free", sure=0.95)


@look("operation.taken_off")
def taken_off(bench: Bench) -> Answer:
    """Ten racks at the clean end."""
    found = {"at_once": bench.sign("stacked at once"), "same_hands": bench.sign("hands soil the ware")}
    return bench.worst(found, "in_order", sure=0.95)


@look("operation.racks_wiped")
def racks_wiped(bench: Bench) -> Answer:
    """White paper over bars and table."""
    return bench.worst({"dirty": bench.sign("racks soiled")}, "white", sure=0.95)
