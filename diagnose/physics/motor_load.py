"""What a motor draws and loses: from its plate, at a lost phase, on poor volts, and by its code letter."""

from __future__ import annotations

import math
from itertools import pairwise

from diagnose.physics.demand import positive, within
from diagnose.physics.motors import SINGLE_PHASING, temperature_rise_factor

__all__ = [
    "current_unbalance_expected",
    "derating",
    "extra_rise",
    "full_load_current",
    "full_load_current_single",
    "lost_phase_line",
    "lost_phase_winding",
]

# Share of the rated load a motor may carry at an unbalance in per cent: the set commonly printed from NEMA MG-1
# 14.36 and 20.24, from memory.
_DERATING = ((0.0, 1.0), (1.0, 1.0), (2.0, 0.95), (3.0, 0.88), (4.0, 0.82), (5.0, 0.75))
_SIX_TO_TEN = (6.0, 10.0)


def full_load_current(power: float, voltage: float, efficiency: float, power_factor: float) -> float:
    """Full-load current of a three-phase motor from its shaft power.

    I = P / (sqrt(3) V efficiency pf)

    Parameters
    ----------
    power : float
        Rated (shaft) power, [W], 50 to 8e4
    voltage : float
        Line-to-line voltage, [V], 100 to 700
    efficiency : float
        Shaft power over electric power, [-], 0.3 to 0.98
    power_factor : float
        Power factor at full load, [-], 0.3 to 1

    Returns
    -------
    float
        Line current, [A]

    Notes
    -----
    The nameplate's own amps go before anything worked out. Small motors have a poor efficiency and power
    factor: 0.80 and 0.80 at 2 hp is usual, 0.65 and 0.65 at a quarter hp (judgement).

    Examples
    --------
    >>> round(full_load_current(2 * 745.7, 208.0, 0.80, 0.80), 1)
    6.5

    References
    ----------
    Power in a balanced three-phase load.
    """
    positive(power=power, voltage=voltage, efficiency=efficiency, power_factor=power_factor)
    within(0.0, 1.0, efficiency=efficiency, power_factor=power_factor)
    return power / (math.sqrt(3.0) * voltage * efficiency * power_factor)


def full_load_current_single(power: float, voltage: float, efficiency: float, power_factor: float) -> float:
    """Full-load current of a single-phase motor from its shaft power.

    I = P / (V efficiency pf)

    Parameters
    ----------
    power : float
        Rated (shaft) power, [W], 50 to 1e4
    voltage : float
        Voltage, [V], 100 to 300
    efficiency : float
        Shaft power over electric power, [-], 0.3 to 0.98
    power_factor : float
        Power factor at full load, [-], 0.3 to 1

    Returns
    -------
    float
        Current, [A]

    Notes
    -----
    The nameplate's own amps go before anything worked out.

    Examples
    --------
    >>> round(full_load_current_single(745.7, 240.0, 0.70, 0.75), 1)
    5.9

    References
    ----------
    Power in a single-phase load.
    """
    positive(power=power, voltage=voltage, efficiency=efficiency, power_factor=power_factor)
    within(0.0, 1.0, efficiency=efficiency, power_factor=power_factor)
    return power / (voltage * efficiency * power_factor)


def derating(unbalance: float) -> float:
    """Share of its rated power that a motor may give on unequal voltages.

    1 up to 1 %, then 0.95 at 2 %, 0.88 at 3 %, 0.82 at 4 %, 0.75 at 5 %; straight lines in between

    Parameters
    ----------
    unbalance : float
        NEMA unbalance as a share, [-], 0 to 0.05

    Returns
    -------
    float
        Share of rated power, [-]

    Notes
    -----
    Not solved back for unbalance: nothing changes below 1 %. Refused above 5 %: a motor should not be run
    there.

    Examples
    --------
    >>> round(derating(0.02), 2), round(derating(0.025), 3)
    (0.95, 0.915)

    References
    ----------
    NEMA MG-1 14.36 and 20.24 as commonly printed, from memory.
    """
    within(0.0, 0.05, unbalance=unbalance)
    percent = 100.0 * unbalance
    for (low, high), (at, share) in pairwise(_DERATING):
        if percent <= at:
            return high + (share - high) * (percent - low) / (at - low)
    return _DERATING[-1][1]


def extra_rise(rise: float, unbalance: float) -> float:
    """How many degrees hotter a motor gets on unequal voltages.

    extra = rise x 2 u^2 / 100, u in per cent

    Parameters
    ----------
    rise : float
        Temperature rise on equal voltages, [K], 10 to 130
    unbalance : float
        NEMA unbalance as a share, [-], 0 to 0.05

    Returns
    -------
    float
        Extra rise, [K]

    Notes
    -----
    Up to 5 %, above which a motor should not be run.

    Examples
    --------
    >>> round(extra_rise(80.0, 0.02), 1)
    6.4

    References
    ----------
    Motor Systems Tip Sheet 7, U.S. Department of Energy, 2012, page 2.
    """
    positive(rise=rise)
    return rise * (temperature_rise_factor(unbalance) - 1.0)


def current_unbalance_expected(unbalance: float) -> tuple[float, float]:
    """Unbalance of the currents that a sound motor shows on unequal voltages.

    6 to 10 times the voltage unbalance

    Parameters
    ----------
    unbalance : float
        NEMA unbalance of the voltages as a share, [-], 0 to 0.05

    Returns
    -------
    tuple of float
        Least and greatest current unbalance as shares, [-]

    Notes
    -----
    No hard cap: the source's own motor shows 11 times. More than that is the motor's, not the supply's.

    Examples
    --------
    >>> [round(u, 3) for u in current_unbalance_expected(0.01)]
    [0.06, 0.1]

    References
    ----------
    Motor Systems Tip Sheet 7, U.S. Department of Energy, 2012, page 2.
    """
    within(0.0, 0.05, unbalance=unbalance)
    return _SIX_TO_TEN[0] * unbalance, _SIX_TO_TEN[1] * unbalance


def lost_phase_line(current: float) -> float:
    """Line current of a running three-phase motor after one line is lost.

    I = sqrt(3) I_before

    Parameters
    ----------
    current : float
        Line current before, [A], 0.2 to 150

    Returns
    -------
    float
        Current of the two lines left, [A]

    Notes
    -----
    Same power, power factor and efficiency; in practice up to about twice, as all three grow worse (from
    memory).

    Examples
    --------
    >>> round(lost_phase_line(6.0), 1)
    10.4

    References
    ----------
    Power in three phases and in one.
    """
    positive(current=current)
    return SINGLE_PHASING * current


def lost_phase_winding(current: float) -> float:
    """Current of the worst winding of a delta motor after one line is lost.

    I = 2/3 of the line current then, against 1/sqrt(3) of it before: twice

    Parameters
    ----------
    current : float
        Line current before, [A], 0.2 to 150

    Returns
    -------
    float
        Current of the winding that bridges the two lines left, [A]

    Notes
    -----
    The clamp shows 1.73 times while one winding carries twice its own: that is why it burns before a plain
    overload trips.

    Examples
    --------
    >>> round(lost_phase_winding(6.0) / (6.0 / math.sqrt(3.0)), 2)
    2.0

    References
    ----------
    Kirchhoff's laws for three equal windings in delta.
    """
    positive(current=current)
    return SINGLE_PHASING * current * 2.0 / 3.0
