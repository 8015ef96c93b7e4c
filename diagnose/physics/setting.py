"""How far to set what governs by itself: thermostats, regulators, timers, overloads."""

from __future__ import annotations

from diagnose.physics.demand import RefusedError, not_negative, positive

__all__ = [
    "overload_dial",
    "pressure_per_turn",
    "regulator_turns",
    "thermostat_dial",
    "timer_mark",
    "timer_mark_of_pairs",
]


def thermostat_dial(dial: float, cut_out: float, cut_in: float, least: float, most: float) -> float:
    """Dial setting at which a thermostat cuts in and out between the least and the most wanted.

    dial + (least + most - cut_in - cut_out) / 2

    Parameters
    ----------
    dial : float
        Dial as it stands, [K], 303.15 to 368.15
    cut_out : float
        Temperature at which it was seen to cut out, [K], 328.15 to 358.15
    cut_in : float
        Temperature at which it was seen to cut in again, [K], 323.15 to 353.15
    least : float
        Least temperature wanted: it must cut in at or above it, [K], 318.15 to 343.15
    most : float
        Most temperature wanted: it must cut out at or under it, [K], 343.15 to 373.15

    Returns
    -------
    float
        New dial setting, [K]

    Notes
    -----
    Both move with the dial, degree for degree; what lies between them does not. Cut-in and cut-out are put in the
    middle of the room there is, so that what is left is the same at both ends. Where the difference is wider than that
    room no setting will do.

    Examples
    --------
    >>> round(thermostat_dial(160.0, 158.0, 148.0, 150.0, 165.0), 1)  # 148 and 158 to 152.5 and 162.5
    164.5

    References
    ----------
    Two-point control: the working of such a thermostat.
    """
    positive(dial=dial, cut_out=cut_out, cut_in=cut_in, least=least, most=most)
    if cut_in > cut_out:
        raise RefusedError(
            f"cut_in = {cut_in} is above the cut-out: were they exchanged?", "cut_in", cut_in, 0.0, cut_out
        )
    if most < least:
        raise RefusedError(f"most = {most} is under the least wanted", "most", most, least)
    if cut_out - cut_in > most - least:
        says = "no setting will do: it switches over more than the room between the least and the most wanted"
        raise RefusedError(says, "cut_in", cut_in, cut_out - (most - least), cut_out)
    return dial + (least + most - cut_in - cut_out) / 2.0


def pressure_per_turn(before: float, after: float, turns: float) -> float:
    """Pressure that one turn of a regulator's screw gives, from a turn and its two readings.

    (after - before) / turns

    Parameters
    ----------
    before : float
        Pressure before the screw was turned, flowing, [Pa], 3e4 to 4e5
    after : float
        Pressure after it, flowing, [Pa], 3e4 to 4e5
    turns : float
        Turns made, in (towards more) above nought and out below, [-], -6 to 6

    Returns
    -------
    float
        Pressure of one turn, [Pa]

    Notes
    -----
    Both while the rinse flows: at rest a regulator may creep. At nought or below the screw does not govern the
    pressure: it is at its stop, or what feeds the regulator does.

    Examples
    --------
    >>> pressure_per_turn(14.0, 17.0, 0.5)
    6.0

    References
    ----------
    Definition of a slope.
    """
    not_negative(before=before, after=after)
    if abs(turns) < 1e-6:
        raise RefusedError("turns = 0: nothing was turned, nothing is learnt", "turns", turns, 1e-6)
    return (after - before) / turns


def regulator_turns(read: float, wanted: float, per_turn: float) -> float:
    """Turns of a regulator's screw from the pressure read to the pressure wanted.

    (wanted - read) / per_turn

    Parameters
    ----------
    read : float
        Pressure read, flowing, [Pa], 3e4 to 4e5
    wanted : float
        Pressure wanted, flowing, [Pa], 3e4 to 4e5
    per_turn : float
        Pressure that one turn gives, [Pa], 5e3 to 2e5

    Returns
    -------
    float
        Turns, in (towards more) above nought and out below, [-]

    Notes
    -----
    A spring is near enough straight over a turn or two; go by what the last turn gave. Loosen the lock nut first and
    read while the rinse flows.

    Examples
    --------
    >>> regulator_turns(14.0, 20.0, 8.0)
    0.75

    References
    ----------
    Definition of a slope; the pressure of a turn at the first try is judgement.
    """
    not_negative(read=read)
    positive(wanted=wanted, per_turn=per_turn)
    return (wanted - read) / per_turn


def timer_mark(mark: float, read: float, wanted: float) -> float:
    """Mark to set a timer to, from the time it gave at its present mark.

    mark x wanted / read

    Parameters
    ----------
    mark : float
        Mark its dial stands at, [-], 1 to 120
    read : float
        Time it gave, [s], 2 to 300
    wanted : float
        Time wanted, [s], 2 to 300

    Returns
    -------
    float
        New mark, [-]

    Notes
    -----
    As if the dial began at nought. Where it does not, two marks and their times tell: `timer_mark_of_pairs`.

    Examples
    --------
    >>> timer_mark(20.0, 16.0, 30.0)
    37.5

    References
    ----------
    Proportion.
    """
    positive(mark=mark, read=read, wanted=wanted)
    return mark * wanted / read


def timer_mark_of_pairs(mark_before: float, read_before: float, mark: float, read: float, wanted: float) -> float:
    """Mark to set a timer to, from two marks and the times they gave.

    mark + (wanted - read) (mark - mark_before) / (read - read_before)

    Parameters
    ----------
    mark_before : float
        Mark at first, [-], 1 to 40
    read_before : float
        Time it gave then, [s], 2 to 60
    mark : float
        Mark now, [-], 41 to 120
    read : float
        Time it gives now, [s], 61 to 300
    wanted : float
        Time wanted, [s], 2 to 400

    Returns
    -------
    float
        New mark, [-]

    Notes
    -----
    The straight line through both pairs, so that a dial that does not begin at nought comes right. A time that did not
    grow with the mark says that the dial does not set it.

    Examples
    --------
    >>> timer_mark_of_pairs(20.0, 16.0, 37.5, 44.0, 30.0)
    28.75

    References
    ----------
    Secant through two points.
    """
    positive(mark_before=mark_before, read_before=read_before, mark=mark, read=read, wanted=wanted)
    if (mark - mark_before) * (read - read_before) <= 0.0:
        says = f"read = {read} did not grow with the mark: the dial does not set this time"
        raise RefusedError(says, "read", read, read_before)
    return mark + (wanted - read) * (mark - mark_before) / (read - read_before)


def overload_dial(full_load: float, least: float, most: float) -> tuple[float, float, float]:
    """Where to set the dial of a motor overload: at the nameplate's amps, and between which figures it may stand.

    dial = full load; from least x full load to most x full load

    Parameters
    ----------
    full_load : float
        Full-load current on the motor's nameplate, [A], 0.2 to 150
    least : float
        Lowest share allowed, [-], 0.9 to 1
    most : float
        Highest share allowed, [-], 1 to 1.4

    Returns
    -------
    tuple of float
        Dial, lowest and highest setting, [A]

    Notes
    -----
    From the nameplate, not from the code's tables. 115 % in general, 125 % with a service factor of 1.15 or a rise of
    40 °C on the nameplate; local codes and licensed practice govern. A relay that trips at the nameplate's amps has
    found a motor that draws too much: do not set it up for that.

    Examples
    --------
    >>> [round(amps, 2) for amps in overload_dial(6.8, 1.0, 1.15)]
    [6.8, 6.8, 7.82]

    References
    ----------
    NEC 430.32(A)(1), read in secondary copies; the dial at the nameplate's amps is common practice.
    """
    positive(full_load=full_load, least=least, most=most)
    if most < least:
        raise RefusedError(f"most = {most} is under the lowest share", "most", most, least)
    return full_load * min(max(1.0, least), most), full_load * least, full_load * most
