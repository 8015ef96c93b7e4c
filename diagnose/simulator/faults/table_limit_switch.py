"""Faults of the limit switch at the end of the clean table."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_STOPPED = "Its contact stands in the conveyor's circuit, so the conveyor stands while pumps go on."
# Gaps, travels, ohms of wet contacts, times and how marked a sign is: judgement throughout.


@fault(
    "table_limit_switch.misadjusted",
    (
        "The table's switch clicks at the least touch.",
        "A rack that bumps the row moves the flap by as much.",
        "The conveyor stops with places free, and starts when the table is shaken.",
    ),
    onset="installed",
    after="machine or tables moved",
    conveyor=_RACKS,
)
def misadjusted(plant: Plant, severity: float) -> None:
    """Under a fifth of an inch."""
    plant.conveyor.table.travel = 0.0042 - 0.0032 * severity


@fault(
    "table_limit_switch.stuck",
    ("The flap's lever is stiff and stays over.", "The rack that pressed it is long gone.", _STOPPED),
    onset="slowly",
    conveyor=_RACKS,
)
def stuck(plant: Plant, severity: float) -> None:
    """Lime at its shaft."""
    plant.conveyor.table.pressed = "itself"


@fault(
    "table_limit_switch.paddle_bent",
    ("The flap's stem is bent and leans on the rim.", "It is pressed with no rack near it.", _STOPPED),
    after="machine or tables moved",
    conveyor=_RACKS,
)
def paddle_bent(plant: Plant, severity: float) -> None:
    """A bow in the stem."""
    plant.conveyor.table.pressed = "rim"


@fault(
    "table_limit_switch.wired_wrong",
    (
        "The switch is wired to its other contact.",
        "With the flap free the circuit is open, with the flap pressed it is closed.",
        "It stands with an empty table and runs with a full one.",
    ),
    onset="installed",
    after="electrical work",
    conveyor=_RACKS,
)
def wired_wrong(plant: Plant, severity: float) -> None:
    """The wrong way round."""
    plant.conveyor.table.contact = "reversed"


@fault(
    "table_limit_switch.cable_wet",
    (
        "Water is in the switch or its cable, or a lead is broken inside.",
        "The path is neither closed nor open, and the contactor's coil drops and pulls in.",
        "Dry, or with the cable lying another way, it runs.",
    ),
    onset="comes and goes",
    after="cleaning by the crew",
    conveyor=_RACKS,
)
def cable_wet(plant: Plant, severity: float) -> None:
    """Some hundred ohms to kilohms."""
    plant.conveyor.table.damp = 500.0 + 4000.0 * severity


@fault(
    "table_limit_switch.paddle_out_of_reach",
    (
        "The flap stands where the last rack does not reach it.",
        "The table fills and nothing stops the conveyor.",
        "Pushed by hand it clicks and stops it.",
    ),
    after="machine or tables moved",
    conveyor=_RACKS,
)
def paddle_out_of_reach(plant: Plant, severity: float) -> None:
    """An inch and a half and more."""
    plant.conveyor.table.travel = 0.036 + 0.015 * severity


@fault(
    "table_limit_switch.bridged",
    (
        "The table's switch is bridged or its contact welded shut.",
        "Pressed or not, its circuit is closed.",
        "Racks are pushed against a full table.",
    ),
    after="electrical work",
    conveyor=_RACKS,
)
def bridged(plant: Plant, severity: float) -> None:
    """A wire across it."""
    plant.conveyor.table.contact = "bridged"


@fault(
    "table_limit_switch.object_on_paddle",
    ("A cart, a tray or a cloth presses the flap.", "The switch can't tell it from a rack.", _STOPPED),
    conveyor=_RACKS,
)
def object_on_paddle(plant: Plant, severity: float) -> None:
    """Taken away, racks move."""
    plant.conveyor.table.pressed = "cart"


@fault(
    "table_limit_switch.lever_slips",
    (
        "The flap's lever turns on the switch's shaft.",
        "A rack swings it over and the shaft stands still.",
        "One time it takes the shaft along, the next it does not.",
    ),
    onset="comes and goes",
    conveyor=_RACKS,
)
def lever_slips(plant: Plant, severity: float) -> None:
    """A loose clamp screw."""
    plant.conveyor.table.lever_slips = 0.35 + 0.5 * severity


@fault(
    "table_limit_switch.stop_delay_long",
    (
        "The stop is delayed by seconds after the click.",
        "Speed times that time is how far the row is pushed on.",
        "The last racks lift, and then it stops.",
    ),
    onset="installed",
    after="parts replaced",
    conveyor=_RACKS,
)
def stop_delay_long(plant: Plant, severity: float) -> None:
    """Four to twelve seconds."""
    plant.conveyor.table.delay = 4.5 + 7.0 * severity
