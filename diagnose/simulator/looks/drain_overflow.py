"""What can be read at drain and overflow."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import rest_flow
from diagnose.simulator.senses import Answer
from diagnose.simulator.tank_state import lost_at_rest, runs_in

__all__: list[str] = []


def _over(bench: Bench) -> float:
    """What leaves at rest at the waste pipe, [m3/s]."""
    return max(runs_in(bench) - lost_at_rest(bench), 0.0) + sum(t.drain_leak for t in bench.plant.tanks.values())


@look("drain_overflow.overflow_rate")
def overflow_rate(bench: Bench) -> Answer:
    """What leaves at the waste pipe without a rack."""
    return Answer({"": max(0.0, bench.senses.measure("bucket and watch", _over(bench)))})


@look("drain_overflow.level_held")
def level_held(bench: Bench) -> Answer:
    """Whether the level holds, fill shut and pumps off."""
    lost = lost_at_rest(bench) / bench.plant.rinse.rated_flow
    if lost > 0.8:
        return bench.seen("sinks_fast", sure=1.0)
    if bench.sign("standpipe not home") > 0.15:
        return bench.seen("sinks_pressed_holds", "sinks", sure=0.94)
    return bench.seen("sinks" if lost > 0.02 else "holds", "holds", sure=0.96)


@look("drain_overflow.drain_look")
def drain_look(bench: Bench) -> Answer:
    """Lever, plug and overflow pipe."""
    return bench.strongest(
        "shut_and_home",
        0.95,
        drain_lever_open="open",
        standpipe_not_home="pipe_not_home",
        waste_pipe_trickles="trickles",
    )


@look("drain_overflow.fill_shut")
def fill_shut(bench: Bench) -> Answer:
    """The fill's own stop shut while it runs over."""
    if runs_in(bench) < 0.02 * bench.plant.rinse.rated_flow:
        return bench.seen("still_before", sure=0.98)
    by_rinse = rest_flow(bench) > 0.5 * runs_in(bench)
    return bench.seen("runs_on" if by_rinse else "comes_to_rest", sure=0.98)


@look("drain_overflow.fill_uncommanded")
def fill_uncommanded(bench: Bench) -> Answer:
    """The fill's command taken away."""
    if runs_in(bench) - rest_flow(bench) < 0.02 * bench.plant.rinse.rated_flow:
        return bench.seen("nothing_ran", sure=0.98)
    return bench.seen("stops" if bench.sign("fill called for") > 0.0 else "runs_on", sure=0.97)


@look("drain_overflow.overflow_seen")
def overflow_seen(bench: Bench) -> Answer:
    """Where the water stands under racks."""
    stands = max(bench.sign("overflow choked"), bench.sign("waste backs up"))
    return Answer(outcome=bench.senses.notice(stands, "over_rim", "at_lip", 0.96))


@look("drain_overflow.drain_test")
def drain_test(bench: Bench) -> Answer:
    """Minutes to empty with the drain open."""
    held = bench.sign("waste backs up")
    return bench.value("watch", 60.0 * (14.0 + 10.0 * held if held > 0.15 else 4.5))


@look("drain_overflow.floor_sink_look")
def floor_sink_look(bench: Bench) -> Answer:
    """How the floor sink takes the water."""
    return bench.strongest("takes_all", 0.96, waste_backs_up="stands", waste_splashes="splashes")


@look("drain_overflow.kitchen_saw")
def kitchen_saw(bench: Bench) -> Answer:
    """When they saw the overflow run."""
    racks = bench.sign("overflow runs as it must") > 0.15 or bench.plant.rinse.run_over > 4.0
    racks = racks or bench.sign("overflow choked") > 0.15
    return bench.seen("under_racks" if racks else "at_rest_too", "at_rest_too", sure=0.95)


@look("drain_overflow.bypass_seen")
def bypass_seen(bench: Bench) -> Answer:
    """Whether the rinse water falls into the tank."""
    return bench.noticed("rinse goes past the tank", "to_waste", "into_tank", sure=0.96)
