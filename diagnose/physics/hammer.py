"""Water hammer: what a valve that shuts does to the pipe behind it."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "HANDBOOK",
    "critical_time",
    "hammer_handbook",
    "hammer_rapid",
    "hammer_slow",
    "speed_in_pipe",
]

# The handbook's 0.07 psi per (ft/s) ft / s, in Pa per (m/s) m / s.
HANDBOOK = 0.07 * 6894.757293168 / 0.3048**2


def speed_in_pipe(flow: float, diameter: float) -> float:
    """Speed of the water in a pipe.

    v = 4 Q / (pi d^2)

    Parameters
    ----------
    flow : float
        Volume flow, [m3/s], 0 to 2e-3
    diameter : float
        Inside diameter, [m], 0.005 to 0.1

    Returns
    -------
    float
        Speed, [m/s]

    Notes
    -----
    Mean over the section.

    Examples
    --------
    >>> round(speed_in_pipe(4.2 * 3.785411784e-3 / 60, 0.5 * 0.0254) / 0.3048, 2)  # 4.2 gpm in 1/2 in, ft/s
    6.86

    References
    ----------
    Conservation of volume.
    """
    not_negative(flow=flow)
    positive(diameter=diameter)
    return 4.0 * flow / (math.pi * diameter**2)


def critical_time(length: float, wave_speed: float) -> float:
    """Time a pressure wave takes to the end of the pipe and back.

    T_c = 2 L / a

    Parameters
    ----------
    length : float
        Pipe from the valve back to the main, [m], 1 to 100
    wave_speed : float
        Speed of the pressure wave, [m/s], 300 to 1500

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    A valve that shuts faster than this gives the whole blow. Copper and steel pipe: 1200 to 1400 m/s.

    Examples
    --------
    >>> round(critical_time(50.0, 4500.0) * 1e3)  # 50 ft at 4500 ft/s, in ms
    22

    References
    ----------
    Joukowsky's theory of water hammer.
    """
    positive(length=length, wave_speed=wave_speed)
    return 2.0 * length / wave_speed


def hammer_rapid(density: float, wave_speed: float, velocity: float) -> float:
    """Pressure rise when a valve shuts faster than the wave comes back.

    dP = rho a v

    Parameters
    ----------
    density : float
        Density of the water, [kg/m3], 960 to 1000
    wave_speed : float
        Speed of the pressure wave, [m/s], 300 to 1500
    velocity : float
        Speed of the water that is stopped, [m/s], 0 to 6

    Returns
    -------
    float
        Pressure rise, [Pa]

    Notes
    -----
    About 60 psi for each ft/s in a metal pipe. It comes on top of the pressure there is.

    Examples
    --------
    >>> round(hammer_rapid(998.0, 1400.0, 1.5) / 1e5, 2)
    20.96

    References
    ----------
    Joukowsky's equation.
    """
    positive(density=density, wave_speed=wave_speed)
    not_negative(velocity=velocity)
    return density * wave_speed * velocity


def hammer_slow(density: float, wave_speed: float, velocity: float, length: float, time: float) -> float:
    """Pressure rise when a valve takes a time to shut, never more than the whole blow.

    dP = rho a v min(1, T_c / t)

    Parameters
    ----------
    density : float
        Density of the water, [kg/m3], 960 to 1000
    wave_speed : float
        Speed of the pressure wave, [m/s], 300 to 1500
    velocity : float
        Speed of the water that is stopped, [m/s], 0 to 6
    length : float
        Pipe from the valve back to the main, [m], 1 to 100
    time : float
        Time the valve takes to shut, [s], 0.01 to 2

    Returns
    -------
    float
        Pressure rise, [Pa]

    Notes
    -----
    Not solved back for wave_speed, length and time: shut fast, time and length do not count; shut slowly, the
    wave's speed does not.

    Examples
    --------
    >>> psi, ft = 6894.757, 0.3048
    >>> round(hammer_slow(998.0, 4500 * ft, 5 * ft, 50 * ft, 0.01) / psi)  # as rapid
    303
    >>> round(hammer_slow(998.0, 4500 * ft, 5 * ft, 50 * ft, 0.1) / psi)
    67

    References
    ----------
    Joukowsky's equation; slow closure in proportion to critical over closing time.
    """
    positive(time=time)
    return hammer_rapid(density, wave_speed, velocity) * min(1.0, critical_time(length, wave_speed) / time)


def hammer_handbook(density: float, wave_speed: float, velocity: float, length: float, time: float) -> float:
    """Pressure rise by the handbook's rule for slow valves, capped at the whole blow.

    dP = min(0.07 v L / t, rho a v), the first in psi, ft/s, ft and s

    Parameters
    ----------
    density : float
        Density of the water, [kg/m3], 960 to 1000
    wave_speed : float
        Speed of the pressure wave, [m/s], 300 to 1500
    velocity : float
        Speed of the water that is stopped, [m/s], 0 to 6
    length : float
        Pipe from the valve back to the main, [m], 1 to 100
    time : float
        Time the valve takes to shut, [s], 0.01 to 2

    Returns
    -------
    float
        Pressure rise, [Pa]

    Notes
    -----
    Not solved back for density, wave_speed, length and time: each counts on one side of the cap only. The rule
    is on the safe side: two and a half times what the slow closure in proportion gives.

    Examples
    --------
    >>> psi, ft = 6894.757, 0.3048
    >>> round(hammer_handbook(998.0, 4500 * ft, 5 * ft, 50 * ft, 0.03) / psi)  # the bare rule would say 583
    303

    References
    ----------
    Handbook rule, seen in weak copies; Joukowsky's equation for the cap.
    """
    positive(time=time, length=length)
    return min(HANDBOOK * velocity * length / time, hammer_rapid(density, wave_speed, velocity))
