"""Fans and rooms: what another speed does to a fan, what a duct answers, what a room lacks of air."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive, within

__all__ = ["fan_flow", "fan_power", "fan_suction", "makeup_short", "opening_needed", "suction_of_flow"]

STANDARD_DENSITY = 1.2041  # air at 20 °C and sea level, kg/m3


def fan_flow(flow: float, turns: float, new_turns: float) -> float:
    """Flow of a fan at another speed in the same duct.

    Q2 = Q1 n2 / n1

    Parameters
    ----------
    flow : float
        Flow at the first speed, [m3/s], 0.01 to 1
    turns : float
        First speed, [1/s], 5 to 60
    new_turns : float
        Second speed, [1/s], 5 to 60

    Returns
    -------
    float
        Flow, [m3/s]

    Notes
    -----
    Same wheel, same duct, dampers untouched.

    Examples
    --------
    >>> round(fan_flow(600.0, 1100.0, 1320.0))
    720

    References
    ----------
    Fan laws, of the theory of similarity.
    """
    positive(turns=turns, new_turns=new_turns)
    not_negative(flow=flow)
    return flow * new_turns / turns


def fan_suction(suction: float, turns: float, new_turns: float) -> float:
    """Suction of a fan at another speed in the same duct.

    p2 = p1 (n2 / n1)^2

    Parameters
    ----------
    suction : float
        Suction at the first speed, [Pa], 5 to 500
    turns : float
        First speed, [1/s], 5 to 60
    new_turns : float
        Second speed, [1/s], 5 to 60

    Returns
    -------
    float
        Suction, [Pa]

    Notes
    -----
    Same wheel, same duct, dampers untouched.

    Examples
    --------
    >>> round(fan_suction(100.0, 1100.0, 1320.0))
    144

    References
    ----------
    Fan laws, of the theory of similarity.
    """
    positive(turns=turns, new_turns=new_turns)
    not_negative(suction=suction)
    return suction * (new_turns / turns) ** 2


def fan_power(power: float, turns: float, new_turns: float) -> float:
    """Power a fan wants at another speed in the same duct.

    P2 = P1 (n2 / n1)^3

    Parameters
    ----------
    power : float
        Power at the first speed, [W], 10 to 2000
    turns : float
        First speed, [1/s], 5 to 60
    new_turns : float
        Second speed, [1/s], 5 to 60

    Returns
    -------
    float
        Power, [W]

    Notes
    -----
    A fifth faster wants nearly three quarters more: a larger pulley overloads the motor.

    Examples
    --------
    >>> round(fan_power(300.0, 1100.0, 1320.0))
    518

    References
    ----------
    Fan laws, of the theory of similarity.
    """
    positive(turns=turns, new_turns=new_turns)
    not_negative(power=power)
    return power * (new_turns / turns) ** 3


def suction_of_flow(suction: float, flow: float, new_flow: float) -> float:
    """Suction a duct wants at another flow.

    p2 = p1 (Q2 / Q1)^2

    Parameters
    ----------
    suction : float
        Suction before the fan when the duct was in order, [Pa], 5 to 500
    flow : float
        Flow then, [m3/s], 0.05 to 1
    new_flow : float
        Flow now, [m3/s], 0.05 to 1

    Returns
    -------
    float
        Suction the same duct wants now, [Pa]

    Notes
    -----
    More suction than this at the flow read: something chokes before the fan. As much: the duct is as it was, and the
    fan itself is weaker or blocked behind.

    Examples
    --------
    >>> round(suction_of_flow(100.0, 600.0, 420.0))
    49

    References
    ----------
    Square law of resistance in turbulent flow.
    """
    positive(flow=flow)
    not_negative(suction=suction, new_flow=new_flow)
    return suction * (new_flow / flow) ** 2


def makeup_short(exhaust: float, hoods: float, supplied: float) -> float:
    """Air a room lacks, which must come through doors and gaps or back down the machine.

    Q_short = Q_machine + Q_hoods - Q_supplied

    Parameters
    ----------
    exhaust : float
        Air the machine's fan takes, [m3/s], 0 to 1
    hoods : float
        Air other hoods take from the same room, [m3/s], 0 to 5
    supplied : float
        Air blown into the room, [m3/s], 0 to 5

    Returns
    -------
    float
        Air lacking; negative where more is supplied than taken, [m3/s]

    Notes
    -----
    A dish room is wanted slightly short, so that its vapour stays in.

    Examples
    --------
    >>> round(makeup_short(600.0, 1500.0, 1800.0))
    300

    References
    ----------
    Conservation of mass.
    """
    not_negative(exhaust=exhaust, hoods=hoods, supplied=supplied)
    return exhaust + hoods - supplied


def opening_needed(short: float, suction: float, discharge: float = 0.65) -> float:
    """Opening through which the air lacking comes in at a bearable suction of the room.

    A = Q / (C sqrt(2 p / rho))

    Parameters
    ----------
    short : float
        Air lacking, [m3/s], 0.01 to 3
    suction : float
        Suction of the room that is allowed, [Pa], 1 to 50
    discharge : float
        Discharge coefficient of a plain opening, [-], 0.4 to 1

    Returns
    -------
    float
        Free area, [m2]

    Notes
    -----
    0.65 for a plain opening is common practice; a grille wants its own figure.

    Examples
    --------
    >>> round(opening_needed(300 * 4.719474e-4, 5.0), 3)
    0.076

    References
    ----------
    Bernoulli's equation.
    """
    not_negative(short=short)
    positive(suction=suction, discharge=discharge)
    within(0.0, 1.0, discharge=discharge)
    return short / (discharge * math.sqrt(2.0 * suction / STANDARD_DENSITY))
