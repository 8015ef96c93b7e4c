"""Moist air as it is met in a dish room: humidity by two thermometers, dew point, density."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive, within
from diagnose.physics.moist_air import (
    BOILING,
    FREEZING,
    SEA_LEVEL,
    WATER_TO_AIR,
    humidity_ratio,
    moist_density,
    saturation_pressure,
)

__all__ = [
    "density_of_air",
    "dew_point",
    "dew_point_of_air",
    "humidity_of_two",
    "humidity_of_wet_bulb",
    "relative_humidity",
]


def humidity_of_wet_bulb(temperature: float, wet_bulb: float, pressure: float = SEA_LEVEL) -> float:
    """Water vapour in moist air from a dry and a wet thermometer.

    W = ((2501 - 2.326 t_w) W_s(t_w) - 1.006 (t - t_w)) / (2501 + 1.86 t - 4.186 t_w), in degrees Celsius

    Parameters
    ----------
    temperature : float
        Dry thermometer, [K], 283.15 to 353.15
    wet_bulb : float
        Thermometer with the wet sock, [K], 278.15 to 333.15
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Humidity ratio, [kg/kg]

    Notes
    -----
    The wet one can't be the warmer; a figure under nought means the sock was dry.

    Examples
    --------
    >>> round(humidity_of_wet_bulb(313.15, 293.15), 4)
    0.0064

    References
    ----------
    ASHRAE Fundamentals chapter 1, its example 1.
    """
    if wet_bulb > temperature:
        raise ValueError("the wet thermometer can't read above the dry one")
    saturated = humidity_ratio(wet_bulb, 1.0, pressure)
    t, wet = temperature - FREEZING, wet_bulb - FREEZING
    ratio = ((2501.0 - 2.326 * wet) * saturated - 1.006 * (t - wet)) / (2501.0 + 1.86 * t - 4.186 * wet)
    if ratio < 0:
        raise ValueError("so far below the dry one a wet thermometer can't read: wet the sock and wait")
    return ratio


def relative_humidity(temperature: float, ratio: float, pressure: float = SEA_LEVEL) -> float:
    """Relative humidity from the water the air carries.

    RH = p W / (0.621945 + W) / p_s(t)

    Parameters
    ----------
    temperature : float
        Temperature of the air, [K], 273.15 to 363.15
    ratio : float
        Water for each kilogram of dry air, [kg/kg], 0 to 0.5
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Relative humidity, as a fraction, [-]

    Notes
    -----
    Above 1 the air is foggy: that is the steam one sees.

    Examples
    --------
    >>> round(relative_humidity(313.15, 0.0065), 2)
    0.14

    References
    ----------
    ASHRAE Fundamentals chapter 1.
    """
    not_negative(ratio=ratio)
    positive(pressure=pressure)
    return pressure * ratio / (WATER_TO_AIR + ratio) / saturation_pressure(temperature)


def dew_point(ratio: float, pressure: float = SEA_LEVEL) -> float:
    """Temperature of a surface on which this air just begins to drip.

    p_s(t_dew) = p W / (0.621945 + W), found by halving

    Parameters
    ----------
    ratio : float
        Water for each kilogram of dry air, [kg/kg], 0.005 to 0.5
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Dew point, [K]

    Notes
    -----
    From freezing to boiling only.

    Examples
    --------
    >>> round(dew_point(0.0065) - 273.15, 1)
    7.7

    References
    ----------
    ASHRAE Fundamentals chapter 1.
    """
    positive(ratio=ratio, pressure=pressure)
    wanted = pressure * ratio / (WATER_TO_AIR + ratio)
    low, high = FREEZING, BOILING
    if not saturation_pressure(low) <= wanted <= saturation_pressure(high):
        raise ValueError("the dew point lies below freezing or above boiling")
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if saturation_pressure(middle) < wanted else (low, middle)
    return (low + high) / 2


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
