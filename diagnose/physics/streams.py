"""Streams of water: what leaves a heater, what must enter it, two streams mixed, what a pipe loses on the way."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive
from diagnose.physics.heat import TRADE_HEAT, rise_of_flow

__all__ = ["heater_efficiency", "inlet_needed", "mixed_temperature", "outlet_temperature", "pipe_end_temperature"]


def outlet_temperature(inlet: float, power: float, flow: float) -> float:
    """Temperature of a flow of water behind a heater.

    T_out = T_in + P / (rho c Q)

    Parameters
    ----------
    inlet : float
        Temperature of the water entering, [K], 273.15 to 363.15
    power : float
        Heat into the water, [W], 0 to 2e5
    flow : float
        Volume flow, [m3/s], 1e-5 to 1e-3

    Returns
    -------
    float
        Temperature leaving, [K]

    Notes
    -----
    What full heat gives. A figure above boiling says that the thermostat cuts the heat before.

    Examples
    --------
    >>> gpm = 3.785411784e-3 / 60
    >>> round((outlet_temperature(333.15, 30e3, 4.2 * gpm) - 273.15) * 1.8 + 32)  # 30 kW, 4.2 gpm, from 140 °F
    189

    References
    ----------
    Conservation of energy; heat of water by the trade's 500 rule.
    """
    positive(inlet=inlet)
    return inlet + rise_of_flow(power, flow)


def inlet_needed(target: float, power: float, flow: float) -> float:
    """Temperature at which water must enter a heater to leave it at the target.

    T_in = T_target - P / (rho c Q)

    Parameters
    ----------
    target : float
        Temperature wanted behind the heater, [K], 313.15 to 368.15
    power : float
        Heat into the water, [W], 0 to 2e5
    flow : float
        Volume flow, [m3/s], 1e-5 to 1e-3

    Returns
    -------
    float
        Least temperature entering, [K]

    Notes
    -----
    A figure below that of cold water says that the heater makes it from any supply.

    Examples
    --------
    >>> gpm = 3.785411784e-3 / 60
    >>> round((inlet_needed(355.37, 30e3, 4.2 * gpm) - 273.15) * 1.8 + 32)  # 180 °F with 30 kW into 4.2 gpm
    131

    References
    ----------
    Conservation of energy; heat of water by the trade's 500 rule.
    """
    positive(target=target)
    return target - rise_of_flow(power, flow)


def heater_efficiency(flow: float, rise: float, power: float) -> float:
    """Share of the power taken in that is found again in the water.

    efficiency = rho c Q dT / P

    Parameters
    ----------
    flow : float
        Volume flow, [m3/s], 1e-5 to 1e-3
    rise : float
        Temperature rise measured, [K], 0 to 80
    power : float
        Power taken in: by meter, clocked gas, or steam, [W], 1e3 to 2e5

    Returns
    -------
    float
        Efficiency, [-]

    Notes
    -----
    Steady state, heater on all the while. Above one: a figure is wrong. An immersion element gives all it
    takes to the water, limed or not; a gas exchanger some three quarters.

    Examples
    --------
    >>> gpm = 3.785411784e-3 / 60
    >>> round(heater_efficiency(3.0 * gpm, 40 / 1.8, 100000 * 1055.05585262 / 3600), 2)  # 100,000 BTU/h of gas
    0.6

    References
    ----------
    Conservation of energy; heat of water by the trade's 500 rule.
    """
    not_negative(flow=flow, rise=rise)
    positive(power=power)
    return TRADE_HEAT * flow * rise / power


def mixed_temperature(hot_flow: float, hot: float, cold_flow: float, cold: float) -> float:
    """Temperature of two streams of water mixed.

    T = (Q_hot T_hot + Q_cold T_cold) / (Q_hot + Q_cold)

    Parameters
    ----------
    hot_flow : float
        Flow of the hotter stream, [m3/s], 1e-5 to 1e-3
    hot : float
        Its temperature, [K], 313.15 to 368.15
    cold_flow : float
        Flow of the colder stream, [m3/s], 1e-5 to 1e-3
    cold : float
        Its temperature, [K], 273.15 to 333.15

    Returns
    -------
    float
        Temperature behind the mixing, [K]

    Notes
    -----
    The same heat per volume for both: right within one per cent of the difference.

    Examples
    --------
    >>> round(mixed_temperature(3.0, 333.15, 1.0, 285.15) - 273.15, 1)  # three parts of 60 °C, one of 12 °C
    48.0

    References
    ----------
    Conservation of energy.
    """
    not_negative(hot_flow=hot_flow, cold_flow=cold_flow)
    positive(hot=hot, cold=cold)
    positive(flow=hot_flow + cold_flow)
    return (hot_flow * hot + cold_flow * cold) / (hot_flow + cold_flow)


def pipe_end_temperature(start: float, room: float, length: float, loss: float, flow: float) -> float:
    """Temperature of water at the end of a pipe that gives heat to the room on its way.

    T_end = T_room + (T_start - T_room) exp(-k L / (rho c Q))

    Parameters
    ----------
    start : float
        Temperature entering the pipe, [K], 323.15 to 368.15
    room : float
        Temperature round the pipe, [K], 273.15 to 318.15
    length : float
        Length of pipe, [m], 0 to 60
    loss : float
        Heat lost for each metre and degree, [W/(m K)], 0.1 to 3
    flow : float
        Volume flow, [m3/s], 3e-5 to 1e-3

    Returns
    -------
    float
        Temperature leaving the pipe, [K]

    Notes
    -----
    While it flows, the pipe warm already: the first water after a pause is colder. A bare copper tube of
    22 mm (3/4 in) loses some 0.7 W/(m K), with 25 mm (1 in) of insulation some 0.2 (from memory).

    Examples
    --------
    >>> gpm = 3.785411784e-3 / 60
    >>> drop = 357.0 - pipe_end_temperature(357.0, 295.0, 9.1, 0.7, 2.5 * gpm)
    >>> round(drop * 1.8, 2)  # 30 ft of bare pipe at 2.5 gpm, in F°
    1.07

    References
    ----------
    Exponential cooling along a pipe; conservation of energy.
    """
    not_negative(length=length, loss=loss)
    positive(start=start, room=room, flow=flow)
    return room + (start - room) * math.exp(-loss * length / (TRADE_HEAT * flow))
