"""The conveyor's own parts: drive, chains, belt of flights, track, and the switches that stop it. All SI; as built."""

from __future__ import annotations

from dataclasses import dataclass, field

__all__ = ["Chains", "Drive", "Flights", "JamSwitch", "RunTimer", "TableSwitch", "Track"]

# Sound figures stand in the middle of what the trade takes as in order; where exactly is judgement throughout.


@dataclass
class Drive:
    """From the motor's shaft to the bar, chain or belt."""

    parted: str = ""  # coupling | gear | hub: the joint that drives no longer
    grips: float = 3.0  # pull over the sound one at which a belt of the drive slides
    sag: float = 0.016  # m/m of the drive chain's slack side
    arm_play: float = 0.0006  # m at the drive arm's pin
    stroke: float = 1.0  # travel of the bar over the plate's


@dataclass
class Chains:
    """The two chains that carry lugs or flights."""

    sag: float = 0.021  # m/m of the return strand
    wear: list[float] = field(default_factory=lambda: [0.003, 0.003])  # longer than new, left and right
    offset: float = 0.002  # m along the track between opposite lugs
    hooked: float = 0.0  # how far a sprocket's teeth are worn to hooks, 0 to 1
    one_stands: bool = False


@dataclass
class Flights:
    """A belt of flights and how it is loaded."""

    load: float = 0.7  # of the plate's load, where it is heaviest
    askew: float = 0.0008  # m between the threads of the two take-ups
    falls: float = 0.0  # share of the ware that falls through
    strikes: float = 0.0  # share of the ware that strikes or wedges
    drawn_down: float = 0.0  # share that the flights draw down at the exit
    limps: float = 0.0  # how much a row that is off or broken disturbs, once in the round


@dataclass
class Track:
    """What racks run on and between."""

    friction: float = 0.27  # of wet racks on the strips
    clearance: float = 0.0127  # m free beside a rack
    step: float = 0.0005  # m where two sections meet
    held: dict[str, tuple[float, float]] = field(default_factory=dict)  # what holds racks: share, pull it bears
    left: dict[str, float] = field(default_factory=dict)  # how racks are left behind: share of racks
    turned: float = 0.0  # share of racks that turn on the way


@dataclass
class JamSwitch:
    """The switch at the torque arm, which gives way as the pull rises."""

    gap: float = 2.6e-3  # m between arm at rest and trip point
    stays: bool = False  # arm stays over after a jam
    holds: bool = False  # something is jammed now and pulls the arm over
    damp: float = 0.0  # ohm of a wet contact, 0 for a dry one
    bridged: bool = False


@dataclass
class TableSwitch:
    """The flap at the end of the clean table; on a belt of flights the bar across its exit."""

    travel: float = 0.019  # m that a rack pushes it from touching to the click
    pressed: str = ""  # by what, with no rack there: rim | itself | cart; or by a rack or ware: rack
    contact: str = "sound"  # sound | reversed | bridged
    jumped: bool = False  # the mode switch at the panel stands at hand and carries past it
    damp: float = 0.0  # ohm of a wet contact, 0 for a dry one
    lever_slips: float = 0.0  # share of pushes that do not turn the shaft
    delay: float = 0.4  # s from the click to the standing bar


@dataclass
class RunTimer:
    """What keeps the conveyor running after the last rack."""

    run_on: float  # s
    spread: float = 1.0  # s between the longest and the shortest of several
    misses: float = 0.0  # share of racks that its lever does not feel
    dead: bool = False  # its lever's switch never closes
