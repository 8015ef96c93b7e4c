"""Faults of the switches at the doors."""

from __future__ import annotations

from diagnose.simulator.control import coil_impedance
from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_CHAIN = "The door's contact is a link of the chain that holds pumps and conveyor on."
# Milder ones make and break as the machine shakes or steams, grosser ones stand open.
_STAYS_OPEN = 0.5


def _bounces(plant: Plant, severity: float) -> None:
    """A contact that makes and breaks in the run starts the motors over and over."""
    plant.signs["door or float bounces"] = 0.3 + 0.4 * severity


@fault(
    "door_interlock.magnet_shifted",
    (
        "The magnet of a door has moved away from its switch.",
        "Its field falls with the cube of the way, and at the edge of its reach a shake lets the contact go.",
        _CHAIN,
    ),
    onset="comes and goes",
    after="cleaning by the crew",
)
def magnet_shifted(plant: Plant, severity: float) -> None:
    """At the edge of its reach, or beyond it."""
    if severity < _STAYS_OPEN:
        plant.control.door.gap = 7.9e-3 + 1.2e-3 * severity
        _bounces(plant, severity)
    else:
        plant.control.door.gap = 9.2e-3 + 2.6e-3 * severity


@fault(
    "door_interlock.switch_dead",
    ("The contact in a door's switch no longer closes.", "No magnet brings it to.", _CHAIN),
)
def switch_dead(plant: Plant, severity: float) -> None:
    """Struck, or burnt by a load that was too much for it."""
    plant.control.door.ohms = 1e9


@fault(
    "door_interlock.switch_wet",
    (
        "Water stands in a door's switch or plug.",
        "It carries a little of the current and takes volts from the coils.",
        "They let go or never pull.",
    ),
    onset="comes and goes",
    after="cleaning by the crew",
)
def switch_wet(plant: Plant, severity: float) -> None:
    """Damp leaves the coils some seven tenths of their volts, a flooded one nearly nothing."""
    if severity < _STAYS_OPEN:
        plant.control.door.ohms = (0.5 + 0.6 * severity) * abs(coil_impedance(plant))
        _bounces(plant, severity)
    else:
        plant.control.door.ohms = 3e3 + 8e3 * severity


@fault(
    "door_interlock.cable_broken",
    (
        "The copper in a door's cable has broken where it moves with the door.",
        "Its ends touch as long as nothing stirs them.",
        _CHAIN,
    ),
    onset="comes and goes",
    after="machine or tables moved",
)
def cable_broken(plant: Plant, severity: float) -> None:
    """Strand by strand, at last through."""
    plant.control.door.frayed = 0.35 + 0.6 * severity if severity < _STAYS_OPEN else min(1.0, 0.5 + 0.5 * severity)
    if severity < _STAYS_OPEN:
        _bounces(plant, severity)
