"""What the kitchen says of the conveyor: racks or ware that jam, a bar that stands, pace, and the full table."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.motoring import tripped
from diagnose.simulator.passage import Passage, overrun, passage
from diagnose.simulator.registry import complaint

__all__ = ["stops_by_itself"]

_RACKS = ("pawl bar", "chain")
_SEEN = 0.03  # share of racks from which a crew speaks of it: judgement
_PACE = 0.09  # of the plate's speed by which it must be off to be noticed: judgement
# Loudness of what is said (1 just noticed, 10 very loud): judgement throughout.


def _by_share(share: float) -> float:
    return 1.0 + 9.0 * min(share, 0.8) if share > _SEEN else 0.0


def _drive(found: Passage) -> float:
    """Of a drive that loses strokes."""
    lost = max(found.slip, 1.5 * found.jump)
    return 1.5 + 5.0 * lost if lost > 0.05 else 0.0


def _weak_motor(bench: Bench) -> float:
    return 2.0 if "drive" in tripped(bench) else 0.0


@complaint("racks_jam", conveyor=_RACKS)
def racks_jam(bench: Bench) -> float:
    """Racks stand in the machine though it runs, go askew, or have to be pushed."""
    found = passage(bench)
    racks = found.misses + found.holds + found.turned + sum(found.tables.values()) + found.own + found.hands
    lapses = max((1.5 + 2.5 * share for share in found.stops.values()), default=0.0)
    inside = 3.0 + 5.0 * found.stops["timer"] if "timer" in found.stops else 0.0
    nothing = 4.0 if found.stands in ("parted", "slips") else 0.0
    full = 3.0 if found.contact == "table" and bench.plant.conveyor.table.pressed == "rack" else 0.0
    return max(_by_share(racks), _drive(found), lapses, inside, nothing, full, _weak_motor(bench))


@complaint("flight_jams", conveyor=("flight",))
def flight_jams(bench: Bench) -> float:
    """Ware falls, strikes, heaps up at the exit; the belt jerks, slants, slows or stops under it."""
    found, belt = passage(bench), bench.plant.conveyor
    ware = belt.flights.falls + belt.flights.strikes + belt.flights.drawn_down + found.holds
    slants = 1.0 + 4.0 * min(1.0, belt.flights.askew / 0.012) if belt.flights.askew > 0.003 else 0.0
    limps = 4.0 * belt.flights.limps
    lapses = max((1.5 + 2.5 * share for share in found.stops.values()), default=0.0)
    end = 5.0 if found.contact == "table" else 0.0
    nothing = 4.0 if found.stands in ("parted", "slips") else 0.0
    return max(_by_share(ware), slants, limps, _drive(found), lapses, end, nothing, _weak_motor(bench))


@complaint("conveyor_dead")
def conveyor_dead(bench: Bench) -> float:
    """Water runs, and nothing carries the racks."""
    found = passage(bench)
    rightly = found.contact == "table" and bench.plant.conveyor.table.pressed == "rack"
    by = {"contact": 5.0 if rightly else 7.0, "motor": 6.5, "parted": 8.0, "slips": 6.0}
    return by.get(found.stands, 0.0)


@complaint("conveyor_pace")
def conveyor_pace(bench: Bench) -> float:
    """Too slow, too fast, or in jerks."""
    found = passage(bench)
    if found.stands:
        return 0.0
    off = abs(found.bar_empty * bench.plant.conveyor.drive.stroke - 1.0)
    steady = 1.0 + 12.0 * (off - _PACE) if off > _PACE else 0.0
    uneven = max(found.slip, found.creep, 1.2 * found.jump)
    under_racks = 1.0 + 6.0 * uneven if uneven > 0.05 else 0.0
    late = 0.6 * _by_share(found.misses)
    halts = 2.0 * found.stops.get("jam", 0.0) + (0.5 if "jam" in found.stops else 0.0)
    heavy = 0.6 * _weak_motor(bench)
    return max(steady, under_racks, late, halts, heavy, 3.5 * bench.sign("another pace wished for"))


@complaint("table_full_runs", conveyor=_RACKS)
def table_full_runs(bench: Bench) -> float:
    """Racks are pushed off the end, or climb, when the clean table is full."""
    over = overrun(bench)
    return 1.0 + 6.5 * over if over > 0.1 else 0.0


@complaint("stops_table_empty", conveyor=_RACKS)
def stops_table_empty(bench: Bench) -> float:
    """It stops as if the table were full."""
    found = passage(bench)
    table = bench.plant.conveyor.table
    for_good = 0.0
    if found.stands == "contact" and not (found.contact == "table" and table.pressed == "rack"):
        for_good = {"table": 7.5, "jam": 4.5, "timer": 0.0}[found.contact]
    touchy = 3.5 + 5.0 * found.stops["table"] if "table" in found.stops and not _fills(bench) else 0.0
    others = max((2.0 + 3.0 * found.stops[c] for c in ("jam", "timer") if c in found.stops), default=0.0)
    waits = 3.0 * bench.sign("waits for a rack")
    return max(for_good, touchy, others, waits, 2.5 * found.slip if found.slip > 0.15 else 0.0)


def _fills(bench: Bench) -> bool:
    return bench.sign("clean table fills again") > 0.0


def stops_by_itself(bench: Bench) -> float:
    """How loudly it is said that the conveyor stops in the run, for `stops_midrun`."""
    found = passage(bench)
    for_good = {"jam": 6.0, "table": 4.0, "timer": 0.0}.get(found.contact, 0.0) if found.stands == "contact" else 0.0
    flight = bench.plant.plate.traits["conveyor"] == "flight"
    if found.contact == "table" and bench.plant.conveyor.table.pressed != "rack" and not flight:
        for_good = 0.0  # a flap that is pressed wrongly: only the racks stand
    by = {"jam": 2.0, "timer": 2.0, "table": 4.0 if _fills(bench) else 0.0}
    lapses = max((by[c] + 3.0 * share for c, share in found.stops.items() if by[c] > 0.0), default=0.0)
    wedged = 4.0 * bench.sign("ware wedged under the belt")
    return max(for_good, lapses, wedged, 3.5 * bench.sign("waits for a rack"))
