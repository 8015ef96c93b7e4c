"""What can be read of the operator's panel."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import chain, lost_at
from diagnose.simulator.protecting import dark
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []


@look("operator_panel.selector_look")
def selector_look(bench: Bench) -> Answer:
    """What switch and selector point at."""
    return bench.noticed("selector elsewhere", "elsewhere", "at_run", sure=0.98)


@look("operator_panel.other_button")
def other_button(bench: Bench) -> Answer:
    """The other start button, and the fifth push of the same."""
    return bench.noticed("another push starts it", "other_works", "no_difference", sure=0.96)


@look("operator_panel.keys_answer")
def keys_answer(bench: Bench) -> Answer:
    """Each key once, and none by itself; a dark panel has none that answer, and nobody then calls the keys dead."""
    return bench.noticed("keys wet", "dead_or_wild", "answer", sure=0.97)


@look("operator_panel.inputs_outputs")
def inputs_outputs(bench: Bench) -> Answer:
    """Lamps of the board, start held."""
    lost = lost_at(bench.plant)
    if dark(bench) or lost not in ("", "order", "start") or chain(bench.plant)["permits"] < 0.3:
        return bench.seen("input_missing", "in_and_out", sure=0.97)
    if lost == "order":
        truth = "output_none" if bench.sign("board output dead") > 0.0 else "no_order"
        return bench.seen(truth, "in_and_out", sure=0.96)
    return bench.seen("no_order" if lost == "start" else "in_and_out", "in_and_out", sure=0.95)


@look("operator_panel.mode_look", conveyor=("pawl bar", "chain"))
def mode_look(bench: Bench) -> Answer:
    """Where the conveyor's mode switch stands."""
    return bench.seen("hand" if bench.plant.conveyor.table.jumped else "automatic", "automatic", sure=0.98)
