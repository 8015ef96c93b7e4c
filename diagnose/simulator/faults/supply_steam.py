"""Faults of the steam's way to the machine: boiler, main, stop, strainer, reducing valve."""

from __future__ import annotations

import math

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault
from diagnose.simulator.steam_parts import MAIN, REDUCER_LOSES, STOP_LOSES, STRAINER_LOSES

__all__: list[str] = []

_STEAM = ("steam",)
_COOLER = "Steam of less pressure is cooler, and a coil gives heat by the difference from steam to water."
_AFTER = "plumbing work"
_RUSH, _TANKS = 0.85, {1: 0.55, 2: 0.1}  # racks at the rush over the plate's; how long a sound tank calls: judgement
_LOSES = 2.2  # of the plate's pressure that is lost where the machine's usual steam just gets through: judgement


def _narrow(plant: Plant, lost: float, severity: float) -> float:
    """Share of a passage that starves the machine at the rush, by what it loses when open, at rated steam.

    What the rush draws over the rated steam follows from the plate: rinse flow, rise, and how long a rack holds it.
    """
    plate = plant.plate
    tanks = sum(tank.heater.power for tank in plant.tanks.values())
    held = min(1.0, _RUSH * plate["racks_per_hour"] * plate["rack_length"] / plate["conveyor_speed"])
    rise = plate["rinse_temperature"] + 3.0 - plate["booster_inlet"]
    drawn = 4.12e6 * plate["rinse_flow"] * rise * held + _TANKS[int(plate.traits["tanks"])] * tanks
    usual = drawn / (plant.booster.heater.power + tanks)
    return usual * math.sqrt(lost / _LOSES) * (1.2 - 0.38 * severity)


@fault(
    "supply_steam.boiler_low",
    (
        "The boiler holds less pressure than the machine wants.",
        "The reducing valve stands wide open and can only pass on what there is, less what is lost on the way.",
        _COOLER,
    ),
    booster=_STEAM,
)
def boiler_low(plant: Plant, severity: float) -> None:
    """A low main."""
    plant.fuel.steam.main = 0.6 - 0.42 * severity


@fault(
    "supply_steam.prv_low",
    (
        "The reducing valve opens too little: its pilot is choked or its spring let down.",
        "What is lost in it grows with the square of the flow, so it sinks further when the heaters call.",
        _COOLER,
    ),
    onset="slowly",
    booster=_STEAM,
)
def prv_low(plant: Plant, severity: float) -> None:
    """Chokes and is set low."""
    plant.fuel.steam.reducer_open = _narrow(plant, REDUCER_LOSES, severity)
    plant.fuel.steam.reducer_set = 1.0 - 0.35 * severity


@fault(
    "supply_steam.steam_strainer_blocked",
    (
        "The strainer ahead of the reducing valve is full of scale and mud.",
        "At rest nothing is lost in it; under load the loss grows with the square of the flow over the free area.",
        _COOLER,
    ),
    onset="slowly",
    after=_AFTER,
    booster=_STEAM,
)
def steam_strainer_blocked(plant: Plant, severity: float) -> None:
    """Choked."""
    plant.fuel.steam.strainer_open = _narrow(plant, STRAINER_LOSES, severity)


@fault(
    "supply_steam.steam_stop_part_closed",
    (
        "The steam stop at the machine is not fully open.",
        "At rest the pressure is full; with all heat called the narrow passage takes most of it.",
        _COOLER,
    ),
    after=_AFTER,
    booster=_STEAM,
)
def steam_stop_part_closed(plant: Plant, severity: float) -> None:
    """A turn or two."""
    plant.fuel.steam.stop_open = _narrow(plant, STOP_LOSES, severity)


@fault(
    "supply_steam.others_take_steam",
    (
        "Kettles and ovens draw on the same main as the machine.",
        "While they run the main sinks under what the reducing valve should hold.",
        _COOLER,
    ),
    onset="comes and goes",
    booster=_STEAM,
)
def others_take_steam(plant: Plant, severity: float) -> None:
    """Draw the main down."""
    plant.fuel.steam.others = MAIN - 0.6 + 0.42 * severity


@fault(
    "supply_steam.line_wet",
    (
        "The drip trap on the steam line stays shut, and the line's water has only the machine to run to.",
        "What comes is part water, which brings no latent heat and fills the coil's surface.",
        "The pressure is right and the heat is not; slugs of water bang in the pipe.",
    ),
    onset="slowly",
    booster=_STEAM,
)
def line_wet(plant: Plant, severity: float) -> None:
    """Undrained."""
    plant.fuel.steam.undrained = 0.22 + 0.28 * severity
    plant.signs["steam bangs"] = 0.5 + 0.5 * severity


@fault(
    "supply_steam.boiler_primes",
    (
        "The boiler's water foams and goes over with the steam.",
        "The traps work and can't keep up; what comes is part boiler water.",
        "The pressure is right and the heat comes in surges.",
    ),
    onset="comes and goes",
    booster=_STEAM,
)
def boiler_primes(plant: Plant, severity: float) -> None:
    """Water in the steam."""
    plant.fuel.steam.carried = 0.22 + 0.28 * severity
    plant.signs["steam bangs"] = 0.5 + 0.5 * severity


@fault(
    "supply_steam.steam_shut",
    (
        "The main is shut or the boiler is out.",
        "No pressure stands anywhere along the line, and every coil stays cold.",
        "Tanks and booster sink to the temperature of the water that runs in.",
    ),
    after=_AFTER,
    booster=_STEAM,
)
def steam_shut(plant: Plant, severity: float) -> None:
    """Nothing."""
    plant.fuel.steam.main = 0.0


@fault(
    "supply_steam.prv_high",
    (
        "The reducing valve's seat leaks, so that a passage stays open whatever the spring asks.",
        "With little drawn the pressure behind it creeps up towards the main's.",
        "Hotter steam makes coils hasty, valves slam, and the safety valve spits.",
    ),
    after=_AFTER,
    booster=_STEAM,
)
def prv_high(plant: Plant, severity: float) -> None:
    """Passes too much."""
    plant.fuel.steam.reducer_leak = 0.22 + 0.35 * severity


@fault(
    "supply_steam.line_cold",
    (
        "A cold line condenses the first steam that enters it.",
        "Until pipe and lagging are hot the pressure at the machine climbs slowly.",
        "After a quarter of an hour everything is right.",
    ),
    onset="comes and goes",
    booster=_STEAM,
)
def line_cold(plant: Plant, severity: float) -> None:
    """Warms up slowly."""
    plant.fuel.steam.slow = 220.0 + 180.0 * severity
    plant.signs["steam line cold at first"] = 0.6 + 0.4 * severity


@fault(
    "supply_steam.trap_blows",
    (
        "A trap's seat is cut, and live steam goes straight through it into the return.",
        "The coil has its heat, the boiler pays for more than that.",
        "Behind the trap it is as hot as before it, and the receiver's vent smokes without a pause.",
    ),
    onset="slowly",
    booster=_STEAM,
)
def trap_blows(plant: Plant, severity: float) -> None:
    """Blows through the booster's trap."""
    plant.booster.heater.steam.trap_blows = 0.25 + 0.35 * severity


@fault(
    "supply_steam.joint_leaks",
    (
        "Packing or gasket of a steam joint has gone.",
        "Steam escapes there in a clear jet that turns to cloud; the line hardly loses pressure by it.",
        "Water drips under it.",
    ),
    onset="slowly",
    after=_AFTER,
    booster=_STEAM,
)
def joint_leaks(plant: Plant, severity: float) -> None:
    """Blows at a joint."""
    plant.fuel.steam.leak = 0.03 + 0.05 * severity
    plant.signs["steam joint blows"] = 0.5 + 0.5 * severity


@fault(
    "supply_steam.gauge_cooked",
    (
        "Steam has got at the gauge's tube, because its siphon was dry.",
        "The needle stands where it stood then, whatever the pressure is.",
        "Saturated steam has one temperature for each pressure, so the pipe's heat gives the gauge away.",
    ),
    booster=_STEAM,
)
def gauge_cooked(plant: Plant, severity: float) -> None:
    """Stuck low, or high where it is gross."""
    wrong = 0.6 - 0.6 * severity if severity < 0.5 else 1.4 + severity
    plant.fuel.steam.gauge_stuck = wrong * plant.plate["steam_pressure"]
