"""What a supply gives: two pressures and a flow tell what it loses, and so what it gives at another flow."""

from __future__ import annotations

import math

from diagnose.physics.demand import RefusedError, not_negative, positive
from diagnose.physics.flow import factor_of_point

__all__ = ["fill_flow_from_supply", "pressure_at_other_flow", "restriction_left", "supply_factor"]


def _below(static: float, flowing: float, name: str) -> None:
    """What flows has lost something on the way: a flowing pressure lies under the one at rest."""
    positive(static=static)
    not_negative(**{name: flowing})
    if flowing >= static:
        raise RefusedError(f"{name} = {flowing} is not under the pressure at rest", name, flowing, 0.0, static)


def supply_factor(static: float, flowing: float, flow: float) -> float:
    """Flow factor of everything between main and gauge, from a pair of pressures at one flow.

    K = Q / sqrt(P_static - P_flowing)

    Parameters
    ----------
    static : float
        Pressure at rest, [Pa], 2e5 to 1e6
    flowing : float
        Pressure at the flow, [Pa], 1e3 to 1.9e5
    flow : float
        Flow then, [m3/s], 1e-5 to 2e-3

    Returns
    -------
    float
        Flow factor of the supply, [m3/(s Pa^0.5)]

    Notes
    -----
    60 psi at rest and 20 flowing is usual ahead of a rinse; 60 and 6 is a restriction upstream. A pressure at
    rest alone says nothing of either.

    Examples
    --------
    >>> round(supply_factor(60.0, 20.0, 4.2), 3), round(supply_factor(60.0, 6.0, 2.3), 3)
    (0.664, 0.313)

    References
    ----------
    Square-root law of openings.
    """
    _below(static, flowing, "flowing")
    return factor_of_point(flow, static - flowing)


def restriction_left(static: float, flowing: float, flow: float, sound_flowing: float, sound_flow: float) -> float:
    """Share of a sound supply's flow factor that is left, from a pair now and a pair in good order.

    share = (Q / sqrt(P_s - P)) / (Q_0 / sqrt(P_s - P_0))

    Parameters
    ----------
    static : float
        Pressure at rest, [Pa], 2e5 to 1e6
    flowing : float
        Pressure now, flowing, [Pa], 1e3 to 1.9e5
    flow : float
        Flow now, [m3/s], 1e-5 to 2e-3
    sound_flowing : float
        Pressure in good order, flowing, [Pa], 1e3 to 1.9e5
    sound_flow : float
        Flow in good order, [m3/s], 1e-5 to 2e-3

    Returns
    -------
    float
        Share of the flow factor left, [-]

    Notes
    -----
    Not solved back for static: it drives both pairs. A strainer in series hides behind the pipe's own loss: half the
    factor left means a strainer that passes far less than half.

    Examples
    --------
    >>> round(restriction_left(60.0, 6.0, 2.3, 20.0, 4.2), 2)
    0.47

    References
    ----------
    Square-root law of openings.
    """
    return supply_factor(static, flowing, flow) / supply_factor(static, sound_flowing, sound_flow)


def pressure_at_other_flow(static: float, flowing: float, flow: float, other_flow: float) -> float:
    """Pressure a supply has left at another flow, from one pair of pressures.

    P = P_static - (P_static - P_flowing) (Q_other / Q)^2

    Parameters
    ----------
    static : float
        Pressure at rest, [Pa], 2e5 to 1e6
    flowing : float
        Pressure at the flow known, [Pa], 1e3 to 1.9e5
    flow : float
        Flow known, [m3/s], 1e-4 to 1e-3
    other_flow : float
        Flow asked for, [m3/s], 1e-5 to 1e-3

    Returns
    -------
    float
        Pressure at that flow, [Pa]

    Notes
    -----
    A flow the supply cannot give is refused: the pressure would fall below nought.

    Examples
    --------
    >>> pressure_at_other_flow(60.0, 50.0, 4.0, 8.0)
    20.0

    References
    ----------
    Square-root law of openings.
    """
    _below(static, flowing, "flowing")
    positive(flow=flow)
    not_negative(other_flow=other_flow)
    pressure = static - (static - flowing) * (other_flow / flow) ** 2
    if pressure < 0.0:
        most = flow * math.sqrt(static / (static - flowing))
        raise RefusedError(
            f"other_flow = {other_flow} is more than this supply gives", "other_flow", other_flow, 0.0, most
        )
    return pressure


def fill_flow_from_supply(static: float, flowing: float, flow: float, fill_flow: float, fill_pressure: float) -> float:
    """Flow a tank fill passes on a supply known by one pair of pressures.

    Q = sqrt(P_static / ((P_static - P_flowing) / Q_known^2 + P_fill / Q_fill^2))

    Parameters
    ----------
    static : float
        Supply at rest, [Pa], 2e5 to 1e6
    flowing : float
        Supply at the flow known, [Pa], 1e3 to 1.9e5
    flow : float
        Flow known, as that of the rinse, [m3/s], 5e-5 to 1e-3
    fill_flow : float
        Flow the fill is rated for, [m3/s], 5e-5 to 1e-3
    fill_pressure : float
        Flowing pressure at which it is rated, [Pa], 5e4 to 6e5

    Returns
    -------
    float
        Flow of the fill, [m3/s]

    Notes
    -----
    Supply and fill are openings in series under the pressure at rest.

    Examples
    --------
    >>> round(fill_flow_from_supply(60.0, 50.0, 4.2, 6.0, 30.0), 2)
    6.55

    References
    ----------
    Pressure drops in series add up at one flow.
    """
    _below(static, flowing, "flowing")
    positive(flow=flow, fill_flow=fill_flow, fill_pressure=fill_pressure)
    return math.sqrt(static / ((static - flowing) / flow**2 + fill_pressure / fill_flow**2))
