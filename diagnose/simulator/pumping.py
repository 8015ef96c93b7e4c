"""What a wash pump gives and how hard its motor works for it."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.simulator.plant import Plant

__all__ = ["PumpFlow", "pump_flow", "pump_load"]

# Shape of the pump's curve, all judgement: shut-off head a quarter above the working head; a wheel turned backwards
# does 40 % of its work; suction at its sound size takes 15 % of the head.
_SHUT_OFF = 1.25
_BACKWARDS = 0.4
_SUCTION = 0.15
_IDLE = 0.4  # share of the sound load that is left without flow


@dataclass(frozen=True)
class PumpFlow:
    """Flow over the sound one, pressure at the manifold [Pa], and the load over the sound one."""

    share: float
    pressure: float
    load: float


def pump_flow(plant: Plant, name: str, turns: bool) -> PumpFlow:
    """Flow and pressure where the pump's curve meets its jets.

    In shares of the sound point: head `1.25 w**2 - 0.25 q**2`, suction `0.15 (1/s**2 - 1) q**2`, jets `(q/j)**2`.
    """
    pump, motor = plant.pumps[name], plant.motors[name]
    if not turns or not pump.coupled or not pump.turns:
        return PumpFlow(0.0, 0.0, 0.15)
    backwards = motor.reversed != (plant.power.swapped and plant.power.phases == 3)
    wheel = pump.wheel * (_BACKWARDS if backwards else 1.0) * max(0.05, 1.0 - 1.5 * pump.air)
    jets = max(pump.jets_open + pump.jets_off, 0.02)
    suction = _SUCTION * (1.0 / max(pump.suction_open, 0.05) ** 2 - 1.0)
    flow = (_SHUT_OFF * wheel**2 / (_SHUT_OFF - 1.0 + suction + 1.0 / jets**2)) ** 0.5
    load = (_IDLE + (1.0 - _IDLE) * flow) * (1.0 - 0.6 * pump.air)
    return PumpFlow(flow, plant.pumps[name].pressure * (flow / jets) ** 2, load)


def pump_load(plant: Plant, name: str) -> float:
    """Load of a pump's motor over its full load: what the water takes, and what drags."""
    pump, motor = plant.pumps[name], plant.motors[name]
    return motor.load * pump_flow(plant, name, True).load + motor.drag + (5.0 if not pump.turns else 0.0)
