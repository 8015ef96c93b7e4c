"""Centrifugal pumps: pressure, flow and power at another speed or wheel, shaft power, the pump on its jets."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive, within

__all__ = [
    "flow_at_speed",
    "hydraulic_power",
    "power_at_speed",
    "power_of_wheel",
    "pressure_at_speed",
    "pressure_through_jets",
    "pump_efficiency",
]


def flow_at_speed(flow: float, speed: float, new_speed: float) -> float:
    """Flow of a centrifugal pump at another speed.

    Q2 = Q1 n2 / n1

    Parameters
    ----------
    flow : float
        Flow at the first speed, [m3/s], 1e-5 to 0.05
    speed : float
        First speed, [Hz], 10 to 70
    new_speed : float
        Other speed; frequencies of the supply do as well, [Hz], 10 to 70

    Returns
    -------
    float
        Flow at the other speed, [m3/s]

    Notes
    -----
    Same wheel, same arms and jets, turbulent flow. 60 to 50 Hz leaves 0.83 of the flow.

    Examples
    --------
    >>> round(flow_at_speed(0.006, 60.0, 50.0), 6)
    0.005

    References
    ----------
    Affinity laws of centrifugal machines.
    """
    not_negative(flow=flow, new_speed=new_speed)
    positive(speed=speed)
    return flow * new_speed / speed


def pressure_at_speed(pressure: float, speed: float, new_speed: float) -> float:
    """Pressure of a centrifugal pump at another speed.

    p2 = p1 (n2 / n1)^2

    Parameters
    ----------
    pressure : float
        Pressure at the first speed, [Pa], 1e3 to 5e5
    speed : float
        First speed, [Hz], 10 to 70
    new_speed : float
        Other speed; frequencies of the supply do as well, [Hz], 10 to 70

    Returns
    -------
    float
        Pressure at the other speed, [Pa]

    Notes
    -----
    Same wheel, same arms and jets. 60 to 50 Hz leaves 0.69 of the pressure.

    Examples
    --------
    >>> round(pressure_at_speed(100.0, 60.0, 50.0), 1)
    69.4

    References
    ----------
    Affinity laws of centrifugal machines.
    """
    not_negative(pressure=pressure, new_speed=new_speed)
    positive(speed=speed)
    return pressure * (new_speed / speed) ** 2


def power_at_speed(power: float, speed: float, new_speed: float) -> float:
    """Shaft power of a centrifugal pump at another speed.

    P2 = P1 (n2 / n1)^3

    Parameters
    ----------
    power : float
        Shaft power at the first speed, [W], 10 to 2e4
    speed : float
        First speed, [Hz], 10 to 70
    new_speed : float
        Other speed; frequencies of the supply do as well, [Hz], 10 to 70

    Returns
    -------
    float
        Shaft power at the other speed, [W]

    Notes
    -----
    Same wheel, same arms and jets. 60 to 50 Hz leaves 0.58 of the power; 50 to 60 Hz wants 1.73 times.

    Examples
    --------
    >>> round(power_at_speed(1000.0, 50.0, 60.0))
    1728

    References
    ----------
    Affinity laws of centrifugal machines.
    """
    not_negative(power=power, new_speed=new_speed)
    positive(speed=speed)
    return power * (new_speed / speed) ** 3


def power_of_wheel(power: float, diameter: float, new_diameter: float) -> float:
    """Shaft power with a wheel of the same shape but another size.

    P2 = P1 (d2 / d1)^5

    Parameters
    ----------
    power : float
        Shaft power with the first wheel, [W], 10 to 2e4
    diameter : float
        Diameter of the first wheel, [m], 0.05 to 0.3
    new_diameter : float
        Diameter of the other wheel, [m], 0.05 to 0.3

    Returns
    -------
    float
        Shaft power with the other wheel, [W]

    Notes
    -----
    For wheels alike in every measure; a wheel turned down at its rim only follows nearer the third power.

    Examples
    --------
    >>> round(power_of_wheel(1.0, 0.127, 0.1397), 2)
    1.61

    References
    ----------
    Affinity laws of centrifugal machines.
    """
    not_negative(power=power)
    positive(diameter=diameter, new_diameter=new_diameter)
    return power * (new_diameter / diameter) ** 5


def hydraulic_power(flow: float, pressure: float) -> float:
    """Power that goes into the water.

    P = Q p

    Parameters
    ----------
    flow : float
        Flow, [m3/s], 1e-5 to 0.05
    pressure : float
        Pressure the pump adds, [Pa], 1e3 to 5e5

    Returns
    -------
    float
        Power in the water, [W]

    Notes
    -----
    Pressure added: at the manifold, plus the lift from the tank's water to it.

    Examples
    --------
    >>> round(hydraulic_power(0.008, 55e3))
    440

    References
    ----------
    Work of a flow against a pressure.
    """
    not_negative(flow=flow, pressure=pressure)
    return flow * pressure


def pump_efficiency(flow: float, pressure: float, shaft_power: float) -> float:
    """Share of the shaft's power that is found in the water.

    eta = Q p / P_shaft

    Parameters
    ----------
    flow : float
        Flow, [m3/s], 1e-5 to 0.05
    pressure : float
        Pressure the pump adds, [Pa], 1e3 to 5e5
    shaft_power : float
        Power at the shaft, [W], 10 to 2e4

    Returns
    -------
    float
        Efficiency, [-]

    Notes
    -----
    Small wash pumps with open wheels: 0.3 to 0.55, from memory; above 0.8 a figure is wrong.

    Examples
    --------
    >>> round(pump_efficiency(0.008, 55e3, 1000.0), 2)
    0.44

    References
    ----------
    Work of a flow against a pressure.
    """
    not_negative(flow=flow, pressure=pressure)
    positive(shaft_power=shaft_power)
    return flow * pressure / shaft_power


def pressure_through_jets(pressure: float, open_share: float, head: float) -> float:
    """Pressure at the manifold when only a share of the jets' area is open, or more than all of it.

    p_2 = r p / (1 + (r - 1) a^2), r = pressure with every jet shut over that in order

    Parameters
    ----------
    pressure : float
        Pressure with the arms in order, [Pa], 1e3 to 5e5
    open_share : float
        Area open over the area of all jets; above 1 with an end plug out, [-], 0.05 to 3
    head : float
        Pressure with every jet shut over that with the arms in order, [-], 1.05 to 3

    Returns
    -------
    float
        Pressure at the manifold, [Pa]

    Notes
    -----
    A pump curve that falls with the square of the flow: p = p_0 - c Q^2, and Q as a √p.

    Examples
    --------
    >>> [round(pressure_through_jets(8.0, a, 1.5), 1) for a in (0.5, 1.0, 1.5)]
    [10.7, 8.0, 5.6]

    References
    ----------
    Square law of jets set against a parabola for the pump.
    """
    positive(pressure=pressure, open_share=open_share)
    within(1.0 + 1e-9, 10.0, head=head)
    shut = pressure * head
    return shut / (1.0 + (head - 1.0) * open_share**2)
