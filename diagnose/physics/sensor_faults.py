"""What a temperature sensor reads through a bad contact in series or a leak across it, and how large these are."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive
from diagnose.physics.ntc import beta_resistance, beta_temperature
from diagnose.physics.pt100 import pt100_resistance, pt100_temperature

__all__ = [
    "contact_in_series",
    "leak_across",
    "ntc_with_contact",
    "ntc_with_leak",
    "ohms_with_leak",
    "pt100_with_leak",
]


def ohms_with_leak(resistance: float, leak: float) -> float:
    """Resistance a meter reads of a sensor with a leak across it.

    R = R_sensor R_leak / (R_sensor + R_leak)

    Parameters
    ----------
    resistance : float
        Resistance of the sensor, [ohm], 100 to 40000
    leak : float
        Resistance of the leak, [ohm], 100 to 1e6

    Returns
    -------
    float
        Resistance of both together, [ohm]

    Notes
    -----
    Always less than the sensor alone.

    Examples
    --------
    >>> ohms_with_leak(10e3, 10e3)
    5000.0

    References
    ----------
    Ohm's law for two resistances.
    """
    positive(resistance=resistance, leak=leak)
    return resistance * leak / (resistance + leak)


def leak_across(sound: float, read: float) -> float:
    """Resistance of the leak across a sensor that reads too little.

    R_leak = R_sound R_read / (R_sound - R_read)

    Parameters
    ----------
    sound : float
        Resistance the sensor should have at this temperature, [ohm], 80 to 40000
    read : float
        Resistance read, [ohm], 80 to 40000

    Returns
    -------
    float
        Resistance of the leak, [ohm]

    Notes
    -----
    Wet connectors leak with 1 to 50 kohm. Above what a sound sensor has there is no leak, but a contact.

    Examples
    --------
    >>> leak_across(10e3, 5e3)
    10000.0

    References
    ----------
    Ohm's law for two resistances.
    """
    positive(sound=sound, read=read)
    if read >= sound:
        raise ValueError("a leak reads less than the sound sensor, not more")
    return sound * read / (sound - read)


def contact_in_series(sound: float, read: float) -> float:
    """Resistance of leads and contacts in series with a sensor that reads too much.

    R_series = R_read - R_sound

    Parameters
    ----------
    sound : float
        Resistance the sensor should have at this temperature, [ohm], 80 to 20000
    read : float
        Resistance read, [ohm], 80 to 60000

    Returns
    -------
    float
        Resistance in series, [ohm]

    Notes
    -----
    Sound leads have a few tenths of an ohm; a green contact tens to thousands.

    Examples
    --------
    >>> contact_in_series(130.9, 133.0) < 2.2
    True

    References
    ----------
    Ohm's law for two resistances.
    """
    positive(sound=sound, read=read)
    if read < sound:
        raise ValueError("a contact in series reads more than the sound sensor, not less")
    return read - sound


def ntc_with_contact(temperature: float, nominal: float, beta: float, contact: float) -> float:
    """What a control shows of a thermistor with a corroded contact in series.

    R = R_sensor + R_contact; the more ohms, the colder it reads

    Parameters
    ----------
    temperature : float
        True temperature of the sensor, [K], 273.15 to 373.15
    nominal : float
        Resistance at 25 °C, [ohm], 5000 to 20000
    beta : float
        Beta of the curve, [K], 3000 to 4500
    contact : float
        Resistance of the contact, [ohm], 0 to 5000

    Returns
    -------
    float
        Temperature shown, [K]

    Notes
    -----
    The hotter, the worse: the same ohms are more beside the few of a hot sensor. Not solved back for beta: two
    betas can show the same.

    Examples
    --------
    >>> round(ntc_with_contact(353.15, 10e3, 3977.0, 200.0) - 273.15, 1)
    75.4

    References
    ----------
    Ohm's law and the beta model of thermistors.
    """
    not_negative(contact=contact)
    return beta_temperature(beta_resistance(temperature, nominal, beta) + contact, nominal, beta)


def ntc_with_leak(temperature: float, nominal: float, beta: float, leak: float) -> float:
    """What a control shows of a thermistor with a wet connector across it.

    R = R_sensor R_leak / (R_sensor + R_leak); the fewer ohms, the hotter it reads

    Parameters
    ----------
    temperature : float
        True temperature of the sensor, [K], 273.15 to 373.15
    nominal : float
        Resistance at 25 °C, [ohm], 5000 to 20000
    beta : float
        Beta of the curve, [K], 3000 to 4500
    leak : float
        Resistance of the leak, [ohm], 1000 to 50000

    Returns
    -------
    float
        Temperature shown, [K]

    Notes
    -----
    The colder, the worse: a leak of 10 kohm adds 18 °C at room temperature and 3 °C at 80. Not solved back for
    beta: two betas can show the same.

    Examples
    --------
    >>> round(ntc_with_leak(353.15, 10e3, 3977.0, 10e3) - 273.15, 1)
    83.7

    References
    ----------
    Ohm's law and the beta model of thermistors.
    """
    ohms = ohms_with_leak(beta_resistance(temperature, nominal, beta), leak)
    return beta_temperature(ohms, nominal, beta)


def pt100_with_leak(temperature: float, leak: float) -> float:
    """What a control shows of a Pt100 with a leak across it.

    R = R_sensor R_leak / (R_sensor + R_leak); the fewer ohms, the colder it reads

    Parameters
    ----------
    temperature : float
        True temperature of the sensor, [K], 273.15 to 423.15
    leak : float
        Resistance of the leak, [ohm], 500 to 1e5

    Returns
    -------
    float
        Temperature shown, [K]

    Notes
    -----
    The other way round than a thermistor. A leak of 10 kohm takes 4 °C at 80.

    Examples
    --------
    >>> round(pt100_with_leak(353.15, 10e3) - 273.15, 1)
    75.6

    References
    ----------
    Ohm's law and IEC 60751:2008.
    """
    return pt100_temperature(ohms_with_leak(pt100_resistance(temperature), leak))
