"""How far to set what feeds and carries: chemical feeders, the feet of tables, the conveyor's drive."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive

__all__ = ["drive_hertz", "driving_pulley", "feeder_setting", "feeder_setting_by_dose", "foot_rise", "foot_turns"]


def feeder_setting(setting: float, read: float, wanted: float) -> float:
    """Setting of a chemical feeder, from the strength found at its present setting.

    setting x wanted / read

    Parameters
    ----------
    setting : float
        Setting now, in whatever marks it has, [-], 0.5 to 100
    read : float
        Strength found, [mg/L], 5 to 500
    wanted : float
        Strength wanted, [mg/L], 5 to 500

    Returns
    -------
    float
        New setting, [-]

    Notes
    -----
    For a feeder that gives nothing at nought. Soil and hard water use up a part that does not grow with the setting, so
    find the strength again after it. Nothing found is no matter of setting: look for a dry line or an empty drum.

    Examples
    --------
    >>> feeder_setting(40.0, 80.0, 50.0)
    25.0

    References
    ----------
    Proportion.
    """
    positive(setting=setting, read=read, wanted=wanted)
    return setting * wanted / read


def feeder_setting_by_dose(setting: float, read: float, wanted: float) -> float:
    """Setting of a chemical feeder, from what it gave a rack at its present setting.

    setting x wanted / read

    Parameters
    ----------
    setting : float
        Setting now, in whatever marks it has, [-], 0.5 to 100
    read : float
        Stock it gave a rack, [m3], 1e-7 to 1e-4
    wanted : float
        Stock a rack should get, [m3], 1e-7 to 1e-4

    Returns
    -------
    float
        New setting, [-]

    Notes
    -----
    For a feeder that gives nothing at nought. Catch the doses of several racks in a measuring glass and divide.

    Examples
    --------
    >>> round(feeder_setting_by_dose(40.0, 6e-6, 4e-6), 2)
    26.67

    References
    ----------
    Proportion.
    """
    positive(setting=setting, read=read, wanted=wanted)
    return setting * wanted / read


def foot_rise(fall: float, wanted: float, distance: float) -> float:
    """How far to raise a table's foot so that the table falls to the machine as wanted.

    (wanted - fall) x distance

    Parameters
    ----------
    fall : float
        Fall towards the machine by length, read; below nought where it falls away, [-], -0.05 to 0.1
    wanted : float
        Fall wanted by length, [-], 0 to 0.05
    distance : float
        From the machine's edge to the foot, [m], 0.2 to 5

    Returns
    -------
    float
        Way up, below nought down, [m]

    Notes
    -----
    The table turns about its edge at the machine. Feet nearer to it are raised by their own distance's share, or the
    table sags between.

    Examples
    --------
    >>> round(foot_rise(0.1 / 12, 0.2 / 12, 6 * 12.0), 3)  # from 0.1 to 0.2 in/ft, 6 ft out: 0.6 in
    0.6

    References
    ----------
    Geometry of a line turned by a little.
    """
    positive(distance=distance)
    not_negative(wanted=wanted)
    return (wanted - fall) * distance


def foot_turns(rise: float, pitch: float) -> float:
    """Turns of a threaded foot for a way up or down.

    rise / pitch

    Parameters
    ----------
    rise : float
        Way up, below nought down, [m], -0.1 to 0.1
    pitch : float
        Way of one turn: the pitch of its thread, [m], 5e-4 to 4e-3

    Returns
    -------
    float
        Turns, [-]

    Notes
    -----
    The pitch is one over the threads in a length: 13 to the inch is 0.077 in, a metric M12 1.75 mm.

    Examples
    --------
    >>> round(foot_turns(0.6, 1 / 13), 2)
    7.8

    References
    ----------
    Geometry of a screw.
    """
    positive(pitch=pitch)
    return rise / pitch


def drive_hertz(hertz: float, read: float, wanted: float) -> float:
    """Frequency to set a conveyor's drive to, from the speed read at its present one.

    hertz x wanted / read

    Parameters
    ----------
    hertz : float
        Frequency now, [Hz], 10 to 90
    read : float
        Speed read, [m/s], 0.005 to 0.1
    wanted : float
        Speed wanted, [m/s], 0.005 to 0.1

    Returns
    -------
    float
        New frequency, [Hz]

    Notes
    -----
    Slip changes by less than can be timed. Keep within what motor and drive are marked for: a motor that cools itself
    warms at low speed, and above its own frequency it pulls less.

    Examples
    --------
    >>> round(drive_hertz(60.0, 5.0, 5.8), 1)
    69.6

    References
    ----------
    Theory of induction motors.
    """
    positive(hertz=hertz, read=read, wanted=wanted)
    return hertz * wanted / read


def driving_pulley(pulley: float, read: float, wanted: float) -> float:
    """Driving pulley (or sprocket) for another conveyor speed.

    pulley x wanted / read

    Parameters
    ----------
    pulley : float
        Working diameter of the driving pulley now, [m], 0.02 to 0.3
    read : float
        Speed read, [m/s], 0.005 to 0.1
    wanted : float
        Speed wanted, [m/s], 0.005 to 0.1

    Returns
    -------
    float
        New working diameter, [m]

    Notes
    -----
    The driven pulley untouched; the working diameter lies a little inside the belt's back. Teeth of a sprocket go the
    same way and come whole: take the nearest and time it again.

    Examples
    --------
    >>> round(driving_pulley(3.0, 6.4, 5.8), 2)
    2.72

    References
    ----------
    Geometry of belts.
    """
    positive(pulley=pulley, read=read, wanted=wanted)
    return pulley * wanted / read
