"""What steam does on the bench: while all heaters call, with other users off, at rest; and what the gauge shows."""

from __future__ import annotations

from dataclasses import replace

from diagnose.simulator.bench import Bench
from diagnose.simulator.heating import heats
from diagnose.simulator.parts import Heater
from diagnose.simulator.steam_flow import SteamFlow, steam_flow, steam_heaters

__all__ = ["at_rest", "calling", "gauge", "gauge_at_rest", "heater_of", "quiet", "share"]


def _flow(bench: Bench, name: str, others: bool, called: bool) -> SteamFlow:
    kept = bench.kept.get(f"steam {name}")
    if isinstance(kept, SteamFlow):
        return kept
    plant, state = bench.plant, bench.service.state
    parts = steam_heaters(plant)
    controls = {"booster": plant.booster.thermostat, **{n: t.thermostat for n, t in plant.tanks.items()}}
    asked = replace(state, calls={n: called and c.stuck is not False for n, c in controls.items()}, limited={})
    on = {n: heats(plant, asked, n) for n in parts}
    found = bench.kept[f"steam {name}"] = steam_flow(plant, state, on, others)
    return found


def calling(bench: Bench) -> SteamFlow:
    """At the end of service, every heater that can be called calling, the building's other users on."""
    return _flow(bench, "calling", others=True, called=True)


def quiet(bench: Bench) -> SteamFlow:
    """The same with the other users off."""
    return _flow(bench, "quiet", others=False, called=True)


def at_rest(bench: Bench) -> SteamFlow:
    """Nothing called, other users off."""
    return _flow(bench, "at rest", others=False, called=False)


def share(bench: Bench, pressure: float) -> float:
    """A pressure over the plate's."""
    return pressure / bench.plant.plate["steam_pressure"]


def gauge(bench: Bench) -> float:
    """What the machine's own gauge shows while all heat is called, [Pa]."""
    return _shown(bench, calling(bench).machine)


def gauge_at_rest(bench: Bench) -> float:
    """The same with nothing called."""
    return _shown(bench, at_rest(bench).machine)


def _shown(bench: Bench, pressure: float) -> float:
    line = bench.plant.fuel.steam
    return line.gauge_stuck if line.gauge_stuck is not None else pressure * line.gauge_factor


def heater_of(bench: Bench, name: str) -> Heater:
    """A steam heater by name."""
    return steam_heaters(bench.plant)[name]
