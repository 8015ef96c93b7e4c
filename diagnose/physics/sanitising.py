"""Sanitising by heat: heat units earned by the ware, and what time or temperature they ask for."""

from __future__ import annotations

import math
from collections.abc import Sequence

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "HEAT_UNITS_WANTED",
    "heat_unit_rate",
    "heat_units_at",
    "heat_units_of_trace",
    "temperature_for_heat_units",
    "time_for_heat_units",
    "z_of_slope",
    "z_of_two_points",
]

HEAT_UNITS_WANTED = 3600.0  # NSF/ANSI 3 at the surface of the ware; the edition's text was not seen
_SCALE, _SLOPE = 3.03438e-17, 0.265972  # the rule's constants, for degrees Fahrenheit
_LEAST, _CAP = 143.0, 165.0  # °F: no credit below, no further credit above


def _fahrenheit(temperature: float) -> float:
    # Rounded so that 143 and 165 °F written in kelvin count as 143 and 165.
    return round(temperature * 1.8 - 459.67, 9)


def heat_unit_rate(temperature: float) -> float:
    """Heat units a surface earns in a second at a temperature.

    H = 3.03438e-17 exp(0.265972 T), T in degrees Fahrenheit; none below 143 °F, no more above 165 °F

    Parameters
    ----------
    temperature : float
        Temperature of the ware's surface, [K], 320 to 370

    Returns
    -------
    float
        Heat units a second, [1/s]

    Notes
    -----
    No credit below 143 °F is an assumption: the rule was drawn from 143 °F on. Not solved back for temperature:
    beyond either end the rate does not change with it.

    Examples
    --------
    >>> round(heat_unit_rate((160 + 459.67) / 1.8), 2)  # 160 °F
    91.98
    >>> heat_unit_rate((142 + 459.67) / 1.8)
    0.0

    References
    ----------
    Curve of 1951, as told in "Where did 3600 HUE come from?", 14 Dec 2009.
    """
    positive(temperature=temperature)
    degrees = _fahrenheit(temperature)
    if degrees < _LEAST:
        return 0.0
    return _SCALE * math.exp(_SLOPE * min(degrees, _CAP))


def heat_units_at(temperature: float, time: float) -> float:
    """Heat units a surface earns when it stays at one temperature.

    units = H(T) t

    Parameters
    ----------
    temperature : float
        Temperature of the ware's surface, [K], 320 to 370
    time : float
        Time at it, [s], 0.1 to 2000

    Returns
    -------
    float
        Heat units, [-]

    Notes
    -----
    Not solved back for temperature and time: below 143 °F nothing is earned in any time, above 165 °F the
    temperature no longer counts. `time_for_heat_units` and `temperature_for_heat_units` answer those.

    Examples
    --------
    >>> round(heat_units_at((160 + 459.67) / 1.8, 40), 1)
    3679.2

    References
    ----------
    Curve of 1951, as told in "Where did 3600 HUE come from?", 14 Dec 2009; no credit below 143 °F is an assumption.
    """
    not_negative(time=time)
    return heat_unit_rate(temperature) * time


def heat_units_of_trace(temperatures: Sequence[float], step: float) -> float:
    """Heat units a surface earns over a trace of its temperature, read at even steps.

    units = sum of H(T_i) x step; each reading stands for the step that follows it

    Parameters
    ----------
    temperatures : sequence of float
        Readings of the surface one after another, [K], 320 to 370
    step : float
        Time between two readings, [s], 0.1 to 10

    Returns
    -------
    float
        Heat units, [-]

    Notes
    -----
    Steps of a second do on a conveyor; a longer step misses the peak. No credit below 143 °F (assumption).

    Examples
    --------
    >>> trace = [155, 160, 163, 165, 166, 167, 167, 166, 165, 165, 164, 162, 160]
    >>> round(heat_units_of_trace([(t + 459.67) / 1.8 for t in trace], 1.0), 1)
    3269.8

    References
    ----------
    Curve of 1951, as told in "Where did 3600 HUE come from?", 14 Dec 2009.
    """
    positive(step=step)
    if not temperatures:
        raise ValueError("a trace has one reading at least")
    return sum(heat_unit_rate(t) for t in temperatures) * step


def time_for_heat_units(temperature: float, wanted: float = HEAT_UNITS_WANTED) -> float:
    """Time a surface must stay at a temperature to earn its heat units.

    t = units / H(T)

    Parameters
    ----------
    temperature : float
        Temperature of the ware's surface, [K], 335 to 370
    wanted : float
        Heat units wanted, [-], 100 to 10000

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    Below 143 °F nothing is earned in any time: ValueError. Not solved back for temperature: above 165 °F it no
    longer counts.

    Examples
    --------
    >>> round(time_for_heat_units((160 + 459.67) / 1.8), 1)
    39.1

    References
    ----------
    Curve of 1951, as told in "Where did 3600 HUE come from?", 14 Dec 2009; 3600: NSF/ANSI 3,
    its text not seen.
    """
    positive(wanted=wanted)
    rate = heat_unit_rate(temperature)
    if rate == 0.0:
        raise ValueError("below 143 °F (61.7 °C) no heat units are earned, however long it lasts")
    return wanted / rate


def temperature_for_heat_units(time: float, wanted: float = HEAT_UNITS_WANTED) -> float:
    """Surface temperature that earns the heat units in a given time.

    T = ln(units / (3.03438e-17 t)) / 0.265972, in degrees Fahrenheit

    Parameters
    ----------
    time : float
        Time at the temperature, [s], 12 to 1500
    wanted : float
        Heat units wanted, [-], 3600 to 4000

    Returns
    -------
    float
        Temperature of the ware's surface, [K]

    Notes
    -----
    ValueError where even 165 °F is too slow, or where 143 °F would be enough.

    Examples
    --------
    >>> round(temperature_for_heat_units(39.14) * 1.8 - 459.67, 1)
    160.0

    References
    ----------
    Curve of 1951, as told in "Where did 3600 HUE come from?", 14 Dec 2009.
    """
    positive(time=time, wanted=wanted)
    degrees = math.log(wanted / (_SCALE * time)) / _SLOPE
    if degrees > _CAP + 1e-6:
        raise ValueError("even at 165 °F (74 °C), where credit ends, this time is too short")
    if degrees < _LEAST - 1e-6:
        raise ValueError("143 °F (61.7 °C), where credit begins, is more than enough in this time")
    return (degrees + 459.67) / 1.8


def z_of_slope(slope: float) -> float:
    """Temperature step that makes killing ten times as fast, from the slope of an exponential rule.

    z = ln 10 / slope

    Parameters
    ----------
    slope : float
        Slope of the exponent, [1/K], 0.05 to 2

    Returns
    -------
    float
        z-value, [K]

    Notes
    -----
    The heat-unit rule's 0.265972 for a degree Fahrenheit is 0.47875 for a kelvin.

    Examples
    --------
    >>> round(z_of_slope(0.265972 * 1.8) * 1.8, 2)  # in F°
    8.66

    References
    ----------
    Definition of the z-value.
    """
    positive(slope=slope)
    return math.log(10.0) / slope


def z_of_two_points(slow: float, fast: float, step: float) -> float:
    """z-value from the times two temperatures need for the same effect.

    z = step / log10(slow / fast)

    Parameters
    ----------
    slow : float
        Time needed at the lower temperature, [s], 200 to 2000
    fast : float
        Time needed at the higher temperature, [s], 1 to 100
    step : float
        How far the temperatures are apart, [K], 1 to 30

    Returns
    -------
    float
        z-value, [K]

    Notes
    -----
    The lower temperature must need longer.

    Examples
    --------
    >>> round(z_of_two_points(1800.0, 15.0, 10.0) * 1.8, 2)  # 143 and 161 °F, in F°
    8.66

    References
    ----------
    Definition of the z-value; the two points are those by which the heat-unit rule is defined.
    """
    positive(slow=slow, fast=fast, step=step)
    if slow <= fast:
        raise ValueError("the lower temperature must need the longer time")
    return step / math.log10(slow / fast)
