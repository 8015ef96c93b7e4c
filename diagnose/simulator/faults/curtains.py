"""Faults of the curtains at both ends and inside."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_TWO = (2,)
_CREW = "cleaning by the crew"
_OPEN = "Through an open end more steam rises, and room air that is drawn in there uses up the exhaust."
_HELD = "Strips that are held up close nothing; they do so again when the rack is gone."
_SPRAY = "Water that flies on pushes the exit curtain outwards and carries steam with it."


@fault(
    "curtains.entrance_missing",
    ("The entrance has no curtain, or strips of it are gone.", _OPEN, "The exit stays as it was."),
    after=_CREW,
)
def entrance_missing(plant: Plant, severity: float) -> None:
    """Not hung back."""
    plant.air.gap["entrance"] = 0.4 + 0.6 * severity
    plant.signs["entrance strips gone"] = 0.6 + 0.4 * severity


@fault(
    "curtains.exit_missing",
    (
        "The exit has no curtain, or strips of it are gone.",
        _OPEN,
        "The hottest water is next to it, so it steams most.",
    ),
    after=_CREW,
)
def exit_missing(plant: Plant, severity: float) -> None:
    """Not hung back."""
    plant.air.gap["exit"] = 0.4 + 0.6 * severity
    plant.signs["exit strips gone"] = 0.6 + 0.4 * severity


@fault(
    "curtains.entrance_torn",
    ("Strips at the entrance curl, stand apart or are torn.", _OPEN, "It grows as they wear."),
    onset="slowly",
)
def entrance_torn(plant: Plant, severity: float) -> None:
    """Worn."""
    plant.air.gap["entrance"] = 0.14 + 0.17 * severity
    plant.signs["entrance strips torn"] = 0.5 + 0.5 * severity


@fault(
    "curtains.exit_torn",
    (
        "Lime makes the exit's strips stiff, or they are torn.",
        "They stand off each rack for seconds after it has gone.",
        _OPEN,
    ),
    onset="slowly",
)
def exit_torn(plant: Plant, severity: float) -> None:
    """Stiff as card."""
    plant.air.gap["exit"] = 0.14 + 0.17 * severity
    plant.signs["exit strips torn"] = 0.5 + 0.5 * severity


@fault(
    "curtains.entrance_wrong_way",
    ("The short curtain hangs outside at the entrance.", "A straight gap stays open under it.", _OPEN),
    after=_CREW,
)
def entrance_wrong_way(plant: Plant, severity: float) -> None:
    """Changed over."""
    plant.air.gap["entrance"] = 0.38 + 0.15 * severity
    plant.signs["entrance curtains changed over"] = 0.6 + 0.4 * severity


@fault(
    "curtains.exit_wrong_way",
    (
        "The exit's curtains are changed over or turned.",
        "A straight gap stays open, or racks shove the strips up.",
        _OPEN,
    ),
    after=_CREW,
)
def exit_wrong_way(plant: Plant, severity: float) -> None:
    """Changed over."""
    plant.air.gap["exit"] = 0.38 + 0.15 * severity
    plant.signs["exit curtains changed over"] = 0.6 + 0.4 * severity


@fault(
    "curtains.entrance_held_open",
    ("A rack or ware left in the entrance holds the strips open.", _HELD, _OPEN),
    onset="comes and goes",
)
def entrance_held_open(plant: Plant, severity: float) -> None:
    """Waiting halfway in."""
    plant.air.held["entrance"] = 0.25 + 0.4 * severity


@fault(
    "curtains.exit_held_open",
    ("Ware or a rack left in the exit pushes the strips open.", _HELD, _OPEN),
    onset="comes and goes",
)
def exit_held_open(plant: Plant, severity: float) -> None:
    """The clean table is full."""
    plant.air.held["exit"] = 0.25 + 0.4 * severity


def _thrown(plant: Plant, severity: float) -> None:
    plant.air.thrown = 0.15 + 0.3 * severity
    plant.signs["spray over curtain"] = 0.2 + 0.5 * severity


@fault(
    "curtains.inner_missing",
    (
        "The curtain between power rinse and final rinse is missing.",
        "Power-rinse water flies through to the exit as a mist.",
        _SPRAY,
    ),
    after=_CREW,
    tanks=_TWO,
)
def inner_missing(plant: Plant, severity: float) -> None:
    """Not hung back."""
    _thrown(plant, severity)
    plant.signs["inner curtain gone"] = 0.7 + 0.3 * severity


@fault(
    "curtains.spray_pipe_turned",
    (
        "A power-rinse pipe is turned or not latched.",
        "A hard fan of water strikes the exit curtain at one height.",
        _SPRAY,
    ),
    after=_CREW,
    tanks=_TWO,
)
def spray_pipe_turned(plant: Plant, severity: float) -> None:
    """Turned."""
    _thrown(plant, severity)
    plant.signs["rinse pipe turned"] = 0.7 + 0.3 * severity
