"""Faults of a belt of flights that make it run stiff."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_FLIGHT = ("flight",)
# Pulls over the sound machine's and how marked a sign is: judgement throughout.


def _drags(plant: Plant, pull: float, sign: str, marked: float) -> None:
    plant.conveyor.drag += pull
    plant.conveyor.stiff += pull
    plant.signs[sign] = marked


@fault(
    "flight_conveyor.strip_lifted",
    (
        "A wear strip of the track stands up at one end.",
        "Each row of flights ticks against it at the same place of the machine.",
        "Hot, the plastic grows and holds the belt.",
    ),
    conveyor=_FLIGHT,
)
def strip_lifted(plant: Plant, severity: float) -> None:
    """A tick with every row."""
    _drags(plant, 0.85 + 0.15 * severity, "strip stands up", 0.5 + 0.5 * severity)
    plant.signs["rows knock at one place"] = 0.25 + 0.25 * severity


@fault(
    "flight_conveyor.ware_wedged",
    (
        "A piece of ware is wedged below the belt.",
        "It holds the return strand fast, and the drive pulls until clutch, switch or overload gives way.",
        "Above the belt nothing is in the way.",
    ),
    conveyor=_FLIGHT,
)
def ware_wedged(plant: Plant, severity: float) -> None:
    """A spoon at the end shaft."""
    _drags(plant, 1.5 + 0.9 * severity, "ware wedged under the belt", 0.6 + 0.4 * severity)


@fault(
    "flight_conveyor.return_packed",
    (
        "Labels, straw and lime have packed the return pan.",
        "The belt drags through them all the time.",
        "Each week takes a little more of the motor.",
    ),
    onset="slowly",
    conveyor=_FLIGHT,
)
def return_packed(plant: Plant, severity: float) -> None:
    """Feet of cake."""
    _drags(plant, 0.85 + 0.15 * severity, "return pan packed", 0.5 + 0.5 * severity)


@fault(
    "flight_conveyor.bearing_dry",
    (
        "A bearing of the end shafts has run dry.",
        "It turns against rust and heats.",
        "That pull is there with no ware on the belt.",
    ),
    onset="slowly",
    conveyor=_FLIGHT,
)
def bearing_dry(plant: Plant, severity: float) -> None:
    """Too hot to hold."""
    _drags(plant, 0.85 + 0.15 * severity, "end shaft bearing groans", 0.3 + 0.4 * severity)
