"""Steam from the main to the coils: pressures, what condenses, what heat comes of it."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from diagnose.physics.steam import latent_heat_at_gauge, steam_temperature_at_gauge
from diagnose.simulator.parts import Heater
from diagnose.simulator.plant import Plant
from diagnose.simulator.state import State
from diagnose.simulator.steam_parts import REDUCER_LOSES, STOP_LOSES, STRAINER_LOSES, SteamBranch, SteamLine

__all__ = ["COIL", "INJECTOR", "SteamFlow", "lives_on_steam", "steam_flow", "steam_heaters"]

COIL, INJECTOR = ("steam", "steam coil"), "steam injector"
_KINDS = (*COIL, INJECTOR)
_BRANCH, _VALVE = 0.015, 0.02  # of the plate's pressure that strainer and valve of a branch lose at its rated steam
_DROOP = 0.04  # of its set pressure that a reducing valve falls off to rated flow; judgement
_TRAP = 2.0  # condensate a trap passes over the rated, at the plate's pressure: common practice, sized for twice
# A clean coil's heat at rated steam and the setting's water over the heat it is sized for; judgement. A booster's has
# its reserve already: like this it still makes its rated rise with water running all the while.
_DESIGN = {"steam": 0.85, "steam coil": 1.1}
_UA = 3500.0  # W/(m2 K) of a clean steam coil in moved water, and
_LIME = 2.2  # W/(m K) of scale: from memory
_HEAD = 0.05  # of the plate's pressure, of condensate that stands over its trap: judgement, some 2 ft
_AIR = 2400.0  # s in which a trap bleeds air from a coil whose vent is shut: judgement
_BURSTS, _HASTY = 0.4, 1.2  # of an injector's steam for each plate's pressure over this one: judgement
_GONE = 0.03  # of the plate's pressure: below it steam no longer flows


@dataclass(frozen=True)
class SteamFlow:
    """Steam at one moment: pressures in [Pa] gauge, steam and condensate in [kg/s], heat in [W]; by heater's name."""

    main: float
    inlet: float  # at the reducing valve's inlet
    machine: float  # behind it
    coil: Mapping[str, float]  # behind each heater's valve
    heat: Mapping[str, float]
    drained: Mapping[str, float]  # what comes through the trap, water
    filled: Mapping[str, float]  # share of the coil that water fills
    stays: Mapping[str, float]  # steam that turns to water in the tank
    bursts: Mapping[str, float]  # steam that breaks through the tank's water


def steam_heaters(plant: Plant) -> dict[str, Heater]:
    """The heaters that live on steam, by name."""
    found = {"booster": plant.booster.heater, **{name: tank.heater for name, tank in plant.tanks.items()}}
    return {name: heater for name, heater in found.items() if heater.kind in _KINDS}


def lives_on_steam(plant: Plant) -> bool:
    """Whether any heater does."""
    return plant.booster.heater.kind in _KINDS or any(tank.heater.kind in _KINDS for tank in plant.tanks.values())


def steam_flow(plant: Plant, state: State, on: Mapping[str, bool], others: bool = True) -> SteamFlow:
    """Work steam out for the heaters that are `on`; `others`: other users on the main run too."""
    line, plate = plant.fuel.steam, plant.plate["steam_pressure"]
    parts = steam_heaters(plant)
    branches = {name: _Branch(plant, state, name, heater, on.get(name, False)) for name, heater in parts.items()}
    rated = sum(b.rated for b in branches.values()) or 1.0
    warm = 1.0 - math.exp(-state.time / line.slow) if line.slow > 0.0 else 1.0
    main = max(0.0, (line.main - (line.others if others else 0.0)) * warm)

    def drawn(machine: float) -> float:
        return line.leak + sum(b.share(_before(b.part, machine, main)) * b.rated for b in branches.values()) / rated

    machine = _root(lambda p: _reduced(line, main, drawn(p)) - p, 0.0, _reduced(line, main, 0.0))
    total = drawn(machine)
    found = {name: b.given(_before(b.part, machine, main)) for name, b in branches.items()}
    return SteamFlow(
        main=main * plate,
        inlet=max(0.0, main - _ahead(line, total)) * plate,
        machine=machine * plate,
        coil={name: each[0] * plate for name, each in found.items()},
        heat={name: each[1] for name, each in found.items()},
        drained={name: each[2] for name, each in found.items()},
        filled={name: each[3] for name, each in found.items()},
        stays={name: each[4] for name, each in found.items()},
        bursts={name: each[5] for name, each in found.items()},
    )


@lru_cache(maxsize=64)
def _plate_steam(pressure: float) -> tuple[float, float]:
    """Latent heat, [J/kg], and temperature, [K], of steam at the plate's pressure."""
    return latent_heat_at_gauge(pressure), steam_temperature_at_gauge(pressure)


class _Branch:
    """One heater, its figures at this moment; pressures over the plate's, flows over its rated steam."""

    def __init__(self, plant: Plant, state: State, name: str, heater: Heater, on: bool) -> None:
        self.plate = plant.plate["steam_pressure"]
        self.part: SteamBranch = heater.steam
        self.coil = heater.kind in COIL
        self.wet = plant.fuel.steam.wet
        self.power = heater.power
        self.water = state.flowing["booster"] if name == "booster" else state.temperature(name)
        aim = _meant(plant, name)
        self.latent, hot = _plate_steam(self.plate)
        self.rated = heater.power / self.latent
        part = self.part
        clean = _DESIGN.get(heater.kind, 1.0) * heater.power / max(5.0, hot - aim)
        limed = 1.0 / (1.0 + _UA * (part.coil_scale + heater.scale) / _LIME)
        air = part.air * math.exp(-state.time / _AIR)
        self.conductance = clean * limed * (1.0 - air) * (1.0 - self.wet) * heater.heat_share
        opened = (part.valve_opens if on else part.valve_leaks) if heater.feed_open else 0.0
        self.opened = opened
        self.lost = _BRANCH / max(part.strainer_open, 0.01) ** 2 + _VALVE / max(opened, 1e-3) ** 2

    def condensed(self, pressure: float) -> tuple[float, float]:
        """Steam that condenses at a pressure in the coil over the rated, and what would if its trap drained all."""
        if pressure <= 0.0:
            return 0.0, 0.0
        there = min(1.0, pressure / _GONE)
        if not self.coil:
            free = self.part.holes_open * there * math.sqrt(pressure)
            return free, free
        steam = steam_temperature_at_gauge(pressure * self.plate)
        free = there * max(0.0, self.conductance * (steam - self.water)) / self.power
        passes = _TRAP * self.part.trap_open * math.sqrt(max(0.0, pressure + _HEAD - self.part.back))
        return min(free, max(0.0, passes - self.part.floods) * (1.0 - self.wet)), free

    def flows(self, pressure: float) -> float:
        """All steam the branch takes at a pressure in the coil, over the rated, the water in it with it."""
        astray = (self.part.hole + self.part.trap_blows) * math.sqrt(max(0.0, pressure))
        return self.condensed(pressure)[0] / ((1.0 - self.wet) if self.coil else 1.0) + astray

    def share(self, machine: float) -> float:
        """Steam over the rated that it takes with a pressure at the machine."""
        if self.opened <= 0.0 or machine <= 0.0:
            return 0.0
        return self.flows(self.pressure(machine))

    def pressure(self, machine: float) -> float:
        """In the coil: what is left behind strainer and valve."""
        if self.opened <= 0.0:
            return 0.0
        return _root(lambda p: machine - self.lost * self.flows(p) ** 2 - p, 0.0, machine)

    def given(self, machine: float) -> tuple[float, float, float, float, float, float]:
        """Pressure in the coil, heat, water from the trap and in the coil, steam let in and through."""
        pressure = self.pressure(machine)
        condensed, free = self.condensed(pressure)
        hole = self.part.hole * math.sqrt(max(0.0, pressure))
        stays = (hole if self.coil else condensed) * self.rated
        drained = (condensed / (1.0 - self.wet) + self.part.floods) * self.rated if self.coil else 0.0
        filled = 1.0 - condensed / free if free > 1e-6 else 0.0
        if self.coil:
            return pressure, (condensed + hole) * self.power, drained, filled, stays, 0.0
        # Steam of too much pressure leaves the holes faster than water can close in on it.
        burst = min(0.9, self.part.bursts + _BURSTS * max(0.0, pressure - _HASTY))
        kept = 1.0 - burst
        return pressure, condensed * kept * (1.0 - self.wet) * self.power, drained, filled, stays * kept, stays * burst


def _before(branch: SteamBranch, machine: float, main: float) -> float:
    """Pressure ahead of a branch's strainer: the machine's, and what a bypass round the reducing valve adds."""
    return machine + branch.bypass * max(0.0, main - machine)


def _meant(plant: Plant, name: str) -> float:
    """Temperature at which a heater's water is meant to be kept, [K]: its setting as built."""
    if name == "booster":
        return plant.plate["rinse_temperature"] + 5.5
    return plant.plate["rinse_tank_temperature" if name == "rinse" else "wash_temperature"] + 3.5


def _ahead(line: SteamLine, flow: float) -> float:
    """Lost in stop and strainer."""
    return float(
        (STOP_LOSES / max(line.stop_open, 0.01) ** 2 + STRAINER_LOSES / max(line.strainer_open, 0.01) ** 2) * flow**2
    )


def _reduced(line: SteamLine, main: float, flow: float) -> float:
    """Pressure behind the reducing valve: what it holds, as far as its passage lets that much through."""
    ahead = max(0.0, main - _ahead(line, flow))
    held = line.reducer_set * (1.0 - _DROOP * flow)
    wide = ahead - REDUCER_LOSES * (flow / max(line.reducer_open, 0.01)) ** 2
    creeps = ahead - REDUCER_LOSES * (flow / line.reducer_leak) ** 2 if line.reducer_leak > 0.0 else 0.0
    return max(0.0, min(wide, max(held, creeps)))


def _root(gap: Callable[[float], float], low: float, high: float) -> float:
    """Where a falling function is nought between two bounds, by false position; a bound where it is not."""
    if high <= low:
        return low
    below, above = gap(low), gap(high)
    if below <= 0.0:
        return low
    if above >= 0.0:
        return high
    for _ in range(40):
        at = low + (high - low) * below / (below - above)
        found = gap(at)
        if abs(found) < 2e-4 or high - low < 1e-4:
            break
        if found > 0.0:
            low, below, above = at, found, above / 2
        else:
            high, above, below = at, found, below / 2
    return at
