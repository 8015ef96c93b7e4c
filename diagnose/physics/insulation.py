"""Insulation of windings and elements: what a tester's figure is worth warm, and how it climbs."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive, within

__all__ = ["absorption_ratio", "insulation_at_40", "insulation_life", "insulation_verdict", "leakage_current"]


def insulation_at_40(resistance: float, temperature: float) -> float:
    """Insulation resistance as it would read at 40 °C.

    R_40 = R x 2^((T - 313.15 K) / 10 K)

    Parameters
    ----------
    resistance : float
        Resistance read, [ohm], 1e4 to 1e10
    temperature : float
        Temperature of the winding, [K], 273.15 to 373.15

    Returns
    -------
    float
        Resistance at 40 °C, [ohm]

    Notes
    -----
    Halves for every 10 K; a hot winding that reads low may be sound, a cold one that reads well may not be.

    Examples
    --------
    >>> round(insulation_at_40(2e6, 333.15) / 1e6, 1)  # 2 megohm at 60 °C
    8.0

    References
    ----------
    Common practice with electric machines, no source; the rule of IEEE 43 has this form (from memory).
    """
    positive(resistance=resistance, temperature=temperature)
    within(223.15, 473.15, temperature=temperature)
    return float(resistance * 2.0 ** ((temperature - 313.15) / 10.0))


def absorption_ratio(after_60: float, after_10: float) -> float:
    """How an insulation reading climbs within a minute.

    ratio = R after 60 s / R after 10 s

    Parameters
    ----------
    after_60 : float
        Reading after 60 seconds, [ohm], 1e4 to 1e10
    after_10 : float
        Reading after 10 seconds, [ohm], 1e4 to 1e10

    Returns
    -------
    float
        Ratio, [-]

    Notes
    -----
    Dry insulation climbs; one that stays flat is damp or dirty.

    Examples
    --------
    >>> absorption_ratio(20e6, 16e6)
    1.25

    References
    ----------
    TM 55-1905-223-24-17, 2-14: at least 1.15, that manual's own limit.
    """
    positive(after_60=after_60, after_10=after_10)
    return after_60 / after_10


def insulation_verdict(after_60: float, after_10: float) -> str:
    """Whether insulation passes by its minute's reading and its climb.

    good when R after 60 s > 5 megohm and R after 60 s / R after 10 s >= 1.15

    Parameters
    ----------
    after_60 : float
        Reading after 60 seconds, [ohm], 1e4 to 1e10
    after_10 : float
        Reading after 10 seconds, [ohm], 1e4 to 1e10

    Returns
    -------
    str
        good, low, or damp

    Notes
    -----
    Small windings with little capacitance climb little: there the first figure alone decides.

    Examples
    --------
    >>> insulation_verdict(4e6, 3e6), insulation_verdict(20e6, 18.2e6), insulation_verdict(20e6, 16e6)
    ('low', 'damp', 'good')

    References
    ----------
    TM 55-1905-223-24-17, 2-14.
    """
    if after_60 <= 5e6:
        positive(after_60=after_60, after_10=after_10)
        return "low"
    return "good" if absorption_ratio(after_60, after_10) >= 1.15 else "damp"


def leakage_current(voltage: float, resistance: float) -> float:
    """Current that leaks to earth through insulation.

    I = V / R

    Parameters
    ----------
    voltage : float
        Voltage to earth, [V], 50 to 400
    resistance : float
        Insulation resistance, [ohm], 1e3 to 1e9

    Returns
    -------
    float
        Current, [A]

    Notes
    -----
    Several heaters and motors add up: an earth-leakage device of 30 mA trips anywhere from 15 mA on.

    Examples
    --------
    >>> round(leakage_current(230.0, 1e4) * 1e3)  # mA through 10 kilohm
    23

    References
    ----------
    Ohm's law for a resistance.
    """
    not_negative(voltage=voltage)
    positive(resistance=resistance)
    return voltage / resistance


def insulation_life(hotter: float) -> float:
    """Life of a winding's insulation that runs hotter, over its life at its proper temperature.

    share = 0.5^(dT / 10 K)

    Parameters
    ----------
    hotter : float
        How much hotter it runs, [K], 0 to 60

    Returns
    -------
    float
        Share of the life, [-]

    Notes
    -----
    A rule of thumb for ageing by heat alone.

    Examples
    --------
    >>> insulation_life(10.0), insulation_life(20.0)
    (0.5, 0.25)

    References
    ----------
    Motor Systems Tip Sheet 7, U.S. Department of Energy, 2012, page 2.
    """
    not_negative(hotter=hotter)
    return float(0.5 ** (hotter / 10.0))
