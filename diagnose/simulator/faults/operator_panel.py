"""Faults of what the crew touches: switches, start buttons, keys, the board behind them, lamps."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_ENDS = "The chain ends there, and the master relay gets nothing."
_ORDER = "All contacts before it are closed, and the order to start never comes."


@fault(
    "operator_panel.selector_not_on_run",
    ("The panel's selector stands at another place than run.", "There the pumps are locked out on purpose.", _ENDS),
    after="cleaning by the crew",
)
def selector_not_on_run(plant: Plant, severity: float) -> None:
    """At fill or drain with lamps lit, or at off and dark."""
    plant.control.links["switch"] = False
    plant.signs["selector elsewhere"] = 1.0
    plant.signs["selector in fill or drain"] = 1.0 if 0.35 < severity < 0.7 else 0.0


@fault(
    "operator_panel.power_switch_worn",
    ("The contact of the power switch is burnt away.", "On or off, it passes no current.", _ENDS),
    onset="comes and goes",
)
def power_switch_worn(plant: Plant, severity: float) -> None:
    """A contact that carried coils and lamps together for years."""
    plant.control.links["switch"] = False
    plant.signs["power switch soft"] = 0.5 + 0.5 * severity


@fault(
    "operator_panel.start_contact_dead",
    ("The contact of a start button is coated with grease and lime.", "Pressed, it does not make.", _ORDER),
    onset="slowly",
)
def start_contact_dead(plant: Plant, severity: float) -> None:
    """The other end's button works, and a worn one at the fifth push; one that is gone never."""
    plant.control.links["start"] = False
    plant.signs["another push starts it"] = 1.0 - 0.2 * severity if severity < 0.85 else 0.0


@fault(
    "operator_panel.keys_wet",
    (
        "Water has crept behind the touch keys.",
        "It joins some of their tracks and holds others apart.",
        "Start is never understood, or stop is understood when nobody asks.",
    ),
    onset="comes and goes",
    after="cleaning by the crew",
)
def keys_wet(plant: Plant, severity: float) -> None:
    """Damp keys press stop by themselves, drowned ones press nothing."""
    plant.signs["keys wet"] = 0.6 + 0.4 * severity
    if severity < 0.5:
        plant.control.stops_by = "keys"
    else:
        plant.control.links["order"] = False


@fault(
    "operator_panel.board_output_dead",
    ("A relay on the board has burnt.", "Its lamp lights and its terminal gives no volts.", _ENDS),
)
def board_output_dead(plant: Plant, severity: float) -> None:
    """A coil without its snubber has burnt it."""
    plant.control.links["order"] = False
    plant.signs["board output dead"] = 1.0


@fault(
    "operator_panel.lamp_dead",
    (
        "The filament of the power lamp has shaken itself to death.",
        "Its branch hangs beside the chain, not in it.",
        "The panel is dark and everything would run.",
    ),
)
def lamp_dead(plant: Plant, severity: float) -> None:
    """Dark, and not dead."""
    plant.signs["lamp stays dark"] = 0.6 + 0.4 * severity


@fault(
    "operator_panel.set_to_hand",
    (
        "The conveyor's mode switch stands at hand.",
        "It carries the coil's current past the table's switch and the run timer.",
        "Nothing stops the bar but the stop button.",
    ),
    after="parts replaced",
    conveyor=("pawl bar", "chain"),
)
def set_to_hand(plant: Plant, severity: float) -> None:
    """Left there by whoever served it last."""
    plant.conveyor.table.jumped = True
