"""Faults of bar, pawls and drive arm, and of two chains that do not pull alike."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_BAR = ("pawl bar",)
# Shares of racks left behind, play and sag of worn parts, how marked a sign is: judgement throughout.


def _left(plant: Plant, how: str, share: float) -> None:
    plant.conveyor.track.left[how] = plant.conveyor.track.left.get(how, 0.0) + share


@fault(
    "conveyor_bar_pawls.pawl_broken",
    (
        "A pawl of the bar is bent over or gone.",
        "A rack that comes to its place finds nothing behind it and waits there.",
        "The next rack, pushed by the pawl before, carries it on.",
    ),
    conveyor=_BAR,
)
def pawl_broken(plant: Plant, severity: float) -> None:
    """Nearly every rack halts there."""
    _left(plant, "at one place", 0.55 + 0.4 * severity)
    plant.signs["pawl bent or gone"] = 0.6 + 0.4 * severity


@fault(
    "conveyor_bar_pawls.pawl_dirt",
    (
        "Soil or scale sits under a pawl and slows it.",
        "When the rack is there before the pawl has risen, the stroke goes by under it.",
        "Flushed out it is as quick as the others.",
    ),
    onset="comes and goes",
    conveyor=_BAR,
)
def pawl_dirt(plant: Plant, severity: float) -> None:
    """Now and then."""
    _left(plant, "at one place", 0.2 + 0.35 * severity)
    plant.signs["pawl gritty"] = 0.5 + 0.5 * severity


@fault(
    "conveyor_bar_pawls.pawl_spring",
    (
        "The spring or weight that lifts a pawl is gone.",
        "The pawl lies down and passes under every rack.",
        "Whole and clean, it has no life of its own.",
    ),
    conveyor=_BAR,
)
def pawl_spring(plant: Plant, severity: float) -> None:
    """Every rack halts there."""
    _left(plant, "at one place", 0.5 + 0.4 * severity)
    plant.signs["pawl limp"] = 0.6 + 0.4 * severity


@fault(
    "conveyor_bar_pawls.bar_off_rollers",
    (
        "The bar lies beside one of its rollers.",
        "Along that length its pawls stand too low for the racks, or lift them.",
        "Racks there wait for the one behind.",
    ),
    after="cleaning by the crew",
    conveyor=_BAR,
)
def bar_off_rollers(plant: Plant, severity: float) -> None:
    """At one roller."""
    _left(plant, "at one place", 0.35 + 0.4 * severity)
    plant.signs["bar off a roller"] = 0.6 + 0.4 * severity


@fault(
    "conveyor_bar_pawls.bar_track_worn",
    (
        "Rollers and track are worn down under the bar.",
        "Its pawls ride low over a length, and the tips pass under light racks.",
        "Heavy ones press it on and go.",
    ),
    onset="slowly",
    conveyor=_BAR,
)
def bar_track_worn(plant: Plant, severity: float) -> None:
    """The light ones stay."""
    _left(plant, "light racks", 0.18 + 0.3 * severity)
    plant.signs["bar sinks at several rollers"] = 0.5 + 0.5 * severity


@fault(
    "conveyor_bar_pawls.drive_arm_pin_worn",
    (
        "Pin and bush of the drive arm are worn.",
        "The play is lost at both ends of each stroke, so the bar travels less and strikes as it turns.",
        "Racks come short of the next pawl and are met late.",
    ),
    onset="slowly",
    conveyor=_BAR,
)
def drive_arm_pin_worn(plant: Plant, severity: float) -> None:
    """Two to six millimetres of play."""
    plant.conveyor.drive.arm_play = 0.0025 + 0.0035 * severity
    _left(plant, "late", 0.15 + 0.25 * severity)
    plant.signs["drive arm knocks at each end"] = 0.3 + 0.4 * severity


@fault(
    "conveyor_bar_pawls.chains_uneven",
    (
        "One of the two rack chains is tensioned less than the other.",
        "It hangs back under load, and opposite lugs are no longer abreast.",
        "A rack is pushed at one corner, turns, and wedges.",
    ),
    onset="slowly",
    conveyor=("chain",),
)
def chains_uneven(plant: Plant, severity: float) -> None:
    """Lugs a third to an inch apart."""
    plant.conveyor.chains.offset = 0.009 + 0.016 * severity
    plant.conveyor.chains.sag = 0.036 + 0.008 * severity  # of the slacker one
    plant.conveyor.track.turned += 0.2 + 0.3 * severity
    plant.signs["one chain sags more"] = 0.5 + 0.5 * severity


@fault(
    "conveyor_bar_pawls.stroke_short",
    (
        "The drive arm is pinned nearer to the crank's middle than it belongs.",
        "The bar makes its strokes by the clock, each of them short by the same share.",
        "Speed is strokes times travel, so racks lag by that share.",
    ),
    onset="installed",
    after="parts replaced",
    conveyor=_BAR,
)
def stroke_short(plant: Plant, severity: float) -> None:
    """Four fifths to three fifths of the plate's."""
    plant.conveyor.drive.stroke = 0.86 - 0.22 * severity


@fault(
    "conveyor_bar_pawls.pace_as_plate",
    (
        "The conveyor keeps its plate's speed.",
        "The plate's speed times the length of a rack is all the racks an hour there are.",
        "The kitchen would like more, and that would cost washing time.",
    ),
    onset="installed",
)
def pace_as_plate(plant: Plant, severity: float) -> None:
    """Nothing is wrong."""
    plant.signs["another pace wished for"] = 0.4 + 0.6 * severity
