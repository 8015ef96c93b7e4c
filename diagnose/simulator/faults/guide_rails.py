"""Faults of track and guide rails, and of what stands in the racks' way."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
# Shares of racks that are held, the pull it bears over the sound machine's, and how marked a sign is: judgement.


@fault(
    "guide_rails.rail_bent",
    (
        "A guide rail is bent into the racks' way.",
        "The same corner of every rack runs onto it.",
        "The drive pushes until something gives: clutch, switch or rack.",
    ),
    conveyor=_RACKS,
)
def rail_bent(plant: Plant, severity: float) -> None:
    """A bow of a fifth of an inch and more."""
    plant.conveyor.track.held["rail"] = (0.45 + 0.5 * severity, 1.2 + 1.2 * severity)
    plant.signs["rail bowed"] = 0.6 + 0.4 * severity


@fault(
    "guide_rails.rail_loose",
    (
        "A guide rail hangs loose on its brackets.",
        "Where it lies just then, a rack's edge may catch behind it.",
        "The next rack pushes it aside.",
    ),
    onset="comes and goes",
    conveyor=_RACKS,
)
def rail_loose(plant: Plant, severity: float) -> None:
    """Now and then."""
    plant.conveyor.track.held["rail"] = (0.15 + 0.3 * severity, 0.8 + 0.8 * severity)
    plant.signs["rail loose"] = 0.5 + 0.5 * severity


@fault(
    "guide_rails.rails_narrow",
    (
        "The rails stand too close for these racks.",
        "Warm plastic swells and presses on both sides.",
        "Friction along the whole length slows the racks and stops some.",
    ),
    onset="installed",
    after="machine or tables moved",
    conveyor=_RACKS,
)
def rails_narrow(plant: Plant, severity: float) -> None:
    """Three millimetres free and less."""
    track = plant.conveyor.track
    track.clearance = 0.0045 - 0.0045 * severity
    track.friction += 0.12 + 0.15 * severity
    track.held["squeeze"] = (0.15 + 0.3 * severity, 0.7 + 0.6 * severity)


@fault(
    "guide_rails.rails_wide",
    (
        "The rails stand so wide that a rack can turn.",
        "Pushed a little off its middle it swings and wedges cornerwise.",
        "It happens anywhere, to small racks most.",
    ),
    onset="slowly",
    conveyor=_RACKS,
)
def rails_wide(plant: Plant, severity: float) -> None:
    """An inch free and more."""
    plant.conveyor.track.clearance = 0.022 + 0.014 * severity
    plant.conveyor.track.turned += 0.12 + 0.25 * severity


@fault(
    "guide_rails.section_mismatch",
    (
        "Track or rails do not meet where two sections join.",
        "Every rack runs with its front edge against the step.",
        "It nicks all racks at the same corner.",
    ),
    onset="installed",
    after="machine or tables moved",
    conveyor=_RACKS,
)
def section_mismatch(plant: Plant, severity: float) -> None:
    """A tenth to a quarter of an inch."""
    plant.conveyor.track.step = 0.0025 + 0.004 * severity
    plant.conveyor.track.held["joint"] = (0.4 + 0.5 * severity, 1.2 + 1.2 * severity)


@fault(
    "guide_rails.arm_in_path",
    (
        "A spray arm or its plug hangs across the racks' way.",
        "What is tall enough strikes it, hard, at one place.",
        "The drive pushes on until something gives.",
    ),
    after="cleaning by the crew",
)
def arm_in_path(plant: Plant, severity: float) -> None:
    """It came down after cleaning."""
    plant.conveyor.track.held["arm"] = (0.55 + 0.4 * severity, 2.0 + severity)
    plant.signs["spray arm hangs in the way"] = 0.7 + 0.3 * severity


@fault(
    "guide_rails.curtain_catches",
    (
        "A curtain or its rod hangs into the way of racks or ware.",
        "A light rack has too little weight to push it aside and turns or stops.",
        "Tied up, it lets all of them pass.",
    ),
    after="cleaning by the crew",
)
def curtain_catches(plant: Plant, severity: float) -> None:
    """Light racks suffer."""
    plant.conveyor.track.held["curtain"] = (0.25 + 0.35 * severity, 0.4 + 0.5 * severity)
    plant.signs["curtain hangs in the way"] = 0.6 + 0.4 * severity


@fault(
    "guide_rails.object_on_track",
    (
        "Silver, glass or other ware lies on the track.",
        "A rack rides up on it or stops against it.",
        "It is pushed along, and so is the place of the stop.",
    ),
    conveyor=_RACKS,
)
def object_on_track(plant: Plant, severity: float) -> None:
    """A fork across the strip."""
    plant.conveyor.track.held["object"] = (0.35 + 0.4 * severity, 1.0 + 1.0 * severity)
    plant.signs["ware on the track"] = 0.6 + 0.4 * severity


@fault(
    "guide_rails.track_limed",
    (
        "Lime has made the track rough.",
        "Each rack asks for more pull, in proportion to its weight.",
        "The drive has that in hand until a steep table or a weak clutch joins.",
    ),
    onset="slowly",
    conveyor=_RACKS,
)
def track_limed(plant: Plant, severity: float) -> None:
    """Friction nearly doubled, or more than that."""
    plant.conveyor.track.friction += 0.2 + 0.2 * severity
    plant.signs["crust along the track"] = 0.5 + 0.5 * severity
