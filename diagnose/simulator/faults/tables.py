"""Faults of the load and clean tables: joints, seams, turn, slope, and tables that are full."""

from __future__ import annotations

from diagnose.simulator.conveying import PULL
from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_ROW = 6 * 9.0 * 9.81  # N, a row of six loaded racks of 9 kg on the clean table: judgement
# Shares of racks that hang, pulls and how marked a sign is: judgement throughout.


@fault(
    "tables.clean_table_full",
    (
        "The clean table is full and its switch stops the conveyor.",
        "That is what the switch is for: the next rack would have nowhere to go.",
        "Take the end rack off and the conveyor starts.",
    ),
    conveyor=_RACKS,
)
def clean_table_full(plant: Plant, severity: float) -> None:
    """Full, once."""
    plant.signs["clean table full"] = 0.6 + 0.4 * severity
    plant.conveyor.table.pressed = "rack"


@fault(
    "tables.slow_unloading",
    (
        "Unloading can't keep up with the racks that come.",
        "At the rush the table fills again and again and the switch stops the conveyor each time.",
        "Between rushes it never happens.",
    ),
    onset="comes and goes",
    conveyor=_RACKS,
)
def slow_unloading(plant: Plant, severity: float) -> None:
    """Full for a third to two thirds of the rush."""
    plant.signs["clean table fills again"] = 0.6 + 0.4 * severity


@fault(
    "tables.load_joint",
    (
        "The load table's rails stand under the machine's.",
        "A rack's front edge meets a step, and what pushes it is a hand and no pawl.",
        "Once past it, racks run.",
    ),
    after="machine or tables moved",
    conveyor=_RACKS,
)
def load_joint(plant: Plant, severity: float) -> None:
    """A step of a tenth to a third of an inch."""
    plant.conveyor.jams += 0.1 + 0.2 * severity
    plant.signs["step at the entrance"] = 0.3 + 0.7 * severity


@fault(
    "tables.clean_joint",
    (
        "The clean table's rails stand over the machine's.",
        "Racks stop with their front edge at the exit and those behind push up.",
        "All of that is pull on the conveyor.",
    ),
    after="machine or tables moved",
    conveyor=_RACKS,
)
def clean_joint(plant: Plant, severity: float) -> None:
    """A step of a tenth to a third of an inch."""
    plant.conveyor.jams += 0.1 + 0.2 * severity
    plant.signs["step at the exit"] = 0.3 + 0.7 * severity


@fault(
    "tables.seam_lip",
    (
        "A seam of the table stands up.",
        "A rack's edge catches there, empty or full, new or old.",
        "The row behind it pushes back into the machine.",
    ),
    conveyor=_RACKS,
)
def seam_lip(plant: Plant, severity: float) -> None:
    """A lip."""
    plant.conveyor.jams += 0.08 + 0.2 * severity
    plant.signs["table seam stands up"] = 0.5 + 0.5 * severity


@fault(
    "tables.turn_drags",
    (
        "Rollers of the table's turn stand, or its inner guide is gone.",
        "The first rack halts in the curve, and each behind it adds its friction.",
        "The row pushes back until the clutch slips.",
    ),
    onset="slowly",
    conveyor=_RACKS,
    table_turn=(True,),
)
def turn_drags(plant: Plant, severity: float) -> None:
    """Rollers that stand."""
    plant.conveyor.jams += 0.08 + 0.2 * severity
    plant.signs["table turn drags"] = 0.5 + 0.5 * severity


@fault(
    "tables.out_of_level",
    (
        "The clean table leans across.",
        "Racks drift to its rim and rub along it, or stand in a hollow.",
        "The end rack may then miss the switch.",
    ),
    after="machine or tables moved",
    conveyor=_RACKS,
)
def out_of_level(plant: Plant, severity: float) -> None:
    """A tenth to two fifths of an inch a foot."""
    plant.conveyor.jams += 0.08 + 0.15 * severity
    plant.signs["table leans across"] = 0.3 + 0.7 * severity


@fault(
    "tables.pitch_steep",
    (
        "The clean table rises too steeply away from the machine.",
        "A row of racks weighs on the pawls by its length times the slope.",
        "Alone it seldom stops anything; with a weak clutch it does.",
    ),
    after="machine or tables moved",
    conveyor=_RACKS,
)
def pitch_steep(plant: Plant, severity: float) -> None:
    """A third to a full inch a foot: the row's weight along what exceeds a quarter of an inch."""
    slope = (1.0 / 3.0 + 2.0 / 3.0 * severity - 0.25) / 12.0
    plant.conveyor.drag += slope * _ROW / PULL
    plant.signs["table rises steeply"] = 0.3 + 0.7 * severity
