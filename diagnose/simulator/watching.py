"""What somebody sees who watches racks or ware go through: every kind of stop or mishap, and how often it comes."""

from __future__ import annotations

from collections.abc import Callable

from diagnose.simulator.bench import Bench
from diagnose.simulator.conveying import held_hard
from diagnose.simulator.motoring import tripped
from diagnose.simulator.passage import happens, passage
from diagnose.simulator.senses import Answer

__all__ = ["Mishap", "mishaps", "most_often", "yields"]

Mishap = tuple[str, str]  # kind (stands, lapse, loses, weak, left, held, table, own, hands, turned, one chain), which

_LEAST_LOST = 0.05  # share of its travel that a drive must lose for it to be seen: judgement
_WEDGED = 1.3  # pull that a rack turned across bears over the sound one: judgement


def mishaps(bench: Bench) -> dict[Mishap, float]:
    """Every kind of mishap on this machine now, and the share of racks (or of the time at rush) that meets with it."""
    found = passage(bench)
    if found.stands:
        return {("stands", found.contact if found.stands == "contact" else found.stands): 1.0}
    seen: dict[Mishap, float] = {("lapse", contact): share for contact, share in found.stops.items()}
    for how, lost in (("slip", found.slip), ("creep", found.creep), ("jump", found.jump)):
        if lost > _LEAST_LOST:
            seen["loses", how] = min(1.0, 0.2 + 1.5 * lost)
    if "drive" in tripped(bench):
        seen["weak", "motor"] = 0.3
    if bench.plant.conveyor.chains.one_stands:
        seen["one chain", "stands"] = 0.9
    seen |= {("left", how): share for how, share in found.left.items()}
    seen |= {("held", what): share for what, (share, _) in found.held.items()}
    seen |= {("table", place): share for place, share in found.tables.items()}
    seen |= {("own", ""): found.own, ("hands", ""): found.hands, ("turned", ""): found.turned}
    return {mishap: share for mishap, share in seen.items() if share > 0.0}


def most_often(
    bench: Bench,
    tries: int,
    sound: str,
    told: Callable[[Mishap], str],
    instead: tuple[str, ...] = (),
    sure: float = 0.95,
) -> Answer:
    """What a watch over so many racks is summed up as: the outcome that came most often, `sound` where nothing came.

    `told` gives the outcome of a mishap, "" for one that this watch does not see; `instead` are outcomes that the one
    seen may be taken for.
    """
    counts: dict[str, int] = {}
    for mishap, share in mishaps(bench).items():
        outcome = told(mishap)
        if outcome and outcome != sound:
            counts[outcome] = counts.get(outcome, 0) + happens(bench, share, tries)
    most = max(counts, key=lambda outcome: counts[outcome], default=sound)
    if not counts.get(most):
        return bench.seen(sound, *instead, sure=0.99)
    return bench.seen(most, *(instead or (sound,)), sure=sure)


def yields(bench: Bench, mishap: Mishap) -> str:
    """What gives way while a rack is held in the machine: jam, clutch, drive or rack."""
    kind, which = mishap
    held = passage(bench).held
    bears = held[which][1] if kind == "held" else _WEDGED
    return held_hard(bench.plant.conveyor, bears)
