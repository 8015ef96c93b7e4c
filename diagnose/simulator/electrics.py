"""Volts at the machine, currents of heater banks and motors, worked out line by line."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from diagnose.simulator.parts import Heater, Motor, Power

__all__ = ["BankFlow", "MotorFlow", "bank_flow", "element_ohms", "line_volts", "motor_flow", "sources"]

_TURN = cmath.exp(2j * math.pi / 3)
# A small induction motor draws about half its full-load current unloaded (judgement; it sets how current falls when
# a pump runs light), and meets negative-sequence volts with about a sixth of its standstill impedance's share:
# current unbalance six to ten times the voltage unbalance (DOE, Motor Systems Tip Sheet 7).
_MAGNETISING = 0.5
_NEGATIVE = 6.5
_LOCKED = 6.0  # times full load at standstill: common practice for code letters of small motors


@dataclass(frozen=True)
class BankFlow:
    """What a bank draws: amps in each line, watts into the water, watts lost in the terminals."""

    amps: tuple[float, float, float]
    power: float
    joints: tuple[float, float, float]


@dataclass(frozen=True)
class MotorFlow:
    """What a motor draws: amps in each line, over full load squared (its heating), and whether it turns."""

    amps: tuple[float, float, float]
    heating: float
    turns: bool


def sources(power: Power) -> tuple[complex | None, ...]:
    """Voltage to neutral of each line at the panel, [V]; None where the line is dead. Single phase: two lines."""
    if power.phases == 1:
        half = power.volts / 2
        lines: list[complex] = [half, -half]
    else:
        lines = [power.volts / math.sqrt(3) / _TURN**n for n in range(3)]
    return tuple(None if n in power.line_open else v * power.line_share[n] for n, v in enumerate(lines))


def line_volts(power: Power, amps: Sequence[float] = (0.0, 0.0, 0.0)) -> tuple[float, ...]:
    """Volts between lines at the machine under these line currents, [V]: AB, BC, CA, or the one of single phase.

    The drop in panel and feeder is taken in phase with the voltage. A dead line floats at the middle of the others.
    """
    at: list[complex | None] = []
    for n, source in enumerate(sources(power)):
        if source is None:
            at.append(None)
            continue
        drop = amps[n] * (power.source_ohms + power.joint_ohms[n])
        at.append(source * max(0.0, 1.0 - drop / max(abs(source), 1e-9)))
    live = [v for v in at if v is not None]
    floating = sum(live) / len(live) if live else 0j
    whole = [floating if v is None else v for v in at]
    if power.phases == 1:
        return (abs(whole[0] - whole[1]),)
    return tuple(abs(whole[n] - whole[(n + 1) % 3]) for n in range(3))


def element_ohms(heater: Heater) -> float:
    """Resistance of one sound element, [ohm]: three in delta or wye, or three side by side on single phase."""
    if heater.power <= 0.0:
        return math.inf
    ohms = 3.0 * heater.volts**2 / heater.power
    return ohms if heater.connection in ("delta", "single") else ohms / 3.0


def bank_flow(power: Power, heater: Heater, closed: bool = True) -> BankFlow:
    """Currents and heat of an electric bank with its contactor in (`closed`), by nodal analysis.

    Open elements, dead lines, open poles, lost links and bad joints all follow from the same three or four nodes.
    """
    nothing = BankFlow((0.0, 0.0, 0.0), 0.0, (0.0, 0.0, 0.0))
    if not closed or not heater.feed_open or heater.power <= 0.0:
        return nothing
    one = 1.0 / element_ohms(heater)
    given = sources(power)
    lines = len(given)
    wye = heater.connection == "wye" and lines == 3
    size = lines + wye
    matrix = np.zeros((size, size), complex)
    right = np.zeros(size, complex)
    pairs = _pairs(heater, lines, wye)
    for (a, b), g in pairs:
        matrix[a, a] += g * one
        matrix[b, b] += g * one
        matrix[a, b] -= g * one
        matrix[b, a] -= g * one
    feeds = [0.0] * lines
    for n, source in enumerate(given):
        if source is not None and heater.poles[n]:
            feeds[n] = 1.0 / (power.source_ohms + power.joint_ohms[n])
            right[n] = feeds[n] * source
        matrix[n, n] += feeds[n]
    matrix += np.eye(size) * 1e-9  # what floats stays solvable
    at = np.linalg.solve(matrix, right)
    amps = [abs(feeds[n] * ((given[n] or 0j) - at[n])) for n in range(lines)]
    heat = sum(g * one * abs(at[a] - at[b]) ** 2 for (a, b), g in pairs)
    joints = [i**2 * power.joint_ohms[n] for n, i in enumerate(amps)]
    return BankFlow(_three(amps), float(heat), _three(joints))


def _pairs(heater: Heater, lines: int, wye: bool) -> list[tuple[tuple[int, int], float]]:
    if lines == 2:
        return [((0, 1), g) for g in heater.elements]
    if wye:
        return [((n, 3), g) for n, g in enumerate(heater.elements)]
    return [((n, (n + 1) % 3), g) for n, g in enumerate(heater.elements)]


def _three(values: Sequence[float]) -> tuple[float, float, float]:
    full = [*(float(v) for v in values), 0.0, 0.0, 0.0]
    return full[0], full[1], full[2]


def motor_flow(power: Power, motor: Motor, load: float, rated_volts: float, running: bool = True) -> MotorFlow:
    """Currents of a motor switched on, at a load (share of full load), on the lines as they are.

    Positive sequence: magnetising current with the volts, working current against them. Negative sequence: volts
    unbalance times the standstill share. One dead line: two lines carry the square root of three times the working
    share if it was `running`, locked-rotor current if it was not.
    """
    given = list(sources(power))
    if power.phases == 1:
        dead = any(v is None for v in given) or not all(motor.poles[:2]) or bool(motor.terminal_open)
        if dead or motor.winding_open:
            return MotorFlow((0.0, 0.0, 0.0), 0.0, False)
        share = abs((given[0] or 0j) - (given[1] or 0j)) / rated_volts
        stands = motor.locked or load > 2.2 * share**2 or not running
        amps = motor.amps * (_LOCKED * share if stands else _drawn(share, load)) * (1.0 + motor.winding_short)
        return MotorFlow((amps, amps, 0.0), (amps / motor.amps) ** 2, not stands)
    lost = {n for n, v in enumerate(given) if v is None or not motor.poles[n]} | motor.terminal_open
    if motor.winding_open:
        lost = lost | {2}
    if len(lost) > 1:
        return MotorFlow((0.0, 0.0, 0.0), 0.0, False)
    phasors = [v or 0j for v in given]
    if lost:
        return _single_phased(motor, load, phasors, lost.pop(), rated_volts, running)
    positive = sum(v * _TURN**n for n, v in enumerate(phasors)) / 3
    negative = sum(v * _TURN ** (-n) for n, v in enumerate(phasors)) / 3
    share = abs(positive) * math.sqrt(3) / rated_volts
    stands = motor.locked or load > 2.2 * share**2
    one = motor.amps * (_LOCKED * share if stands else _drawn(share, load))
    two = motor.amps * _NEGATIVE * abs(negative) * math.sqrt(3) / rated_volts
    lag = cmath.exp(-0.6j)
    angle = cmath.phase(negative) - cmath.phase(positive) if abs(negative) > 1e-9 else 0.0
    lines = [abs(one * lag / _TURN**n + two * cmath.exp(1j * (angle - 1.2)) * _TURN**n) for n in range(3)]
    lines[0] *= 1.0 + motor.winding_short
    heating = (sum(i**2 for i in lines) / 3.0 + 2.0 * two**2) / motor.amps**2
    return MotorFlow(_three(lines), heating, not stands)


def _drawn(share: float, load: float) -> float:
    """Current over full load, at volts over rated volts and load over full load."""
    working = math.sqrt(1.0 - _MAGNETISING**2) * load / share
    # Iron saturates some five per cent over the rated volts: judgement.
    return math.hypot(_MAGNETISING * share + 3.2 * max(0.0, share - 1.05), working)


def _single_phased(
    motor: Motor, load: float, phasors: Sequence[complex], dead: int, rated: float, running: bool
) -> MotorFlow:
    a, b = (n for n in range(3) if n != dead)
    share = abs(phasors[a] - phasors[b]) / rated
    stands = not running or motor.locked or load > 1.2 * share**2  # pull-out falls to about half: judgement
    amps = motor.amps * (_LOCKED * share * math.sqrt(3) / 2 if stands else math.sqrt(3) * _drawn(share, load))
    lines = [0.0, 0.0, 0.0]
    lines[a] = lines[b] = amps
    return MotorFlow(_three(lines), (amps / motor.amps) ** 2, not stands)
