"""Conveyor speed: timed, counted in strokes, or worked out from motor, reducer and sprockets."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive, within

__all__ = [
    "motor_turns",
    "speed_at_frequency",
    "speed_of_gearing",
    "speed_of_strokes",
    "speed_of_time",
]


def speed_of_time(length: float, time: float) -> float:
    """Speed of a rack timed over a measured length.

    v = L / t

    Parameters
    ----------
    length : float
        Way measured along the track, [m], 0.3 to 3
    time : float
        Time from front edge at the first mark to front edge at the second, [s], 2 to 200

    Returns
    -------
    float
        Speed, [m/s]

    Notes
    -----
    On a bar conveyor racks move in steps: measure over whole strokes, or three feet and more.

    Examples
    --------
    >>> round(speed_of_time(0.9144, 31.0) / 0.00508, 2)
    5.81

    References
    ----------
    Definition of speed.
    """
    positive(length=length, time=time)
    return length / time


def speed_of_strokes(stroke: float, strokes: float) -> float:
    """Speed that a bar with pawls gives the racks when every stroke carries them its full length.

    v = s n

    Parameters
    ----------
    stroke : float
        Travel of the bar in one stroke, [m], 0.02 to 0.6
    strokes : float
        Strokes forward in a given time, [1/s], 0.02 to 2

    Returns
    -------
    float
        Speed, [m/s]

    Notes
    -----
    Racks slower than this lose part of each stroke: a pawl falls in late, or the pin has play.

    Examples
    --------
    >>> round(speed_of_strokes(6 * 0.0254, 11.6 / 60) / 0.00508, 2)
    5.8

    References
    ----------
    Definition of speed.
    """
    positive(stroke=stroke)
    not_negative(strokes=strokes)
    return stroke * strokes


def motor_turns(frequency: float, poles: int, slip: float) -> float:
    """Turns of an induction motor.

    n = 2 f / p (1 - s)

    Parameters
    ----------
    frequency : float
        Supply frequency, [Hz], 10 to 90
    poles : int
        Poles of the motor, [-], 2 to 8
    slip : float
        Slip, as a fraction of the field's speed, [-], 0 to 0.3

    Returns
    -------
    float
        Turns a second, [1/s]

    Notes
    -----
    A small motor slips 3 to 5 % at full load and half that empty: volts change a conveyor's speed by a few
    percent, frequency and poles by a fifth and more.

    Examples
    --------
    >>> round(motor_turns(60.0, 4, 0.042) * 60)
    1724

    References
    ----------
    Theory of induction motors.
    """
    positive(frequency=frequency)
    within(2, 24, poles=poles)
    within(0.0, 1.0, slip=slip)
    if poles % 2:
        raise ValueError("poles come in pairs")
    return 2.0 * frequency / poles * (1.0 - slip)


def speed_of_gearing(turns: float, ratio: float, driver: int, driven: int, travel: float) -> float:
    """Speed that motor, reducer and sprockets give the conveyor.

    v = n / i x z1 / z2 x travel per turn

    Parameters
    ----------
    turns : float
        Turns of the motor, [1/s], 5 to 60
    ratio : float
        Turns of the motor for one of the reducer's output shaft, [-], 5 to 200
    driver : int
        Teeth of the sprocket on the reducer, [-], 8 to 60
    driven : int
        Teeth of the sprocket it drives, [-], 8 to 60
    travel : float
        Way of the racks in one turn of the driven shaft, [m], 0.02 to 1

    Returns
    -------
    float
        Speed, [m/s]

    Notes
    -----
    For a crank and bar the travel is one stroke; for a chain it is teeth times pitch of the chain's sprocket.

    Examples
    --------
    >>> round(speed_of_gearing(1725 / 60, 100.0, 16, 24, 6 * 0.0254) / 0.00508, 2)
    5.75

    References
    ----------
    Geometry of gears and chains.
    """
    positive(ratio=ratio, driver=driver, driven=driven, travel=travel)
    not_negative(turns=turns)
    return turns / ratio * driver / driven * travel


def speed_at_frequency(speed: float, frequency: float, made_for: float) -> float:
    """Speed of a conveyor on another frequency than it is made for.

    v = v_plate f / f_plate

    Parameters
    ----------
    speed : float
        Speed on the frequency it is made for, [m/s], 0.005 to 0.1
    frequency : float
        Frequency it runs on, [Hz], 10 to 90
    made_for : float
        Frequency it is made for, [Hz], 45 to 65

    Returns
    -------
    float
        Speed, [m/s]

    Notes
    -----
    50 Hz instead of 60 Hz gives five sixths, 60 instead of 50 six fifths; slip changes by less than can be timed.

    Examples
    --------
    >>> round(speed_at_frequency(5.8, 50.0, 60.0), 2)
    4.83

    References
    ----------
    Theory of induction motors.
    """
    positive(made_for=made_for, frequency=frequency)
    not_negative(speed=speed)
    return speed * frequency / made_for
