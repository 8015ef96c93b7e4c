"""Faults of a tank's steam heat: those of the wash tank's coil or injector."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault
from diagnose.simulator.steam_parts import SteamBranch

__all__: list[str] = []

_COIL, _EITHER, _INJECTOR = ("steam coil",), ("steam coil", "steam injector"), ("steam injector",)
_SLOW = "With less heat than it is rated for the tank warms slowly, and sinks where racks and air take more."


def branch(plant: Plant) -> SteamBranch:
    """The wash tank's own branch."""
    return plant.tanks["wash"].heater.steam


@fault(
    "tank_heater_steam.coil_limed",
    (
        "Lime and soil have baked on the tank's coil.",
        "The heat has to come through the shell, whose resistance is greater than the coil's own.",
        _SLOW,
    ),
    onset="slowly",
    tank_heat=_COIL,
)
def coil_limed(plant: Plant, severity: float) -> None:
    """A shell of a millimetre and more."""
    branch(plant).coil_scale = 1.1e-3 + 1.4e-3 * severity


@fault(
    "tank_heater_steam.trap_closed",
    (
        "The trap of the tank's coil does not let the condensate out.",
        "Water stands in the coil, and only what is left above it condenses steam.",
        _SLOW,
    ),
    tank_heat=_COIL,
)
def trap_closed(plant: Plant, severity: float) -> None:
    """Blocked, or nearly."""
    branch(plant).trap_open = 0.2 - 0.19 * severity


@fault(
    "tank_heater_steam.air_bound",
    (
        "Air that the coil took in overnight stays in it: its vent is shut.",
        "Where air stands no steam condenses; through the trap it leaves only slowly.",
        "The first heating crawls, later calls are nearly right.",
    ),
    onset="slowly",
    tank_heat=_COIL,
)
def air_bound(plant: Plant, severity: float) -> None:
    """Full of air at the start."""
    branch(plant).air = 0.88 + 0.12 * severity


@fault(
    "tank_heater_steam.strainer_blocked",
    (
        "The screen of the tank's own strainer is felted with rust.",
        "At rest there is full pressure behind it; while steam is drawn most of it is lost in the screen.",
        _SLOW,
    ),
    onset="slowly",
    after="plumbing work",
    tank_heat=_EITHER,
)
def strainer_blocked(plant: Plant, severity: float) -> None:
    """Choked."""
    branch(plant).strainer_open = 0.11 - 0.055 * severity


@fault(
    "tank_heater_steam.valve_stays_shut",
    (
        "The tank's steam valve gets its call and does not open, or only by a crack.",
        "So little steam comes through a crack that no pressure builds up behind it.",
        _SLOW,
    ),
    tank_heat=_EITHER,
)
def valve_stays_shut(plant: Plant, severity: float) -> None:
    """By a crack, or not at all."""
    branch(plant).valve_opens = 0.05 - 0.05 * severity


@fault(
    "tank_heater_steam.injector_blocked",
    (
        "Holes of the injector are limed or plugged with pulp.",
        "Steam flows by the area that is left, at full pressure before it.",
        _SLOW,
    ),
    onset="slowly",
    tank_heat=_INJECTOR,
)
def injector_blocked(plant: Plant, severity: float) -> None:
    """More than half of them blind."""
    branch(plant).holes_open = 0.42 - 0.3 * severity
