"""Heat into water: what rise a power gives a flow, what power a rise wants, and water's own figures."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive, within

__all__ = [
    "TRADE_HEAT",
    "heat_per_volume",
    "heat_up_time",
    "power_for_rise",
    "rise_of_flow",
    "trade_figure",
    "water_density",
    "water_heat_capacity",
]

_COLDEST, _HOTTEST = 283.15, 363.15
_CP = (4207.0, -1.4456, 0.020656, -5.4247e-05)  # fit to IAPWS-IF97
# The trade's "500": 500 BTU/h warm one gallon a minute by one degree Fahrenheit. In J/(m3 K).
TRADE_HEAT = 500.0 * 1055.05585262 / 3600.0 / (3.785411784e-3 / 60.0) / (5.0 / 9.0)


def water_density(temperature: float) -> float:
    """Density of liquid water at atmospheric pressure.

    rho = polynomial of fifth degree in t over (1 + 16.87985e-3 t), t in degrees Celsius

    Parameters
    ----------
    temperature : float
        Temperature, [K], 283.15 to 363.15

    Returns
    -------
    float
        Density, [kg/m3]

    Notes
    -----
    Good for 10 to 90 °C (283.15 to 363.15 K) within 0.02 kg/m3 of IAPWS-IF97.

    Examples
    --------
    >>> round(water_density(333.15), 1)
    983.2

    References
    ----------
    A fit of 1975 to the density of water, form and coefficients from memory; held to IAPWS-IF97 by the tests.
    """
    within(_COLDEST, _HOTTEST, temperature=temperature)
    t = temperature - 273.15
    rows = (999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12)
    return sum(c * t**n for n, c in enumerate(rows)) / (1.0 + 16.879850e-3 * t)


def water_heat_capacity(temperature: float) -> float:
    """Heat capacity of liquid water at atmospheric pressure.

    c_p = 4207 - 1.4456 t + 0.020656 t^2 - 5.4247e-05 t^3, t in degrees Celsius

    Parameters
    ----------
    temperature : float
        Temperature, [K], 283.15 to 363.15

    Returns
    -------
    float
        Heat capacity, [J/(kg K)]

    Notes
    -----
    Good for 10 to 90 °C (283.15 to 363.15 K) within 1 J/(kg K).
    Not solved back for temperature: it is least near 40 °C, the same on both sides of that.

    Examples
    --------
    >>> round(water_heat_capacity(333.15), -1)
    4180.0

    References
    ----------
    Fitted here to IAPWS-IF97 values.
    """
    within(_COLDEST, _HOTTEST, temperature=temperature)
    t = temperature - 273.15
    return _CP[0] + _CP[1] * t + _CP[2] * t**2 + _CP[3] * t**3


def heat_per_volume(temperature: float) -> float:
    """Heat that warms a volume of water by one degree.

    rho c_p

    Parameters
    ----------
    temperature : float
        Temperature, [K], 283.15 to 363.15

    Returns
    -------
    float
        Heat per volume and degree, [J/(m3 K)]

    Notes
    -----
    The trade's 500 BTU/h per gpm and degree is this for cold water; at 180 °F it is 487.

    Examples
    --------
    >>> round(heat_per_volume(355.37) / TRADE_HEAT * 500)  # at 180 °F, in BTU/h per gpm and F°
    487

    References
    ----------
    Product of density and heat capacity, each held to IAPWS-IF97 by the tests.
    """
    return water_density(temperature) * water_heat_capacity(temperature)


def trade_figure(temperature: float) -> float:
    """What the trade's 500 becomes in water of a temperature.

    500 rho c_p / (rho c_p of the rule)

    Parameters
    ----------
    temperature : float
        Temperature, [K], 283.15 to 363.15

    Returns
    -------
    float
        BTU/h for each gpm and F°, [-]

    Notes
    -----
    Within three per cent of 500 from 10 to 90 °C; hot water takes less.

    Examples
    --------
    >>> round(trade_figure(355.37))  # at 180 °F
    487

    References
    ----------
    Density and heat capacity held to IAPWS-IF97 by the tests; the 500 rule is the trade's.
    """
    return 500.0 * heat_per_volume(temperature) / TRADE_HEAT


def rise_of_flow(power: float, flow: float, heat_per_volume: float = TRADE_HEAT) -> float:
    """Temperature rise of a flow of water that takes up a power.

    dT = P / (rho c_p Q); in the trade's units kW x 3412 / (500 x gpm)

    Parameters
    ----------
    power : float
        Heat taken up, [W], 0 to 2e5
    flow : float
        Volume flow, [m3/s], 1e-5 to 1e-3
    heat_per_volume : float
        Density times heat capacity; the trade's 500 rule unless given, [J/(m3 K)], 3.9e6 to 4.3e6

    Returns
    -------
    float
        Rise, [K]

    Notes
    -----
    No loss to the room. The 500 rule stands for cold water: at 180 °F the true rise is 2.6 % larger.

    Examples
    --------
    >>> round(rise_of_flow(30e3, 4.2 * 3.785411784e-3 / 60) * 9 / 5, 1)  # 30 kW into 4.2 gpm, in F°
    48.7

    References
    ----------
    Conservation of energy.
    """
    positive(flow=flow, heat_per_volume=heat_per_volume)
    not_negative(power=power)
    return power / (heat_per_volume * flow)


def power_for_rise(flow: float, rise: float, efficiency: float = 1.0, heat_per_volume: float = TRADE_HEAT) -> float:
    """Power that a heater must take in to warm a flow of water.

    P = rho c_p Q dT / efficiency

    Parameters
    ----------
    flow : float
        Volume flow, [m3/s], 1e-5 to 1e-3
    rise : float
        Temperature rise, [K], 0 to 80
    efficiency : float
        Heat into the water over power taken in, [-], 0.1 to 1
    heat_per_volume : float
        Density times heat capacity; the trade's 500 rule unless given, [J/(m3 K)], 3.9e6 to 4.3e6

    Returns
    -------
    float
        Power taken in, [W]

    Notes
    -----
    Efficiency above nought and at most one: 0.98 electric, 0.75 gas are what plan checks reckon with.

    Examples
    --------
    >>> round(power_for_rise(126 * 3.785411784e-3 / 3600, 80 / 1.8, 0.98) / 1e3, 1)
    25.1

    References
    ----------
    Conservation of energy; efficiencies of county plan check guide EHD 16-01, appendix E.
    """
    not_negative(flow=flow, rise=rise)
    positive(efficiency=efficiency, heat_per_volume=heat_per_volume)
    within(0.0, 1.0, efficiency=efficiency)
    return heat_per_volume * flow * rise / efficiency


def heat_up_time(volume: float, rise: float, power: float, heat_per_volume: float = TRADE_HEAT) -> float:
    """Time to warm a tank of water.

    t = rho c_p V dT / P

    Parameters
    ----------
    volume : float
        Water held, [m3], 0 to 1
    rise : float
        Temperature rise, [K], 0 to 80
    power : float
        Heat into the water, [W], 1e3 to 2e5
    heat_per_volume : float
        Density times heat capacity; the trade's 500 rule unless given, [J/(m3 K)], 3.9e6 to 4.3e6

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    No loss to the room and none into the tank's own metal: a real tank takes longer.

    Examples
    --------
    >>> round(heat_up_time(30 * 3.785411784e-3, 100 / 1.8, 15e3) / 60, 1)
    29.3

    References
    ----------
    Conservation of energy.
    """
    not_negative(volume=volume, rise=rise)
    positive(power=power, heat_per_volume=heat_per_volume)
    return heat_per_volume * volume * rise / power
