"""Least squares in small: a few unknowns learnt from a few readings and from what is believed of them beforehand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

__all__ = ["Fit", "inverse", "least_squares", "slopes"]

_STEP = 1e-5  # by which an unknown is moved to see the slope; unknowns are logarithms here, so about one
_ROUNDS = 40
_SETTLED = 1e-9  # of the sum of squares

Residuals = Callable[[Sequence[float]], list[float]]
Matrix = list[list[float]]


@dataclass(frozen=True)
class Fit:
    """Unknowns at their best, how far they may still be off (a covariance), and what does not fit."""

    values: tuple[float, ...]
    covariance: Matrix
    squares: float  # sum of squares left: how badly it all fits


def least_squares(residuals: Residuals, start: Sequence[float]) -> Fit:
    """The unknowns with the least sum of squares of `residuals`, each already over its own standard error.

    Gauss-Newton, damped after Levenberg where a full step makes it worse. There must be at least as many residuals as
    unknowns that tell of all of them, which those of the beliefs see to.

    >>> fit = least_squares(lambda x: [(x[0] - 3.0) / 0.1, (x[0] - 3.3) / 0.2], [0.0])
    >>> round(fit.values[0], 3), round(fit.covariance[0][0] ** 0.5, 4)  # weights 100 and 25: 3.06; sqrt(1 / 125)
    (3.06, 0.0894)
    """
    at, off = list(start), residuals(start)
    worth, damping = _squared(off), 1e-3
    for _ in range(_ROUNDS):
        rows = slopes(residuals, at, off)
        normal, pull = _normal(rows), [-sum(row[i] * r for row, r in zip(rows, off, strict=True)) for i in _over(at)]
        while damping < 1e8:
            damped = [[v + (damping * v if i == j else 0.0) for j, v in enumerate(row)] for i, row in enumerate(normal)]
            step = [sum(a * b for a, b in zip(row, pull, strict=True)) for row in inverse(damped)]
            tried = [a + s for a, s in zip(at, step, strict=True)]
            found = residuals(tried)
            if _squared(found) <= worth:
                break
            damping *= 5.0
        else:
            break
        gained = worth - _squared(found)
        at, off, worth, damping = tried, found, _squared(found), damping / 5.0
        if gained <= _SETTLED * (1.0 + worth):
            break
    return Fit(tuple(at), inverse(_normal(slopes(residuals, at, off))), worth)


def slopes(of: Residuals, at: Sequence[float], there: Sequence[float]) -> Matrix:
    """How each value of `of` goes with each unknown: a row for each value. `there` is what they are at `at`."""
    columns = []
    for nth in _over(at):
        moved = [value + (_STEP if nth == other else 0.0) for other, value in enumerate(at)]
        columns.append([(a - b) / _STEP for a, b in zip(of(moved), there, strict=True)])
    return [list(row) for row in zip(*columns, strict=True)]


def inverse(matrix: Matrix) -> Matrix:
    """The inverse, by Gauss and Jordan. Raises ZeroDivisionError where there is none.

    >>> inverse([[2.0, 0.0], [1.0, 1.0]])
    [[0.5, 0.0], [-0.5, 1.0]]
    """
    size = len(matrix)
    rows = [[*row, *(1.0 if i == j else 0.0 for j in range(size))] for i, row in enumerate(matrix)]
    for nth in range(size):
        best = max(range(nth, size), key=lambda i: abs(rows[i][nth]))
        rows[nth], rows[best] = rows[best], rows[nth]
        lead = rows[nth][nth]
        rows[nth] = [v / lead for v in rows[nth]]
        for other in range(size):
            if other != nth and rows[other][nth]:
                by = rows[other][nth]
                rows[other] = [v - by * w for v, w in zip(rows[other], rows[nth], strict=True)]
    return [row[size:] for row in rows]


def _normal(rows: Matrix) -> Matrix:
    return [[sum(row[i] * row[j] for row in rows) for j in _over(rows[0])] for i in _over(rows[0])]


def _squared(values: Sequence[float]) -> float:
    return sum(v * v for v in values)


def _over(values: Sequence[float]) -> range:
    return range(len(values))
