"""Jets of a rinse or wash arm: one hole, many, worn ones and blocked ones."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive, within
from diagnose.physics.flow import flow_at_pressure

__all__ = [
    "COLD_WATER",
    "flow_at_exponent",
    "flow_of_jets",
    "flow_with_blocked",
    "flow_with_worn",
    "jets_shut",
    "orifice_flow",
    "wear_of_flow",
]

COLD_WATER = 999.0  # kg/m3, what the trade's 29.84 reckons with (62.4 lb/ft3)


def orifice_flow(diameter: float, pressure: float, coefficient: float = 0.8, density: float = COLD_WATER) -> float:
    """Flow of water through one round hole.

    Q = C_d (pi / 4) d^2 sqrt(2 dP / rho); in the trade's units 29.84 C_d d^2 sqrt(P)

    Parameters
    ----------
    diameter : float
        Diameter of the hole, [m], 5e-4 to 0.02
    pressure : float
        Pressure drop, [Pa], 1e3 to 1e6
    coefficient : float
        Discharge coefficient: 0.6 for a sharp edge, 0.8 to 0.95 for a shaped jet, [-], 0.5 to 1
    density : float
        Density of the water, [kg/m3], 960 to 1000

    Returns
    -------
    float
        Flow, [m3/s]

    Notes
    -----
    Hot water at 180 °F is 3 % lighter and so flows 1.5 % faster by volume.

    Examples
    --------
    >>> round(orifice_flow(0.125 * 0.0254, 20 * 6894.757) * 60 / 3.785411784e-3, 3)  # 1/8 in at 20 psi, in gpm
    1.668

    References
    ----------
    Bernoulli's equation; 29.84 as in hydraulics handbooks, from memory.
    """
    positive(diameter=diameter, coefficient=coefficient, density=density)
    within(0.0, 1.0, coefficient=coefficient)
    not_negative(pressure=pressure)
    return coefficient * math.pi / 4.0 * diameter**2 * math.sqrt(2.0 * pressure / density)


def flow_of_jets(count: int, flow_each: float, rated_pressure: float, pressure: float) -> float:
    """Flow of a number of like jets at a pressure.

    Q = n q sqrt(P / P_rated)

    Parameters
    ----------
    count : int
        Jets that are open, [-], 1 to 60
    flow_each : float
        Flow of one jet at the rated pressure, [m3/s], 1e-6 to 2e-4
    rated_pressure : float
        Pressure at which one jet is rated, [Pa], 1e4 to 6e5
    pressure : float
        Pressure at the arm, flowing, [Pa], 1e3 to 6e5

    Returns
    -------
    float
        Flow of them all, [m3/s]

    Notes
    -----
    The pressure is that at the arm: what is lost on the way to it is lost to every jet.

    Examples
    --------
    >>> round(flow_of_jets(14, 0.3, 20.0, 15.0), 2)  # any one system of units
    3.64

    References
    ----------
    Flows side by side add up; square-root law of openings.
    """
    if count < 1:
        raise ValueError("at least one open jet is wanted")
    return count * flow_at_pressure(flow_each, rated_pressure, pressure)


def flow_at_exponent(rated_flow: float, rated_pressure: float, pressure: float, exponent: float = 0.5) -> float:
    """Flow of spray nozzles whose flow does not follow the square root quite.

    Q = Q_rated (P / P_rated)^n

    Parameters
    ----------
    rated_flow : float
        Flow at the rated pressure, [m3/s], 1e-6 to 2e-3
    rated_pressure : float
        Rated pressure, [Pa], 1e4 to 6e5
    pressure : float
        Pressure now, [Pa], 1e3 to 6e5
    exponent : float
        0.5 for plain holes and hollow swirl, 0.44 to 0.47 for full cones, [-], 0.4 to 0.5

    Returns
    -------
    float
        Flow, [m3/s]

    Notes
    -----
    Not solved back for exponent: at the rated pressure any exponent gives the rated flow.

    Examples
    --------
    >>> round(flow_at_exponent(4.2, 20.0, 10.0, 0.46), 2), round(flow_at_exponent(4.2, 20.0, 10.0), 2)
    (3.05, 2.97)

    References
    ----------
    Exponents from a secondary copy of a spray table.
    """
    positive(rated_flow=rated_flow, rated_pressure=rated_pressure)
    not_negative(pressure=pressure)
    within(0.3, 0.6, exponent=exponent)
    return float(rated_flow * (pressure / rated_pressure) ** exponent)


def flow_with_worn(rated_flow: float, drilled: float, worn: float) -> float:
    """Flow at the same pressure once the holes have grown.

    Q = Q_rated (d_worn / d_drilled)^2

    Parameters
    ----------
    rated_flow : float
        Flow when new, at the same pressure, [m3/s], 1e-6 to 2e-3
    drilled : float
        Diameter when new, [m], 5e-4 to 0.01
    worn : float
        Diameter now, [m], 5e-4 to 0.015

    Returns
    -------
    float
        Flow now, [m3/s]

    Notes
    -----
    A tenth more in diameter is a fifth more in flow.

    Examples
    --------
    >>> round(flow_with_worn(4.2, 0.078, 0.089), 2)
    5.47

    References
    ----------
    Area of a round hole.
    """
    positive(rated_flow=rated_flow, drilled=drilled, worn=worn)
    return rated_flow * (worn / drilled) ** 2


def wear_of_flow(expected: float, measured: float) -> float:
    """How much the holes have grown in diameter for a flow measured at the same pressure.

    growth = sqrt(Q / Q_expected) - 1

    Parameters
    ----------
    expected : float
        Flow of sound jets at this pressure, [m3/s], 1e-5 to 2e-3
    measured : float
        Flow measured, [m3/s], 1e-5 to 2e-3

    Returns
    -------
    float
        Growth of the diameter, below nought where the holes are narrowed, [-]

    Notes
    -----
    All jets alike; one that is missing can look the same, and only the eye tells.

    Examples
    --------
    >>> round(wear_of_flow(4.2, 5.5), 3)
    0.144

    References
    ----------
    Area of a round hole.
    """
    positive(expected=expected)
    not_negative(measured=measured)
    return math.sqrt(measured / expected) - 1.0


def flow_with_blocked(rated_flow: float, count: int, blocked: int) -> float:
    """Flow at the same pressure with some of the like jets blocked.

    Q = Q_rated (n - m) / n

    Parameters
    ----------
    rated_flow : float
        Flow with all open, at the same pressure, [m3/s], 1e-5 to 2e-3
    count : int
        Jets in all, [-], 1 to 60
    blocked : int
        Jets that are blocked, [-], 0 to 60

    Returns
    -------
    float
        Flow now, [m3/s]

    Notes
    -----
    The regulator holds the pressure, so that the open ones pass what they always did.

    Examples
    --------
    >>> flow_with_blocked(4.2, 14, 4)
    3.0

    References
    ----------
    Flows side by side add up.
    """
    positive(rated_flow=rated_flow)
    if count < 1:
        raise ValueError("at least one jet is wanted")
    within(0.0, float(count), blocked=float(blocked))
    return rated_flow * (count - blocked) / count


def jets_shut(count: int, expected: float, measured: float) -> float:
    """How many blocked jets would explain a flow measured at a known pressure.

    m = n (1 - Q / Q_expected)

    Parameters
    ----------
    count : int
        Jets in all, [-], 1 to 60
    expected : float
        Flow of sound jets at this pressure, [m3/s], 1e-5 to 2e-3
    measured : float
        Flow measured, [m3/s], 1e-5 to 2e-3

    Returns
    -------
    float
        Jets' worth of flow that is missing, below nought where there is more than expected, [-]

    Notes
    -----
    Six jets a third narrowed look like two shut: count them at the arm.

    Examples
    --------
    >>> round(jets_shut(14, 4.2, 3.0), 1)
    4.0

    References
    ----------
    Flows side by side add up.
    """
    if count < 1:
        raise ValueError("at least one jet is wanted")
    positive(expected=expected)
    not_negative(measured=measured)
    return count * (1.0 - measured / expected)
