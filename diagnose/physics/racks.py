"""Racks of ware: the heat each takes from a tank, how far it cools it, and the power that makes it good."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive
from diagnose.physics.heat import TRADE_HEAT

__all__ = ["annual_water", "drop_per_rack", "heat_per_rack", "power_for_racks", "recovery_time"]


def heat_per_rack(
    ware_mass: float,
    ware_heat_capacity: float,
    rack_mass: float,
    rack_heat_capacity: float,
    start: float,
    end: float,
) -> float:
    """Heat that a rack and its ware take up on their way through the machine.

    Q = (m_ware c_ware + m_rack c_rack) (T_end - T_start)

    Parameters
    ----------
    ware_mass : float
        Ware on the rack, [kg], 0 to 30
    ware_heat_capacity : float
        Heat capacity of the ware, [J/(kg K)], 300 to 2500
    rack_mass : float
        The rack itself, [kg], 0 to 5
    rack_heat_capacity : float
        Heat capacity of the rack, [J/(kg K)], 400 to 2500
    start : float
        Temperature going in, [K], 263.15 to 313.15
    end : float
        Temperature coming out, [K], 323.15 to 363.15

    Returns
    -------
    float
        Heat, [J]

    Notes
    -----
    Thick ware comes out cooler inside than at its surface and takes less. Water carried in and out with the
    rack is left out.

    Examples
    --------
    >>> round(heat_per_rack(9.0, 850.0, 1.8, 1900.0, 295.15, 343.15) / 1e3)  # 9 kg of china on a plastic rack, in kJ
    531

    References
    ----------
    Conservation of energy; heat capacities (china 850, steel 490, plastic 1900 J/(kg K)) from memory.
    """
    not_negative(ware_mass=ware_mass, rack_mass=rack_mass)
    positive(ware_heat_capacity=ware_heat_capacity, rack_heat_capacity=rack_heat_capacity, start=start, end=end)
    return (ware_mass * ware_heat_capacity + rack_mass * rack_heat_capacity) * (end - start)


def drop_per_rack(heat: float, volume: float) -> float:
    """How far one rack cools the tank, with no heat put in meanwhile.

    dT = Q / (rho c V)

    Parameters
    ----------
    heat : float
        Heat the rack takes, [J], 0 to 4e6
    volume : float
        Water held, [m3], 0.02 to 1

    Returns
    -------
    float
        Drop, [K]

    Notes
    -----
    Heat of the tank's own metal left out: the true drop is a few per cent less.

    Examples
    --------
    >>> round(drop_per_rack(531e3, 0.1136), 2)  # one rack, 30 gal
    1.12

    References
    ----------
    Conservation of energy; heat of water by the trade's 500 rule.
    """
    not_negative(heat=heat)
    positive(volume=volume)
    return heat / (TRADE_HEAT * volume)


def power_for_racks(heat: float, rate: float) -> float:
    """Power that makes good what racks take from a tank.

    P = Q n

    Parameters
    ----------
    heat : float
        Heat each rack takes, [J], 0 to 4e6
    rate : float
        Racks in a second, [1/s], 0 to 0.2

    Returns
    -------
    float
        Power, [W]

    Notes
    -----
    The wash tank bears most of it; hot rinse water falling in gives some of it back.

    Examples
    --------
    >>> round(power_for_racks(531e3, 120 / 3600) / 1e3, 1)  # 120 racks an hour, in kW
    17.7

    References
    ----------
    Conservation of energy.
    """
    not_negative(heat=heat, rate=rate)
    return heat * rate


def recovery_time(heat: float, power: float, loss_power: float) -> float:
    """Time in which a tank's heater makes good what one rack took.

    t = Q / (P - P_lost)

    Parameters
    ----------
    heat : float
        Heat the rack takes, [J], 0 to 4e6
    power : float
        Heat into the water, [W], 4e3 to 1e5
    loss_power : float
        Heat lost meanwhile to the room and with the overflow, [W], 0 to 4e3

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    Refused when the losses take all the heater gives: the tank then never recovers.

    Examples
    --------
    >>> round(recovery_time(531e3, 15e3, 2.5e3))
    42

    References
    ----------
    Conservation of energy.
    """
    not_negative(heat=heat, loss_power=loss_power)
    positive(power=power, power_left=power - loss_power)
    return heat / (power - loss_power)


def annual_water(water_per_rack: float, racks_per_day: float, days: float) -> float:
    """Rinse water a machine uses in a year.

    V = V_rack n d

    Parameters
    ----------
    water_per_rack : float
        Water for one rack, [m3], 5e-4 to 0.02
    racks_per_day : float
        Racks in a day, [-], 10 to 3000
    days : float
        Days of service in a year, [-], 50 to 366

    Returns
    -------
    float
        Water, [m3]

    Notes
    -----
    Rinse alone: filling and topping up of tanks come on top.

    Examples
    --------
    >>> round(annual_water(0.70 * 3.785411784e-3, 400, 365) / 3.785411784e-3)  # gallons
    102200

    References
    ----------
    WaterSense at Work, 2012, equation 4-22.
    """
    not_negative(water_per_rack=water_per_rack, racks_per_day=racks_per_day, days=days)
    return water_per_rack * racks_per_day * days
