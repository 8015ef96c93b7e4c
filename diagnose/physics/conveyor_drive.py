"""Conveyor drive: the pull racks want, torque and power for it, what the clutch has in hand, what amps say."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive, within

__all__ = ["conveyor_pull", "drive_power", "drive_torque", "slip_margin", "working_share"]

GRAVITY = 9.80665


def conveyor_pull(racks: float, weight: float, friction: float) -> float:
    """Pull that moves the racks in the machine.

    F = N m g mu

    Parameters
    ----------
    racks : float
        Racks in the machine, [-], 0 to 8
    weight : float
        Mass of one loaded rack, [kg], 2 to 30
    friction : float
        Friction of rack on track, [-], 0.05 to 1

    Returns
    -------
    float
        Pull, [N]

    Notes
    -----
    Friction: plastic on clean wet steel near 0.2, fouled track 0.3 to 0.4 (judgement). A rack that catches adds
    its own hold.

    Examples
    --------
    >>> round(conveyor_pull(4, 30 * 0.45359237, 0.3) / 4.4482216)
    36

    References
    ----------
    Law of dry friction.
    """
    not_negative(racks=racks, weight=weight, friction=friction)
    return racks * weight * GRAVITY * friction


def drive_torque(pull: float, radius: float, efficiency: float) -> float:
    """Torque at the crank or sprocket that makes this pull.

    M = F r / eta

    Parameters
    ----------
    pull : float
        Pull along the track, [N], 0 to 1000
    radius : float
        Radius of crank or chain sprocket, [m], 0.01 to 0.3
    efficiency : float
        Of what lies between shaft and racks, as a fraction, [-], 0.3 to 1

    Returns
    -------
    float
        Torque, [N m]

    Notes
    -----
    For a crank the greatest of the stroke, with the arm square to the crank.

    Examples
    --------
    >>> round(drive_torque(160.0, 0.0762, 0.9), 2)
    13.55

    References
    ----------
    Definition of torque.
    """
    positive(radius=radius, efficiency=efficiency)
    within(0.0, 1.0, efficiency=efficiency)
    not_negative(pull=pull)
    return pull * radius / efficiency


def drive_power(pull: float, speed: float, efficiency: float) -> float:
    """Power the motor must give for a pull at a speed.

    P = F v / eta

    Parameters
    ----------
    pull : float
        Pull along the track, [N], 0 to 1000
    speed : float
        Conveyor speed, [m/s], 0.005 to 0.1
    efficiency : float
        Of reducer and drive together, as a fraction, [-], 0.2 to 1

    Returns
    -------
    float
        Power, [W]

    Notes
    -----
    A few watts: the motor is as large as it is for starting, for a stiff reducer and for a rack that catches. What
    it draws above its idle current therefore tells of drag long before it tells of racks.

    Examples
    --------
    >>> round(drive_power(160.0, 5.8 * 0.00508, 0.5), 1)
    9.4

    References
    ----------
    Definition of power.
    """
    positive(efficiency=efficiency)
    within(0.0, 1.0, efficiency=efficiency)
    not_negative(pull=pull, speed=speed)
    return pull * speed / efficiency


def slip_margin(slips_at: float, needed: float) -> float:
    """What a slip clutch has in hand over the pull the racks want.

    margin = F_slip / F_needed - 1

    Parameters
    ----------
    slips_at : float
        Pull at which the clutch lets go, [N], 20 to 600
    needed : float
        Pull the racks want, [N], 10 to 600

    Returns
    -------
    float
        Margin, as a fraction; negative when it slips in service, [-]

    Notes
    -----
    Under a tenth it slips at every heavier rack; above twice the pull it no longer guards rails and hands
    (judgement).

    Examples
    --------
    >>> round(slip_margin(245.0, 160.0), 2)
    0.53

    References
    ----------
    Definition.
    """
    not_negative(slips_at=slips_at)
    positive(needed=needed)
    return slips_at / needed - 1.0


def working_share(current: float, idle: float, full: float) -> float:
    """Share of a motor's rated work from its current, its idle current and its full-load current.

    s = sqrt(I^2 - I0^2) / sqrt(In^2 - I0^2)

    Parameters
    ----------
    current : float
        Current read, [A], 0.6 to 3
    idle : float
        Current of the motor uncoupled, [A], 0.2 to 0.59
    full : float
        Full-load current of the plate, [A], 0.7 to 3

    Returns
    -------
    float
        Share of rated work, as a fraction, [-]

    Notes
    -----
    Magnetising and working current stand at a right angle, so they add as squares: at light load a motor's current
    hardly moves though the work doubles. Taken at rated volts; the losses of idling count as magnetising.

    Examples
    --------
    >>> round(working_share(1.0, 0.72, 1.2), 2)
    0.72

    References
    ----------
    Circle diagram of the induction motor, simplified.
    """
    positive(current=current, idle=idle, full=full)
    if idle >= full:
        raise ValueError("the idle current must lie under the full-load current")
    if current < idle:
        raise ValueError("the current read lies under the idle current: one of them is wrong")
    return math.sqrt(current**2 - idle**2) / math.sqrt(full**2 - idle**2)
