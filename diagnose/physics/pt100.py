"""Platinum resistance sensors: ohms from temperature and back, what their leads add, and how true they must be."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, within

__all__ = ["PT100_ICE", "pt100_lead_error", "pt100_resistance", "pt100_temperature", "pt100_tolerance"]

PT100_ICE = 100.0  # ohm at 0 °C
_A, _B, _C = 3.9083e-3, -5.775e-7, -4.183e-12
_ZERO = 273.15
_COLDEST, _HOTTEST = 73.15, 573.15
_STEPS = 60  # halvings of the temperature: more than a meter shows
_GRADES = {"A": (0.15, 0.002), "B": (0.30, 0.005)}


def pt100_resistance(temperature: float) -> float:
    """Resistance of a Pt100 sensor.

    R = 100 (1 + 3.9083e-3 t - 5.775e-7 t^2), t in degrees Celsius; below nought - 4.183e-12 (t - 100) t^3 besides

    Parameters
    ----------
    temperature : float
        Temperature of the sensor, [K], 273.15 to 573.15

    Returns
    -------
    float
        Resistance without leads, [ohm]

    Notes
    -----
    0.385 ohm a degree Celsius near the freezing point, 0.379 at 80 °C. A Pt1000 has ten times all of it.

    Examples
    --------
    >>> round(pt100_resistance(273.15 + 80), 2)
    130.9

    References
    ----------
    IEC 60751:2008, equations and coefficients; the fourth coefficient from memory.
    """
    within(_COLDEST, _HOTTEST, temperature=temperature)
    t = temperature - _ZERO
    below = _C * (t - 100.0) * t**3 if t < 0 else 0.0
    return PT100_ICE * (1.0 + _A * t + _B * t**2 + below)


def pt100_temperature(resistance: float) -> float:
    """Temperature of a Pt100 sensor from its resistance.

    t = (-A + sqrt(A^2 - 4 B (1 - R / 100))) / (2 B) from nought up; below it the equation is solved by halving

    Parameters
    ----------
    resistance : float
        Resistance without leads, [ohm], 100 to 212

    Returns
    -------
    float
        Temperature, [K]

    Notes
    -----
    An open sensor or lead reads beyond the scale, a shorted one far below it: both are refused here.

    Examples
    --------
    >>> round(pt100_temperature(127.08) - 273.15, 2)
    70.01

    References
    ----------
    IEC 60751:2008, the equation turned round.
    """
    within(pt100_resistance(_COLDEST), pt100_resistance(_HOTTEST), resistance=resistance)
    ratio = resistance / PT100_ICE
    if ratio >= 1.0:
        return float(_ZERO + (-_A + (_A**2 - 4.0 * _B * (1.0 - ratio)) ** 0.5) / (2.0 * _B))
    low, high = _COLDEST, _ZERO
    for _ in range(_STEPS):
        middle = (low + high) / 2.0
        low, high = (middle, high) if pt100_resistance(middle) < resistance else (low, middle)
    return (low + high) / 2.0


def pt100_lead_error(temperature: float, leads: float) -> float:
    """How much too hot a Pt100 on two wires reads for the resistance of its leads.

    error = t(R + R_leads) - t, both leads together

    Parameters
    ----------
    temperature : float
        Temperature of the sensor, [K], 273.15 to 423.15
    leads : float
        Resistance of both leads together, there and back, [ohm], 0 to 20

    Returns
    -------
    float
        Too hot by, [K]

    Notes
    -----
    0.385 ohm reads one degree Celsius: a corroded contact in series reads hot with platinum, cold with a
    thermistor. A third wire takes the leads out. Not solved back for temperature: the error hardly depends on it.

    Examples
    --------
    >>> round(pt100_lead_error(273.15 + 80, 1.0), 2)
    2.62

    References
    ----------
    IEC 60751:2008, its slope.
    """
    not_negative(leads=leads)
    return pt100_temperature(pt100_resistance(temperature) + leads) - temperature


def pt100_tolerance(temperature: float, grade: str) -> float:
    """How far a Pt100 of a class may be off.

    class A: 0.15 + 0.002 |t|; class B: 0.30 + 0.005 |t|, t in degrees Celsius

    Parameters
    ----------
    temperature : float
        Temperature of the sensor, [K], 173.15 to 573.15
    grade : str
        Class of the sensor, A or B

    Returns
    -------
    float
        Off by at most, [K]

    Notes
    -----
    Of the sensor alone, as new: leads, display and place come on top.

    Examples
    --------
    >>> round(pt100_tolerance(273.15 + 82, "A"), 3), round(pt100_tolerance(273.15 + 82, "B"), 2)
    (0.314, 0.71)

    References
    ----------
    IEC 60751:2008, tolerance classes.
    """
    within(173.15, _HOTTEST, temperature=temperature)
    if grade not in _GRADES:
        raise ValueError(f"class {grade!r} is not known; A and B are")
    base, slope = _GRADES[grade]
    return base + slope * abs(temperature - _ZERO)
