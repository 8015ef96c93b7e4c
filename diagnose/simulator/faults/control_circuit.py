"""Faults of the control circuit: its transformer and fuses, stop buttons, wires, permits and master relay."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_DARK = "Without control volts no lamp burns and no coil can pull."
_SERIES = "The chain is in series: open at one place, the master relay gets nothing."
# Milder ones make and break with the shake of the run, grosser ones stand open.
_STAYS_OPEN = 0.5


@fault(
    "control_circuit.feed_off",
    ("The handle that feeds the machine stands at off.", "No line reaches the machine's block.", _DARK),
    after="cleaning by the crew",
)
def feed_off(plant: Plant, severity: float) -> None:
    """Switched off and forgotten."""
    plant.control.links["feed"] = False


@fault(
    "control_circuit.primary_fuse",
    (
        "One of the two fuses ahead of the control transformer has parted.",
        "No current goes round its primary winding.",
        _DARK,
    ),
)
def primary_fuse(plant: Plant, severity: float) -> None:
    """Inrush of years."""
    plant.control.links["transformer"] = False
    plant.signs["primary fuse parted"] = 1.0


@fault(
    "control_circuit.transformer_dead",
    ("A winding of the control transformer is burnt through.", "Full volts go in and none are induced.", _DARK),
)
def transformer_dead(plant: Plant, severity: float) -> None:
    """Overloaded for years, in a hot box."""
    plant.control.links["transformer"] = False
    plant.signs["transformer winding open"] = 1.0
    plant.signs["varnish smell"] = 0.3 + 0.4 * severity


@fault(
    "control_circuit.secondary_fuse",
    ("The fuse behind the control transformer has tired of the coils' inrush.", "Its wire has parted.", _DARK),
)
def secondary_fuse(plant: Plant, severity: float) -> None:
    """Nothing behind it is short."""
    plant.control.links["fuse"] = False


@fault(
    "control_circuit.control_short",
    (
        "A coil or a wire of the control circuit is short to its return or to the frame.",
        "What the transformer can give then goes through the fuse, many times its rating.",
        "Each new fuse goes as soon as that branch gets its volts.",
    ),
    after="cleaning by the crew",
)
def control_short(plant: Plant, severity: float) -> None:
    """Water in a coil, a cable crushed at a door."""
    plant.control.links["fuse"] = False
    plant.control.short_ohms = 1.9 - 1.5 * severity


@fault(
    "control_circuit.stop_pressed",
    ("A stop button is pushed in.", "It latches with its contact open.", _SERIES),
    after="cleaning by the crew",
)
def stop_pressed(plant: Plant, severity: float) -> None:
    """Left latched at the other end; or racks and carts push it in the rush."""
    if severity < _STAYS_OPEN:
        plant.control.knocked = True
    else:
        plant.control.links["stops"] = False
        plant.signs["stop button in"] = 1.0


@fault(
    "control_circuit.stop_contact_open",
    ("The contact block behind a stop button does not close.", "The button stands out as if all were well.", _SERIES),
)
def stop_contact_open(plant: Plant, severity: float) -> None:
    """Green from detergent, or off its clip; pressing it hard helps one that is not quite gone."""
    plant.control.links["stops"] = False
    plant.signs["stop contact gives to pressing"] = max(0.0, 1.0 - 1.6 * severity)


@fault(
    "control_circuit.hold_contact_open",
    (
        "The contact that bridges the start button while the relay is in does not make.",
        "The finger on the button is the only way for the current.",
        "Let go, the relay drops.",
    ),
    after="parts replaced",
)
def hold_contact_open(plant: Plant, severity: float) -> None:
    """Burnt, slipped off its rail, or not moved over."""
    plant.control.holds = False
    plant.control.hold_ohms = 1e9 if severity > 0.35 else 6e3


@fault(
    "control_circuit.master_relay_dead",
    ("The master relay's coil is burnt through.", "Full volts stand across it and no current pulls.", _SERIES),
)
def master_relay_dead(plant: Plant, severity: float) -> None:
    """Everything before it is in order."""
    plant.control.links["relay"] = False


_WIRES = ("fuse", "switch", "stops", "doors", "overloads", "permits", "start")


@fault(
    "control_circuit.wire_loose",
    ("A wire's end lies loose in its terminal.", "Touching, it carries; shaken, it parts.", _SERIES),
    onset="comes and goes",
    after="electrical work",
)
def wire_loose(plant: Plant, severity: float) -> None:
    """At any terminal of the chain; it makes and breaks in the run, or has slipped out."""
    where = _WIRES[round(severity * 100) % len(_WIRES)]
    plant.signs["control wire loose"] = 0.6 + 0.4 * severity
    if severity < _STAYS_OPEN:
        plant.control.shakes_open = where
    else:
        plant.control.links[where] = False


_PERMIT = "Some machines may not wash with a tank that is too cold, and a thermostat in the chain sees to it."


@fault(
    "control_circuit.permit_waits",
    (_PERMIT, "The tank has not yet come to the figure.", "Once it has, the contact closes by itself."),
    onset="comes and goes",
)
def permit_waits(plant: Plant, severity: float) -> None:
    """Nothing is wrong: started too early, or a rush has cooled the tank."""
    plant.control.permit_short = 2.0 + 14.0 * severity
    plant.control.links["permits"] = severity < _STAYS_OPEN


@fault(
    "control_circuit.permit_thermostat_open",
    (_PERMIT, "That thermostat has lost its filling and feels cold for ever.", "The tank is hot and nothing starts."),
)
def permit_thermostat_open(plant: Plant, severity: float) -> None:
    """Its contact stays open."""
    plant.control.links["permits"] = False
    plant.signs["permit thermostat open"] = 1.0
