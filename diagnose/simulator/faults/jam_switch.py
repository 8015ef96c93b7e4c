"""Faults of the jam switch at the torque arm."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_STOPPED = "Its contact stands in the conveyor's circuit, so the conveyor stands while pumps go on."
# Gaps, travels, ohms of wet contacts, times and how marked a sign is: judgement throughout.


@fault(
    "jam_switch.set_too_fine",
    (
        "The gap between torque arm and jam switch is too fine.",
        "The arm gives way a little at every ordinary pull, and that is enough.",
        "The conveyor goes off with a full machine, and nothing is caught.",
    ),
    onset="installed",
    after="parts replaced",
)
def set_too_fine(plant: Plant, severity: float) -> None:
    """Under a millimetre."""
    plant.conveyor.jam.gap = 0.95e-3 - 0.5e-3 * severity


@fault(
    "jam_switch.water_logged",
    (
        "Water stands in the jam switch.",
        "Wet, its contact is no longer a sound path, and the contactor's coil lets go.",
        "By morning it is dry and well.",
    ),
    onset="comes and goes",
    after="cleaning by the crew",
)
def water_logged(plant: Plant, severity: float) -> None:
    """Some hundred ohms to kilohms."""
    plant.conveyor.jam.damp = 500.0 + 4000.0 * severity
    plant.signs["jam switch wet"] = 0.6 + 0.4 * severity


@fault(
    "jam_switch.actuator_sticks",
    ("The torque arm stays over after a real jam.", "Its pivot is stiff with soil and rust.", _STOPPED),
)
def actuator_sticks(plant: Plant, severity: float) -> None:
    """A knock on the guard frees it."""
    plant.conveyor.jam.stays = True
    plant.signs["torque arm stays over"] = 0.6 + 0.4 * severity


@fault(
    "jam_switch.contact_bridged",
    (
        "The jam switch is bridged or its contact welded.",
        "A held rack pulls the arm over and nothing stops.",
        "Clutch or overload must do what the switch should.",
    ),
    after="electrical work",
)
def contact_bridged(plant: Plant, severity: float) -> None:
    """It can stop nothing."""
    plant.conveyor.jam.bridged = True


@fault(
    "jam_switch.set_too_coarse",
    (
        "The gap of the jam switch is too wide.",
        "The clutch or the rack gives way before the arm gets there.",
        "By hand it opens, far over.",
    ),
    onset="installed",
    after="parts replaced",
)
def set_too_coarse(plant: Plant, severity: float) -> None:
    """Five millimetres and more."""
    plant.conveyor.jam.gap = 0.005 + 0.003 * severity


@fault(
    "jam_switch.holds_rightly",
    (
        "A rack is jammed in the machine.",
        "The drive pulls on it, the torque arm goes over and opens the jam switch, as it is meant to.",
        "With the rack out the arm swings back.",
    ),
    conveyor=_RACKS,
)
def holds_rightly(plant: Plant, severity: float) -> None:
    """One rack askew."""
    plant.conveyor.jam.holds = True
    plant.signs["rack jammed now"] = 0.7 + 0.3 * severity
