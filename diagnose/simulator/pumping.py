"""What a wash pump gives and how hard its motor works for it."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.simulator.plant import Plant
from diagnose.simulator.state import DENSITY, State

__all__ = ["PumpFlow", "drawn_in", "pump_flow", "pump_load"]

# Shape of the pump's curve, all judgement: shut-off head nearly half above the working head; a wheel turned backwards
# does 40 % of its work; suction at its sound size takes 15 % of the head.
_SHUT_OFF = 1.45
_BACKWARDS = 0.4
_SUCTION = 0.15
_WHIRL = 0.85  # share of the tank's water below which the pump draws air: judgement
_BOILS = 358.15  # K, 185 °F: the head at a pump's suction lets hot water boil there; judgement
_IDLE = 0.4  # share of the sound load that is left without flow


@dataclass(frozen=True)
class PumpFlow:
    """Flow over the sound one, pressure at the manifold [Pa], and the load over the sound one."""

    share: float
    pressure: float
    load: float


def drawn_in(plant: Plant, state: State, name: str) -> float:
    """Share of air or vapour that a pump draws from its tank as it stands, in steps of 0.05.

    Below about four fifths of the tank's water a whirl forms over the suction; from 185 °F on the water boils there.
    """
    tank = plant.tanks[name]
    level = state.flowing[f"mass {name}"] / (tank.volume * DENSITY)
    hot = state.temperature(name)
    share = 1.6 * max(0.0, _WHIRL - level) + (hot - _BOILS) / 25.0 * (hot > _BOILS)
    return min(0.6, round(share * 20.0) / 20.0)


def pump_flow(plant: Plant, name: str, turns: bool, drawn: float = 0.0) -> PumpFlow:
    """Flow and pressure where the pump's curve meets its jets.

    In shares of the sound point: head `1.45 w**2 - 0.45 q**2`, suction `0.15 (1/s**2 - 1) q**2`, jets `(q/j)**2`.
    """
    pump, motor = plant.pumps[name], plant.motors[name]
    if not turns or not pump.coupled or not pump.turns:
        return PumpFlow(0.0, 0.0, 0.15)
    backwards = motor.reversed != (plant.power.swapped and plant.power.phases == 3)
    air = min(0.6, pump.air + drawn)
    wheel = pump.wheel * (_BACKWARDS if backwards else 1.0) * max(0.05, 1.0 - 1.5 * air)
    jets = max(pump.jets_open + pump.jets_off, 0.02)
    suction = _SUCTION * (1.0 / max(pump.suction_open, 0.05) ** 2 - 1.0)
    flow = (_SHUT_OFF * wheel**2 / (_SHUT_OFF - 1.0 + suction + 1.0 / jets**2)) ** 0.5
    # A larger or faster wheel takes more by its square and over: head by its square, flow by itself (affinity laws).
    load = (_IDLE + (1.0 - _IDLE) * flow / pump.wheel) * pump.wheel**2 * (1.0 - 0.6 * air)
    return PumpFlow(flow, plant.pumps[name].pressure * (flow / jets) ** 2, load)


def pump_load(plant: Plant, name: str, drawn: float = 0.0) -> float:
    """Load of a pump's motor over its full load: what the water takes, and what drags."""
    pump, motor = plant.pumps[name], plant.motors[name]
    return motor.load * pump_flow(plant, name, True, drawn).load + motor.drag + (5.0 if not pump.turns else 0.0)
