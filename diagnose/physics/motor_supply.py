"""What a motor's supply does to it: torque on other volts, the start by its code letter, loss in the feeder."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.physics.demand import not_negative, positive
from diagnose.physics.motors import locked_rotor_current

__all__ = [
    "CODE_LETTERS",
    "breaker_share",
    "code_letter_figure",
    "feeder_loss",
    "locked_rotor_of_letter",
    "slip_share",
    "torque_share",
]

# Upper kVA/hp of each code letter. A to H: Motor Systems Tip Sheet 6, U.S. Department of Energy, 2012, table 1. That
# table goes on with I, and so is one letter out above H; I and O are no code letters (NEC 430.7(B), from memory).
CODE_LETTERS = {
    "A": 3.15, "B": 3.55, "C": 4.0, "D": 4.5, "E": 5.0, "F": 5.6, "G": 6.3, "H": 7.1,
    "J": 8.0, "K": 9.0, "L": 10.0, "M": 11.2,
}  # fmt: skip


def torque_share(voltage: float, rated: float) -> float:
    """Torque a motor has left on other volts, over its torque on the rated ones.

    share = (V / V_rated)^2

    Parameters
    ----------
    voltage : float
        Voltage at the motor, [V], 100 to 700
    rated : float
        Rated voltage, [V], 100 to 700

    Returns
    -------
    float
        Share of the torque, [-]

    Notes
    -----
    Starting and breakdown torque; 90 % volts leave 81 %.

    Examples
    --------
    >>> round(torque_share(207.0, 230.0), 2)
    0.81

    References
    ----------
    Motor Systems Tip Sheet 9, U.S. Department of Energy, 2012, table 2.
    """
    positive(voltage=voltage, rated=rated)
    return (voltage / rated) ** 2


def slip_share(voltage: float, rated: float) -> float:
    """Slip of a motor on other volts, over its slip on the rated ones at the same torque.

    share = (V_rated / V)^2

    Parameters
    ----------
    voltage : float
        Voltage at the motor, [V], 100 to 700
    rated : float
        Rated voltage, [V], 100 to 700

    Returns
    -------
    float
        Slip over the slip on rated volts, [-]

    Notes
    -----
    What a motor falls behind its field, not its speed: 4 % of slip become 5 % on 90 % volts. The heat of its
    rotor goes with it.

    Examples
    --------
    >>> round(slip_share(207.0, 230.0), 2)
    1.23

    References
    ----------
    Motor Systems Tip Sheet 9, U.S. Department of Energy, 2012, table 2, prints 22 % more at 90 % volts.
    """
    positive(voltage=voltage, rated=rated)
    return (rated / voltage) ** 2


def breaker_share(loads: Sequence[float], rating: float) -> float:
    """Sum of all loads on one line as a share of the breaker that feeds them.

    share = (I_1 + I_2 + ...) / I_breaker

    Parameters
    ----------
    loads : sequence of float
        Line currents of what runs at the same time, [A], 0.2 to 60
    rating : float
        Rating of the breaker or fuse, [A], 15 to 400

    Returns
    -------
    float
        Share, [-]

    Notes
    -----
    Motors' and heaters' currents do not add up exactly: their plain sum is a little too much. What runs for three
    hours and more should stay under 80 % of a breaker (from memory, confidence high). Local codes govern.

    Examples
    --------
    >>> round(breaker_share([83.3, 55.5, 6.8, 3.8, 1.2], 200.0), 3)
    0.753

    References
    ----------
    Sum of currents; continuous loads at 80 % of the rating after NEC 210.20 and 215.3, from memory.
    """
    positive(rating=rating)
    for load in loads:
        not_negative(load=load)
    if not loads:
        raise ValueError("no load is named")
    return sum(loads) / rating


def feeder_loss(drop: float, current: float) -> float:
    """Power lost in one line of a feeder.

    P = dV I

    Parameters
    ----------
    drop : float
        Voltage lost along the line, [V], 0 to 50
    current : float
        Current in it, [A], 0.2 to 400

    Returns
    -------
    float
        Power, [W]

    Notes
    -----
    Where one line's drop stands 15 % off the others', look for a poor joint; above 3 % in all the feeder wants
    work.

    Examples
    --------
    >>> round(feeder_loss(8.1 - 2.5, 199.7))
    1118

    References
    ----------
    Motor Systems Tip Sheet 8, U.S. Department of Energy, 2012.
    """
    not_negative(drop=drop)
    positive(current=current)
    return drop * current


def code_letter_figure(letter: str) -> float:
    """Greatest kVA a horsepower of a code letter.

    table: A 3.15, B 3.55, C 4.0, D 4.5, E 5.0, F 5.6, G 6.3, H 7.1, J 8.0, K 9.0, L 10.0, M 11.2

    Parameters
    ----------
    letter : str
        Code letter on the nameplate

    Returns
    -------
    float
        Upper figure, [kVA/hp]

    Notes
    -----
    There is no letter I: a sheet that prints one is a letter out from there on.

    Examples
    --------
    >>> code_letter_figure('c')
    4.0

    References
    ----------
    A to H: Motor Systems Tip Sheet 6, U.S. Department of Energy, 2012, table 1; above: NEC 430.7(B), from
    memory.
    """
    figure = CODE_LETTERS.get(letter.strip().upper())
    if figure is None:
        raise ValueError(f"{letter.strip()[:10]!r} is no code letter; they are {', '.join(CODE_LETTERS)}")
    return figure


def locked_rotor_of_letter(power: float, letter: str, voltage: float) -> float:
    """Greatest current of a three-phase motor at standstill, from its code letter.

    I = hp x (kVA/hp of the letter) x 1000 / (sqrt(3) V)

    Parameters
    ----------
    power : float
        Rated (shaft) power, [W], 50 to 8e4
    letter : str
        Code letter on the nameplate
    voltage : float
        Line-to-line voltage, [V], 100 to 700

    Returns
    -------
    float
        Current, [A]

    Notes
    -----
    What the first moments of a start draw; for half a cycle up to 2.8 times that.

    Examples
    --------
    >>> round(locked_rotor_of_letter(2 * 745.7, 'K', 208.0))
    50

    References
    ----------
    Motor Systems Tip Sheet 6, U.S. Department of Energy, 2012.
    """
    return locked_rotor_current(power, code_letter_figure(letter), voltage)
