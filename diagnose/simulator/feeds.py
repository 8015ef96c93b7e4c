"""The feeds of chemicals, the water's chemistry and the soil: figures that a fault can change, sound as built."""

from __future__ import annotations

from dataclasses import dataclass, field

__all__ = ["Chemistry", "Feed"]


@dataclass
class Feed:
    """The feed of one chemical, from its drum to where it goes in. Shares of what is sound."""

    setting: float = 1.0  # dose set over the usual one
    stock: float = 1.0  # strength of what is in the drum over what the feed is set for
    left: float = 1.0  # of the drum: 0 is empty
    air: float = 0.0  # share of what is sucked in that is air
    tube: float = 1.0  # volume a turn over that of a new tube
    head: float = 1.0  # how far its rollers close the tube
    pickup: float = 1.0
    delivery: float = 1.0
    spills: float = 0.0  # share lost behind the pump
    primed: bool = True
    turns: bool = True  # the head turns when it is told to
    told: str = "rightly"  # rightly | never | at other times: when it is told to turn
    meets: float = 1.0  # share of its dose that meets the rinse, told at other times
    alarm: bool = False
    runs_on: float = 0.0  # share of a dose that comes by itself after the rinse: a relay that hangs, or a siphon
    siphons: bool = False
    probe: float = 1.0  # strength that the probe tells over the true one


@dataclass
class Chemistry:
    """Feeds, water, soil."""

    detergent: Feed = field(default_factory=Feed)
    rinse_aid: Feed = field(default_factory=Feed)
    sanitiser: Feed = field(default_factory=Feed)
    box: str = "works"  # the feeds' control: works | dark | no signal
    swapped: tuple[str, ...] = ()  # feeds whose pickups are changed over
    soil: float = 1.0  # soil brought in over the usual
    dried: float = 0.0  # share of it that has dried on
    old: float = 0.0  # how spent the wash water is before the rush begins
    foamy: float = 0.0  # foaming residue brought in with the ware
    suds: float = 0.0  # soap in the tank itself, or a product that foams
    raw_hardness: float = 0.34  # kg/m3 as calcium carbonate before the softener, 20 gpg: judgement
    softener: bool = True
    soft_hardness: float = 0.05  # kg/m3 behind the softener
    solids: float = 0.15  # kg/m3 dissolved, raw: judgement
    brine: float = 0.0  # kg/m3 that the softener adds
    iron: float = 0.0  # kg/m3
    ph: float = 7.5  # of the supply
