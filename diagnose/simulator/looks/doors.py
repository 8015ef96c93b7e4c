"""What can be read of doors and covers."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []


@look("doors.edges_look")
def edges_look(bench: Bench) -> Answer:
    """Every door edge while it sprays, the door pressed home too."""
    found = {
        "stops_pressed": bench.sign("door not latched"),
        "one_corner": bench.sign("door crooked"),
        "spits": bench.sign("spray spits at a door"),
        "fine_line": bench.sign("door gasket flat"),
    }
    return bench.worst(found, "dry", sure=0.95)


@look("doors.covers_look")
def covers_look(bench: Bench) -> Answer:
    """Covers, plates and holes away from the doors."""
    found = {"plate_open": bench.sign("cover off"), "hole_open": bench.sign("hole unplugged")}
    return bench.worst(found, "closed", sure=0.97)


@look("doors.paper_pull")
def paper_pull(bench: Bench) -> Answer:
    """A strip of paper at eight places of the closed door."""
    found = {
        "free_place": bench.sign("door gasket flat"),
        "free_side": max(bench.sign("door crooked"), 0.8 * bench.sign("door not latched")),
    }
    return bench.worst(found, "held", sure=0.95)


@look("doors.edge_gap")
def edge_gap(bench: Bench) -> Answer:
    """Difference of the gap between both lower corners."""
    crooked = bench.sign("door crooked")
    return bench.value("tape", 0.0012 + (0.003 + 0.006 * crooked) * (crooked > 0.0))


@look("doors.seam_spray")
def seam_spray(bench: Bench) -> Answer:
    """The pipes behind the place that spits."""
    return bench.noticed("spray spits at a door", "aims_out", "in_order", sure=0.97)
