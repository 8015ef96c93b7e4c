"""Which heaters are on, and what steam and gas give: electric banks are worked out with the lines."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.physics.steam import steam_temperature_at_gauge
from diagnose.simulator.parts import Heater
from diagnose.simulator.plant import Plant
from diagnose.simulator.state import DENSITY, State

__all__ = ["fuel_heat", "heaters", "heats"]

_LEAST_WATER = 0.33  # of a tank: below it the low-water cut-out keeps the heater off; judgement
_COIL_DESIGN = 1.25  # a steam coil's heat at rated steam over its rated heat, water cold as designed: judgement


def heaters(plant: Plant) -> Iterator[tuple[str, Heater]]:
    """Every heater with its name: `booster` and the tanks."""
    if plant.booster.heater.kind != "none":
        yield "booster", plant.booster.heater
    for name, tank in plant.tanks.items():
        if tank.heater.kind != "none" and tank.heater.power > 0.0:
            yield name, tank.heater


def heats(plant: Plant, state: State, name: str) -> bool:
    """Whether a heater is switched on: called for and allowed, or its contactor or valve stands open by itself."""
    heater = plant.booster.heater if name == "booster" else plant.tanks[name].heater
    if heater.welded:
        return True
    if not heater.coil_works or plant.power.control_share < 0.6 or not plant.control.links["fuse"]:
        return False
    if state.limited.get(name, False) or not state.calls[name]:
        return False
    if name == "booster":
        return plant.booster.allowed
    tank = plant.tanks[name]
    return not tank.low_cutout or state.flowing[f"mass {name}"] >= _LEAST_WATER * tank.volume * DENSITY


def fuel_heat(plant: Plant, name: str, state: State, on: bool) -> float:
    """Heat of a steam or gas heater into its water, [W].

    A coil gives heat by the difference from steam to water; an injector and a burner what their supply lets in.
    """
    heater = plant.booster.heater if name == "booster" else plant.tanks[name].heater
    if not on or not heater.feed_open:
        return 0.0
    if heater.kind in ("gas", "steam injector"):
        pressure = plant.fuel.gas_share if heater.kind == "gas" else plant.fuel.steam_share
        return float(heater.power * heater.heat_share * max(pressure, 0.0) ** 0.5)
    water = state.flowing["booster"] if name == "booster" else state.temperature(name)
    rated = plant.plate["steam_pressure"]
    steam = steam_temperature_at_gauge(max(0.0, rated * plant.fuel.steam_share))
    at_rated = steam_temperature_at_gauge(rated)
    aim = plant.booster.thermostat.setting if name == "booster" else plant.tanks[name].thermostat.setting
    full = _COIL_DESIGN * heater.power / (at_rated - aim)
    return max(0.0, full * heater.heat_share * (steam - water)) if plant.fuel.steam_share > 0.02 else 0.0
