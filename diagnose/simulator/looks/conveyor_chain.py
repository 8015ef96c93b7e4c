"""What can be seen and measured of two rack chains."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.passage import passage
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = ["link_lengths"]

_CHAIN = ("chain",)
_LINKS = 20


def link_lengths(bench: Bench) -> Answer:
    """Twenty links of the left and of the right chain, [m]."""
    plant = bench.plant
    left, right = (_LINKS * plant.plate["chain_pitch"] * (1.0 + wear) for wear in plant.conveyor.chains.wear)
    return bench.each("steel rule", left=left, right=right)


@look("conveyor_chain.chains_watch", conveyor=_CHAIN)
def chains_watch(bench: Bench) -> Answer:
    """Both chains over a whole round."""
    belt, found = bench.plant.conveyor, passage(bench)
    if found.stands:
        return bench.seen("both_stand", sure=0.97)
    if belt.chains.one_stands:
        return bench.seen("one_stands", "one_behind", sure=0.95)
    if bench.sign("stiff links knock once a round") > 0.15 or bench.sign("lug bent or gone") > 0.15:
        return bench.seen("twitch" if belt.stiff > 0.2 else "alike", "alike", "labours", sure=0.92)
    if found.jump > 0.04:
        return bench.seen("jump", "twitch", sure=0.95)
    if belt.chains.offset > 0.008:
        return bench.seen("one_behind", "alike", sure=0.93)
    if found.slip > 0.1:
        return bench.seen("both_stand", "jump", sure=0.9)
    return bench.seen("labours" if belt.stiff > 0.3 else "alike", "alike", sure=0.93)


@look("conveyor_chain.lug_row", conveyor=_CHAIN)
def lug_row(bench: Bench) -> Answer:
    """Every lug, turned round by hand."""
    return bench.strongest("all_square", 0.96, lug_bent_or_gone="one_bad", lugs_low_over_a_stretch="stretch_low")


@look("conveyor_chain.sag", conveyor=_CHAIN)
def sag(bench: Bench) -> Answer:
    """Of the slacker chain in mid-span, [m/m]."""
    return bench.value("level", bench.plant.conveyor.chains.sag)


@look("conveyor_chain.chain_length", conveyor=_CHAIN)
def chain_length(bench: Bench) -> Answer:
    """Twenty links of each."""
    return link_lengths(bench)


@look("conveyor_chain.sprockets", conveyor=_CHAIN)
def sprockets(bench: Bench) -> Answer:
    """In line, fast, free, teeth whole."""
    if bench.plant.conveyor.chains.hooked > 0.3:
        return bench.seen("hooked", "in_order", sure=0.95)
    return bench.strongest(
        "in_order",
        0.97,
        chain_lies_beside_its_teeth="chain_beside",
        chain_sprocket_loose_on_the_shaft="hub_loose",
        idler_screeches_and_stands="idler_stands",
    )


@look("conveyor_chain.link_flex", conveyor=_CHAIN)
def link_flex(bench: Bench) -> Answer:
    """Each link lifted."""
    return bench.noticed("stiff links knock once a round", "some_stay", "all_drop", sure=0.97)


@look("conveyor_chain.strand_look", conveyor=_CHAIN)
def strand_look(bench: Bench) -> Answer:
    """Both return strands."""
    return bench.strongest("clear", 0.96, return_strand_of_the_racks_fouled="wedged", chain_has_two_ends="two_ends")
