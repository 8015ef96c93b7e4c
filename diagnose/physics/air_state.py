"""Moist air as it is met in a dish room: from its temperature and relative humidity, or two thermometers."""

from __future__ import annotations

from diagnose.physics.demand import within
from diagnose.physics.moist_air import (
    SEA_LEVEL,
    dew_point,
    humidity_of_wet_bulb,
    humidity_ratio,
    moist_density,
    relative_humidity,
)

__all__ = ["density_of_air", "dew_point_of_air", "humidity_of_two"]


def density_of_air(temperature: float, humidity: float, pressure: float = SEA_LEVEL) -> float:
    """Density of air of this temperature and relative humidity.

    rho = p (1 + W) / (287.042 T (1 + 1.607858 W))

    Parameters
    ----------
    temperature : float
        Temperature of the air, [K], 283.15 to 343.15
    humidity : float
        Relative humidity, as a fraction, [-], 0 to 1
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Density, [kg/m3]

    Notes
    -----
    A pitot tube read with 1.204 kg/m3 shows exhaust of 50 °C some 7 % too slow.

    Examples
    --------
    >>> round(density_of_air(323.15, 1.0), 3)
    1.042

    References
    ----------
    ASHRAE Fundamentals chapter 1.
    """
    return moist_density(temperature, humidity_ratio(temperature, humidity, pressure), pressure)


def dew_point_of_air(temperature: float, humidity: float, pressure: float = SEA_LEVEL) -> float:
    """Temperature of a surface on which air of this temperature and relative humidity begins to drip.

    p_s(t_dew) = RH p_s(t)

    Parameters
    ----------
    temperature : float
        Temperature of the air, [K], 288.15 to 343.15
    humidity : float
        Relative humidity, as a fraction, [-], 0.4 to 1
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Dew point, [K]

    Notes
    -----
    Not solved back for pressure: the dew point does not depend on it when the relative humidity is given.

    Examples
    --------
    >>> round(dew_point_of_air(308.15, 0.9) - 273.15, 1)
    33.1

    References
    ----------
    ASHRAE Fundamentals chapter 1.
    """
    return dew_point(humidity_ratio(temperature, humidity, pressure), pressure)


def humidity_of_two(temperature: float, wet_bulb: float, pressure: float = SEA_LEVEL) -> float:
    """Relative humidity from a dry and a wet thermometer.

    RH = p W / (0.621945 + W) / p_s(t), W from the wet thermometer

    Parameters
    ----------
    temperature : float
        Dry thermometer, [K], 283.15 to 323.15
    wet_bulb : float
        Thermometer with the wet sock, [K], 278.15 to 323.15
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Relative humidity, as a fraction, [-]

    Notes
    -----
    Air must blow over the sock; let both settle three minutes.

    Examples
    --------
    >>> round(humidity_of_two(313.15, 293.15), 2)
    0.14

    References
    ----------
    ASHRAE Fundamentals chapter 1, its example 1.
    """
    within(273.15, 363.15, temperature=temperature)
    return relative_humidity(temperature, humidity_of_wet_bulb(temperature, wet_bulb, pressure), pressure)
