"""How the simulated machine stands at one moment: what flows on (temperatures, water) and what is switched."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field

from diagnose.simulator.plant import Plant

__all__ = ["CP", "DENSITY", "LATENT", "ZERO", "Ledger", "State", "start_state"]

CP = 4186.0  # J/(kg K) of water
DENSITY = 985.0  # kg/m3 of warm water
LATENT = 2.36e6  # J/kg at tank temperature
ZERO = 273.15  # K, enthalpies are counted from here


@dataclass
class Ledger:
    """What crossed the machine's border since the start, what leaves negative: heat [J], water, chemicals fed [kg]."""

    heat: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    water: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    fed: dict[str, float] = field(default_factory=lambda: defaultdict(float))


@dataclass
class State:
    """Everything that changes in time.

    `flowing` holds what is integrated, by name: `booster` [K], `mass wash` [kg], `heat wash` [J from 0 °C],
    `winding wash`, `bimetal wash` (over rated rise), `detergent wash` [kg], `soil wash` [kg], sensors [K].
    The rest is switched between steps.
    """

    flowing: dict[str, float]
    time: float = 0.0
    running: bool = True
    stopped_by: str = ""  # what stopped the machine
    racks_in: int = 0
    calls: dict[str, bool] = field(default_factory=dict)  # thermostats, by heater
    limited: dict[str, bool] = field(default_factory=dict)  # high limits that tripped
    filling: dict[str, bool] = field(default_factory=dict)
    tripped: set[str] = field(default_factory=set)  # motors off on their overload
    stalled: set[str] = field(default_factory=set)  # motors that did not start
    trips: list[tuple[float, str]] = field(default_factory=list)
    jammed: bool = False

    def temperature(self, tank: str) -> float:
        """Of a tank's water, [K]; of a nearly empty tank, that of what is left in it."""
        mass = self.flowing[f"mass {tank}"]
        return ZERO + self.flowing[f"heat {tank}"] / (max(mass, 0.01) * CP)


def start_state(plant: Plant, hot: bool) -> State:
    """Ready for service: tanks full and at their settings, booster hot; or (`hot` false) empty, at the room's."""
    flowing: dict[str, float] = {}
    calls: dict[str, bool] = {}
    room = plant.air.room
    for name, tank in plant.tanks.items():
        full = tank.volume * DENSITY
        aim = tank.thermostat.setting if tank.heater.power > 0.0 else 330.0
        mass, at = (full, aim) if hot else (0.02 * full, room)
        flowing[f"mass {name}"] = mass
        flowing[f"heat {name}"] = mass * CP * (at - ZERO)
        flowing[f"sensor {name}"] = at
        flowing[f"detergent {name}"] = 0.002 * mass if name == "wash" and hot else 0.0
        flowing[f"soil {name}"] = 0.0
        calls[name] = True
    flowing["booster"] = plant.booster.thermostat.setting if hot else plant.water.temperature
    flowing["sensor booster"] = flowing["booster"]
    flowing["manifold"] = room
    flowing["thermometer"] = room
    for name in plant.motors:
        flowing[f"winding {name}"] = 0.0
        flowing[f"bimetal {name}"] = 0.0
    return State(flowing, running=hot, calls={**calls, "booster": True}, filling=dict.fromkeys(plant.tanks, not hot))
