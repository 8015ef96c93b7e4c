"""Water running through a tank: what it takes, how it thins what is in there, how warm it leaves the tank."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive
from diagnose.physics.heat import TRADE_HEAT

__all__ = [
    "heat_of_inflow",
    "share_left",
    "share_left_after_racks",
    "temperature_after",
    "temperature_after_rinse",
]


def heat_of_inflow(inflow: float, inflow_temperature: float, temperature: float) -> float:
    """Heat that water running through a tank takes from it.

    P = rho c q (T - T_in)

    Parameters
    ----------
    inflow : float
        Water running in, and as much out, [m3/s], 0 to 1e-3
    inflow_temperature : float
        Temperature of that water, [K], 273.15 to 368.15
    temperature : float
        Temperature of the tank, [K], 273.15 to 368.15

    Returns
    -------
    float
        Heat taken, [W]

    Notes
    -----
    Negative when the water is hotter than the tank: a final rinse that falls into the wash tank warms it.

    Examples
    --------
    >>> round(heat_of_inflow(3.785411784e-3 / 60, 333.15, 344.15) / 1e3, 2)  # 1 gpm of 60 °C through a tank at 71 °C
    2.9

    References
    ----------
    Conservation of energy; heat of water by the trade's 500 rule.
    """
    not_negative(inflow=inflow)
    positive(inflow_temperature=inflow_temperature, temperature=temperature)
    return TRADE_HEAT * inflow * (temperature - inflow_temperature)


def share_left(volume: float, water_in: float) -> float:
    """Share of what was in a tank that is still there after water ran in and as much over the drain.

    C / C_0 = exp(-V_in / V)

    Parameters
    ----------
    volume : float
        Water held, [m3], 0.02 to 1
    water_in : float
        Water run in since, [m3], 0 to 3

    Returns
    -------
    float
        Share left of detergent or soil, [-]

    Notes
    -----
    Well stirred, overflow as large as what runs in, nothing fed or brought in meanwhile.

    Examples
    --------
    >>> round(share_left(0.1, 0.1), 3)  # one tankful of rinse leaves 37 %
    0.368

    References
    ----------
    Wash-out of a well stirred tank.
    """
    positive(volume=volume)
    not_negative(water_in=water_in)
    return math.exp(-water_in / volume)


def share_left_after_racks(volume: float, rinse_per_rack: float, racks: float) -> float:
    """Share of what was in a tank that is still there after so many racks, each letting its rinse run in.

    C / C_0 = exp(-n V_rack / V)

    Parameters
    ----------
    volume : float
        Water held, [m3], 0.02 to 1
    rinse_per_rack : float
        Rinse water that each rack sends into the tank, [m3], 1e-4 to 0.01
    racks : float
        Racks since, [-], 0 to 300

    Returns
    -------
    float
        Share left of detergent or soil, [-]

    Notes
    -----
    Nothing fed or brought in meanwhile: it is what the detergent feed has to make good.

    Examples
    --------
    >>> gal = 3.785411784e-3
    >>> round(share_left_after_racks(22 * gal, 0.7 * gal, 30), 2)  # 30 racks of 0.7 gal through 22 gal
    0.38

    References
    ----------
    Wash-out of a well stirred tank.
    """
    not_negative(rinse_per_rack=rinse_per_rack, racks=racks)
    return share_left(volume, racks * rinse_per_rack)


def temperature_after(
    volume: float,
    start: float,
    time: float,
    power: float,
    loss: float,
    room: float,
    inflow: float,
    inflow_temperature: float,
) -> float:
    """Temperature of a tank some time later, heated, losing to the room, with water running through it.

    T = T_settled + (T_start - T_settled) exp(-K t / C), K = U + rho c q, C = rho c V

    Parameters
    ----------
    volume : float
        Water held, [m3], 0.02 to 1
    start : float
        Temperature at the start, [K], 273.15 to 368.15
    time : float
        Time gone by, [s], 0 to 3600
    power : float
        Heat into the water, [W], 0 to 2e5
    loss : float
        Heat lost to the room for each degree above it, [W/K], 0 to 200
    room : float
        Room temperature, [K], 273.15 to 323.15
    inflow : float
        Water running in, and as much out, [m3/s], 0 to 1e-4
    inflow_temperature : float
        Temperature of that water, [K], 273.15 to 368.15

    Returns
    -------
    float
        Temperature, [K]

    Notes
    -----
    A figure above boiling means the thermostat opens before.
    Not solved back for loss and inflow: the same end can come of two of them when the tank passes the
    temperature of the room or of the water on its way.

    Examples
    --------
    >>> round(temperature_after(0.1136, 344.15, 1800.0, 0.0, 50.0, 295.15, 0.0, 295.15) - 273.15, 1)
    62.5

    References
    ----------
    Exponential approach of a well stirred tank; conservation of energy.
    """
    not_negative(time=time, power=power, loss=loss, inflow=inflow)
    positive(volume=volume, start=start, room=room, inflow_temperature=inflow_temperature)
    carried = TRADE_HEAT * inflow
    push = power + loss * (room - start) + carried * (inflow_temperature - start)
    share = (loss + carried) * time / (TRADE_HEAT * volume)
    slackened = 1.0 if share == 0 else -math.expm1(-share) / share
    return start + push * time / (TRADE_HEAT * volume) * slackened


def temperature_after_rinse(volume: float, temperature: float, water_in: float, rinse: float) -> float:
    """Temperature of a tank after rinse water of another temperature has run into it and as much over the drain.

    T = T_rinse + (T_tank - T_rinse) exp(-V_in / V)

    Parameters
    ----------
    volume : float
        Water held, [m3], 0.02 to 1
    temperature : float
        Temperature of the tank before, [K], 273.15 to 368.15
    water_in : float
        Rinse water run in, [m3], 0 to 0.3
    rinse : float
        Temperature of that water as it comes into the tank, [K], 273.15 to 368.15

    Returns
    -------
    float
        Temperature of the tank after, [K]

    Notes
    -----
    Well stirred; heater and losses left out. What falls off the ware has cooled on its way: it comes into
    the tank cooler than it left the jets.

    Examples
    --------
    >>> round(temperature_after_rinse(0.1136, 338.15, 0.004, 350.15) - 273.15, 2)  # 4 L of 77 °C into 30 gal of 65 °C
    65.42

    References
    ----------
    Wash-out of a well stirred tank.
    """
    positive(volume=volume, temperature=temperature, rinse=rinse)
    not_negative(water_in=water_in)
    return rinse + (temperature - rinse) * math.exp(-water_in / volume)
