"""What the class on a dial means: error over the span, the share of a reading it makes, several errors together."""

from __future__ import annotations

import math
from collections.abc import Sequence

from diagnose.physics.demand import not_negative, positive

__all__ = ["GRADES", "combined_error", "dial_error", "error_share", "grade_error", "smallest_span"]

# Grade -> share of the span allowed at the ends and in the middle half of the scale.
GRADES = {
    "0.5": (0.005, 0.005),
    "1": (0.01, 0.01),
    "1.6": (0.016, 0.016),
    "2.5": (0.025, 0.025),
    "A": (0.02, 0.01),
    "B": (0.03, 0.02),
}


def dial_error(span: float, accuracy: float) -> float:
    """Largest error of a gauge whose accuracy is stated as a share of its span.

    error = share x span, the same all over the dial

    Parameters
    ----------
    span : float
        From one end of the scale to the other, [Pa], 1000 to 2e6
    accuracy : float
        Accuracy as a share of the span, [-], 0.001 to 0.05

    Returns
    -------
    float
        Off by at most, [Pa]

    Notes
    -----
    Any unit will do for span and error, as long as it is the same.

    Examples
    --------
    >>> dial_error(100.0, 0.03)
    3.0

    References
    ----------
    What "per cent of span" means.
    """
    positive(span=span, accuracy=accuracy)
    return span * accuracy


def error_share(reading: float, span: float, accuracy: float) -> float:
    """How large the error of a gauge may be beside what it reads.

    share = accuracy x span / reading

    Parameters
    ----------
    reading : float
        What the gauge reads, [Pa], 1000 to 2e6
    span : float
        From one end of the scale to the other, [Pa], 1000 to 2e6
    accuracy : float
        Accuracy as a share of the span, [-], 0.001 to 0.05

    Returns
    -------
    float
        Error over reading, [-]

    Notes
    -----
    A 3 % gauge of 100 psi is off by up to 15 % at 20 psi: read in the middle third of a scale.

    Examples
    --------
    >>> round(error_share(20.0, 100.0, 0.03), 2)
    0.15

    References
    ----------
    What "per cent of span" means.
    """
    positive(reading=reading)
    return dial_error(span, accuracy) / reading


def smallest_span(error: float, accuracy: float) -> float:
    """Widest span a gauge may have to be no further off than wanted.

    span = error / share

    Parameters
    ----------
    error : float
        Off by at most, [Pa], 100 to 1e5
    accuracy : float
        Accuracy as a share of the span, [-], 0.001 to 0.05

    Returns
    -------
    float
        Span, [Pa]

    Notes
    -----
    A wider scale of the same class is worse; a narrower one may not hold the pressure of the house.

    Examples
    --------
    >>> round(smallest_span(0.9, 0.03), 9)
    30.0

    References
    ----------
    What "per cent of span" means, turned round.
    """
    positive(error=error, accuracy=accuracy)
    return error / accuracy


def grade_error(reading: float, span: float, grade: str) -> float:
    """Largest error of a gauge of a grade at what it reads.

    error = share of the grade x span; grades A and B allow less in the middle half of the scale

    Parameters
    ----------
    reading : float
        What the gauge reads, over the foot of its scale, [Pa], 0 to 2e6
    span : float
        From one end of the scale to the other, [Pa], 1000 to 2e6
    grade : str
        0.5, 1, 1.6 or 2.5 (class), A (2-1-2 %) or B (3-2-3 %)

    Returns
    -------
    float
        Off by at most, [Pa]

    Notes
    -----
    As new, upright, at room temperature. Not solved back for reading and span: the error goes in
    steps.

    Examples
    --------
    >>> grade_error(50.0, 100.0, "B"), grade_error(10.0, 100.0, "B"), grade_error(10.0, 100.0, "1.6")
    (2.0, 3.0, 1.6)

    References
    ----------
    EN 837-1 classes and the US grades A and B, from memory.
    """
    not_negative(reading=reading)
    positive(span=span)
    if reading > span:
        raise ValueError("the reading lies beyond the scale")
    if grade not in GRADES:
        raise ValueError(f"grade {grade!r} is not known; {', '.join(GRADES)} are")
    ends, middle = GRADES[grade]
    return span * (middle if 0.25 <= reading / span <= 0.75 else ends)


def combined_error(errors: Sequence[float]) -> float:
    """Error of a result to which several independent errors add.

    error = sqrt(sum of e_i^2)

    Parameters
    ----------
    errors : sequence of float
        Each error by itself, all in one unit, [K], 0 to 20

    Returns
    -------
    float
        All together, [K]

    Notes
    -----
    For errors that have nothing to do with one another; the worst case is their plain sum.

    Examples
    --------
    >>> combined_error([3.0, 4.0])
    5.0

    References
    ----------
    Guide to the expression of uncertainty in measurement, from memory.
    """
    if not errors:
        raise ValueError("no error is given")
    for each in errors:
        not_negative(errors=each)
    return math.sqrt(sum(e**2 for e in errors))
