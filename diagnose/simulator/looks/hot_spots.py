"""What nose, eyes and probes tell of a burning smell."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.smelling import joint_volts, smells, worst

__all__: list[str] = []

_TRANSFORMER = 35.0, 55.0  # K over the room of a sound one, and more with one that overheats: judgement


@look("hot_spots.smell_kind")
def smell_kind(bench: Bench) -> Answer:
    """What it smelt of: plastic and varnish are told apart by few."""
    smell = worst(bench)
    if smell is None:
        return bench.seen("nothing", sure=0.99)
    near = {"plastic": "varnish", "varnish": "plastic", "brakes": "rubber", "rubber": "oil", "dust": "oil"}
    return bench.seen(smell.kind, near.get(smell.kind, "dust"), sure=0.86)


@look("hot_spots.smell_where")
def smell_where(bench: Bench) -> Answer:
    """Where it is strongest, covers shut."""
    smell = worst(bench)
    if smell is None:
        return bench.seen("nowhere", sure=0.99)
    return bench.seen(smell.where, "room" if smell.where != "room" else "tank", sure=0.93)


@look("hot_spots.smell_when")
def smell_when(bench: Bench) -> Answer:
    """When it smells, as the crew tells it."""
    smell = worst(bench)
    if smell is None:
        return bench.seen("not_now", sure=0.98)
    return bench.seen(smell.when, "grows" if smell.when != "grows" else "with_motors", sure=0.88)


@look("hot_spots.box_dead_look")
def box_dead_look(bench: Bench) -> Answer:
    """What is brown, blistered or hard in the control box, dead and cooled."""
    brown = next((each.part for each in smells(bench) if each.part), "clean")
    return bench.seen(brown, "clean", sure=0.93 if brown != "clean" else 0.99)


@look("hot_spots.joint_drop")
def joint_drop(bench: Bench) -> Answer:
    """Volts across the warmest joint of the feed, everything on."""
    return Answer({"": max(0.0, bench.senses.measure("fine probes", joint_volts(bench)))})


@look("hot_spots.transformer_heat")
def transformer_heat(bench: Bench) -> Answer:
    """The control transformer at the middle of its winding, after half an hour."""
    usual, more = _TRANSFORMER
    warm = bench.plant.air.room + usual + more * bench.sign("control transformer overheats")
    return bench.value("infrared thermometer", warm)


@look("hot_spots.wire_look")
def wire_look(bench: Bench) -> Answer:
    """The gauge printed on the warm wire against the amps of its line."""
    return bench.noticed("wire warm along its length", "too_thin", "suits", sure=0.96)


@look("hot_spots.element_look", tank_heat=("electric",))
def element_look(bench: Bench) -> Answer:
    """What lies on the tank's element, drained."""
    return bench.noticed("soil burnt on the element", "burnt_on", "clean", sure=0.97)


@look("hot_spots.smell_gone")
def smell_gone(bench: Bench) -> Answer:
    """Half an hour at full work with somebody at the disconnect."""
    return bench.seen("still" if worst(bench) is not None else "nothing", sure=0.98)
