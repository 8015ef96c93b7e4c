"""Three-phase motors: unequal voltages, a lost phase, off-design volts, and overload protection."""

from __future__ import annotations

import math
from collections.abc import Sequence

from diagnose.physics.demand import not_negative, positive, within

__all__ = [
    "HORSEPOWER",
    "SINGLE_PHASING",
    "current_change_at_volts",
    "integral_protector_trip",
    "locked_rotor_current",
    "negative_sequence_factor",
    "nema_unbalance",
    "overload_trip",
    "temperature_rise_factor",
]

HORSEPOWER = 745.69987158227  # W
SINGLE_PHASING = math.sqrt(3.0)  # line current after a lost phase over before, same power and power factor


def nema_unbalance(values: Sequence[float]) -> float:
    """Unbalance of three line voltages (or currents) as NEMA MG-1 defines it.

    u = largest deviation from the mean / mean

    Parameters
    ----------
    values : sequence of float
        Three voltages line to line (or three line currents), [V], 1 to 700

    Returns
    -------
    float
        Unbalance as a share: 0.01 is one per cent, [-]

    Notes
    -----
    Not the largest less the smallest, and not the negative-sequence factor, which needs the angles.

    Examples
    --------
    >>> round(nema_unbalance([462.0, 463.0, 455.0]) * 100, 3)
    1.087

    References
    ----------
    NEMA MG-1 as stated in Motor Systems Tip Sheet 7, U.S. Department of Energy, 2012.
    """
    three = _three(values)
    mean = sum(three) / 3
    return max(abs(v - mean) for v in three) / mean


def negative_sequence_factor(voltages: Sequence[float]) -> float:
    """True unbalance: negative-sequence over positive-sequence voltage, from three line voltages.

    VUF = sqrt((1 - sqrt(3 - 6 b)) / (1 + sqrt(3 - 6 b))), b = sum V^4 / (sum V^2)^2

    Parameters
    ----------
    voltages : sequence of float
        Three voltages line to line, [V], 100 to 700

    Returns
    -------
    float
        Negative-sequence factor as a share, [-]

    Notes
    -----
    Line-to-line voltages close to a triangle; ValueError if three such can't exist.

    Examples
    --------
    >>> round(negative_sequence_factor([462.0, 463.0, 455.0]) * 100, 2)
    1.09

    References
    ----------
    Form of IEC 61000-4-30, from memory.
    """
    three = _three(voltages)
    b = sum(v**4 for v in three) / sum(v**2 for v in three) ** 2
    if 3.0 - 6.0 * b < 0.0:
        raise ValueError("three such voltages line to line can't exist together")
    root = min(math.sqrt(3.0 - 6.0 * b), 1.0)
    return math.sqrt((1.0 - root) / (1.0 + root))


def temperature_rise_factor(unbalance: float) -> float:
    """How much more a motor warms on unequal voltages.

    factor = 1 + 2 u^2 / 100, u in per cent

    Parameters
    ----------
    unbalance : float
        NEMA unbalance as a share, [-], 0 to 0.05

    Returns
    -------
    float
        Temperature rise over the rise on equal voltages, [-]

    Notes
    -----
    Up to 5 %, above which a motor should not be run.

    Examples
    --------
    >>> round(80 * (temperature_rise_factor(0.02) - 1), 1)
    6.4

    References
    ----------
    Motor Systems Tip Sheet 7, U.S. Department of Energy, 2012, page 2.
    """
    within(0.0, 0.05, unbalance=unbalance)
    return 1.0 + 2.0 * (100.0 * unbalance) ** 2 / 100.0


def current_change_at_volts(share: float) -> tuple[float, float]:
    """Band of the full-load current off the nameplate volts, over the nameplate current.

    at 90 % volts 1.05 to 1.10; at 110 % 0.90 to 0.95; straight lines through 1 in between

    Parameters
    ----------
    share : float
        Volts over nameplate volts, [-], 0.9 to 1.1

    Returns
    -------
    tuple of float
        Least and greatest current over nameplate current, [-]

    Notes
    -----
    At full load, 90 to 110 % of the nameplate volts. Light motors may draw more on high volts.

    Examples
    --------
    >>> [round(c, 3) for c in current_change_at_volts(0.95)]
    [1.025, 1.05]

    References
    ----------
    Motor Systems Tip Sheet 9, U.S. Department of Energy, 2012, table 2.
    """
    within(0.9, 1.1, share=share)
    one, other = 1.0 + 0.5 * (1.0 - share), 1.0 + (1.0 - share)
    return min(one, other), max(one, other)


def overload_trip(full_load: float, cool_or_service: bool, starting: bool = False) -> float:
    """Greatest trip current of a separate overload device.

    125 % (service factor of 1.15 and more, or rise of 40 °C and less), else 115 %; where the motor does
    not start on that, 140 % and 130 %

    Parameters
    ----------
    full_load : float
        Full-load current on the motor's nameplate, [A], 0.2 to 150
    cool_or_service : bool
        Nameplate has a service factor of at least 1.15 or a rise of at most 40 °C, [-]
    starting : bool
        The motor would not start on the ordinary setting, [-]

    Returns
    -------
    float
        Greatest trip current, [A]

    Notes
    -----
    From the nameplate, not from the code's tables. Local codes and licensed practice govern.

    Examples
    --------
    >>> round(overload_trip(34.0, False), 1), round(overload_trip(34.0, True), 1)
    (39.1, 42.5)

    References
    ----------
    NEC 430.32(A)(1) and (C), read in secondary copies.
    """
    positive(full_load=full_load)
    ordinary, most = (1.25, 1.40) if cool_or_service else (1.15, 1.30)
    return full_load * (most if starting else ordinary)


def integral_protector_trip(full_load: float) -> float:
    """Greatest trip current of a thermal protector built into the motor.

    170 % up to 9 A, 156 % up to 20 A, 140 % above

    Parameters
    ----------
    full_load : float
        Full-load current, [A], 0.2 to 150

    Returns
    -------
    float
        Greatest trip current, [A]

    Notes
    -----
    Not solved back for full_load: its steps at 9 and 20 A overlap. Such protectors reset by
    themselves: "it runs again after a while" is their sign.

    Examples
    --------
    >>> round(integral_protector_trip(10.0), 1)
    15.6

    References
    ----------
    NEC 430.32(A)(2), read in a secondary copy.
    """
    positive(full_load=full_load)
    return full_load * (1.70 if full_load <= 9.0 else 1.56 if full_load <= 20.0 else 1.40)


def locked_rotor_current(power: float, kva_per_hp: float, voltage: float) -> float:
    """Current of a three-phase motor at standstill, from the figure of its code letter.

    I = hp x (kVA/hp) x 1000 / (sqrt(3) V), hp = P / 745.7

    Parameters
    ----------
    power : float
        Rated power, [W], 50 to 8e4
    kva_per_hp : float
        Figure of the code letter, [kVA/hp], 1 to 12
    voltage : float
        Line-to-line voltage, [V], 100 to 700

    Returns
    -------
    float
        Current, [A]

    Notes
    -----
    The code letter gives a range; its upper figure gives the greatest current.

    Examples
    --------
    >>> round(locked_rotor_current(100.0 * 745.69987, 4.0, 460.0))
    502

    References
    ----------
    Motor Systems Tip Sheet 6, U.S. Department of Energy, 2012.
    """
    positive(power=power, kva_per_hp=kva_per_hp, voltage=voltage)
    return power / HORSEPOWER * kva_per_hp * 1000.0 / (math.sqrt(3.0) * voltage)


def _three(values: Sequence[float]) -> list[float]:
    if len(values) != 3:
        raise ValueError(f"three values are wanted, not {len(values)}")
    for value in values:
        not_negative(value=value)
    if sum(values) <= 0:
        raise ValueError("all three values are nought")
    return list(values)
