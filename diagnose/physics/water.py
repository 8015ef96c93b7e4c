"""Hardness of water: its scales and words, mixing and softening, and the scale it leaves."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, within

__all__ = [
    "bypass_share",
    "hardness_from_ions",
    "hardness_scales",
    "mixed_hardness",
    "trade_class",
    "usgs_class",
]

_SCALES = (17.118, 1.0, 17.848, 10.0, 14.254, 100.09)  # mg/L as CaCO3 in one step of each scale
_SURVEY = ((60.0, "soft"), (120.0, "moderately hard"), (180.0, "hard"))  # mg/L as CaCO3
_TRADE = ((3.5, "slightly hard"), (7.0, "moderately hard"), (10.5, "hard"))  # gpg


def hardness_scales(hardness: float) -> tuple[float, float, float, float, float, float]:
    """One hardness in the six scales it is written in.

    gpg = mg/L / 17.118; German 17.848; French 10; English 14.254; mmol/L 100.09

    Parameters
    ----------
    hardness : float
        Hardness as CaCO3, [mg/L], 0 to 800

    Returns
    -------
    tuple[float, float, float, float, float, float]
        gpg, mg/L as CaCO3, German, French, English degrees, mmol/L, [-]

    Notes
    -----
    Grains are grains as CaCO3 in a US gallon; the English degree is a grain in an imperial gallon.

    Examples
    --------
    >>> [round(s, 2) for s in hardness_scales(171.18)]
    [10.0, 171.18, 9.59, 17.12, 12.01, 1.71]

    References
    ----------
    Definitions of the scales; 17.118 as tabulated by the trade (secondary).
    """
    not_negative(hardness=hardness)
    return tuple(hardness / each for each in _SCALES)  # type: ignore[return-value]


def usgs_class(hardness: float) -> str:
    """Word of the public water survey for a hardness.

    soft to 60 mg/L, moderately hard to 120, hard to 180, very hard above

    Parameters
    ----------
    hardness : float
        Hardness as CaCO3, [mg/L], 0 to 800

    Returns
    -------
    str
        soft, moderately hard, hard, or very hard, [-]

    Notes
    -----
    Not the trade's words: its "soft" ends at 17 mg/L. Say whose word it is.

    Examples
    --------
    >>> usgs_class(120.0), usgs_class(121.0)
    ('moderately hard', 'hard')

    References
    ----------
    U.S. Geological Survey, classes of water hardness.
    """
    not_negative(hardness=hardness)
    return next((word for top, word in _SURVEY if hardness <= top), "very hard")


def trade_class(hardness: float) -> str:
    """Word of the water-treatment trade for a hardness.

    soft under 1 gpg, slightly hard to 3.5, moderately hard to 7, hard to 10.5, very hard above

    Parameters
    ----------
    hardness : float
        Hardness as CaCO3, [mg/L], 0 to 800

    Returns
    -------
    str
        soft, slightly hard, moderately hard, hard, or very hard, [-]

    Notes
    -----
    Not the survey's words: 50 mg/L is soft there and slightly hard here.

    Examples
    --------
    >>> trade_class(120.0), trade_class(50.0)
    ('hard', 'slightly hard')

    References
    ----------
    Trade table of the water-treatment association, seen in a secondary copy.
    """
    not_negative(hardness=hardness)
    grains = hardness / _SCALES[0]
    if grains < 1.0:
        return "soft"
    return next((word for top, word in _TRADE if grains <= top), "very hard")


def hardness_from_ions(calcium: float, magnesium: float) -> float:
    """Hardness from a water analysis.

    H = 2.497 Ca + 4.118 Mg

    Parameters
    ----------
    calcium : float
        Calcium, [mg/L], 0 to 300
    magnesium : float
        Magnesium, [mg/L], 0 to 150

    Returns
    -------
    float
        Hardness as CaCO3, [mg/L]

    Notes
    -----
    Ratios of the molar mass of CaCO3 to those of the ions.

    Examples
    --------
    >>> round(hardness_from_ions(80.0, 20.0), 1)
    282.1

    References
    ----------
    Textbook identity.
    """
    not_negative(calcium=calcium, magnesium=magnesium)
    return 2.497 * calcium + 4.118 * magnesium


def mixed_hardness(hard: float, soft: float, bypass: float) -> float:
    """Hardness of softened water with some raw water in it.

    H = b H_hard + (1 - b) H_soft

    Parameters
    ----------
    hard : float
        Hardness of the raw water as CaCO3, [mg/L], 100 to 800
    soft : float
        Hardness behind the softener as CaCO3, [mg/L], 0 to 50
    bypass : float
        Share of the water that goes round the softener, [-], 0 to 1

    Returns
    -------
    float
        Hardness of the mixture as CaCO3, [mg/L]

    Notes
    -----
    Also what an open bypass does.

    Examples
    --------
    >>> mixed_hardness(300.0, 0.0, 0.2)
    60.0

    References
    ----------
    Conservation of mass.
    """
    not_negative(hard=hard, soft=soft)
    within(0.0, 1.0, bypass=bypass)
    return bypass * hard + (1.0 - bypass) * soft


def bypass_share(mixed: float, hard: float, soft: float) -> float:
    """Share of raw water in softened water, from three hardness tests.

    b = (H - H_soft) / (H_hard - H_soft)

    Parameters
    ----------
    mixed : float
        Hardness at the machine as CaCO3, [mg/L], 50 to 100
    hard : float
        Hardness of the raw water as CaCO3, [mg/L], 100 to 800
    soft : float
        Hardness behind the softener as CaCO3, [mg/L], 0 to 50

    Returns
    -------
    float
        Share that goes round the softener, [-]

    Notes
    -----
    Beside a sound softener it is the bypass; behind one that is used up it tells nothing.

    Examples
    --------
    >>> bypass_share(60.0, 300.0, 0.0)
    0.2

    References
    ----------
    Conservation of mass.
    """
    not_negative(mixed=mixed, hard=hard, soft=soft)
    if not soft <= mixed <= hard or hard <= soft:
        raise ValueError("the mixture must lie between the soft and the hard water")
    return (mixed - soft) / (hard - soft)
