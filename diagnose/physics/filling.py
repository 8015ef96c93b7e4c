"""Filling a tank: how long it takes, with and without loss, and what a falling level says is lost."""

from __future__ import annotations

from diagnose.physics.demand import RefusedError, not_negative, positive
from diagnose.physics.supply import fill_flow_from_supply

__all__ = ["fill_time", "fill_time_from_supply", "fill_time_with_loss", "leak_of_level"]


def fill_time(volume: float, flow: float) -> float:
    """Time to fill a tank at a steady flow.

    t = V / Q

    Parameters
    ----------
    volume : float
        Water wanted, [m3], 0 to 1
    flow : float
        Flow of the fill, [m3/s], 1e-5 to 2e-3

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    From empty, with the drain shut and nothing else filled meanwhile.

    Examples
    --------
    >>> round(fill_time(28.0, 6.0), 2)  # gallons and gpm give minutes
    4.67

    References
    ----------
    Conservation of volume.
    """
    not_negative(volume=volume)
    positive(flow=flow)
    return volume / flow


def fill_time_with_loss(volume: float, flow: float, loss: float) -> float:
    """Time to fill a tank that loses water meanwhile.

    t = V / (Q - Q_loss)

    Parameters
    ----------
    volume : float
        Water wanted, [m3], 0 to 1
    flow : float
        Flow of the fill, [m3/s], 2e-4 to 2e-3
    loss : float
        What runs away meanwhile, [m3/s], 0 to 1.9e-4

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    A tank that loses as much as enters never fills, and is refused.

    Examples
    --------
    >>> fill_time_with_loss(30.0, 6.0, 3.5)
    12.0

    References
    ----------
    Conservation of volume.
    """
    positive(flow=flow)
    not_negative(loss=loss)
    if loss >= flow:
        raise RefusedError(f"loss = {loss} is no less than what enters: it never fills", "loss", loss, 0.0, flow)
    return fill_time(volume, flow - loss)


def fill_time_from_supply(
    volume: float, static: float, flowing: float, flow: float, fill_flow: float, fill_pressure: float
) -> float:
    """Time to fill a tank on a supply known by one pair of pressures.

    t = V / Q, Q from supply and fill in series

    Parameters
    ----------
    volume : float
        Water wanted, [m3], 0 to 1
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
        Time, [s]

    Notes
    -----
    From empty, with the drain shut.

    Examples
    --------
    >>> round(fill_time_from_supply(28.0, 60.0, 50.0, 4.2, 6.0, 30.0), 2)  # gallons, psi, gpm: minutes
    4.28

    References
    ----------
    Conservation of volume; pressure drops in series add up at one flow.
    """
    return fill_time(volume, fill_flow_from_supply(static, flowing, flow, fill_flow, fill_pressure))


def leak_of_level(length: float, width: float, fall: float, time: float) -> float:
    """Flow a tank loses, from how far its level falls with nothing entering.

    Q = L W h / t

    Parameters
    ----------
    length : float
        Inside length of the tank at the water line, [m], 0.2 to 2
    width : float
        Inside width, [m], 0.2 to 1.5
    fall : float
        Fall of the level, [m], 0 to 0.5
    time : float
        Time it took, [s], 30 to 7200

    Returns
    -------
    float
        Flow lost, [m3/s]

    Notes
    -----
    Straight walls; mark the level after the pipes have drained back.

    Examples
    --------
    >>> round(leak_of_level(28.0, 22.0, 1.0, 10.0) / 231, 2)  # inches and minutes, 231 in3 a gallon: gpm
    0.27

    References
    ----------
    Conservation of volume.
    """
    positive(length=length, width=width, time=time)
    not_negative(fall=fall)
    return length * width * fall / time
