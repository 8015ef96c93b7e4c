"""A heater bank asked by word: what it draws, gives and measures in a state, and which state readings mean."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.physics.bank_legs import LegState, leg_currents, leg_power, leg_resistances
from diagnose.physics.bank_reading import BankReading, name_of_state, read_currents, read_resistances
from diagnose.physics.demand import positive
from diagnose.physics.element_bank import element_resistance

__all__ = [
    "STATES",
    "amps_in_state",
    "element_of_bank",
    "heat_in_state",
    "ohms_in_state",
    "state_of_amps",
    "state_of_ohms",
]

STATES = ("whole", "one element open", "two elements open", "one line lost")
_SHOWN = 6  # states named before the rest is only counted


def element_of_bank(power: float, voltage: float, connection: str, per_leg: int) -> float:
    """Resistance of one element of a bank with several side by side in each leg.

    R = 3 n V^2 / P in delta, n V^2 / P in wye

    Parameters
    ----------
    power : float
        Power of the whole bank, [W], 100 to 2e5
    voltage : float
        Line-to-line voltage, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4

    Returns
    -------
    float
        Resistance of one element, [ohm]

    Notes
    -----
    Cold elements read up to about 5 % lower than hot ones (common practice).

    Examples
    --------
    >>> round(element_of_bank(30e3, 208.0, "delta", 2), 2)
    8.65

    References
    ----------
    Ohm's and Joule's laws.
    """
    positive(per_leg=per_leg)
    return element_resistance(power, voltage, connection) * per_leg


def amps_in_state(
    power: float, voltage: float, connection: str, state: str, per_leg: int
) -> tuple[float, float, float]:
    """Line currents of a bank in a state called by its word.

    I of a line = sum of the currents of its legs; open: an element of T1-T2 (delta) or T1 (wye); lost: line L3

    Parameters
    ----------
    power : float
        Power of the whole bank, [W], 100 to 2e5
    voltage : float
        Line-to-line voltage, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    state : str
        One of `STATES`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4

    Returns
    -------
    tuple of float
        Currents of lines 1, 2, 3, [A]

    Notes
    -----
    Two open elements are taken from two different legs.

    Examples
    --------
    >>> [round(i, 1) for i in amps_in_state(15e3, 208.0, "delta", "one element open", 1)]
    [24.0, 24.0, 41.6]

    References
    ----------
    Ohm's and Kirchhoff's laws.
    """
    element = element_of_bank(power, voltage, connection, per_leg)
    return leg_currents(element, voltage, connection, _state(state, per_leg))


def heat_in_state(power: float, voltage: float, connection: str, state: str, per_leg: int) -> float:
    """Heat a bank gives in a state called by its word.

    P = sum of V^2 / R over the elements alive, each at the volts that reach it

    Parameters
    ----------
    power : float
        Power of the whole bank, [W], 100 to 2e5
    voltage : float
        Line-to-line voltage, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    state : str
        One of `STATES`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4

    Returns
    -------
    float
        Power given, [W]

    Notes
    -----
    One element of three open in delta leaves two thirds; three quarters, as some sheets print, is wrong.
    Not solved back for voltage: the power is that at this voltage, so that the share alone decides.

    Examples
    --------
    >>> round(heat_in_state(15e3, 208.0, "delta", "one element open", 1))
    10000

    References
    ----------
    Ohm's and Kirchhoff's laws.
    """
    element = element_of_bank(power, voltage, connection, per_leg)
    return leg_power(element, voltage, connection, _state(state, per_leg))


def ohms_in_state(
    power: float, voltage: float, connection: str, state: str, per_leg: int
) -> tuple[float, float, float]:
    """Resistances between the terminals of an isolated bank in a state called by its word.

    elements of a leg side by side; delta: a leg beside the two others in series; wye: two legs in series

    Parameters
    ----------
    power : float
        Power of the whole bank, [W], 100 to 2e5
    voltage : float
        Voltage the elements are rated for, line to line, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    state : str
        One of `STATES`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4

    Returns
    -------
    tuple of float
        Resistances T1-T2, T2-T3, T3-T1, infinite where nothing joins them, [ohm]

    Notes
    -----
    A lost line can't be seen on an isolated bank: it reads whole.

    Examples
    --------
    >>> [round(r, 2) for r in ohms_in_state(15e3, 208.0, "delta", "one element open", 1)]
    [17.31, 8.65, 8.65]

    References
    ----------
    Ohm's law, series and parallel.
    """
    element = element_of_bank(power, voltage, connection, per_leg)
    return leg_resistances(element, connection, _state(state, per_leg))


def state_of_amps(
    currents: Sequence[float], power: float, voltage: float, connection: str, per_leg: int, error: float = 0.03
) -> tuple[str, float]:
    """The state three line currents mean, in words.

    the state whose currents lie nearest to those read, and all others within the error of the clamp

    Parameters
    ----------
    currents : sequence of float
        Currents of lines 1, 2, 3, [A], 0 to 400
    power : float
        Power of the whole bank at the voltage there is, [W], 100 to 2e5
    voltage : float
        Line-to-line voltage, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4
    error : float
        Standard deviation of one reading, relative, [-], 0.001 to 0.1

    Returns
    -------
    tuple of str and float
        The state, or every state it may be; how many they are, 0 where none fits, [-]

    Notes
    -----
    States physics can't tell apart are named together.

    Examples
    --------
    >>> state_of_amps([48.0, 48.0, 83.0], 30e3, 208.0, "delta", 1)
    ('T1-T2: open', 1.0)

    References
    ----------
    Ohm's and Kirchhoff's laws; chi-squared with three degrees of freedom.
    """
    element, count = element_of_bank(power, voltage, connection, per_leg), _whole(per_leg)
    return _told(read_currents(currents, element, voltage, connection, count, 1, error), connection, count)


def state_of_ohms(
    resistances: Sequence[float], power: float, voltage: float, connection: str, per_leg: int, error: float = 0.03
) -> tuple[str, float]:
    """The state three resistances of an isolated bank mean, in words.

    the state whose resistances lie nearest to those read, and all others within the error of the meter

    Parameters
    ----------
    resistances : sequence of float
        Resistances T1-T2, T2-T3, T3-T1, [ohm], 0 to 1e6
    power : float
        Power of the whole bank, [W], 100 to 2e5
    voltage : float
        Voltage the elements are rated for, line to line, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4
    error : float
        Standard deviation of one reading, relative, [-], 0.001 to 0.1

    Returns
    -------
    tuple of str and float
        The state, or every state it may be; how many they are, 0 where none fits, [-]

    Notes
    -----
    Type a large figure such as 1000000 ohm for a pair that reads endless.

    Examples
    --------
    >>> state_of_ohms([8.65, 8.65, 17.3], 15e3, 208.0, "delta", 1)
    ('T3-T1: open', 1.0)

    References
    ----------
    Ohm's law; chi-squared with three degrees of freedom.
    """
    element, count = element_of_bank(power, voltage, connection, per_leg), _whole(per_leg)
    return _told(read_resistances(resistances, element, connection, count, 1, error), connection, count)


def _state(word: str, per_leg: int) -> LegState:
    if word not in STATES:
        raise ValueError(f"{word!r} is no state of a bank: use {', '.join(STATES)}")
    n = _whole(per_leg)
    less = n - 1
    alive = {"one element open": (less, n, n), "two elements open": (less, less, n)}.get(word, (n, n, n))
    return LegState((alive,), 2 if word == "one line lost" else None)


def _whole(per_leg: float) -> int:
    """A count typed at the calculator comes as 2.0."""
    if per_leg < 1 or per_leg != int(per_leg):
        raise ValueError(f"elements side by side are counted: 1, 2, 3 or 4, not {per_leg:g}")
    return int(per_leg)


def _told(found: BankReading, connection: str, per_leg: int) -> tuple[str, float]:
    if not found.fits:
        nearest = name_of_state(found.same[0], connection, per_leg)
        return f"like no state of this bank; nearest: {nearest}", 0.0
    names = [name_of_state(s, connection, per_leg) for s in found.possible]
    rest = f" or {len(names) - _SHOWN} more" if len(names) > _SHOWN else ""
    return " or ".join(names[:_SHOWN]) + rest, float(len(names))
