"""Exhaust air: speed from velocity pressure, and how two ends share it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from diagnose.physics.demand import not_negative, positive
from diagnose.physics.exhaust import heat_of_exhaust

__all__ = ["STANDARD_DENSITY", "end_shares", "heat_of_exhaust", "mean_speed", "speed_of_pressure"]

STANDARD_DENSITY = 1.2041  # air at 20 °C and sea level, kg/m3; 0.075 lb/ft3 in the trade's rule


def speed_of_pressure(velocity_pressure: float, density: float = STANDARD_DENSITY) -> float:
    """Air speed from the velocity pressure of a pitot tube.

    v = sqrt(2 p / rho); in the trade's units 4005 sqrt(inWG) feet a minute

    Parameters
    ----------
    velocity_pressure : float
        Total less static pressure, [Pa]
    density : float
        Density of the air, [kg/m3]

    Returns
    -------
    float
        Speed, [m/s]

    Notes
    -----
    Hot wet air is lighter: saturated at 50 °C (1.042 kg/m3) it is 7 % faster than standard air would be.

    Examples
    --------
    >>> round(speed_of_pressure(50.0), 2)
    9.11

    References
    ----------
    Bernoulli's equation.
    """
    not_negative(velocity_pressure=velocity_pressure)
    positive(density=density)
    return math.sqrt(2.0 * velocity_pressure / density)


def mean_speed(velocity_pressures: Sequence[float], density: float = STANDARD_DENSITY) -> float:
    """Mean speed over several points of a duct.

    v = mean of sqrt(2 p_i / rho): speeds are averaged, never pressures

    Parameters
    ----------
    velocity_pressures : sequence of float
        Velocity pressures at the points, [Pa]
    density : float
        Density of the air, [kg/m3]

    Returns
    -------
    float
        Mean speed, [m/s]

    Notes
    -----
    Averaging the pressures first reads high.

    Examples
    --------
    >>> round(mean_speed([50.0, 0.0]), 2)
    4.56

    References
    ----------
    Common practice of duct traverses.
    """
    if not velocity_pressures:
        raise ValueError("at least one velocity pressure is wanted")
    return sum(speed_of_pressure(p, density) for p in velocity_pressures) / len(velocity_pressures)


def end_shares(entrance: float, exit_: float) -> tuple[float, float]:
    """Share of each end in the air taken from a machine vented at both.

    s = Q_end / (Q_entrance + Q_exit)

    Parameters
    ----------
    entrance : float
        Air taken at the entrance, [m3/s]
    exit_ : float
        Air taken at the exit, [m3/s]

    Returns
    -------
    tuple of float
        Shares of entrance and exit; both nought if no air flows, [-]

    Notes
    -----
    Usual practice is a third at the entrance and two thirds at the exit; the data plate governs.

    Examples
    --------
    >>> [round(s, 2) for s in end_shares(200.0, 400.0)]
    [0.33, 0.67]

    References
    ----------
    Common practice.
    """
    not_negative(entrance=entrance, exit_=exit_)
    total = entrance + exit_
    return (entrance / total, exit_ / total) if total else (0.0, 0.0)
