"""Tanks of water: heating up against losses and an overflow, where they settle, what holds them hot."""

from __future__ import annotations

import math

from diagnose.physics.demand import RefusedError, not_negative, positive
from diagnose.physics.heat import TRADE_HEAT

__all__ = [
    "heat_up_time_with_loss",
    "loss_factor_of_cooling",
    "power_to_hold",
    "steady_temperature",
    "time_to_temperature",
]


def steady_temperature(power: float, loss: float, room: float, inflow: float, inflow_temperature: float) -> float:
    """Temperature at which a tank settles that loses heat to the room while water runs in and over the drain.

    T = (P + U T_room + rho c q T_in) / (U + rho c q)

    Parameters
    ----------
    power : float
        Heat into the water, [W], 0 to 2e5
    loss : float
        Heat lost to the room for each degree above it, [W/K], 0 to 200
    room : float
        Room temperature, [K], 273.15 to 323.15
    inflow : float
        Water running in, and as much out, [m3/s], 0 to 1e-3
    inflow_temperature : float
        Temperature of that water, [K], 273.15 to 368.15

    Returns
    -------
    float
        Temperature after hours, [K]

    Notes
    -----
    A figure above boiling says that the heater has power to spare and its thermostat will open.
    Loss to the room is taken as proportional to the difference, which evaporation is only roughly.

    Examples
    --------
    >>> gpm = 3.785411784e-3 / 60
    >>> round(steady_temperature(15e3, 50.0, 295.0, 1.0 * gpm, 313.15) - 273.15, 1)  # 15 kW, 1 gpm of 40 °C
    84.9

    References
    ----------
    Conservation of energy; heat of water by the trade's 500 rule.
    """
    not_negative(power=power, loss=loss, inflow=inflow)
    positive(room=room, inflow_temperature=inflow_temperature)
    carried = TRADE_HEAT * inflow
    if loss + carried == 0:
        raise RefusedError("without loss and inflow a heated tank settles nowhere", "loss", loss, 0.0)
    return (power + loss * room + carried * inflow_temperature) / (loss + carried)


def power_to_hold(temperature: float, room: float, loss: float, inflow: float, inflow_temperature: float) -> float:
    """Power that holds a tank at a temperature against the room and against water running through it.

    P = U (T - T_room) + rho c q (T - T_in)

    Parameters
    ----------
    temperature : float
        Temperature held, [K], 273.15 to 368.15
    room : float
        Room temperature, [K], 273.15 to 323.15
    loss : float
        Heat lost to the room for each degree above it, [W/K], 0 to 200
    inflow : float
        Water running in, and as much out, [m3/s], 0 to 1e-3
    inflow_temperature : float
        Temperature of that water, [K], 273.15 to 368.15

    Returns
    -------
    float
        Power, [W]

    Notes
    -----
    Negative: the water running in is hot enough to warm the tank by itself.

    Examples
    --------
    >>> round(power_to_hold(344.15, 295.15, 50.0, 0.0, 333.15))  # 71 °C, nothing running
    2450

    References
    ----------
    Conservation of energy; heat of water by the trade's 500 rule.
    """
    not_negative(loss=loss, inflow=inflow)
    positive(temperature=temperature, room=room, inflow_temperature=inflow_temperature)
    return loss * (temperature - room) + TRADE_HEAT * inflow * (temperature - inflow_temperature)


def heat_up_time_with_loss(volume: float, start: float, target: float, power: float, loss: float, room: float) -> float:
    """Time to warm a tank that loses heat to the room the more the warmer it gets.

    t = C / U ln((P - U (T_start - T_room)) / (P - U (T_target - T_room))), C = rho c V

    Parameters
    ----------
    volume : float
        Water held, [m3], 0.01 to 1
    start : float
        Temperature at the start, [K], 273.15 to 348.15
    target : float
        Temperature wanted, [K], 323.15 to 368.15
    power : float
        Heat into the water, [W], 2e3 to 2e5
    loss : float
        Heat lost to the room for each degree above it, [W/K], 0 to 200
    room : float
        Room temperature, [K], 273.15 to 323.15

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    Refused when the power can't bring the tank to the target. Without loss this is the plain heat-up time.
    The tank's own metal is left out: a few per cent more.

    Examples
    --------
    >>> round(heat_up_time_with_loss(30 * 3.785411784e-3, 288.71, 344.26, 15e3, 50.0, 295.37) / 60, 1)
    31.6

    References
    ----------
    Exponential approach of a well stirred tank; conservation of energy.
    """
    return time_to_temperature(volume, start, target, power, loss, room, 0.0, room)


def time_to_temperature(
    volume: float,
    start: float,
    target: float,
    power: float,
    loss: float,
    room: float,
    inflow: float,
    inflow_temperature: float,
) -> float:
    """Time in which a tank goes from one temperature to another, up or down, with its overflow running.

    t = C / K ln((T_start - T_settled) / (T_target - T_settled)), K = U + rho c q, C = rho c V

    Parameters
    ----------
    volume : float
        Water held, [m3], 0.01 to 1
    start : float
        Temperature at the start, [K], 273.15 to 348.15
    target : float
        Temperature at the end, [K], 323.15 to 368.15
    power : float
        Heat into the water, [W], 2e3 to 2e5
    loss : float
        Heat lost to the room for each degree above it, [W/K], 0 to 200
    room : float
        Room temperature, [K], 273.15 to 323.15
    inflow : float
        Water running in, and as much out, [m3/s], 0 to 3e-4
    inflow_temperature : float
        Temperature of that water, [K], 273.15 to 368.15

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    Refused when the tank never comes there. Well stirred tank, steady power.
    Not solved back for loss and inflow: the same time can come of two of them when the tank passes the
    temperature of the room or of the water on its way.

    Examples
    --------
    >>> gal = 3.785411784e-3
    >>> round(time_to_temperature(30 * gal, 310.93, 338.71, 15e3, 50.0, 295.37, 0.5 * gal / 60, 333.15) / 60, 1)
    15.2

    References
    ----------
    Exponential approach of a well stirred tank; conservation of energy.
    """
    not_negative(power=power, loss=loss, inflow=inflow)
    positive(volume=volume, start=start, target=target, room=room, inflow_temperature=inflow_temperature)
    carried = TRADE_HEAT * inflow
    push = power + loss * (room - start) + carried * (inflow_temperature - start)  # heat into the tank at the start
    way = target - start
    if way == 0:
        return 0.0
    left = push - (loss + carried) * way  # heat into it at the end
    if push * way <= 0 or left * way <= 0:
        settled = start + push / (loss + carried) if loss + carried else start
        low, high = sorted((start, settled))
        raise RefusedError(
            f"a tank that settles at {settled:.1f} K never comes to {target} K", "target", target, low, high
        )
    share = (loss + carried) * way / push
    stretch = 1.0 if share == 0 else -math.log1p(-share) / share  # how much longer than at the push of the start
    return TRADE_HEAT * volume * way / push * stretch


def loss_factor_of_cooling(volume: float, start: float, end: float, time: float, room: float) -> float:
    """Heat a tank loses to the room for each degree, from watching it cool with its heat off.

    U = C / t ln((T_start - T_room) / (T_end - T_room)), C = rho c V

    Parameters
    ----------
    volume : float
        Water held, [m3], 0.01 to 1
    start : float
        Temperature at the start, [K], 328.15 to 368.15
    end : float
        Temperature at the end, [K], 323.15 to 363.15
    time : float
        Time between the two readings, [s], 60 to 36000
    room : float
        Room temperature, [K], 273.15 to 318.15

    Returns
    -------
    float
        Heat lost for each degree above the room, [W/K]

    Notes
    -----
    Heater off, no water in or out, pump as in the service that is asked about: a pump that runs warms and
    stirs, doors that stand open and a fan that draws raise the loss.

    Examples
    --------
    >>> round(loss_factor_of_cooling(30 * 3.785411784e-3, 344.15, 338.15, 1800.0, 295.15), 1)
    34.5

    References
    ----------
    Exponential cooling of a well stirred tank (Newton's law of cooling).
    """
    positive(volume=volume, time=time, room=room)
    if not start > end > room:
        raise RefusedError("a tank cools from its start towards the room", "end", end, room, start)
    return TRADE_HEAT * volume / time * math.log((start - room) / (end - room))
