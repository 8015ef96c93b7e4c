"""Thermocouples J, K and T: millivolts from temperatures and back, with the terminals where they are."""

from __future__ import annotations

import math

from diagnose.physics.demand import within
from diagnose.physics.thermocouple_curves import CURVES, K_BELL

__all__ = [
    "junction_temperature",
    "reversed_reading",
    "terminal_emf",
    "thermocouple_emf",
    "thermocouple_temperature",
    "thermocouple_tolerance",
    "uncompensated_reading",
]

_ZERO = 273.15
_COLDEST, _HOTTEST = 93.15, 573.15
_STEPS = 60  # halvings of the temperature

_TOLERANCES = {  # kind, class -> degrees, share of the temperature: the larger counts
    ("J", "1"): (1.5, 0.004),
    ("K", "1"): (1.5, 0.004),
    ("T", "1"): (0.5, 0.004),
    ("J", "2"): (2.5, 0.0075),
    ("K", "2"): (2.5, 0.0075),
    ("T", "2"): (1.0, 0.0075),
}


def thermocouple_emf(temperature: float, kind: str) -> float:
    """Voltage of a thermocouple whose other end lies in melting ice.

    E = sum of c_n t^n, t in degrees Celsius; type K from nought up with 0.1185976 exp(-1.183432e-4 (t - 126.9686)^2)

    Parameters
    ----------
    temperature : float
        Temperature of the junction, [K], 93.15 to 573.15
    kind : str
        Type of the thermocouple: J, K or T

    Returns
    -------
    float
        Voltage, [V]

    Notes
    -----
    About 0.041 mV a degree Celsius with K, 0.053 with J, 0.044 with T near 80 °C.

    Examples
    --------
    >>> round(thermocouple_emf(273.15 + 80, "K") * 1e3, 3)
    3.267

    References
    ----------
    NIST ITS-90 thermocouple database (SRD 60), Monograph 175: coefficients, found in several open
    programs that state them alike.
    """
    within(_COLDEST, _HOTTEST, temperature=temperature)
    if kind not in CURVES:
        raise ValueError(f"type {kind!r} is not known; {', '.join(CURVES)} are")
    below, above = CURVES[kind]
    t = temperature - _ZERO
    rows = below if t < 0 else above
    millivolts = sum(c * t**n for n, c in enumerate(rows))
    if kind == "K" and t >= 0:
        millivolts += K_BELL[0] * math.exp(K_BELL[1] * (t - K_BELL[2]) ** 2)
    return millivolts / 1e3


def thermocouple_temperature(emf: float, kind: str) -> float:
    """Temperature of a junction from the voltage it has against melting ice.

    t such that E(t) = E, by halving: E rises all the way

    Parameters
    ----------
    emf : float
        Voltage against melting ice, [V], -0.004 to 0.012
    kind : str
        Type of the thermocouple: J, K or T

    Returns
    -------
    float
        Temperature of the junction, [K]

    Notes
    -----
    From -180 to 300 °C.

    Examples
    --------
    >>> round(thermocouple_temperature(3.267e-3, "K") - 273.15, 1)
    80.0

    References
    ----------
    NIST ITS-90 thermocouple database, its reference function turned round.
    """
    low, high = _COLDEST, _HOTTEST
    within(thermocouple_emf(low, kind), thermocouple_emf(high, kind), emf=emf)
    for _ in range(_STEPS):
        middle = (low + high) / 2.0
        low, high = (middle, high) if thermocouple_emf(middle, kind) < emf else (low, middle)
    return (low + high) / 2.0


def terminal_emf(temperature: float, terminals: float, kind: str) -> float:
    """Voltage a meter reads at the terminals of a thermocouple.

    E = E(T) - E(T_terminals)

    Parameters
    ----------
    temperature : float
        Temperature of the junction, [K], 253.15 to 473.15
    terminals : float
        Temperature of the terminals, [K], 253.15 to 333.15
    kind : str
        Type of the thermocouple: J, K or T

    Returns
    -------
    float
        Voltage at the terminals, [V]

    Notes
    -----
    Nought when both are equally warm, whatever the temperature.

    Examples
    --------
    >>> round(terminal_emf(273.15 + 80, 273.15 + 25, "K") * 1e3, 3)
    2.266

    References
    ----------
    NIST Monograph 175: the law of intermediate temperatures.
    """
    return thermocouple_emf(temperature, kind) - thermocouple_emf(terminals, kind)


def junction_temperature(emf: float, terminals: float, kind: str) -> float:
    """Temperature of a junction from what a meter reads at the terminals and how warm these are.

    T such that E(T) = E_read + E(T_terminals)

    Parameters
    ----------
    emf : float
        Voltage at the terminals, [V], -0.001 to 0.008
    terminals : float
        Temperature of the terminals, [K], 253.15 to 333.15
    kind : str
        Type of the thermocouple: J, K or T

    Returns
    -------
    float
        Temperature of the junction, [K]

    Notes
    -----
    Add the millivolts, not the degrees; adding degrees is off by a degree or so.

    Examples
    --------
    >>> round(junction_temperature(2.267e-3, 298.15, "K") - 273.15, 1)
    80.0

    References
    ----------
    NIST Monograph 175: the law of intermediate temperatures.
    """
    return thermocouple_temperature(emf + thermocouple_emf(terminals, kind), kind)


def uncompensated_reading(temperature: float, terminals: float, kind: str) -> float:
    """What a display shows that leaves the warmth of its terminals out.

    T_shown such that E(T_shown) = E(T) - E(T_terminals)

    Parameters
    ----------
    temperature : float
        Temperature of the junction, [K], 273.15 to 473.15
    terminals : float
        Temperature of the terminals, [K], 273.15 to 333.15
    kind : str
        Type of the thermocouple: J, K or T

    Returns
    -------
    float
        Temperature shown, [K]

    Notes
    -----
    Cold by about the warmth of the terminals over freezing.

    Examples
    --------
    >>> round(uncompensated_reading(353.15, 298.15, "K") - 273.15, 1)
    55.9

    References
    ----------
    NIST Monograph 175: the law of intermediate temperatures.
    """
    return thermocouple_temperature(terminal_emf(temperature, terminals, kind), kind)


def reversed_reading(temperature: float, terminals: float, kind: str) -> float:
    """What a display shows whose thermocouple is connected the wrong way round.

    T_shown such that E(T_shown) = 2 E(T_terminals) - E(T)

    Parameters
    ----------
    temperature : float
        Temperature of the junction, [K], 253.15 to 393.15
    terminals : float
        Temperature of the terminals, [K], 273.15 to 333.15
    kind : str
        Type of the thermocouple: J, K or T

    Returns
    -------
    float
        Temperature shown, [K]

    Notes
    -----
    Falls as the tank warms, and is right only when both are equally warm.

    Examples
    --------
    >>> round(reversed_reading(353.15, 298.15, "K") - 273.15, 1)
    -32.9

    References
    ----------
    NIST Monograph 175: the law of intermediate temperatures, the sign of the pair turned.
    """
    cold = thermocouple_emf(terminals, kind)
    return thermocouple_temperature(cold - terminal_emf(temperature, terminals, kind), kind)


def thermocouple_tolerance(temperature: float, kind: str, grade: str) -> float:
    """How far a thermocouple of a class may be off.

    the larger of so many degrees and a share of t in degrees Celsius: class 1 of K and J 1.5 or 0.4 %, of T
    0.5 or 0.4 %; class 2 of K and J 2.5 or 0.75 %, of T 1.0 or 0.75 %

    Parameters
    ----------
    temperature : float
        Temperature of the junction, [K], 233.15 to 573.15
    kind : str
        Type of the thermocouple: J, K or T
    grade : str
        Class, 1 or 2

    Returns
    -------
    float
        Off by at most, [K]

    Notes
    -----
    Of the wire alone, as new: display, terminals and place come on top.
    Not solved back for temperature: near room temperature a fixed figure holds.

    Examples
    --------
    >>> thermocouple_tolerance(355.15, "K", "2"), thermocouple_tolerance(355.15, "T", "1")
    (2.5, 0.5)

    References
    ----------
    IEC 60584-1, tolerance classes, from memory.
    """
    within(233.15, _HOTTEST, temperature=temperature)
    if (kind, grade) not in _TOLERANCES:
        raise ValueError(f"type {kind!r} of class {grade!r} is not known; J, K and T of class 1 and 2 are")
    degrees, share = _TOLERANCES[kind, grade]
    return max(degrees, share * abs(temperature - _ZERO))
