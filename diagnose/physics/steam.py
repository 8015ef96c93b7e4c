"""Steam as a source of heat: its temperature and latent heat by pressure, condensate and kilowatts."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, within
from diagnose.physics.heat import TRADE_HEAT

__all__ = [
    "STANDARD_AIR",
    "condensate_power",
    "latent_heat",
    "latent_heat_at_gauge",
    "saturation_pressure",
    "saturation_temperature",
    "steam_for_rise",
    "steam_temperature_at_gauge",
]

STANDARD_AIR = 101325.0  # Pa, air pressure at sea level
_COOLEST, _HOTTEST = 283.15, 473.15
_LEAST, _MOST = 1228.0, 1.5551e6  # Pa, saturation at those temperatures
# IAPWS-IF97, region 4, coefficients of the saturation line.
_N = (
    1167.0521452767,
    -724213.16703206,
    -17.073846940092,
    12020.82470247,
    -3232555.0322333,
    14.91510861353,
    -4823.2657361591,
    405113.40542057,
    -0.23855557567849,
    650.17534844798,
)
_LATENT = (2500890.0, -2368.35, 0.25327, -0.00800661, -2.10147e-05)  # fit to IAPWS-IF97


def saturation_pressure(temperature: float) -> float:
    """Absolute pressure at which water boils at a temperature.

    p = (2 C / (-B + sqrt(B^2 - 4 A C)))^4 in MPa, A, B, C quadratic in T + n9 / (T - n10)

    Parameters
    ----------
    temperature : float
        Temperature, [K], 283.15 to 473.15

    Returns
    -------
    float
        Absolute pressure, [Pa]

    Notes
    -----
    Good for 10 to 200 °C within the rounding of the release.

    Examples
    --------
    >>> round(saturation_pressure(373.124) / 1e3, 2)
    101.32

    References
    ----------
    IAPWS R7-97, region 4, equation of the saturation line; coefficients from memory, held to the library's values.
    """
    within(_COOLEST, _HOTTEST, temperature=temperature)
    n = _N
    theta = temperature + n[8] / (temperature - n[9])
    a = theta**2 + n[0] * theta + n[1]
    b = n[2] * theta**2 + n[3] * theta + n[4]
    c = n[5] * theta**2 + n[6] * theta + n[7]
    return float(1e6 * (2 * c / (-b + math.sqrt(b * b - 4 * a * c))) ** 4)


def saturation_temperature(pressure: float) -> float:
    """Temperature at which water boils, and steam condenses, at an absolute pressure.

    T = (n10 + D - sqrt((n10 + D)^2 - 4 (n9 + n10 D))) / 2, D from the fourth root of p in MPa

    Parameters
    ----------
    pressure : float
        Absolute pressure, [Pa], 1228 to 1.5551e6

    Returns
    -------
    float
        Temperature, [K]

    Notes
    -----
    Absolute, not gauge: a gauge at 20 psi stands for 34.7 psi here.

    Examples
    --------
    >>> round(saturation_temperature(101325 + 20 * 6894.757) - 273.15, 1)
    126.0

    References
    ----------
    IAPWS R7-97, region 4, backward equation; coefficients from memory, held to the library's values.
    """
    within(_LEAST, _MOST, pressure=pressure)
    n, beta = _N, math.sqrt(math.sqrt(pressure / 1e6))
    e = beta**2 + n[2] * beta + n[5]
    f = n[0] * beta**2 + n[3] * beta + n[6]
    g = n[1] * beta**2 + n[4] * beta + n[7]
    d = 2 * g / (-f - math.sqrt(f * f - 4 * e * g))
    return (n[9] + d - math.sqrt((n[9] + d) ** 2 - 4 * (n[8] + n[9] * d))) / 2


def latent_heat(pressure: float) -> float:
    """Heat that steam gives up when it condenses, by its absolute pressure.

    h_fg = polynomial of fourth degree in the saturation temperature in degrees Celsius

    Parameters
    ----------
    pressure : float
        Absolute pressure, [Pa], 1228 to 1.5551e6

    Returns
    -------
    float
        Latent heat, [J/kg]

    Notes
    -----
    Dry saturated steam to water at the same temperature, within 0.01 %. Wet steam gives less by its share of water.

    Examples
    --------
    >>> round(latent_heat(101325.0) / 1e3)
    2257

    References
    ----------
    Fitted here to IAPWS-IF97 values.
    """
    celsius = saturation_temperature(pressure) - 273.15
    return sum(c * celsius**n for n, c in enumerate(_LATENT))


def steam_temperature_at_gauge(gauge: float) -> float:
    """Temperature of saturated steam by what a gauge shows.

    T = T_sat(p_gauge + 101,325 Pa)

    Parameters
    ----------
    gauge : float
        Pressure above the air's, [Pa], 0 to 1.4e6

    Returns
    -------
    float
        Temperature, [K]

    Notes
    -----
    Sea level: altitude is left out. Air in the steam makes it cooler than its gauge says.

    Examples
    --------
    >>> round((steam_temperature_at_gauge(20 * 6894.757) - 273.15) * 1.8 + 32)  # 20 psi on the gauge, in °F
    259

    References
    ----------
    IAPWS R7-97, region 4, backward equation.
    """
    not_negative(gauge=gauge)
    return saturation_temperature(gauge + STANDARD_AIR)


def latent_heat_at_gauge(gauge: float) -> float:
    """Heat that steam gives up when it condenses, by what a gauge shows.

    h_fg = h_fg(p_gauge + 101,325 Pa)

    Parameters
    ----------
    gauge : float
        Pressure above the air's, [Pa], 0 to 1.4e6

    Returns
    -------
    float
        Latent heat, [J/kg]

    Notes
    -----
    Sea level: altitude is left out.

    Examples
    --------
    >>> round(latent_heat_at_gauge(20 * 6894.757) / 2326)  # 20 psi on the gauge, in BTU/lb
    940

    References
    ----------
    Fitted here to IAPWS-IF97 values; pressure over the air's at sea level.
    """
    not_negative(gauge=gauge)
    return latent_heat(gauge + STANDARD_AIR)


def condensate_power(condensate: float, gauge: float) -> float:
    """Heat that a coil takes from its steam, from the condensate it makes.

    P = m h_fg

    Parameters
    ----------
    condensate : float
        Condensate made, [kg/s], 0 to 0.05
    gauge : float
        Steam pressure on the gauge, [Pa], 0 to 1.4e6

    Returns
    -------
    float
        Heat, [W]

    Notes
    -----
    Weighed without flash: led into cold water. Condensate that leaves cooler than the steam gave some more.

    Examples
    --------
    >>> round(condensate_power(96 * 0.45359237 / 3600, 20 * 6894.757) / 1e3, 1)  # 96 lb/h at 20 psi, in kW
    26.4

    References
    ----------
    Conservation of energy.
    """
    not_negative(condensate=condensate)
    return condensate * latent_heat_at_gauge(gauge)


def steam_for_rise(flow: float, rise: float, gauge: float) -> float:
    """Steam that a rise of a flow of water takes.

    m = rho c Q dT / h_fg

    Parameters
    ----------
    flow : float
        Volume flow of the water, [m3/s], 1e-5 to 1e-3
    rise : float
        Temperature rise, [K], 0 to 80
    gauge : float
        Steam pressure on the gauge, [Pa], 0 to 1.4e6

    Returns
    -------
    float
        Steam, [kg/s]

    Notes
    -----
    Loss of the shell and the line left out. By steam coil; an injector leaves its condensate in the water.

    Examples
    --------
    >>> gpm = 3.785411784e-3 / 60
    >>> round(steam_for_rise(4.5 * gpm, 40 / 1.8, 20 * 6894.757) / 0.45359237 * 3600)  # 4.5 gpm by 40 F°, in lb/h
    96

    References
    ----------
    Conservation of energy; heat of water by the trade's 500 rule.
    """
    not_negative(flow=flow, rise=rise)
    return TRADE_HEAT * flow * rise / latent_heat_at_gauge(gauge)
