"""The control circuit's own parts: links of the chain, the worst door's switch, contactor coils. All SI; as built."""

from __future__ import annotations

from dataclasses import dataclass, field

__all__ = ["Coil", "Control", "DoorSwitch"]

# Sound figures stand in the middle of what the trade takes as in order; where exactly is judgement throughout.


@dataclass
class DoorSwitch:
    """A sealed contact at a door and the magnet that makes it, of the worst door."""

    gap: float = 3.6e-3  # m between switch and magnet, the door shut
    reach: float = 8.6e-3  # m at which the magnet still makes it, just beyond the 0.3 in of the trade
    ohms: float = 0.3  # of its contact at its own leads, the magnet at its face
    frayed: float = 0.0  # share of its cable's copper that is broken where it moves: 1 through


@dataclass
class Coil:
    """The magnet of a motor's contactor."""

    ohms: float = 1.0  # over the sound one; infinite where it is open
    label: float = 1.0  # volts it is wound for over the control circuit's
    free: float = 1.0  # share of its way that the armature can go
    ring: float = 1.0  # what is left of shading rings and clean faces


@dataclass
class Control:
    """The control circuit: links in series from the machine's feed to the master relay."""

    links: dict[str, bool] = field(
        default_factory=lambda: dict.fromkeys(
            [
                *("feed", "breaker", "transformer", "fuse", "switch", "stops", "doors", "overloads", "permits"),
                *("order", "start", "relay"),
            ],
            True,
        )
    )
    poor: dict[str, float] = field(default_factory=dict)  # ohms that a closed link has more than a sound one
    door: DoorSwitch = field(default_factory=DoorSwitch)
    short_ohms: float = 1e9  # from the control fuse to return or frame beside the coils
    shakes_open: str = ""  # link at which a wire makes and breaks as the machine shakes
    knocked: bool = False  # racks or carts push a stop button in now and then
    permit_short: float = 0.0  # K by which a tank stands under the figure from which the machine may run
    stops_by: str = ""  # what else makes it stop by itself now and then
    holds: bool = True  # the seal-in contact
    hold_ohms: float = 0.3  # of that contact, the relay pushed in
    drops_after: float | None = None  # s of running until it falls out by itself
