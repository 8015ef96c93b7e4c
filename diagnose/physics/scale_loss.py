"""Fuel that scale wastes on a fired surface, and why an element in the water wastes none."""

from __future__ import annotations

from itertools import pairwise

from diagnose.physics.demand import within

__all__ = ["DEPOSITS", "SURFACES", "fuel_lost_to_scale"]

_INCH = 0.0254
SURFACES = ("fired exchanger", "immersion element")
# Deposit -> share of the fuel lost at each thickness in inches.
_TABLE: dict[str, tuple[tuple[float, float], ...]] = {
    "normal": ((0.0, 0.0), (1 / 64, 0.010), (1 / 32, 0.020), (3 / 64, 0.030), (1 / 16, 0.039)),
    "high iron": ((0.0, 0.0), (1 / 64, 0.016), (1 / 32, 0.031), (3 / 64, 0.047), (1 / 16, 0.062)),
    "iron and silica": ((0.0, 0.0), (1 / 64, 0.035), (1 / 32, 0.070)),
}
DEPOSITS = tuple(_TABLE)


def fuel_lost_to_scale(thickness: float, deposit: str = "normal", surface: str = "fired exchanger") -> float:
    """Share of the fuel that scale on a fired exchanger sends up the flue.

    Read from the table of the tip sheet, straight between its rows

    Parameters
    ----------
    thickness : float
        Scale, [m], 0 to 0.0016
    deposit : str
        Kind of scale: normal, high iron, or iron and silica, [-]
    surface : str
        What it sits on: a fired exchanger; an immersion element is refused, [-]

    Returns
    -------
    float
        Share of the fuel lost, [-]

    Notes
    -----
    Not for an immersion element: all its heat still goes into the water. Scale there overheats and burns
    out the element and chokes the flow, which is another loss.

    Examples
    --------
    >>> round(fuel_lost_to_scale(0.0254 / 32), 3)  # 1/32 in of usual scale
    0.02

    References
    ----------
    Steam Tip Sheet 7, Clean Firetube Boiler Waterside Heat Transfer Surfaces, U.S. Department of Energy, 2006
    (table after NIST Handbook 115, supplement 1; seen in a secondary copy).
    """
    if surface != "fired exchanger":
        raise ValueError(f"scale costs no fuel on this surface: {surface}; all its heat still goes into the water")
    if deposit not in _TABLE:
        raise ValueError(f"deposit must be one of {', '.join(DEPOSITS)}, not {deposit!r}")
    rows = _TABLE[deposit]
    within(0.0, rows[-1][0] * _INCH * 1.01, thickness=thickness)
    inches = min(thickness / _INCH, rows[-1][0])
    for (low, less), (high, more) in pairwise(rows):
        if inches <= high:
            return less + (more - less) * (inches - low) / (high - low)
    return rows[-1][1]
