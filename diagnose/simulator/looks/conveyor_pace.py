"""How fast bar, chain or belt and what stands on them go: measured with tape and watch."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.passage import passage
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.watching import mishaps

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_WAITS = 0.35  # share of its time that a rack which is left behind once loses by it: judgement
_FED = 0.93  # share of the places that a crew fills at rush: judgement
_STANDS = 0.02  # of the plate's speed: as good as standing; judgement


def _racks(bench: Bench) -> float:
    """Speed of a rack through the machine over the plate's, waits counted in."""
    found = passage(bench)
    return found.racks * (1.0 - _WAITS * min(1.0, found.misses))


@look("conveyor_bar_pawls.rack_speed")
def rack_speed(bench: Bench) -> Answer:
    """Of a rack or flight, [m/s]."""
    return bench.value("bucket and watch", bench.plant.plate["conveyor_speed"] * _racks(bench))


@look("conveyor_bar_pawls.zone_time")
def zone_time(bench: Bench) -> Answer:
    """Through the wash zone, [s]."""
    share, plate = _racks(bench), bench.plant.plate
    if share < _STANDS:
        return bench.value("watch", 594.0)
    return bench.value("watch", min(594.0, plate["wash_zone"] / (plate["conveyor_speed"] * share)))


@look("conveyor_bar_pawls.strokes")
def strokes(bench: Bench) -> Answer:
    """Forward strokes, lugs or flights in the time, [1/s]."""
    plate = bench.plant.plate
    return bench.value("bucket and watch", plate["conveyor_speed"] / plate["conveyor_stroke"] * passage(bench).bar)


@look("conveyor_bar_pawls.racks_counted", conveyor=_RACKS)
def racks_counted(bench: Bench) -> Answer:
    """At rush, over ten minutes, [1/s]."""
    found = passage(bench)
    going = 1.0 - 0.5 * min(0.9, sum(found.stops.values()))
    return bench.value("bucket and watch", bench.plant.plate["racks_per_hour"] * _FED * found.racks * going)


@look("conveyor_bar_pawls.pace_pattern")
def pace_pattern(bench: Bench) -> Answer:
    """Twenty strokes empty, twenty full."""
    found, belt = passage(bench), bench.plant.conveyor
    empty, full = found.bar_empty * belt.drive.stroke, found.bar * belt.drive.stroke
    lapses = max((share for kind, share in mishaps(bench).items() if kind[0] in ("lapse", "weak")), default=0.0)
    if found.stands or found.jump > 0.04 or found.slip > 0.3 or lapses > 0.1 or belt.flights.limps > 0.2:
        return bench.seen("stops_and_goes", "slower_full", sure=0.93)
    if full < 0.93 * empty:
        return bench.seen("slower_full", "stops_and_goes", "slow_alike", sure=0.92)
    if empty < 0.9:
        return bench.seen("slow_alike", "alike", sure=0.9)
    return bench.seen("fast_alike" if empty > 1.1 else "alike", "alike", "slow_alike", sure=0.93)
