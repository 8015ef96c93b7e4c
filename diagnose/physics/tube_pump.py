"""Feed pumps: what a tube pump delivers, and how long it must run."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "dose_of_pump",
    "dose_of_turns",
    "feed_time",
    "tube_pump_flow",
]


def tube_pump_flow(speed: float, per_turn: float) -> float:
    """Output of a tube pump from its speed and what a turn delivers.

    Q = n v

    Parameters
    ----------
    speed : float
        Turns of the pump's head in a second, [1/s], 0.05 to 5
    per_turn : float
        Stock a turn delivers, [m3], 5e-8 to 5e-6

    Returns
    -------
    float
        Output, [m3/s]

    Notes
    -----
    For a tube that springs back fully between rollers: a flattened tube delivers less a turn, which only a
    measuring glass shows.

    Examples
    --------
    >>> round(tube_pump_flow(40 / 60, 0.3e-6) * 60e6, 3)  # 40 rpm, 0.3 mL a turn, in mL/min
    12.0

    References
    ----------
    Displacement pump.
    """
    positive(speed=speed, per_turn=per_turn)
    return speed * per_turn


def dose_of_pump(pump_flow: float, time: float) -> float:
    """Stock fed while a pump runs.

    V = Q t

    Parameters
    ----------
    pump_flow : float
        Output of the feed pump, [m3/s], 1e-8 to 1e-5
    time : float
        Time the pump runs, [s], 0.5 to 600

    Returns
    -------
    float
        Stock fed, [m3]

    Notes
    -----
    The tube must be full: air in it counts as time and feeds nothing.

    Examples
    --------
    >>> round(dose_of_pump(12e-6 / 60, 20.0) * 1e6, 3)  # mL
    4.0

    References
    ----------
    Displacement pump.
    """
    positive(pump_flow=pump_flow)
    not_negative(time=time)
    return pump_flow * time


def dose_of_turns(speed: float, per_turn: float, time: float) -> float:
    """Stock a tube pump feeds while it runs, from its speed and what a turn delivers.

    V = n v t

    Parameters
    ----------
    speed : float
        Turns of the pump's head in a second, [1/s], 0.05 to 5
    per_turn : float
        Stock a turn delivers, [m3], 5e-8 to 5e-6
    time : float
        Time the pump runs, [s], 0.5 to 600

    Returns
    -------
    float
        Stock fed, [m3]

    Notes
    -----
    A flattened tube delivers less a turn than a new one.

    Examples
    --------
    >>> round(dose_of_turns(40 / 60, 0.3e-6, 20.0) * 1e6, 3)  # 40 rpm, 0.3 mL a turn, 20 s: in mL
    4.0

    References
    ----------
    Displacement pump.
    """
    positive(speed=speed, per_turn=per_turn)
    not_negative(time=time)
    return speed * per_turn * time


def feed_time(dose: float, pump_flow: float) -> float:
    """Time a pump must run for a dose.

    t = V / Q

    Parameters
    ----------
    dose : float
        Stock fed, [m3], 1e-8 to 1e-4
    pump_flow : float
        Output of the feed pump, [m3/s], 1e-8 to 1e-5

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    Set a timer to it only where the rinse lasts as long: feed after the rinse has stopped is lost.

    Examples
    --------
    >>> round(feed_time(4e-6, 12e-6 / 60), 3)
    20.0

    References
    ----------
    Displacement pump.
    """
    positive(dose=dose, pump_flow=pump_flow)
    return dose / pump_flow
