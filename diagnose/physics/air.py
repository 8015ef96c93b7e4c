"""Exhaust air: speed from velocity pressure, flow, how two ends share it, what a curtain lets in."""

from __future__ import annotations

import math
from collections.abc import Sequence

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "STANDARD_DENSITY",
    "STRIPS_LEAK",
    "damper_factor",
    "end_shares",
    "gap_speed",
    "mean_speed",
    "speed_of_pressure",
]

STANDARD_DENSITY = 1.2041  # air at 20 °C and sea level, kg/m3; 0.075 lb/ft3 in the trade's rule
STRIPS_LEAK = 0.1  # free area of hanging strips as a share of what they cover; judgement


def speed_of_pressure(velocity_pressure: float, density: float = STANDARD_DENSITY) -> float:
    """Air speed from the velocity pressure of a pitot tube.

    v = sqrt(2 p / rho); in the trade's units 4005 sqrt(inWG) feet a minute

    Parameters
    ----------
    velocity_pressure : float
        Total less static pressure, [Pa], 0 to 500
    density : float
        Density of the air, [kg/m3], 0.8 to 1.3

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
        Velocity pressures at the points, [Pa], 0 to 500
    density : float
        Density of the air, [kg/m3], 0.8 to 1.3

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


def gap_speed(flow: float, width: float, height: float, gap: float) -> float:
    """Speed at which air is drawn in past a curtain.

    v = Q / (w (g + leak x h)): the opening is the gap and what the hanging strips leak

    Parameters
    ----------
    flow : float
        Air the vent behind the curtain takes, [m3/s], 0.01 to 0.5
    width : float
        Width of the opening, [m], 0.3 to 1.5
    height : float
        Height the strips cover, [m], 0.2 to 1
    gap : float
        Gap under the strips, or the widest between them reckoned over the width, [m], 0 to 0.6

    Returns
    -------
    float
        Speed, [m/s]

    Notes
    -----
    Strips that hang true are taken to leak over a tenth of their height (judgement). 50 to 100 fpm
    (0.25 to 0.5 m/s) hold steam that drifts, a draught across the end wants more (from memory).

    Examples
    --------
    >>> round(gap_speed(200 * 4.719474e-4, 0.61, 0.5, 0.0254) / 0.00508)
    404

    References
    ----------
    Conservation of mass.
    """
    not_negative(flow=flow, gap=gap)
    positive(width=width, height=height)
    return flow / (width * (gap + STRIPS_LEAK * height))


def damper_factor(flow: float, wanted: float, suction: float, suction_then: float) -> float:
    """How much more freely a damper must let air through.

    factor = Q_wanted / Q x sqrt(suction / suction then)

    Parameters
    ----------
    flow : float
        Air the end takes now, [m3/s], 0.01 to 0.5
    wanted : float
        Air it should take, [m3/s], 0.01 to 0.5
    suction : float
        Suction behind the damper now, [Pa], 5 to 300
    suction_then : float
        Suction behind it once the other end has been set too, [Pa], 5 to 300

    Returns
    -------
    float
        Factor on the damper's free opening, [-]

    Notes
    -----
    Opening one end lowers the suction of both: set the larger first, then the smaller, then both again.

    Examples
    --------
    >>> round(damper_factor(100.0, 200.0, 100.0, 81.0), 2)
    2.22

    References
    ----------
    Square law of resistance in turbulent flow.
    """
    positive(flow=flow, wanted=wanted, suction=suction, suction_then=suction_then)
    return wanted / flow * math.sqrt(suction / suction_then)


def end_shares(entrance: float, exit_: float) -> tuple[float, float]:
    """Share of each end in the air taken from a machine vented at both.

    s = Q_end / (Q_entrance + Q_exit)

    Parameters
    ----------
    entrance : float
        Air taken at the entrance, [m3/s], 0 to 1
    exit_ : float
        Air taken at the exit, [m3/s], 0 to 1

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
