"""Faults of doors, covers and holes of the machine's walls."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RISES = "Hot wet air is lighter than the room's and leaves through every opening above the water."
_SUCKS = "The exhaust pulls at the ends and not here."


@fault(
    "doors.not_latched",
    ("A door is down but not latched.", "Each stroke of spray lifts it a little.", _RISES),
    after="cleaning by the crew",
)
def not_latched(plant: Plant, severity: float) -> None:
    """It stands on a catch."""
    plant.air.leaks = 0.25 + 0.35 * severity
    plant.signs["door not latched"] = 0.6 + 0.4 * severity


@fault(
    "doors.gasket_worn",
    ("A door's gasket is worn flat.", "A fine line stays open along one edge.", _RISES),
    onset="slowly",
)
def gasket_worn(plant: Plant, severity: float) -> None:
    """Hard or split."""
    plant.air.leaks = 0.18 + 0.25 * severity
    plant.signs["door gasket flat"] = 0.5 + 0.5 * severity


@fault(
    "doors.hangs_crooked",
    ("A spring, cable or hinge of a door has given way on one side.", "One lower corner stays open.", _RISES),
)
def hangs_crooked(plant: Plant, severity: float) -> None:
    """One corner open."""
    plant.air.leaks = 0.22 + 0.35 * severity
    plant.signs["door crooked"] = 0.5 + 0.5 * severity


@fault("doors.cover_off", ("A panel or cover is not back in its place.", _SUCKS, _RISES), after="parts replaced")
def cover_off(plant: Plant, severity: float) -> None:
    """It lies on the machine."""
    plant.air.leaks = 0.3 + 0.5 * severity
    plant.signs["cover off"] = 0.7 + 0.3 * severity


@fault(
    "doors.opening_unplugged",
    ("A hole for a pipe or a probe stands open.", _SUCKS, _RISES),
    after="chemical call or delime",
)
def opening_unplugged(plant: Plant, severity: float) -> None:
    """A thin jet of vapour."""
    plant.air.leaks = 0.16 + 0.15 * severity
    plant.signs["hole unplugged"] = 0.6 + 0.4 * severity


@fault(
    "doors.spray_at_seam",
    (
        "A spray pipe is turned, or its end plug gone.",
        "It drives water and steam at one place of a door's seam.",
        "The spray on the ware lacks what goes there.",
    ),
    after="cleaning by the crew",
)
def spray_at_seam(plant: Plant, severity: float) -> None:
    """It spits with the pump."""
    plant.air.leaks = 0.18 + 0.2 * severity
    plant.signs["spray spits at a door"] = 0.5 + 0.5 * severity
