"""What steam does on the bench: while all heaters call, with other users off, at rest; and what the gauge shows."""

from __future__ import annotations

from collections.abc import Collection
from copy import deepcopy
from dataclasses import dataclass, replace

from diagnose.physics.steam import latent_heat_at_gauge
from diagnose.simulator.bench import Bench
from diagnose.simulator.heating import heats
from diagnose.simulator.parts import Heater
from diagnose.simulator.service import Service
from diagnose.simulator.steam_flow import SteamFlow, steam_flow, steam_heaters

__all__ = [
    "Held",
    "at_rest",
    "called",
    "calling",
    "gauge",
    "gauge_at_rest",
    "heater_of",
    "held",
    "quiet",
    "share",
    "tank_calling",
    "to_bucket",
]


def _flow(bench: Bench, name: str, others: bool, called: Collection[str]) -> SteamFlow:
    kept = bench.kept.get(f"steam {name}")
    if isinstance(kept, SteamFlow):
        return kept
    plant, state = bench.plant, bench.service.state
    parts = steam_heaters(plant)
    controls = {"booster": plant.booster.thermostat, **{n: t.thermostat for n, t in plant.tanks.items()}}
    calls = {n: (n in called or _busy(bench, n)) and c.stuck is not False for n, c in controls.items()}
    asked = replace(state, calls=calls if called else dict.fromkeys(controls, False), limited={})
    on = {n: heats(plant, asked, n) for n in parts}
    found = bench.kept[f"steam {name}"] = steam_flow(plant, state, on, others)
    return found


def _busy(bench: Bench, name: str) -> bool:
    """Whether a heater is called for most of the time late in service."""
    return sum(s.calls.get(name, False) for s in bench.late) > 0.5 * len(bench.late)


def calling(bench: Bench) -> SteamFlow:
    """Late in service, the booster calling and what else is called for most of the time, other users on."""
    return _flow(bench, "calling", others=True, called=("booster",))


def tank_calling(bench: Bench) -> SteamFlow:
    """The same with the tanks turned up until they call."""
    return _flow(bench, "tank calling", others=True, called=("booster", *bench.plant.tanks))


def quiet(bench: Bench) -> SteamFlow:
    """The same with the other users off."""
    return _flow(bench, "quiet", others=False, called=("booster",))


def at_rest(bench: Bench) -> SteamFlow:
    """Nothing called, other users off."""
    return _flow(bench, "at rest", others=False, called=())


def share(bench: Bench, pressure: float) -> float:
    """A pressure over the plate's."""
    return pressure / bench.plant.plate["steam_pressure"]


def gauge(bench: Bench) -> float:
    """What the machine's own gauge shows while all heat is called, [Pa]."""
    return _shown(bench, calling(bench).machine)


def gauge_at_rest(bench: Bench) -> float:
    """What it shows while nothing calls, [Pa]."""
    return _shown(bench, at_rest(bench).machine)


def _shown(bench: Bench, pressure: float) -> float:
    line = bench.plant.fuel.steam
    return line.gauge_stuck if line.gauge_stuck is not None else pressure * line.gauge_factor


def heater_of(bench: Bench, name: str) -> Heater:
    """A steam heater by name."""
    return steam_heaters(bench.plant)[name]


@dataclass(frozen=True)
class Held:
    """The final rinse held open for some minutes after service: means of the last two, and what the coil gives."""

    rise: float  # K over the booster
    condensate: float  # kg/s from the booster's trap


def held(bench: Bench) -> Held:
    """Hold the rinse open for four minutes, all else as it was."""
    kept = bench.kept.get("steam held")
    if isinstance(kept, Held):
        return kept
    plant = deepcopy(bench.plant)
    plant.rinse.actuator = "held" if plant.rinse.actuator == "works" else plant.rinse.actuator
    run = Service(plant, deepcopy(bench.service.state), 0.0)
    run.advance(240.0)
    last = [s.moment for s in run.samples if s.time >= run.state.time - 120.0]
    supply = plant.water.temperature - plant.water.droop
    heater, pressure = plant.booster.heater, plant.plate["steam_pressure"]
    latent = latent_heat_at_gauge(pressure)
    heat = sum(m.heat["booster"] for m in last) / len(last)
    rise = sum(m.temperatures["booster"] for m in last) / len(last) - supply
    astray = (heater.steam.floods + heater.steam.trap_blows) * heater.power / latent
    dripped = heat / latent / (1.0 - plant.fuel.steam.wet) + (astray if heat > 0.0 or heater.steam.floods else 0.0)
    found = bench.kept["steam held"] = Held(rise, dripped)
    return found


def called(bench: Bench, name: str) -> bool:
    """Whether a steam heater's valve gets its call while its water is cold."""
    controls = {"booster": bench.plant.booster.thermostat, **{n: t.thermostat for n, t in bench.plant.tanks.items()}}
    asked = replace(bench.service.state, calls={n: c.stuck is not False for n, c in controls.items()}, limited={})
    return heats(bench.plant, asked, name)


def to_bucket(bench: Bench, name: str) -> float:
    """Heat of a coil while its trap drains into a bucket instead of the return, over the heat it has, [W/W]."""
    branch = heater_of(bench, name).steam
    before, back = calling(bench).heat[name], branch.back
    branch.back = 0.0
    try:
        controls = dict.fromkeys(steam_heaters(bench.plant), True)
        after = steam_flow(bench.plant, bench.service.state, controls).heat[name]
    finally:
        branch.back = back
    return after / max(before, 1.0)
