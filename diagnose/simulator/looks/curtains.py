"""What can be read of curtains, and where steam comes out."""

from __future__ import annotations

from diagnose.simulator.airing import escapes, rinses_out
from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import flashes
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_TWO = (2,)
_OPENING = 0.22  # m of opening that is left where nothing hangs any more: judgement
_SOUND = 0.008  # m between sound strips at rest


@look("curtains.where_steam")
def where_steam(bench: Bench) -> Answer:
    """Both ends, doors and covers watched, also between racks."""
    lost = escapes(bench)
    ends = {"entrance": lost["entrance"], "exit": lost["exit"]}
    most, least = max(ends.values()), min(ends.values())
    if lost["doors"] > 0.1 and lost["doors"] > 0.7 * most:
        return bench.seen("doors", "both_ends", sure=0.97)
    if most < 0.03 and flashes(bench):
        return bench.seen("only_while_rinsing", "exit", sure=0.93)
    if most < 0.03:
        return bench.seen("none", "exit", sure=0.98)
    if rinses_out(bench):
        return bench.seen("only_while_rinsing", "exit", sure=0.93)
    if least > 0.45 * most or (bench.plant.plate.has(vents="hood") and bench.plant.air.filters_open < 0.8):
        return bench.seen("both_ends", "exit", "entrance", sure=0.96)
    worst = max(ends, key=lambda end: ends[end])
    return bench.seen(worst, "both_ends", sure=0.95)


def _strips(bench: Bench, end: str) -> Answer:
    found = {
        "missing": bench.sign(f"{end} strips gone"),
        "torn": bench.sign(f"{end} strips torn"),
        "wrong_order": bench.sign(f"{end} curtains changed over"),
        "held_open": 2.0 * bench.plant.air.held[end],
    }
    return bench.worst(found, "whole_and_right", sure=0.97)


def _gap(bench: Bench, end: str) -> Answer:
    """At rest, no rack in it: what holds the strips open is drawn back first."""
    opening = _SOUND + _OPENING * bench.plant.air.gap[end]
    return Answer({"": max(0.0, bench.senses.measure("tape", opening))})


@look("curtains.entrance_look")
def entrance_look(bench: Bench) -> Answer:
    """The entrance's curtains."""
    return _strips(bench, "entrance")


@look("curtains.exit_look")
def exit_look(bench: Bench) -> Answer:
    """The exit's curtains."""
    return _strips(bench, "exit")


@look("curtains.entrance_gap")
def entrance_gap(bench: Bench) -> Answer:
    """Widest opening at the entrance."""
    return _gap(bench, "entrance")


@look("curtains.exit_gap")
def exit_gap(bench: Bench) -> Answer:
    """Widest opening at the exit."""
    return _gap(bench, "exit")


@look("curtains.spray_watch", tanks=_TWO)
def spray_watch(bench: Bench) -> Answer:
    """Whether spray strikes the exit curtain from inside."""
    found = {"mist": bench.sign("inner curtain gone"), "struck": bench.sign("rinse pipe turned")}
    return bench.worst(found, "still", sure=0.96)


@look("curtains.inner_look", tanks=_TWO)
def inner_look(bench: Bench) -> Answer:
    """Behind the power-rinse door."""
    found = {"curtain_gone": bench.sign("inner curtain gone"), "pipe_turned": bench.sign("rinse pipe turned")}
    return bench.worst(found, "in_order", sure=0.98)
