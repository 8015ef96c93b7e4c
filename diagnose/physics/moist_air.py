"""Moist air: how much water it holds, what heat is in it, what it weighs."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive, within

__all__ = [
    "BOILING",
    "FREEZING",
    "SEA_LEVEL",
    "WATER_TO_AIR",
    "humidity_ratio",
    "moist_density",
    "moist_enthalpy",
    "moist_volume",
    "saturation_pressure",
]

SEA_LEVEL = 101325.0  # standard atmosphere, Pa
FREEZING, BOILING = 273.15, 373.15
WATER_TO_AIR = 0.621945  # molar mass of water over that of dry air
_GAS_DRY_AIR = 287.042  # J/(kg K)
_SATURATION = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673)


def saturation_pressure(temperature: float) -> float:
    """Pressure of water vapour over water, which is all that air of this temperature can hold.

    ln p = C1/T + C2 + C3 T + C4 T^2 + C5 T^3 + C6 ln T

    Parameters
    ----------
    temperature : float
        Temperature, [K], 273.15 to 373.15

    Returns
    -------
    float
        Vapour pressure, [Pa]

    Notes
    -----
    Liquid water only, 0 to 100 °C.

    Examples
    --------
    >>> round(saturation_pressure(323.15))
    12350

    References
    ----------
    Hyland-Wexler form over liquid water as in ASHRAE Fundamentals chapter 1, coefficients from memory, held
    to its table 3 by the tests.
    """
    within(FREEZING, BOILING, temperature=temperature)
    c = _SATURATION
    t = temperature
    return math.exp(c[0] / t + c[1] + c[2] * t + c[3] * t**2 + c[4] * t**3 + c[5] * math.log(t))


def humidity_ratio(temperature: float, humidity: float, pressure: float = SEA_LEVEL) -> float:
    """Water vapour in moist air for each kilogram of dry air.

    W = 0.621945 p_w / (p - p_w), p_w = relative humidity x saturation pressure

    Parameters
    ----------
    temperature : float
        Temperature of the air, [K], 273.15 to 363.15
    humidity : float
        Relative humidity, as a fraction, [-], 0 to 1
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Humidity ratio, [kg/kg]

    Notes
    -----
    Ideal gases: under 1 % from the tables to 60 °C, 2 % at 85 °C.

    Examples
    --------
    >>> round(humidity_ratio(298.15, 1.0), 4)
    0.0201

    References
    ----------
    ASHRAE Fundamentals chapter 1.
    """
    within(0.0, 1.0, humidity=humidity)
    vapour = humidity * saturation_pressure(temperature)
    positive(pressure=pressure)
    if vapour >= pressure:
        raise ValueError(f"air at {temperature:.1f} K can't hold so much vapour at {pressure:.0f} Pa: it would boil")
    return WATER_TO_AIR * vapour / (pressure - vapour)


def moist_enthalpy(temperature: float, ratio: float) -> float:
    """Heat in moist air, counted from dry air and liquid water at freezing, for each kilogram of dry air.

    h = 1006 t + W (2501000 + 1860 t), t in degrees Celsius

    Parameters
    ----------
    temperature : float
        Temperature of the air, [K], 273.15 to 363.15
    ratio : float
        Water for each kilogram of dry air, [kg/kg], 0 to 1

    Returns
    -------
    float
        Enthalpy, [J/kg]

    Notes
    -----
    Most of it is in the vapour: at 60 °C saturated, six parts in seven.

    Examples
    --------
    >>> round(moist_enthalpy(313.15, 0.0065) / 1000, 1)
    57.0

    References
    ----------
    ASHRAE Fundamentals chapter 1.
    """
    within(FREEZING, BOILING, temperature=temperature)
    not_negative(ratio=ratio)
    t = temperature - FREEZING
    return 1006.0 * t + ratio * (2.501e6 + 1860.0 * t)


def moist_volume(temperature: float, ratio: float, pressure: float = SEA_LEVEL) -> float:
    """Room that moist air takes for each kilogram of dry air in it.

    v = 287.042 T (1 + 1.607858 W) / p

    Parameters
    ----------
    temperature : float
        Temperature of the air, [K], 273.15 to 363.15
    ratio : float
        Water for each kilogram of dry air, [kg/kg], 0 to 1
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Volume, [m3/kg]

    Notes
    -----
    Ideal gas.

    Examples
    --------
    >>> round(moist_volume(313.15, 0.0065), 3)
    0.896

    References
    ----------
    ASHRAE Fundamentals chapter 1.
    """
    positive(temperature=temperature, pressure=pressure)
    not_negative(ratio=ratio)
    return _GAS_DRY_AIR * temperature * (1.0 + ratio / WATER_TO_AIR) / pressure


def moist_density(temperature: float, ratio: float, pressure: float = SEA_LEVEL) -> float:
    """Density of moist air.

    rho = (1 + W) / v

    Parameters
    ----------
    temperature : float
        Temperature of the air, [K], 273.15 to 363.15
    ratio : float
        Water for each kilogram of dry air, [kg/kg], 0 to 1
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Density, [kg/m3]

    Notes
    -----
    Wet air is the lighter one, as vapour weighs less than air.

    Examples
    --------
    >>> round(moist_density(323.15, 0.0863), 3)
    1.042

    References
    ----------
    ASHRAE Fundamentals chapter 1.
    """
    return (1.0 + ratio) / moist_volume(temperature, ratio, pressure)
