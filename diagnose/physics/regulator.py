"""A pressure regulator under flow: its droop line, and where it meets the jets it feeds."""

from __future__ import annotations

import math

from diagnose.physics.demand import RefusedError, not_negative, positive

__all__ = ["droop_of_pair", "drooped_pressure", "operating_pressure"]


def drooped_pressure(rest: float, droop: float, rated_flow: float, flow: float) -> float:
    """Pressure behind a regulator at a flow.

    P = P_rest - droop Q / Q_rated

    Parameters
    ----------
    rest : float
        Pressure behind it at rest, [Pa], 3e4 to 5e5
    droop : float
        Fall from rest to the rated flow, [Pa], 1e3 to 1e5
    rated_flow : float
        Flow at which that fall is meant, [m3/s], 5e-5 to 1e-3
    flow : float
        Flow now, [m3/s], 1e-5 to 1e-3

    Returns
    -------
    float
        Pressure behind it, flowing, [Pa]

    Notes
    -----
    A straight line is near enough up to about one and a half times the rated flow; further on a real one
    falls faster. What a strainer or a stop ahead of it takes is not in it.

    Examples
    --------
    >>> drooped_pressure(23.0, 3.0, 4.2, 4.2), round(drooped_pressure(23.0, 3.0, 4.2, 6.3), 1)
    (20.0, 18.5)

    References
    ----------
    Common practice: rest and flow lie 2 to 5 psi apart.
    """
    positive(rest=rest, rated_flow=rated_flow)
    not_negative(droop=droop, flow=flow)
    pressure = rest - droop * flow / rated_flow
    if pressure < 0.0:
        says = f"flow = {flow} is more than this droop line reaches to"
        raise RefusedError(says, "flow", flow, 0.0, rest / droop * rated_flow)
    return pressure


def droop_of_pair(rest: float, flowing: float, flow: float, rated_flow: float) -> float:
    """Droop at the rated flow from one pair of pressures, at rest and flowing.

    droop = (P_rest - P_flowing) Q_rated / Q

    Parameters
    ----------
    rest : float
        Pressure behind it at rest, [Pa], 3e4 to 5e5
    flowing : float
        Pressure behind it, flowing, [Pa], 1e4 to 4e5
    flow : float
        Flow then, [m3/s], 5e-5 to 1e-3
    rated_flow : float
        Rated flow, [m3/s], 5e-5 to 1e-3

    Returns
    -------
    float
        Droop at the rated flow, [Pa]

    Notes
    -----
    2 to 5 psi at the rated flow is a sound regulator. A pressure that creeps up at rest makes the droop look
    large: read at rest within seconds of the flow.

    Examples
    --------
    >>> round(droop_of_pair(23.0, 17.5, 6.5, 4.2), 2)
    3.55

    References
    ----------
    Common practice: rest and flow lie 2 to 5 psi apart.
    """
    positive(rest=rest, flow=flow, rated_flow=rated_flow)
    not_negative(flowing=flowing)
    if flowing > rest:
        raise RefusedError(f"flowing = {flowing} is above the pressure at rest", "flowing", flowing, 0.0, rest)
    return (rest - flowing) * rated_flow / flow


def operating_pressure(rest: float, droop: float, rated_flow: float, factor: float) -> float:
    """Pressure at which a regulator's droop line meets the jets it feeds.

    P + (droop / Q_rated) K sqrt(P) = P_rest, solved for P

    Parameters
    ----------
    rest : float
        Pressure behind it at rest, [Pa], 3e4 to 5e5
    droop : float
        Fall from rest to the rated flow, [Pa], 1e3 to 1e5
    rated_flow : float
        Flow at which that fall is meant, [m3/s], 5e-5 to 1e-3
    factor : float
        Flow factor of the jets, [m3/(s Pa^0.5)], 1e-7 to 5e-6

    Returns
    -------
    float
        Pressure behind it, flowing, [Pa]

    Notes
    -----
    Shows why worn jets pull the pressure down though nothing is wrong with the regulator.

    Examples
    --------
    >>> round(operating_pressure(23.0, 3.0, 4.2, 4.2 / 20**0.5), 2)  # sound jets: 20 psi
    20.0
    >>> round(operating_pressure(23.0, 3.0, 4.2, 6.3 / 20**0.5), 2)  # half as much again: it sags
    18.65

    References
    ----------
    Droop line and square-root law of openings, solved as a quadratic in the root of the pressure.
    """
    positive(rest=rest, rated_flow=rated_flow, factor=factor)
    not_negative(droop=droop)
    half = droop / rated_flow * factor / 2.0
    return (math.sqrt(half**2 + rest) - half) ** 2
