"""Conveyor: how long ware stays under the sprays, how many racks pass an hour, what its timers must give."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "arm_held_time",
    "dwell",
    "racks_an_hour",
    "run_on_needed",
]


def dwell(length: float, speed: float) -> float:
    """Time each piece of ware spends in a zone.

    t = L / v

    Parameters
    ----------
    length : float
        Length of the zone, [m], 0.1 to 3
    speed : float
        Conveyor speed, [m/s], 0.005 to 0.1

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    A rack is longer than many a zone: a point of the ware is meant, not the rack as a whole.

    Examples
    --------
    >>> round(dwell(2 * 0.3048, 5.8 * 0.00508), 1)
    20.7

    References
    ----------
    Definition of speed; the data plate governs the speed (Food Code 4-204.113, 4-501.15).
    """
    positive(length=length, speed=speed)
    return length / speed


def racks_an_hour(speed: float, rack: float, gap: float) -> float:
    """Racks that pass when they follow one another at an even gap.

    n = v / (L + g)

    Parameters
    ----------
    speed : float
        Conveyor speed, [m/s], 0.005 to 0.1
    rack : float
        Length of a rack, [m], 0.3 to 1
    gap : float
        Gap between two racks, [m], 0 to 1

    Returns
    -------
    float
        Racks in a given time, [1/s]

    Notes
    -----
    What a plate calls racks an hour is without any gap: people at both ends make the gaps.

    Examples
    --------
    >>> round(racks_an_hour(5.8 * 0.00508, 20 * 0.0254, 0.0) * 3600)
    209

    References
    ----------
    Definition of speed.
    """
    positive(rack=rack)
    not_negative(speed=speed, gap=gap)
    return speed / (rack + gap)


def arm_held_time(rack: float, overlap: float, delay: float, speed: float) -> float:
    """Time one rack keeps the final rinse running.

    t = (L + o) / v + delay

    Parameters
    ----------
    rack : float
        Length of a rack, [m], 0.3 to 1
    overlap : float
        Way a rack holds the arm beyond its own length, [m], 0 to 0.3
    delay : float
        Delay of timer or control after the arm falls back, [s], 0 to 20
    speed : float
        Conveyor speed, [m/s], 0.005 to 0.1

    Returns
    -------
    float
        Time the rinse runs, [s]

    Notes
    -----
    Water per rack is this time the flow.

    Examples
    --------
    >>> round(arm_held_time(20 * 0.0254, 0.0, 0.0, 5.8 * 0.00508), 1)
    17.2

    References
    ----------
    Definition of speed.
    """
    positive(rack=rack, speed=speed)
    not_negative(overlap=overlap, delay=delay)
    return (rack + overlap) / speed + delay


def run_on_needed(way: float, speed: float, in_hand: float) -> float:
    """Run-on the timer must give so that the last rack comes out.

    t = w / v + reserve

    Parameters
    ----------
    way : float
        Way from the timer's lever to where a rack is clear of the last pawl, [m], 0 to 5
    speed : float
        Conveyor speed, [m/s], 0.005 to 0.1
    in_hand : float
        Reserve, [s], 0 to 20

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    Counted from the moment the rack's rear edge lets the lever go.

    Examples
    --------
    >>> round(run_on_needed(2.4 * 0.3048, 5.8 * 0.00508, 5.0), 1)
    29.8

    References
    ----------
    Definition of speed.
    """
    positive(speed=speed)
    not_negative(way=way, in_hand=in_hand)
    return way / speed + in_hand
