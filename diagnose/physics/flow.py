"""Flow through nozzles, valves and strainers: the square root of what drives it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from diagnose.physics.demand import not_negative, positive

__all__ = ["factor_of_point", "factor_of_series", "flow_at", "flow_at_pressure", "pressure_for"]


def factor_of_point(flow: float, pressure: float) -> float:
    """Flow factor of nozzles from one point where flow and pressure are known.

    K = Q / sqrt(dP)

    Parameters
    ----------
    flow : float
        Volume flow, [m3/s], 1e-5 to 2e-3
    pressure : float
        Pressure drop that drives it, [Pa], 1e3 to 1e6

    Returns
    -------
    float
        Flow factor, [m3/(s Pa^0.5)]

    Notes
    -----
    Turbulent flow through fixed openings; full-cone sprays follow an exponent of 0.44 to 0.47 instead.

    Examples
    --------
    >>> factor_of_point(0.002, 1e4)
    2e-05

    References
    ----------
    Bernoulli's equation for an orifice.
    """
    positive(flow=flow, pressure=pressure)
    return flow / math.sqrt(pressure)


def flow_at(factor: float, pressure: float) -> float:
    """Flow through openings of known flow factor.

    Q = K sqrt(dP)

    Parameters
    ----------
    factor : float
        Flow factor, [m3/(s Pa^0.5)], 5e-8 to 5e-6
    pressure : float
        Pressure drop, [Pa], 1e3 to 1e6

    Returns
    -------
    float
        Volume flow, [m3/s]

    Notes
    -----
    Holds in any one system of units: K in gpm/psi^0.5 gives gpm from psi.

    Examples
    --------
    >>> round(flow_at(5.6, 7.0), 2)
    14.82

    References
    ----------
    Bernoulli's equation for an orifice.
    """
    positive(factor=factor)
    not_negative(pressure=pressure)
    return factor * math.sqrt(pressure)


def pressure_for(factor: float, flow: float) -> float:
    """Pressure drop that drives a flow through openings of known flow factor.

    dP = (Q / K)^2

    Parameters
    ----------
    factor : float
        Flow factor, [m3/(s Pa^0.5)], 5e-8 to 5e-6
    flow : float
        Volume flow, [m3/s], 1e-5 to 2e-3

    Returns
    -------
    float
        Pressure drop, [Pa]

    Notes
    -----
    The inverse of `flow_at`.

    Examples
    --------
    >>> round(pressure_for(5.6, 14.82), 2)
    7.0

    References
    ----------
    Bernoulli's equation for an orifice.
    """
    positive(factor=factor)
    not_negative(flow=flow)
    return (flow / factor) ** 2


def flow_at_pressure(rated_flow: float, rated_pressure: float, pressure: float) -> float:
    """Flow of the same openings at another pressure.

    Q = Q_rated sqrt(P / P_rated)

    Parameters
    ----------
    rated_flow : float
        Flow at the rated pressure, [m3/s], 1e-5 to 2e-3
    rated_pressure : float
        Rated pressure, [Pa], 1e3 to 1e6
    pressure : float
        Pressure now, [Pa], 1e3 to 1e6

    Returns
    -------
    float
        Flow, [m3/s]

    Notes
    -----
    Flowing pressure only: a pressure read at rest says nothing of the flow.

    Examples
    --------
    >>> round(flow_at_pressure(4.2, 20.0, 30.0), 2)
    5.14

    References
    ----------
    Bernoulli's equation for an orifice.
    """
    return flow_at(factor_of_point(rated_flow, rated_pressure), pressure)


def factor_of_series(factors: Sequence[float]) -> float:
    """Flow factor of openings one after another: strainer, valve, jets.

    1 / K^2 = sum of 1 / K_i^2

    Parameters
    ----------
    factors : sequence of float
        Flow factors, [m3/(s Pa^0.5)], 5e-8 to 5e-6

    Returns
    -------
    float
        Flow factor of them all, [m3/(s Pa^0.5)]

    Notes
    -----
    The narrowest decides: two alike in series pass 71 % of one.

    Examples
    --------
    >>> round(factor_of_series([1.0, 1.0]), 3)
    0.707

    References
    ----------
    Pressure drops in series add up at one flow.
    """
    if not factors:
        raise ValueError("at least one flow factor is wanted")
    for factor in factors:
        positive(factor=factor)
    return 1.0 / math.sqrt(sum(1.0 / f**2 for f in factors))
