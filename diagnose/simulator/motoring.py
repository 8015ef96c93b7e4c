"""What motors and their overloads show in service: which tripped, how soon, how warm they are, which pump is meant."""

from __future__ import annotations

import math

from diagnose.physics.protection import PICKUP, trip_time_constant
from diagnose.simulator.bench import Bench
from diagnose.simulator.control import chain, stalls
from diagnose.simulator.electrics import line_volts

__all__ = [
    "CHATTERS",
    "bad_motor",
    "case_temperature",
    "coil_share",
    "first_trip",
    "pump_meant",
    "rattles",
    "setting_trip_time",
    "tripped",
    "unbalance",
    "unloaded_unbalance",
]

CHATTERS = 0.86  # share of its volts under which a contactor rattles under load: judgement, near the published 0.85
_COOKED = 378.0  # K of the case of a motor that stood on its lines for minutes: judgement
_RISE = 45.0  # K of a case at its plate's current: judgement


def tripped(bench: Bench) -> tuple[str, ...]:
    """Motors that tripped in service, the first to do so first."""
    return tuple(dict.fromkeys(name for _, name in bench.service.state.trips))


def first_trip(bench: Bench, name: str = "") -> float | None:
    """When a motor (any, where none is named) first tripped after a cool start, [s]; None where none did."""
    times = [at for at, each in bench.service.state.trips if not name or each == name]
    return min(times) if times else None


def case_temperature(bench: Bench, name: str) -> float:
    """Of a motor's case after some time at work, [K]: the air round it, and its rise by what heats it."""
    motor, state = bench.plant.motors[name], bench.service.state
    if motor.welded and not state.tripped:
        return _COOKED  # after each stop two welded poles hold it at standstill on two lines
    if not state.running:
        return bench.plant.air.room
    heat = max(state.flowing[f"winding {name}"], 0.0)
    return min(motor.around + _RISE * heat / motor.cooling, 420.0)


def bad_motor(bench: Bench, name: str) -> bool:
    """Whether a motor does not do what it should: trips, hums, burns, or does not run where it is called."""
    standing = bench.restarted.standing.motors[name]
    odd = stalls(bench.plant, name) or (bench.restarted.moving and not standing.turns)
    return odd or name in tripped(bench) or case_temperature(bench, name) > 361.0


def pump_meant(bench: Bench) -> str:
    """The pump that is complained of: one that misbehaves, the wash pump where none does."""
    return next((name for name in bench.plant.pumps if bad_motor(bench, name)), "wash")


def unbalance(volts: tuple[float, ...]) -> float:
    """Greatest departure from the mean over the mean."""
    mean = sum(volts) / len(volts)
    return max(abs(v - mean) for v in volts) / max(mean, 1.0)


def unloaded_unbalance(bench: Bench) -> float:
    """Unbalance of the volts with the machine switched off."""
    return unbalance(line_volts(bench.plant.power))


def setting_trip_time(bench: Bench, name: str, warm: float) -> float:
    """Seconds a motor runs after its start until its overload trips; half an hour where it does not.

    `warm` is the share of the trip heat that is left in the overload at the start.
    """
    motor, plant = bench.plant.motors[name], bench.plant
    flow = bench.restarted.standing.motors[name]
    amps = max(flow.amps)
    if stalls(plant, name):
        amps = max(amps, 5.0 * motor.amps)  # about standstill current on what is left: judgement
    heat = (amps / (motor.amps * motor.dial * motor.early)) ** 2 * (1.0 + motor.joint_heat)
    heat += max(0.0, motor.around - 303.15) / 250.0
    aim = PICKUP**2
    if heat <= aim * 1.0001:
        return 1800.0
    return trip_time_constant(motor.trip_class) * math.log((heat - warm * aim) / (heat - aim))


def coil_share(bench: Bench) -> float:
    """Volts at the motors' contactors over their rating, everything on: what the chain leaves, and the feed's drop."""
    power = bench.plant.power
    rest = line_volts(power)[0]
    return chain(bench.plant)["coil"] * (bench.heating.standing.volts[0] / rest if rest > 0.0 else 0.0)


def rattles(bench: Bench) -> bool:
    """Whether contactors chatter: under some 86 % of their volts a shake or a dip lets them fall."""
    return 0.0 < coil_share(bench) < CHATTERS and bench.service.state.running
