"""Measuring a duct: where across it, how much straight before it, and the flow from speed and area."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "LOG_LINEAR",
    "LOG_TCHEBYCHEFF",
    "duct_flow",
    "hood_flow",
    "place_across",
    "points_across",
    "points_of_round",
    "round_area",
    "straight_wanted",
]

# Places across one side of a rectangular duct, as shares of the side, by how many there are.
LOG_TCHEBYCHEFF = {
    5: (0.074, 0.288, 0.500, 0.712, 0.926),
    6: (0.061, 0.235, 0.437, 0.563, 0.765, 0.939),
    7: (0.053, 0.203, 0.366, 0.500, 0.634, 0.797, 0.947),
}
LOG_LINEAR = (0.032, 0.135, 0.321, 0.679, 0.865, 0.968)  # across a round duct, shares of the diameter
_SIDE_OF_FIVE, _SIDE_OF_SIX = 30 * 0.0254, 36 * 0.0254
_HOOD = 100 * 0.3048**2 / 60  # 100 cfm for each foot of hood, in m3/s for each metre


def points_across(side: float) -> tuple[float, ...]:
    """Places to measure across one side of a rectangular duct.

    log-Tchebycheff: x = share x side, 5 places under 30 in, 6 to 36 in, 7 above

    Parameters
    ----------
    side : float
        Side of the duct, [m], 0.1 to 2

    Returns
    -------
    tuple of float
        Distances from the wall, [m]

    Notes
    -----
    So across both sides: at least 25 points in all.

    Examples
    --------
    >>> [round(x / 0.0254, 2) for x in points_across(24 * 0.0254)]
    [1.78, 6.91, 12.0, 17.09, 22.22]

    References
    ----------
    ASHRAE 111 and ISO 3966 as given by instrument manuals (secondary).
    """
    positive(side=side)
    count = 5 if side < _SIDE_OF_FIVE else 6 if side <= _SIDE_OF_SIX else 7
    return tuple(share * side for share in LOG_TCHEBYCHEFF[count])


def points_of_round(diameter: float) -> tuple[float, ...]:
    """Places to measure across a round duct, on each of two or three diameters.

    log-linear: x = share x diameter, 6 places

    Parameters
    ----------
    diameter : float
        Inner diameter, [m], 0.05 to 1

    Returns
    -------
    tuple of float
        Distances from the wall, [m]

    Notes
    -----
    Two diameters at a right angle, three where the flow is uneven.

    Examples
    --------
    >>> [round(x / 0.0254, 2) for x in points_of_round(10 * 0.0254)]
    [0.32, 1.35, 3.21, 6.79, 8.65, 9.68]

    References
    ----------
    ASHRAE 111 and ISO 3966 as given by instrument manuals (secondary).
    """
    positive(diameter=diameter)
    return tuple(share * diameter for share in LOG_LINEAR)


def straight_wanted(diameter: float) -> tuple[float, float]:
    """Straight duct wanted before and behind the place measured.

    10 diameters before it, 3 behind; 5 and 1 at the least

    Parameters
    ----------
    diameter : float
        Inner diameter, or sqrt(4 H V / pi) of a rectangular duct, [m], 0.05 to 1

    Returns
    -------
    tuple of float
        Length before and behind, [m]

    Notes
    -----
    With less, take more points and trust the figure less.

    Examples
    --------
    >>> [round(x, 2) for x in straight_wanted(0.25)]
    [2.5, 0.75]

    References
    ----------
    ASHRAE 111 and ISO 3966 as given by instrument manuals (secondary).
    """
    positive(diameter=diameter)
    return 10.0 * diameter, 3.0 * diameter


def duct_flow(speed: float, area: float) -> float:
    """Air flow from the mean speed and the free area.

    Q = v A

    Parameters
    ----------
    speed : float
        Mean speed over the area, [m/s], 0 to 20
    area : float
        Free area, [m2], 0.005 to 1

    Returns
    -------
    float
        Flow, [m3/s]

    Notes
    -----
    The speed in the middle of a duct is some 10 to 20 % above the mean.

    Examples
    --------
    >>> round(duct_flow(5.2, 0.0547), 3)
    0.284

    References
    ----------
    Conservation of mass.
    """
    not_negative(speed=speed, area=area)
    return speed * area


def round_area(diameter: float) -> float:
    """Area of a round duct.

    A = pi d^2 / 4

    Parameters
    ----------
    diameter : float
        Inner diameter, [m], 0.05 to 1

    Returns
    -------
    float
        Area, [m2]

    Notes
    -----
    A tenth off in the diameter is a fifth off in the flow.

    Examples
    --------
    >>> round(round_area(10 * 0.0254) / 0.3048**2, 3)
    0.545

    References
    ----------
    Geometry of the circle.
    """
    positive(diameter=diameter)
    return math.pi * diameter**2 / 4.0


def hood_flow(length: float) -> float:
    """Exhaust a hood over a dishwasher wants by its length.

    Q = 100 cfm x feet of hood

    Parameters
    ----------
    length : float
        Length of the hood, [m], 0.3 to 6

    Returns
    -------
    float
        Flow, [m3/s]

    Notes
    -----
    Net flow of a hood over a dishwasher; local codes and the maker's plate govern.

    Examples
    --------
    >>> round(hood_flow(6 * 0.3048) / 4.719474e-4)
    600

    References
    ----------
    International Mechanical Code 507.3.4.2 as cited (507.5.5 in other editions).
    """
    not_negative(length=length)
    return length * _HOOD


def place_across(side: float, nth: int) -> float:
    """One place to measure across a side of a rectangular duct, counted from the wall.

    log-Tchebycheff: x = share x side

    Parameters
    ----------
    side : float
        Side of the duct, [m], 0.1 to 0.76
    nth : int
        Which place, from the wall, [-], 1 to 5

    Returns
    -------
    float
        Distance from the wall, [m]

    Notes
    -----
    A side under 30 in has five places, up to 36 in six, a longer one seven.

    Examples
    --------
    >>> round(place_across(24 * 0.0254, 1) / 0.0254, 2)
    1.78

    References
    ----------
    ASHRAE 111 and ISO 3966 as given by instrument manuals (secondary).
    """
    places = points_across(side)
    if not 1 <= nth <= len(places):
        raise ValueError(f"this side has {len(places)} places")
    return places[int(nth) - 1]
