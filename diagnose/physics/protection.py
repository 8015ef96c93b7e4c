"""Overload protection in time: the thermal replica, forward and back, and the windows of the trip classes."""

from __future__ import annotations

import math

from diagnose.physics.demand import RefusedError, not_negative, positive

__all__ = [
    "CLASS_MULTIPLE",
    "PICKUP",
    "TRIP_WINDOWS",
    "class_of_trip_time",
    "setting_of_trip_time",
    "trip_time",
    "trip_time_constant",
    "trip_window",
]

CLASS_MULTIPLE = 7.2  # times the setting at which a trip class is stated, IEC 60947-4-1 (secondary)
# A relay must not trip at 1.05 times its setting and must at 1.2 (IEC 60947-4-1, from memory, confidence high): the
# current it can just bear for ever lies between.
PICKUP = 1.12
# Class -> least and greatest time from cold at 7.2 times the setting; IEC 60947-4-1 (secondary).
TRIP_WINDOWS = {"10A": (2.0, 10.0), "10": (4.0, 10.0), "20": (6.0, 20.0), "30": (9.0, 30.0)}


def trip_time_constant(trip_class: float, pickup: float = PICKUP) -> float:
    """Time constant of a thermal replica that trips in its class.

    tau = C / ln(m^2 / (m^2 - 1)), m = 7.2 / pickup

    Parameters
    ----------
    trip_class : float
        Trip class, [s], 5 to 40
    pickup : float
        Current borne for ever over the setting, [-], 1 to 1.2

    Returns
    -------
    float
        Time constant, [s]

    Notes
    -----
    The class is stated from cold at 7.2 times the setting; with a pickup of 1 the time constant is 51.3 times
    the class.

    Examples
    --------
    >>> round(trip_time_constant(10.0, 1.0), 1)
    513.4

    References
    ----------
    Thermal model of the form of IEC 60255-149; trip classes of IEC 60947-4-1.
    """
    positive(trip_class=trip_class, pickup=pickup)
    square = (CLASS_MULTIPLE / pickup) ** 2
    return trip_class / math.log(square / (square - 1.0))


def trip_time(current: float, setting: float, trip_class: float, before: float = 0.0, pickup: float = PICKUP) -> float:
    """Time until an overload relay trips.

    t = tau ln((x^2 - w^2) / (x^2 - 1)), x = I / (pickup I_set), w = before / pickup

    Parameters
    ----------
    current : float
        Motor current, [A], 0.2 to 1000
    setting : float
        Setting of the overload, [A], 0.2 to 150
    trip_class : float
        Trip class, [s], 5 to 40
    before : float
        Share of the setting at which it ran warm before, nought from cold, [-], 0 to 1
    pickup : float
        Current borne for ever over the setting, [-], 1 to 1.2

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    Not solved back for pickup, which works both ways. Refused where the current is borne for ever. A relay may
    be a good deal quicker than its class: class 10 may trip in 4 to 10 s. Short times are governed by the
    motor's start, not by this curve.

    Examples
    --------
    >>> round(trip_time(2.0, 1.0, 10.0, pickup=1.0), 1)  # cold, twice the setting
    147.7
    >>> round(trip_time(12.0, 5.0, 10.0)), round(trip_time(12.0, 5.0, 10.0, before=1.0))
    (100, 22)

    References
    ----------
    Thermal model of the form of IEC 60255-149; trip classes of IEC 60947-4-1; pickup between 1.05 and 1.2
    (same, from memory).
    """
    positive(current=current, setting=setting)
    not_negative(before=before)
    square = (current / (pickup * setting)) ** 2
    if square <= 1.0:
        raise RefusedError(
            f"current = {current} is borne for ever by an overload set to {setting}",
            "current",
            current,
            pickup * setting,
        )
    warm = (before / pickup) ** 2
    return trip_time_constant(trip_class, pickup) * math.log((square - min(warm, 1.0)) / (square - 1.0))


def class_of_trip_time(
    current: float, setting: float, time: float, before: float = 0.0, pickup: float = PICKUP
) -> float:
    """Trip class that an overload shows by the time it took.

    C = t ln(m^2 / (m^2 - 1)) / ln((x^2 - w^2) / (x^2 - 1))

    Parameters
    ----------
    current : float
        Motor current, [A], 0.2 to 1000
    setting : float
        Setting of the overload, [A], 0.2 to 150
    time : float
        Time from the start to the trip, [s], 1 to 3600
    before : float
        Share of the setting at which it ran warm before, nought from cold, [-], 0 to 1
    pickup : float
        Current borne for ever over the setting, [-], 1 to 1.2

    Returns
    -------
    float
        Trip class, [s]

    Notes
    -----
    Not solved back for pickup. Well under its class the overload is heated by something else than its current,
    or was warm; far over it, it is worn or the wrong one.

    Examples
    --------
    >>> round(class_of_trip_time(12.0, 5.0, 100.0), 1)
    10.0

    References
    ----------
    Inverse of the thermal model of IEC 60255-149 form.
    """
    positive(time=time)
    return time / trip_time(current, setting, 1.0, before, pickup)


def setting_of_trip_time(
    current: float, time: float, trip_class: float, before: float = 0.0, pickup: float = PICKUP
) -> float:
    """Setting at which an overload of a class would trip in the time seen.

    x^2 = (E - w^2) / (E - 1), E = exp(t / tau); I_set = I / (pickup x)

    Parameters
    ----------
    current : float
        Motor current, [A], 0.2 to 1000
    time : float
        Time from the start to the trip, [s], 1 to 3600
    trip_class : float
        Trip class, [s], 5 to 40
    before : float
        Share of the setting at which it ran warm before, nought from cold, [-], 0 to 1
    pickup : float
        Current borne for ever over the setting, [-], 1 to 1.2

    Returns
    -------
    float
        Setting, [A]

    Notes
    -----
    Not solved back for pickup. Held against the dial: well under it, the overload trips earlier than its
    setting says.

    Examples
    --------
    >>> round(setting_of_trip_time(12.0, 100.0, 10.0), 1)
    5.0

    References
    ----------
    Inverse of the thermal model of IEC 60255-149 form.
    """
    positive(current=current, time=time)
    not_negative(before=before)
    grown = math.exp(time / trip_time_constant(trip_class, pickup))
    square = (grown - min((before / pickup) ** 2, 1.0)) / (grown - 1.0)
    return current / (pickup * math.sqrt(square))


def trip_window(kind: str) -> tuple[float, float]:
    """Times within which an overload of a class may trip, cold, at 7.2 times its setting.

    10A: 2 to 10 s; 10: 4 to 10 s; 20: 6 to 20 s; 30: 9 to 30 s

    Parameters
    ----------
    kind : str
        Trip class as printed on the relay: 10A, 10, 20 or 30

    Returns
    -------
    tuple of float
        Least and greatest time, [s]

    Notes
    -----
    A class of the American standard is stated at six times the setting, and as a greatest time only.

    Examples
    --------
    >>> trip_window("20")
    (6.0, 20.0)

    References
    ----------
    IEC 60947-4-1, table of trip classes, read in secondary copies.
    """
    window = TRIP_WINDOWS.get(kind.strip().upper())
    if window is None:
        raise ValueError(f"{kind.strip()[:10]!r} is no trip class known here; use {', '.join(TRIP_WINDOWS)}")
    return window
