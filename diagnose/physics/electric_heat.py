"""Electric resistance heat: power against voltage, current against power."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive

__all__ = ["balanced_line_current", "power_at_voltage", "single_phase_current"]

_SQRT3 = math.sqrt(3.0)


def power_at_voltage(rated_power: float, rated_voltage: float, voltage: float) -> float:
    """Power of a resistance heater off its rated voltage.

    P = P_rated (V / V_rated)^2

    Parameters
    ----------
    rated_power : float
        Power at the rated voltage, [W], 100 to 2e5
    rated_voltage : float
        Rated voltage, [V], 100 to 600
    voltage : float
        Voltage applied, [V], 0 to 600

    Returns
    -------
    float
        Power drawn, [W]

    Notes
    -----
    Holds while the resistance does: metal-sheathed elements change by a few per cent from cold to hot.

    Examples
    --------
    >>> round(power_at_voltage(36e3, 240.0, 208.0))
    27040

    References
    ----------
    Ohm's and Joule's laws.
    """
    positive(rated_power=rated_power, rated_voltage=rated_voltage)
    not_negative(voltage=voltage)
    return rated_power * (voltage / rated_voltage) ** 2


def balanced_line_current(power: float, voltage: float) -> float:
    """Current in each line of a healthy three-phase resistance load, delta or wye.

    I = P / (sqrt(3) V)

    Parameters
    ----------
    power : float
        Power of the whole bank, [W], 0 to 2e5
    voltage : float
        Line-to-line voltage, [V], 100 to 600

    Returns
    -------
    float
        Current in each line, [A]

    Notes
    -----
    Power factor one; any voltage above nought.

    Examples
    --------
    >>> round(balanced_line_current(30e3, 208.0), 2)
    83.27

    References
    ----------
    Ohm's law for balanced three-phase loads.
    """
    positive(voltage=voltage)
    not_negative(power=power)
    return power / (_SQRT3 * voltage)


def single_phase_current(power: float, voltage: float) -> float:
    """Current of a single-phase resistance load.

    I = P / V

    Parameters
    ----------
    power : float
        Power, [W], 0 to 1e5
    voltage : float
        Voltage across the load, [V], 100 to 600

    Returns
    -------
    float
        Current, [A]

    Notes
    -----
    Power factor one; any voltage above nought.

    Examples
    --------
    >>> single_phase_current(15e3, 240.0)
    62.5

    References
    ----------
    Ohm's and Joule's laws.
    """
    positive(voltage=voltage)
    not_negative(power=power)
    return power / voltage
