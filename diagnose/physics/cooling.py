"""Cooling after a trip, the heat of many starts, and the band a coil works in."""

from __future__ import annotations

import math

from diagnose.physics.demand import RefusedError, not_negative, positive, within
from diagnose.physics.motors import overload_trip
from diagnose.physics.protection import PICKUP, trip_time_constant

__all__ = ["coil_share", "cooling_time", "current_of_starts", "overload_trip_by_words", "reset_time", "starts_allowed"]


def cooling_time(time_constant: float, start: float, reset: float, air: float) -> float:
    """Time a protector takes to cool to where it closes again.

    t = tau ln((T_start - T_air) / (T_reset - T_air))

    Parameters
    ----------
    time_constant : float
        Time constant of the standing motor or relay, [s], 60 to 7200
    start : float
        Temperature at the trip, [K], 333.15 to 453.15
    reset : float
        Temperature at which it closes, [K], 313.15 to 373.15
    air : float
        Air round it, [K], 273.15 to 312.15

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    A standing motor cools several times slower than a running one warms. Air above the reset temperature: it
    never closes.

    Examples
    --------
    >>> round(cooling_time(1800.0, 423.15, 343.15, 303.15) / 60)  # 150 to 70 °C in 30 °C air, half an hour's constant
    33

    References
    ----------
    Newton's law of cooling.
    """
    positive(time_constant=time_constant, start=start, reset=reset, air=air)
    if reset <= air:
        raise RefusedError(f"reset = {reset} is not above the air: it never closes", "reset", reset, air)
    if start < reset:
        raise RefusedError(
            f"start = {start} is under the reset temperature: it is closed already", "start", start, reset
        )
    return time_constant * math.log((start - air) / (reset - air))


def reset_time(trip_class: float, share: float, pickup: float = PICKUP) -> float:
    """Time an overload relay takes to cool to where it can be reset.

    t = tau ln(1 / share)

    Parameters
    ----------
    trip_class : float
        Trip class, [s], 5 to 40
    share : float
        Share of its heat at the trip that is left at the reset, [-], 0.1 to 0.95
    pickup : float
        Current borne for ever over the setting, [-], 1 to 1.2

    Returns
    -------
    float
        Time, [s]

    Notes
    -----
    Cooling with the heating's own time constant; the heater cools so, a motor behind it far slower: a reset
    overload does not say that the motor is cool.

    Examples
    --------
    >>> round(reset_time(10.0, 0.6) / 60, 1)
    3.5

    References
    ----------
    Thermal model of the form of IEC 60255-149.
    """
    positive(share=share)
    within(0.0, 1.0, share=share)
    return trip_time_constant(trip_class, pickup) * math.log(1.0 / share)


def current_of_starts(starts: float, start_time: float, start_current: float, run_current: float) -> float:
    """Steady current that warms a motor as much as its starts and its running do together.

    I^2 = I_run^2 + n t (I_start^2 - I_run^2), n in starts a second

    Parameters
    ----------
    starts : float
        Starts, [1/s], 0 to 0.05
    start_time : float
        Time a start takes, [s], 0.1 to 10
    start_current : float
        Current in a start, [A], 5 to 500
    run_current : float
        Current in running, [A], 0.2 to 4.5

    Returns
    -------
    float
        Current, [A]

    Notes
    -----
    The motor runs in between. Heat goes with the square of the current; a motor that stands between starts also
    cools worse.

    Examples
    --------
    >>> round(current_of_starts(60 / 3600, 1.0, 40.0, 6.0), 2)
    7.88

    References
    ----------
    Mean of the squares over time.
    """
    not_negative(starts=starts)
    positive(start_time=start_time, start_current=start_current, run_current=run_current)
    within(0.0, 1.0, time_spent_starting=starts * start_time)
    return math.sqrt(run_current**2 + starts * start_time * (start_current**2 - run_current**2))


def starts_allowed(setting: float, start_time: float, start_current: float, run_current: float) -> float:
    """Starts that bring an overload just to its setting.

    n = (I_set^2 - I_run^2) / (t (I_start^2 - I_run^2))

    Parameters
    ----------
    setting : float
        Setting of the overload, [A], 5 to 60
    start_time : float
        Time a start takes, [s], 0.1 to 10
    start_current : float
        Current in a start, [A], 70 to 500
    run_current : float
        Current in running, [A], 0.2 to 4.5

    Returns
    -------
    float
        Starts, [1/s]

    Notes
    -----
    The motor's own limit may be lower: its plate or label governs.

    Examples
    --------
    >>> round(starts_allowed(6.8, 1.0, 40.0, 6.0) * 3600)
    24

    References
    ----------
    Mean of the squares over time.
    """
    positive(setting=setting, start_time=start_time, start_current=start_current, run_current=run_current)
    if setting <= run_current:
        raise RefusedError(f"setting = {setting} is used up by running alone", "setting", setting, run_current)
    if start_current <= run_current:
        raise RefusedError(f"start_current = {start_current} is no start", "start_current", start_current, run_current)
    return (setting**2 - run_current**2) / (start_time * (start_current**2 - run_current**2))


def coil_share(voltage: float, rated: float) -> float:
    """Volts at a contactor's coil as a share of its label.

    share = V / V_rated

    Parameters
    ----------
    voltage : float
        Volts at the coil while it pulls in, [V], 10 to 700
    rated : float
        Volts on the coil's label, [V], 20 to 600

    Returns
    -------
    float
        Share, [-]

    Notes
    -----
    Made to work from 85 to 110 %: under it the magnet chatters and burns its contacts, over it the coil burns.

    Examples
    --------
    >>> round(coil_share(98.0, 120.0), 3)
    0.817

    References
    ----------
    TM 5-683 / NAVFAC MO-116, chapter 5.
    """
    positive(voltage=voltage, rated=rated)
    return voltage / rated


def overload_trip_by_words(full_load: float, service_factor: str, will_not_start: str) -> float:
    """Greatest trip current of a separate overload device, asked with yes and no.

    125 % (service factor of 1.15 and more, or rise of 40 °C and less), else 115 %; where the motor does
    not start on that, 140 % and 130 %

    Parameters
    ----------
    full_load : float
        Full-load current on the motor's nameplate, [A], 0.2 to 150
    service_factor : str
        "yes" for a service factor of at least 1.15 or a rise of at most 40 °C
    will_not_start : str
        "yes" where the motor would not start on the ordinary setting

    Returns
    -------
    float
        Greatest trip current, [A]

    Notes
    -----
    From the nameplate, not from the code's tables. Local codes and licensed practice govern.

    Examples
    --------
    >>> round(overload_trip_by_words(34.0, "no", "no"), 1), round(overload_trip_by_words(34.0, "yes", "no"), 1)
    (39.1, 42.5)

    References
    ----------
    NEC 430.32(A)(1) and (C), read in secondary copies.
    """
    return overload_trip(full_load, service_factor == "yes", will_not_start == "yes")
