"""What can be seen of wash arms, jets and scrap screens, and where soil is left."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.washing import ware

__all__: list[str] = []


@look("spray_arms.jets_look")
def jets_look(bench: Bench) -> Answer:
    """The wash jets one by one against a lamp."""
    found = {
        "limed": bench.sign("wash jets limed"),
        "soil": bench.sign("soil in the wash jets"),
        "missing": bench.sign("wash jet missing"),
    }
    return bench.worst(found, "clear", sure=0.97)


@look("spray_arms.far_arm")
def far_arm(bench: Bench) -> Answer:
    """The furthest arm beside the nearest."""
    return bench.noticed("far wash arm weak", "far_weak", "alike", sure=0.94)


@look("spray_arms.arms_seated")
def arms_seated(bench: Bench) -> Answer:
    """Seat, seal and place of the arms."""
    found = {"loose": bench.sign("wash arm loose"), "wrong_place": bench.sign("wash arms misplaced")}
    return bench.worst(found, "right", sure=0.97)


@look("spray_arms.spray_reach")
def spray_reach(bench: Bench) -> Answer:
    """Where soil is left on three racks, and of which kind."""
    found = ware(bench)
    kinds = {
        "all_over": found.feeble,
        "one_lane": found.lane,
        "hidden": found.nested,
        "spots_hard": found.dried,
        "loose": found.crumbs,
    }
    worst = max(kinds, key=lambda name: kinds[name])
    if kinds[worst] < 0.1:
        return bench.seen("clean", "all_over", sure=0.93)
    return bench.seen(worst, "all_over", "clean", sure=0.92)


@look("scrap_screens.screens_look")
def screens_look(bench: Bench) -> Answer:
    """Trays and screens."""
    found = {"felted": bench.sign("scrap trays felted"), "out": bench.sign("scrap screen out")}
    return bench.worst(found, "in_order", sure=0.95)
