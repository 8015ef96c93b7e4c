"""Chemical sanitisers held against the Food Code: least temperature, contact time, and a verdict for each kind."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive, within

__all__ = [
    "chlorine_least_temperature",
    "chlorine_verdict",
    "contact_time_least",
    "iodine_verdict",
    "quat_verdict",
]

# From mg/L, least °F and °C at pH 8 or less, and at pH 10 or less: both columns as the code prints them.
_ROWS = (
    (100.0, (55.0, 13.0), (55.0, 13.0)),
    (50.0, (75.0, 24.0), (100.0, 38.0)),
    (25.0, (120.0, 49.0), (120.0, 49.0)),
)
_IODINE = (12.5, 25.0)  # mg/L
_QUAT_HARDNESS = 500.0  # mg/L as CaCO3, where the label names none


def _kelvin(figure: tuple[float, float], celsius: bool) -> float:
    return figure[1] + 273.15 if celsius else (figure[0] + 459.67) / 1.8


def _reached(temperature: float, least: tuple[float, float]) -> bool:
    # The code rounds °C up from °F: 75 °F is printed 24 °C. Whoever reads either figure has reached it.
    return temperature >= min(_kelvin(least, False), _kelvin(least, True)) - 1e-6


def _row(strength: float, ph: float) -> tuple[float, float]:
    positive(strength=strength)
    within(0.0, 14.0, ph=ph)
    if ph > 10.0:
        raise ValueError("above pH 10 the code's table gives no temperature: chlorine hardly works there")
    for least, mild, alkaline in _ROWS:
        if strength >= least:
            return mild if ph <= 8.0 else alkaline
    raise ValueError("below 25 mg/L of chlorine no temperature is enough")


def chlorine_least_temperature(strength: float, ph: float, celsius: bool = False) -> float:
    """Least temperature of a chlorine solution by its strength and pH.

    25 to 49 mg/L: 120 °F. 50 to 99 mg/L: 100 °F up to pH 10, 75 °F up to pH 8. 100 mg/L and more: 55 °F

    Parameters
    ----------
    strength : float
        Free available chlorine, [mg/L], 25 to 200
    ph : float
        pH of the solution, [-], 5 to 10
    celsius : bool
        Take the code's figures in degrees Celsius (49, 38, 24, 13), which it rounds by itself

    Returns
    -------
    float
        Least temperature, [K]

    Notes
    -----
    ValueError below 25 mg/L or above pH 10: the code has no row for them.

    Examples
    --------
    >>> round(chlorine_least_temperature(50, 9) * 1.8 - 459.67, 6)
    100.0
    >>> round(chlorine_least_temperature(50, 8) * 1.8 - 459.67, 6)
    75.0

    References
    ----------
    Food Code 4-501.114(A).
    """
    return _kelvin(_row(strength, ph), celsius)


def chlorine_verdict(strength: float, ph: float, temperature: float) -> str:
    """Whether a chlorine rinse is strong enough and warm enough for its pH.

    the row of the code's table for strength and pH gives the least temperature

    Parameters
    ----------
    strength : float
        Free available chlorine, [mg/L], 5 to 200
    ph : float
        pH of the solution, [-], 5 to 11
    temperature : float
        Temperature of the rinse, [K], 280 to 350

    Returns
    -------
    str
        enough, too weak, too alkaline, or too cold, [-]

    Notes
    -----
    A figure reached in either of the code's two units counts as reached.

    Examples
    --------
    >>> chlorine_verdict(50, 9, (90 + 459.67) / 1.8)
    'too cold'
    >>> chlorine_verdict(50, 8, (76 + 459.67) / 1.8)
    'enough'

    References
    ----------
    Food Code 4-501.114(A).
    """
    positive(temperature=temperature)
    not_negative(strength=strength)
    within(0.0, 14.0, ph=ph)
    if strength < _ROWS[-1][0]:
        return "too weak"
    if ph > 10.0:
        return "too alkaline"
    return "enough" if _reached(temperature, _row(strength, ph)) else "too cold"


def iodine_verdict(strength: float, ph: float, temperature: float) -> str:
    """Whether an iodine solution stands within the code.

    12.5 to 25 mg/L, pH 5.0 or less, 68 °F (20 °C) or more

    Parameters
    ----------
    strength : float
        Free iodine, [mg/L], 5 to 50
    ph : float
        pH of the solution, [-], 3 to 8
    temperature : float
        Temperature, [K], 280 to 320

    Returns
    -------
    str
        enough, too weak, too strong, too alkaline, or too cold, [-]

    Notes
    -----
    A label that names another pH goes before the 5.0.

    Examples
    --------
    >>> iodine_verdict(12.5, 5.0, 293.15)
    'enough'
    >>> iodine_verdict(26, 5.0, 293.15)
    'too strong'

    References
    ----------
    Food Code 4-501.114(B).
    """
    positive(temperature=temperature)
    not_negative(strength=strength)
    within(0.0, 14.0, ph=ph)
    if not _IODINE[0] <= strength <= _IODINE[1]:
        return "too weak" if strength < _IODINE[0] else "too strong"
    if ph > 5.0:
        return "too alkaline"
    return "enough" if _reached(temperature, (68.0, 20.0)) else "too cold"


def quat_verdict(strength: float, wanted: float, hardness: float, temperature: float) -> str:
    """Whether a quaternary-ammonium solution stands within the code.

    the label's strength, 75 °F (24 °C) or more, hardness 500 mg/L or less unless the label says more

    Parameters
    ----------
    strength : float
        Strength read, [mg/L], 50 to 500
    wanted : float
        Least strength on the label, [mg/L], 150 to 400
    hardness : float
        Hardness of the water as CaCO3, [mg/L], 0 to 700
    temperature : float
        Temperature, [K], 280 to 330

    Returns
    -------
    str
        enough, too weak, too hard, or too cold, [-]

    Notes
    -----
    The code itself names no strength: the label's governs.

    Examples
    --------
    >>> quat_verdict(200, 200, 501, 300.0)
    'too hard'

    References
    ----------
    Food Code 4-501.114(C).
    """
    positive(temperature=temperature, wanted=wanted)
    not_negative(strength=strength, hardness=hardness)
    if strength < wanted:
        return "too weak"
    if hardness > _QUAT_HARDNESS:
        return "too hard"
    return "enough" if _reached(temperature, (75.0, 24.0)) else "too cold"


def contact_time_least(kind: str, strength: float, ph: float, temperature: float) -> float:
    """Least time ware must be in contact with a chemical sanitiser.

    chlorine 10 s, or 7 s from 50 mg/L where it is warm enough for its pH; any other chemical 30 s

    Parameters
    ----------
    kind : str
        chlorine, or other
    strength : float
        Strength, [mg/L], 5 to 200
    ph : float
        pH of the solution, [-], 5 to 10
    temperature : float
        Temperature, [K], 280 to 350

    Returns
    -------
    float
        Least contact time, [s]

    Notes
    -----
    The label governs. The code names 7 s "for 50 mg/L"; more than that is taken to be as good.
    Not solved back for strength, ph and temperature: the time goes in steps.

    Examples
    --------
    >>> contact_time_least("chlorine", 50, 8, (76 + 459.67) / 1.8)
    7.0
    >>> contact_time_least("other", 200, 7, 300.0)
    30.0

    References
    ----------
    Food Code 4-703.11(C).
    """
    positive(temperature=temperature)
    not_negative(strength=strength)
    within(0.0, 14.0, ph=ph)
    if kind not in ("chlorine", "other"):
        raise ValueError(f"{kind!r} is neither chlorine nor other")
    if kind == "other":
        return 30.0
    if strength < 50.0 or ph > 10.0:
        return 10.0
    # 7 s goes with the figures for 50 mg/L, whatever a stronger solution would allow.
    return 7.0 if _reached(temperature, _row(50.0, ph)) else 10.0
