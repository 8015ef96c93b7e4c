"""Thermistors, whose resistance falls as they warm: both ways by Steinhart-Hart and by beta, and the wrong curve."""

from __future__ import annotations

import math

from diagnose.physics.demand import positive, within

__all__ = [
    "ROOM",
    "beta_of_two_points",
    "beta_resistance",
    "beta_temperature",
    "ntc_resistance",
    "ntc_temperature",
    "wrong_curve_reading",
]

ROOM = 298.15  # 25 °C, where a thermistor's nominal ohms are stated
_LEAST, _MOST = 200.0, 500.0


def ntc_temperature(resistance: float, a: float, b: float, c: float) -> float:
    """Temperature of a thermistor from its resistance, by its three coefficients.

    1/T = A + B ln R + C (ln R)^3 (Steinhart-Hart)

    Parameters
    ----------
    resistance : float
        Resistance of the sensor, [ohm], 100 to 40000
    a : float
        First coefficient, [1/K], 1e-3 to 1.5e-3
    b : float
        Second coefficient, [1/K], 2e-4 to 3e-4
    c : float
        Third coefficient, [1/K], 0.2e-7 to 2e-7

    Returns
    -------
    float
        Temperature, [K]

    Notes
    -----
    Coefficients belong to one curve: those of another sensor give a smooth wrong figure.

    Examples
    --------
    >>> round(ntc_temperature(1256.0, 1.12924e-3, 2.34108e-4, 0.87755e-7) - 273.15, 1)
    80.0

    References
    ----------
    Steinhart-Hart equation; coefficients of the example from a public sheet of a generic 10 kohm curve.
    """
    positive(resistance=resistance, a=a, b=b)
    log = math.log(resistance)
    inverse = a + b * log + c * log**3
    if inverse <= 0:
        raise ValueError("no temperature fits these ohms and coefficients")
    return 1.0 / inverse


def ntc_resistance(temperature: float, a: float, b: float, c: float) -> float:
    """Resistance of a thermistor at a temperature, by its three coefficients.

    ln R is the root of C x^3 + B x + A - 1/T = 0 (Steinhart-Hart turned round)

    Parameters
    ----------
    temperature : float
        Temperature of the sensor, [K], 263.15 to 383.15
    a : float
        First coefficient, [1/K], 1e-3 to 1.5e-3
    b : float
        Second coefficient, [1/K], 2e-4 to 3e-4
    c : float
        Third coefficient, [1/K], 0.2e-7 to 2e-7

    Returns
    -------
    float
        Resistance, [ohm]

    Notes
    -----
    The cubic has one real root, as B and C are both above nought.

    Examples
    --------
    >>> round(ntc_resistance(273.15 + 80, 1.12924e-3, 2.34108e-4, 0.87755e-7))
    1256

    References
    ----------
    Steinhart-Hart equation, solved as a cubic.
    """
    positive(temperature=temperature, b=b, c=c)
    half, third = (a - 1.0 / temperature) / (2.0 * c), b / (3.0 * c)
    root = math.sqrt(third**3 + half**2)
    # Of the two cube roots one is a small difference of large figures: it follows from their product.
    larger = math.copysign((root + abs(half)) ** (1.0 / 3.0), -half)
    return math.exp(larger - third / larger)


def beta_resistance(temperature: float, nominal: float, beta: float) -> float:
    """Resistance of a thermistor at a temperature, by its beta.

    R = R25 exp(B (1/T - 1/298.15))

    Parameters
    ----------
    temperature : float
        Temperature of the sensor, [K], 263.15 to 383.15
    nominal : float
        Resistance at 25 °C, [ohm], 1000 to 100000
    beta : float
        Beta of the curve, [K], 3000 to 4500

    Returns
    -------
    float
        Resistance, [ohm]

    Notes
    -----
    Within a degree or so of the true curve between the two temperatures its beta is stated for.

    Examples
    --------
    >>> round(beta_resistance(273.15 + 80, 10e3, 3435.0))
    1662

    References
    ----------
    The beta model of thermistors.
    """
    positive(nominal=nominal, beta=beta)
    within(_LEAST, _MOST, temperature=temperature)
    return nominal * math.exp(beta * (1.0 / temperature - 1.0 / ROOM))


def beta_temperature(resistance: float, nominal: float, beta: float) -> float:
    """Temperature of a thermistor from its resistance, by its beta.

    1/T = 1/298.15 + ln(R / R25) / B

    Parameters
    ----------
    resistance : float
        Resistance of the sensor, [ohm], 100 to 40000
    nominal : float
        Resistance at 25 °C, [ohm], 5000 to 50000
    beta : float
        Beta of the curve, [K], 3000 to 4500

    Returns
    -------
    float
        Temperature, [K]

    Notes
    -----
    Off by a degree and more far from the temperatures the beta was taken at.

    Examples
    --------
    >>> round(beta_temperature(1662.0, 10e3, 3435.0) - 273.15, 1)
    80.0

    References
    ----------
    The beta model of thermistors.
    """
    positive(resistance=resistance, nominal=nominal, beta=beta)
    inverse = 1.0 / ROOM + math.log(resistance / nominal) / beta
    if inverse <= 0:
        raise ValueError("no temperature fits so few ohms with this beta")
    return 1.0 / inverse


def beta_of_two_points(cold_ohms: float, cold: float, hot_ohms: float, hot: float) -> float:
    """Beta of a thermistor from its ohms at two temperatures.

    B = ln(R_cold / R_hot) / (1/T_cold - 1/T_hot)

    Parameters
    ----------
    cold_ohms : float
        Resistance at the lower temperature, [ohm], 5000 to 50000
    cold : float
        The lower temperature, [K], 273.15 to 313.15
    hot_ohms : float
        Resistance at the higher temperature, [ohm], 100 to 4000
    hot : float
        The higher temperature, [K], 323.15 to 373.15

    Returns
    -------
    float
        Beta between the two, [K]

    Notes
    -----
    Ohms that rise with temperature are no thermistor's: refused.

    Examples
    --------
    >>> round(beta_of_two_points(10000.0, 298.15, 1070.0, 358.15))
    3978

    References
    ----------
    The beta model of thermistors.
    """
    positive(cold_ohms=cold_ohms, hot_ohms=hot_ohms, cold=cold)
    if hot <= cold:
        raise ValueError("the second temperature must be the higher one")
    if hot_ohms >= cold_ohms:
        raise ValueError("ohms that do not fall as it warms are no thermistor's")
    return math.log(cold_ohms / hot_ohms) / (1.0 / cold - 1.0 / hot)


def wrong_curve_reading(
    temperature: float, nominal: float, beta: float, control_nominal: float, control_beta: float
) -> float:
    """What a control shows that reckons with another curve than its probe has.

    R = R25 exp(B (1/T - 1/298.15)); 1/T_shown = 1/298.15 + ln(R / R25') / B'

    Parameters
    ----------
    temperature : float
        True temperature of the probe, [K], 303.15 to 373.15
    nominal : float
        Resistance of the probe at 25 °C, [ohm], 5000 to 20000
    beta : float
        Beta of the probe, [K], 3000 to 4500
    control_nominal : float
        Resistance at 25 °C the control reckons with, [ohm], 5000 to 20000
    control_beta : float
        Beta the control reckons with, [K], 3000 to 4500

    Returns
    -------
    float
        Temperature shown, [K]

    Notes
    -----
    Two 10 kohm probes read alike at room temperature and 8 °C apart at 80: a cold test tells nothing.

    Examples
    --------
    >>> round(wrong_curve_reading(353.15, 10e3, 3435.0, 10e3, 3977.0) - 273.15, 1)
    71.3

    References
    ----------
    The beta model of thermistors, used twice.
    """
    return beta_temperature(beta_resistance(temperature, nominal, beta), control_nominal, control_beta)
