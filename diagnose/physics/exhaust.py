"""What exhaust air carries out of a machine: heat, water; and what comes in to take its place."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive, within
from diagnose.physics.moist_air import SEA_LEVEL, humidity_ratio, moist_enthalpy, moist_volume

__all__ = ["TANK_AIR", "exhaust_heat", "exhaust_moisture", "heat_of_exhaust"]

# Of the dry air exhausted, the part that has swept the tank's spray and left saturated; the rest comes past the
# curtains straight into the vent. Judgement: at 600 cfm and 160 °F it takes some 8 kW, half of a small tank's heater.
TANK_AIR = 0.03


def exhaust_heat(
    flow: float,
    temperature: float,
    humidity: float,
    room_temperature: float,
    room_humidity: float = 0.5,
    pressure: float = SEA_LEVEL,
) -> float:
    """Heat carried out by exhaust air, from its own temperature and humidity.

    P = Q / v (h_exhaust - h_room)

    Parameters
    ----------
    flow : float
        Air taken, at the exhaust's own state, [m3/s], 0 to 1
    temperature : float
        Temperature of the exhaust air, [K], 293.15 to 343.15
    humidity : float
        Relative humidity of the exhaust air, as a fraction, [-], 0 to 1
    room_temperature : float
        Temperature of the room, [K], 283.15 to 313.15
    room_humidity : float
        Relative humidity of the room, as a fraction, [-], 0 to 1
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Heat carried out, [W]

    Notes
    -----
    Negative where the exhaust is drier or colder than the room: then the room warms the machine. Not solved back
    for temperature and humidity and pressure: hot damp air is the lighter one, and which of the two effects wins
    turns round in the range.

    Examples
    --------
    >>> round(exhaust_heat(600 * 4.719474e-4, 308.15, 0.9, 297.15) / 1000, 1)
    22.0

    References
    ----------
    Conservation of energy with the enthalpies of ASHRAE Fundamentals chapter 1.
    """
    not_negative(flow=flow)
    wet, room = (
        humidity_ratio(temperature, humidity, pressure),
        humidity_ratio(room_temperature, room_humidity, pressure),
    )
    gained = moist_enthalpy(temperature, wet) - moist_enthalpy(room_temperature, room)
    return flow / moist_volume(temperature, wet, pressure) * gained


def exhaust_moisture(
    flow: float,
    temperature: float,
    humidity: float,
    room_temperature: float,
    room_humidity: float = 0.5,
    pressure: float = SEA_LEVEL,
) -> float:
    """Water carried out by exhaust air, beyond what the room's air brought in.

    m = Q / v (W_exhaust - W_room)

    Parameters
    ----------
    flow : float
        Air taken, at the exhaust's own state, [m3/s], 0 to 1
    temperature : float
        Temperature of the exhaust air, [K], 293.15 to 343.15
    humidity : float
        Relative humidity of the exhaust air, as a fraction, [-], 0 to 1
    room_temperature : float
        Temperature of the room, [K], 283.15 to 313.15
    room_humidity : float
        Relative humidity of the room, as a fraction, [-], 0 to 1
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Water carried out, [kg/s]

    Notes
    -----
    Not solved back for temperature and humidity and pressure: hot damp air is the lighter one, and which of the
    two effects wins turns round in the range.

    Examples
    --------
    >>> round(exhaust_moisture(600 * 4.719474e-4, 308.15, 0.9, 297.15) * 3600, 1)
    26.0

    References
    ----------
    Conservation of mass.
    """
    not_negative(flow=flow)
    wet, room = (
        humidity_ratio(temperature, humidity, pressure),
        humidity_ratio(room_temperature, room_humidity, pressure),
    )
    return flow / moist_volume(temperature, wet, pressure) * (wet - room)


def heat_of_exhaust(
    flow: float,
    tank_temperature: float,
    room_temperature: float,
    room_humidity: float = 0.5,
    tank_air: float = TANK_AIR,
    pressure: float = SEA_LEVEL,
) -> float:
    """Heat that exhaust air takes from a hot tank when only the tank's temperature is known.

    P = Q / v_room x s x (h_saturated(tank) - h_room), s the share of the air that swept the spray

    Parameters
    ----------
    flow : float
        Air taken from the machine, reckoned at room state, [m3/s], 0 to 1
    tank_temperature : float
        Temperature of the tank's water, [K], 313.15 to 353.15
    room_temperature : float
        Temperature of the room, [K], 283.15 to 308.15
    room_humidity : float
        Relative humidity of the room, as a fraction, [-], 0 to 0.9
    tank_air : float
        Share of the air that swept the spray and left saturated, [-], 0.01 to 0.3
    pressure : float
        Pressure of the air; sea level unless given, [Pa], 8e4 to 1.05e5

    Returns
    -------
    float
        Heat taken, [W]

    Notes
    -----
    The share is a judgement and governs the result: measure the exhaust's own temperature and humidity where it
    matters (exhaust-heat). What stands firm is the proportion: twice the air takes twice the heat, and 10 °C
    more in the tank takes half as much again. Not solved back for pressure: thinner air holds more vapour but
    there is less of it.

    Examples
    --------
    >>> round(heat_of_exhaust(600 * 4.719474e-4, 338.7, 297.15) / 1000, 1)
    5.7

    References
    ----------
    Conservation of energy with the enthalpies of ASHRAE Fundamentals chapter 1; the share is judgement.
    """
    not_negative(flow=flow)
    within(0.0, 1.0, tank_air=tank_air)
    positive(pressure=pressure)
    hot, room = (
        humidity_ratio(tank_temperature, 1.0, pressure),
        humidity_ratio(room_temperature, room_humidity, pressure),
    )
    gained = moist_enthalpy(tank_temperature, hot) - moist_enthalpy(room_temperature, room)
    return flow / moist_volume(room_temperature, room, pressure) * tank_air * gained
