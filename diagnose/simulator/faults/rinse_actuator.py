"""Faults of what calls for the final rinse."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_HELD = "Water runs between racks, the tanks run over, and the booster heats without rest."


def _held(plant: Plant) -> None:
    plant.rinse.actuator = "held"


def _dead(plant: Plant) -> None:
    plant.rinse.actuator = "dead"


@fault(
    "rinse_actuator.arm_stuck",
    ("The arm hangs over after a rack has passed.", "The switch behind it stays made, so the valve stays open.", _HELD),
    onset="slowly",
)
def arm_stuck(plant: Plant, severity: float) -> None:
    """Stiff in its bearing."""
    _held(plant)
    plant.signs["rinse arm hangs"] = 0.5 + 0.5 * severity


@fault(
    "rinse_actuator.return_spring_broken",
    (
        "The spring that brings the arm home is broken.",
        "The arm stays where the rack left it, and the switch made.",
        _HELD,
    ),
)
def return_spring_broken(plant: Plant, severity: float) -> None:
    """The arm flops."""
    _held(plant)
    plant.signs["rinse arm flops"] = 1.0


@fault(
    "rinse_actuator.switch_stuck",
    ("The switch stays made with the arm home.", "The relay and the valve get their command all the time.", _HELD),
)
def switch_stuck(plant: Plant, severity: float) -> None:
    """Its contact does not open."""
    _held(plant)
    plant.signs["rinse switch stays made"] = 1.0


@fault(
    "rinse_actuator.rinse_relay_welded",
    ("The relay's contact has welded.", "The valve is fed also with the switch's wire off.", _HELD),
)
def rinse_relay_welded(plant: Plant, severity: float) -> None:
    """Its contact does not part."""
    _held(plant)
    plant.signs["rinse relay stays in"] = 1.0


@fault(
    "rinse_actuator.manual_on",
    ("A hand switch for the rinse stands on.", "It feeds the valve past the arm.", _HELD),
    after="chemical call or delime",
)
def manual_on(plant: Plant, severity: float) -> None:
    """Left on."""
    _held(plant)
    plant.signs["rinse hand switch on"] = 1.0


@fault(
    "rinse_actuator.rack_parked",
    (
        "A rack stands under the last arms and holds the arm over.",
        "The machine does what it must: it rinses what is there.",
        _HELD,
    ),
    conveyor=_RACKS,
)
def rack_parked(plant: Plant, severity: float) -> None:
    """Left where it stands."""
    _held(plant)
    plant.signs["rack parked in the rinse"] = 1.0


@fault(
    "rinse_actuator.rinse_long",
    (
        "A timer or a slow valve keeps the rinse on after the rack.",
        "Each rack takes more water than it needs, and its heat with it.",
        "At rush the rinse hardly stops, and the booster falls behind.",
    ),
)
def rinse_long(plant: Plant, severity: float) -> None:
    """Seconds more for each rack."""
    plant.rinse.run_over = 6.0 + 10.0 * severity
    plant.rinse.actuator_share = 1.3 + 0.3 * severity


@fault(
    "rinse_actuator.arm_missed",
    ("The rack passes without moving the arm.", "No command reaches the valve.", "Moved by hand, the rinse comes."),
    after="machine or tables moved",
)
def arm_missed(plant: Plant, severity: float) -> None:
    """Bent or set too high."""
    _dead(plant)
    plant.signs["rinse arm missed by racks"] = 0.6 + 0.4 * severity


@fault(
    "rinse_actuator.switch_open",
    (
        "The switch behind the arm does not make.",
        "Volts end there.",
        "The valve gets no command whatever the rack does.",
    ),
)
def switch_open(plant: Plant, severity: float) -> None:
    """Its contact stays open."""
    _dead(plant)
    plant.signs["rinse switch stays open"] = 1.0


@fault(
    "rinse_actuator.rinse_relay_open",
    (
        "The rinse relay does not make.",
        "Volts reach the switch and the relay and end there.",
        "The valve gets no command.",
    ),
)
def rinse_relay_open(plant: Plant, severity: float) -> None:
    """Coil open or contact burnt."""
    plant.rinse.commanded = False
    plant.rinse.actuator = "dead"
    plant.signs["rinse relay does not make"] = 1.0


@fault(
    "rinse_actuator.lead_broken",
    (
        "The lead from the box to the valve is broken.",
        "Volts leave the box and do not arrive.",
        "The valve stays shut.",
    ),
)
def lead_broken(plant: Plant, severity: float) -> None:
    """Broken or its plug off."""
    plant.rinse.commanded = False
    plant.rinse.actuator = "dead"
    plant.signs["rinse lead broken"] = 1.0


@fault(
    "rinse_actuator.held_by_design",
    (
        "The control holds the rinse back until the conveyor runs and every tank is ready.",
        "No command reaches the valve because a condition before it is not met.",
        "With the condition met it rinses.",
    ),
)
def held_by_design(plant: Plant, severity: float) -> None:
    """Not ready yet."""
    _dead(plant)
    plant.signs["rinse held back"] = 1.0


@fault(
    "rinse_actuator.fills_by_rinse",
    (
        "This machine fills its tank through the rinse arms, and the tank is under its mark.",
        "The level control holds the rinse valve open until the level is made.",
        "At the mark it ends by itself.",
    ),
    onset="comes and goes",
)
def fills_by_rinse(plant: Plant, severity: float) -> None:
    """Filling lamp lit."""
    plant.rinse.tops_up = True
    plant.signs["filling by the rinse"] = 0.7 + 0.3 * severity
