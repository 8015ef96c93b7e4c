"""Which heaters are on, and what gas gives: electric banks are worked out with the lines, steam in `steam_flow`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from diagnose.simulator.burning import burners, flame
from diagnose.simulator.parts import Heater
from diagnose.simulator.plant import Plant
from diagnose.simulator.state import DENSITY, State

__all__ = ["controlled", "fuel_heat", "heaters", "heats"]

_LEAST_WATER = 0.33  # of a tank: below it the low-water cut-out keeps the heater off; judgement


def heaters(plant: Plant) -> Iterator[tuple[str, Heater]]:
    """Every heater with its name: `booster` and the tanks."""
    if plant.booster.heater.kind != "none":
        yield "booster", plant.booster.heater
    for name, tank in plant.tanks.items():
        if tank.heater.kind != "none" and tank.heater.power > 0.0:
            yield name, tank.heater


def controlled(plant: Plant) -> bool:
    """Whether control volts reach the heaters' controls: they hang on the control transformer, behind its fuse."""
    links = plant.control.links
    return plant.power.control_share >= 0.6 and links["feed"] and links["transformer"] and links["fuse"]


def heats(plant: Plant, state: State, name: str) -> bool:
    """Whether a heater is switched on: called for and allowed, or its contactor or valve stands open by itself."""
    heater = plant.booster.heater if name == "booster" else plant.tanks[name].heater
    if heater.welded:
        return True
    if not heater.coil_works or not controlled(plant):
        return False
    if state.limited.get(name, False) or not state.calls[name]:
        return False
    if name == "booster":
        return plant.booster.allowed
    tank = plant.tanks[name]
    return not tank.low_cutout or state.flowing[f"mass {name}"] >= _LEAST_WATER * tank.volume * DENSITY


def fuel_heat(plant: Plant, name: str, state: State, on: Mapping[str, bool]) -> float:
    """Heat of a gas heater into its water, [W]: what its burner, beside the others that are called, brings through."""
    heater = plant.booster.heater if name == "booster" else plant.tanks[name].heater
    if not on[name] or not heater.feed_open:
        return 0.0
    water = state.flowing["booster"] if name == "booster" else state.temperature(name)
    return flame(plant, name, [n for n in burners(plant) if on.get(n)], water).heat
