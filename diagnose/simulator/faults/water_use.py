"""Ways of work, and ways of counting, by which a machine is said to use too much."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []


@fault(
    "water_use.half_empty",
    (
        "Racks go through half empty, or a second time.",
        "A rack takes its water and heat whatever stands in it.",
        "Gallons a rack are right; racks for the covers served are too many.",
    ),
    onset="slowly",
    conveyor=("pawl bar", "chain"),
)
def half_empty(plant: Plant, severity: float) -> None:
    """Up to twice the racks."""
    plant.habits.racks = 1.4 + 0.7 * severity


@fault(
    "water_use.changed_often",
    (
        "Tanks are emptied and filled again more often than the water asks for it.",
        "Each change takes a tank's volume, and its heat from the main's temperature up.",
        "The meter jumps by tanks, and nothing runs at rest.",
    ),
    onset="slowly",
)
def changed_often(plant: Plant, severity: float) -> None:
    """Several a shift."""
    plant.habits.changes = 6.0 + 8.0 * severity


@fault(
    "water_use.on_overnight",
    (
        "Tank heat, booster or fan stay on after closing.",
        "Hot walls and water go on losing heat to the room, and the fan draws warm air out.",
        "Power or gas is counted all night, and no water.",
    ),
    onset="slowly",
)
def on_overnight(plant: Plant, severity: float) -> None:
    """Some kilowatts for eight hours."""
    plant.habits.overnight = 6000.0 + 6000.0 * severity


@fault(
    "water_use.as_plate",
    (
        "The machine takes what its plate says.",
        "It was held against an estimate, another period or another machine.",
        "Meter, rinse flow and rinse time agree.",
    ),
    onset="installed",
)
def as_plate(plant: Plant, severity: float) -> None:
    """Nothing to mend."""
    plant.habits.yardstick = 0.6 + 0.4 * severity


@fault(
    "water_use.meter_shared",
    (
        "Others draw water past the same meter.",
        "With the machine's stop shut it turns on.",
        "What the machine itself takes is as its plate says.",
    ),
    onset="installed",
)
def meter_shared(plant: Plant, severity: float) -> None:
    """An ice machine, a hose, a flat above."""
    plant.habits.others = 8e-6 + 2e-5 * severity
