"""Whether one figure drifts over the years: the rank test of Mann and Kendall, with the slope of Sen.

Test: over all pairs i < j in time, S = sum of sign(x_j - x_i). Without a trend every order of the values is as likely
as any other. For 4 to 10 values the probability of an S at least so far from nought is counted exactly: S is the number
of pairs that differ less twice the inversions, and how many orders have how many inversions, of n values in groups of
t equal ones, is what the coefficients of the q-multinomial [n]! / ([t1]! [t2]! ...) say. For more values S is taken as
normal with

    variance = (n(n-1)(2n+5) - sum over groups of equal values t(t-1)(2t+5)) / 18

and moved towards nought by one, since it goes in steps of two.

Slope: the median of (x_j - x_i) / (t_j - t_i) over all pairs. Its band holds the true slope in 95 of 100 cases: of the
N slopes in order those numbered (N - C) / 2 and (N + C) / 2 + 1, with C = 1.96 times the root of that variance.

Source: Mann 1945 (Econometrica 13), Kendall 1975 (Rank Correlation Methods, 4th edition), Sen 1968 (Journal of the
American Statistical Association 63), all from memory; that the normal law will do above 10 values: Kendall, from
memory. The bound under which a trend counts as likely is judgement.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import combinations
from statistics import median

__all__ = ["FEWEST", "LIKELY", "Trend", "kendall_p", "kendall_s", "sen_slope", "trend"]

FEWEST = 4  # of fewer values no order is rare
LIKELY = 0.05  # two-sided probability under which a trend is believed; judgement
_EXACT = 10  # up to so many values the orders are counted
_Z95 = 1.959964  # of the normal law, two-sided 95 %
_YEAR = 365.25  # days


@dataclass(frozen=True)
class Trend:
    """What the test says of `n` values: S, its two-sided probability by chance, and the slope a year with its band."""

    n: int
    s: int
    p: float
    slope: float  # in the unit of the values, per year
    low: float  # of the slopes, 95 %
    high: float

    @property
    def likely(self) -> bool:
        """Whether chance alone would rarely bring such an order about, and there is a slope at all."""
        return self.p < LIKELY and self.slope != 0


def trend(points: Iterable[tuple[date, float]]) -> Trend | None:
    """The trend of dated values, in any order; None for fewer than four days. Of one day the last value counts."""
    by_day = dict(points)
    if len(by_day) < FEWEST:
        return None
    days = sorted(by_day)
    values = [by_day[day] for day in days]
    s = kendall_s(values)
    slope, low, high = sen_slope([(day - days[0]).days / _YEAR for day in days], values)
    return Trend(len(values), s, kendall_p(values), slope, low, high)


def kendall_s(values: Sequence[float]) -> int:
    """Pairs that rise less pairs that fall.

    >>> kendall_s([1, 3, 2, 4]), kendall_s([21, 19, 19, 12])
    (4, -5)
    """
    return sum((later > earlier) - (later < earlier) for earlier, later in combinations(values, 2))


def kendall_p(values: Sequence[float]) -> float:
    """Two-sided probability that chance alone orders these values so one-sidedly or more.

    Of 120 orders of five values two rise or fall throughout:

    >>> round(kendall_p([21, 18, 16, 13, 12]), 5) == round(2 / 120, 5)
    True
    """
    s, groups = abs(kendall_s(values)), list(Counter(values).values())
    if len(values) <= _EXACT:
        counts = _inversions(groups)
        pairs = len(counts) - 1  # that differ
        return sum(c for k, c in enumerate(counts) if abs(pairs - 2 * k) >= s) / sum(counts)
    variance = _variance(groups)
    return math.erfc((s - 1) / math.sqrt(2.0 * variance)) if s > 1 and variance else 1.0


def sen_slope(times: Sequence[float], values: Sequence[float]) -> tuple[float, float, float]:
    """Median slope, and its band at 95 %. Times must differ; ValueError for fewer than two values.

    >>> sen_slope([0.0, 1.0, 2.0, 3.0], [21.0, 19.0, 17.0, 15.0])
    (-2.0, -2.0, -2.0)
    """
    if len(values) < 2:
        raise ValueError("a slope wants two values at least")
    pairs = combinations(zip(times, values, strict=True), 2)
    slopes = sorted((x2 - x1) / (t2 - t1) for (t1, x1), (t2, x2) in pairs)
    reach = _Z95 * math.sqrt(_variance(list(Counter(values).values())))
    first = max(round((len(slopes) - reach) / 2) - 1, 0)
    last = min(round((len(slopes) + reach) / 2), len(slopes) - 1)
    return median(slopes), slopes[first], slopes[last]


def _variance(groups: Sequence[int]) -> float:
    """Variance of S by chance, from how many values are equal in each group."""
    n = sum(groups)
    return (n * (n - 1) * (2 * n + 5) - sum(t * (t - 1) * (2 * t + 5) for t in groups)) / 18


def _inversions(groups: Sequence[int]) -> list[int]:
    """How many orders of these groups of equal values have 0, 1, 2, ... inversions: the q-multinomial."""
    counts, placed = [1], 0
    for size in groups:
        placed += size
        counts = _product(counts, _ways(placed, size))
    return counts


def _ways(n: int, k: int) -> list[int]:
    """The q-binomial of n over k, by [n, k] = [n-1, k-1] + q^k [n-1, k]."""
    if k in (0, n):
        return [1]
    without = [0] * k + _ways(n - 1, k)
    for power, count in enumerate(_ways(n - 1, k - 1)):
        without[power] += count
    return without


def _product(one: Sequence[int], other: Sequence[int]) -> list[int]:
    result = [0] * (len(one) + len(other) - 1)
    for i, a in enumerate(one):
        for j, b in enumerate(other):
            result[i + j] += a * b
    return result
