"""Faults of the dampers over both ends."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_BOTH = ("both ends",)
_MOVED = "machine or tables moved"
_SHUT = "A narrow opening passes less air at the same suction, and the other end gets a little more."
_STEAM = "Steam that is not taken comes out."
_ROBS = "Both openings share one suction: what one takes more the other lacks."


@fault(
    "vent_dampers.entrance_shut",
    ("The entrance damper stands too far shut.", _SHUT, _STEAM),
    after="cleaning by the crew",
    vents=_BOTH,
)
def entrance_shut(plant: Plant, severity: float) -> None:
    """Knocked towards shut."""
    plant.air.damper["entrance"] = 0.55 - 0.35 * severity
    plant.signs["entrance handle towards shut"] = 0.6 + 0.4 * severity


@fault(
    "vent_dampers.exit_shut",
    ("The exit damper stands too far shut.", _SHUT, _STEAM),
    after="cleaning by the crew",
    vents=_BOTH,
)
def exit_shut(plant: Plant, severity: float) -> None:
    """Knocked towards shut."""
    plant.air.damper["exit"] = 0.5 - 0.3 * severity
    plant.signs["exit handle towards shut"] = 0.6 + 0.4 * severity


@fault(
    "vent_dampers.entrance_blade_loose",
    (
        "The entrance blade is loose on its spindle and has dropped across the duct.",
        "The handle still stands at its mark.",
        _SHUT,
    ),
    vents=_BOTH,
)
def entrance_blade_loose(plant: Plant, severity: float) -> None:
    """Its screw is gone."""
    plant.air.damper["entrance"] = 0.45 - 0.35 * severity
    plant.signs["entrance blade loose"] = 0.6 + 0.4 * severity


@fault(
    "vent_dampers.exit_blade_loose",
    (
        "The exit blade is loose on its spindle and hangs across the duct.",
        "The handle still stands at its mark.",
        _SHUT,
    ),
    onset="comes and goes",
    vents=_BOTH,
)
def exit_blade_loose(plant: Plant, severity: float) -> None:
    """Its screw is gone."""
    plant.air.damper["exit"] = 0.45 - 0.3 * severity
    plant.signs["exit blade loose"] = 0.6 + 0.4 * severity


@fault(
    "vent_dampers.entrance_too_open",
    ("The entrance damper stands too far open.", _ROBS, "The exit steams though nothing is wrong there."),
    onset="installed",
    after=_MOVED,
    vents=_BOTH,
)
def entrance_too_open(plant: Plant, severity: float) -> None:
    """Opened to cure something else."""
    plant.air.damper["entrance"] = 2.4 + 1.4 * severity
    plant.signs["entrance handle towards open"] = 0.6 + 0.4 * severity


@fault(
    "vent_dampers.exit_too_open",
    ("The exit damper stands too far open.", _ROBS, "The entrance steams though nothing is wrong there."),
    onset="installed",
    after=_MOVED,
    vents=_BOTH,
)
def exit_too_open(plant: Plant, severity: float) -> None:
    """Opened for better drying."""
    plant.air.damper["exit"] = 1.75 + 0.7 * severity
    plant.signs["exit handle towards open"] = 0.6 + 0.4 * severity


@fault(
    "vent_dampers.both_wide_open",
    (
        "Both dampers stand wide open.",
        "The fan moves more air than its motor is made for: the work of such a wheel grows with its air.",
        "Its overload opens after some while, and then both ends steam.",
    ),
    onset="installed",
    after="newly connected",
    vents=_BOTH,
)
def both_wide_open(plant: Plant, severity: float) -> None:
    """Never set."""
    plant.air.damper["entrance"] = plant.air.damper["exit"] = 2.6 + 1.0 * severity
    for end in ("entrance", "exit"):
        plant.signs[f"{end} handle towards open"] = 0.6 + 0.4 * severity
