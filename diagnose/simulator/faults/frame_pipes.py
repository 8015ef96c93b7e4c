"""Faults that are heard and felt: panels, feet, mountings, pump and coupling, pipes, a valve that slams, lime."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_MOVED = "machine or tables moved"
_PARTS = "parts replaced"
_NOTHING = "No flow, current or temperature is off for it."


@fault(
    "frame_pipes.panel_drums",
    ("A panel has lost screws or its rubber strip.", "The sheet swings with whatever shakes the frame.", _NOTHING),
    after=_PARTS,
)
def panel_drums(plant: Plant, severity: float) -> None:
    """Under a flat hand it is silent."""
    plant.signs["panel drums"] = 0.4 + 0.5 * severity


@fault(
    "frame_pipes.stands_uneven",
    (
        "One foot of the machine bears nothing.",
        "The frame rocks on three with each push of the conveyor and each start of a pump.",
        _NOTHING,
    ),
    onset="installed",
    after=_MOVED,
)
def stands_uneven(plant: Plant, severity: float) -> None:
    """A card goes under it."""
    plant.signs["frame shakes on three feet"] = 0.4 + 0.5 * severity


@fault(
    "frame_pipes.motor_loose",
    (
        "Pump and motor are loose on their mounting.",
        "What little every wheel is out of balance then moves the whole body.",
        "The motor has no more to do for it, so its amps stay at the plate.",
    ),
    onset="slowly",
    after=_PARTS,
)
def motor_loose(plant: Plant, severity: float) -> None:
    """A spanner turns a bolt."""
    plant.signs["wash motor loose"] = 0.4 + 0.5 * severity


@fault(
    "frame_pipes.wheel_unbalanced",
    (
        "A vane is broken, or something is wound round the wheel.",
        "Its mass no longer lies on its axis and pulls once in each turn.",
        "What is missing of it throws no water, so spray and amps fall a little.",
    ),
)
def wheel_unbalanced(plant: Plant, severity: float) -> None:
    """Shakes at every turn."""
    plant.pumps["wash"].wheel *= 0.97 - 0.05 * severity
    plant.signs["wheel unbalanced"] = 0.4 + 0.5 * severity


@fault(
    "frame_pipes.coupling_askew",
    (
        "The halves of the coupling are out of line.",
        "Each half turn bends shaft and rubber once.",
        "The beat is at twice the turns, and the coupling is warm.",
    ),
    onset="installed",
    after=_PARTS,
)
def coupling_askew(plant: Plant, severity: float) -> None:
    """A fortieth of an inch and more."""
    plant.pumps["wash"].askew = 0.0006 + 0.0009 * severity
    plant.signs["pump coupling askew"] = 0.4 + 0.5 * severity


@fault(
    "frame_pipes.pipe_loose",
    (
        "A pipe has come out of its clamps.",
        "Water that starts and stops pushes it against the frame at each bend.",
        "Held by hand it is quiet.",
    ),
    after="plumbing work",
)
def pipe_loose(plant: Plant, severity: float) -> None:
    """A finger's breadth of play."""
    plant.signs["pipe beats on the frame"] = 0.4 + 0.5 * severity


@fault(
    "frame_pipes.valve_hammers",
    (
        "The rinse valve shuts faster than a wave runs through the pipe and back.",
        "Stopped at once, moving water makes a pressure of density times wave speed times its own speed.",
        "One bang at the closing, and several times the main's pressure for an instant.",
    ),
    onset="slowly",
    after=_PARTS,
)
def valve_hammers(plant: Plant, severity: float) -> None:
    """Nearly the whole blow."""
    plant.rinse.slams = 0.75 + 0.25 * severity
    plant.signs["rinse valve hammers"] = 0.5 + 0.5 * severity


@fault(
    "frame_pipes.booster_crackles",
    (
        "Lime lies on the booster's elements.",
        "Water that seeps under it boils on the sheath and collapses in the cooler water outside.",
        "All the heat still enters the water, so rinse and currents are right.",
    ),
    onset="slowly",
    booster=("electric",),
)
def booster_crackles(plant: Plant, severity: float) -> None:
    """Not yet a fault of heat."""
    plant.booster.heater.scale = max(plant.booster.heater.scale, 0.0012 + 0.0015 * severity)
    plant.signs["booster crackles with its heat"] = 0.4 + 0.5 * severity


@fault(
    "frame_pipes.sounds_as_built",
    (
        "Racks, strokes, contactors and the closing rinse valve knock as they were built to.",
        "A new crew hears them for the first time, or a wall that swallowed them is gone.",
        _NOTHING,
    ),
    onset="installed",
)
def sounds_as_built(plant: Plant, severity: float) -> None:
    """Nothing to mend."""
    plant.signs["usual knocks complained of"] = 0.4 + 0.4 * severity
