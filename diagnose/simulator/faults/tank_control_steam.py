"""Faults by which a tank gets more steam than it should, or gets it in the wrong way."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault
from diagnose.simulator.steam_parts import SteamBranch

__all__: list[str] = []

_COIL, _INJECTOR = ("steam coil",), ("steam injector",)
_THROUGH = "Bubbles break through the surface before they condense, and the steam rolls out at the ends."


def _injector(plant: Plant) -> SteamBranch:
    """The injector of the hotter tank: of the power rinse where there is one."""
    return list(plant.tanks.values())[-1].heater.steam


@fault(
    "tank_control.coil_leaks",
    (
        "The tank's coil has a hole, and live steam enters the water beside what condenses inside.",
        "Steam that condenses in the water stays as water: the level rises with the fill shut.",
        "The hot stream rises to the surface; the bulb, low by the pump's suction, feels it late and calls too long.",
    ),
    onset="slowly",
    tank_heat=_COIL,
)
def coil_leaks(plant: Plant, severity: float) -> None:
    """A hole at a weld; how much cooler the bulb is than the tank is judgement."""
    plant.tanks["wash"].heater.steam.hole = 0.35 + 0.5 * severity
    plant.tanks["wash"].thermostat.offset = -(12.0 + 6.0 * severity)


@fault(
    "tank_control.injector_open",
    (
        "The injector's nozzle is cracked or gone, and steam enters as bubbles as large as a fist.",
        "A large bubble has little surface for its steam, and reaches the top before it has condensed.",
        _THROUGH,
    ),
    tank_heat=_INJECTOR,
)
def injector_open(plant: Plant, severity: float) -> None:
    """Cracked, or left off."""
    branch = _injector(plant)
    branch.bursts = 0.35 + 0.35 * severity
    branch.holes_open = 1.2


@fault(
    "tank_control.injector_pressure_high",
    (
        "A bypass round the reducing valve lets the main's pressure at the injector.",
        "Steam flows by the root of its pressure and leaves the holes too fast for the water to close in on it.",
        _THROUGH,
    ),
    after="plumbing work",
    tank_heat=_INJECTOR,
)
def injector_pressure_high(plant: Plant, severity: float) -> None:
    """A bypass left open."""
    for tank in plant.tanks.values():
        tank.heater.steam.bypass = 0.6 + 0.4 * severity
