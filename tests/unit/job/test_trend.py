"""The trend test against counting all orders, a statistics library, and figures worked by hand."""

from __future__ import annotations

import math
import random
from datetime import date, timedelta
from itertools import permutations

import numpy as np
import pytest
from scipy import stats

from diagnose.job.trend import Trend, kendall_p, kendall_s, sen_slope, trend

DAY = date(2026, 3, 2)


def dated(values: list[float], apart: int = 100) -> list[tuple[date, float]]:
    return [(DAY + timedelta(days=apart * nth), value) for nth, value in enumerate(values)]


@pytest.mark.parametrize("n", range(4, 11))
def test_exact_probabilities_are_those_of_the_library(n: int) -> None:
    for seed in range(20):
        values = random.Random(seed).sample(range(100), n)
        found = stats.kendalltau(range(n), values, method="exact")
        assert kendall_p(values) == pytest.approx(found.pvalue, abs=1e-12)
        assert kendall_s(values) == round(found.statistic * n * (n - 1) / 2)


@pytest.mark.parametrize(
    "values", [[1, 1, 2, 3], [3, 3, 1, 1, 1], [1, 2, 2, 3, 4, 4], [5, 5, 5, 5], [2, 1, 1, 1, 3, 3, 2]]
)
def test_ties_are_counted_as_all_orders_of_them_say(values: list[float]) -> None:
    """Counted one by one: every order of the values, equal ones among themselves included."""
    size = abs(kendall_s(values))
    far = [abs(kendall_s(order)) >= size for order in permutations(values)]
    assert kendall_p(values) == pytest.approx(sum(far) / len(far), abs=1e-12)


@pytest.mark.parametrize(
    ("values", "p"),
    [
        ([1, 2, 3, 4], 2 / 24),  # one order of 24 rises throughout, one falls
        ([1, 2, 4, 3], 8 / 24),  # four orders with one inversion at most, and their mirrors
        ([5, 4, 3, 2, 1], 2 / 120),
        ([1, 1, 2, 3], 2 / 12),  # twelve orders when two are alike, of which one rises
        ([7, 7, 7, 7], 1.0),
    ],
)
def test_by_hand(values: list[float], p: float) -> None:
    assert kendall_p(values) == pytest.approx(p, abs=1e-12)


def test_the_table_of_small_samples() -> None:
    """One-sided probabilities of S = 6 of four, 10 and 8 of five, 15 of six (Kendall 1975, table of S; from memory)."""
    for n, swaps, s, one_sided in ((4, 0, 6, 0.042), (5, 0, 10, 0.0083), (5, 1, 8, 0.042), (6, 0, 15, 0.0014)):
        values = list(range(n))
        for place in range(swaps):
            values[2 * place], values[2 * place + 1] = values[2 * place + 1], values[2 * place]
        assert kendall_s(values) == s
        assert kendall_p(values) / 2 == pytest.approx(one_sided, abs=6e-4)


@pytest.mark.parametrize("alike", [False, True])
def test_more_than_ten_go_by_the_normal_law(alike: bool) -> None:
    """The library takes no step of one towards nought; its variance is got back from its probability."""
    for seed in range(20):
        rng = random.Random(seed)
        values = [rng.randint(0, 6 if alike else 10**6) + nth * (0.2 if alike else 1e5) for nth in range(14)]
        values = [float(round(v)) for v in values]
        s = abs(kendall_s(values))
        if s < 2:
            continue
        p = stats.kendalltau(range(14), values, method="asymptotic").pvalue
        deviation = s / stats.norm.isf(p / 2)
        assert kendall_p(values) == pytest.approx(2 * stats.norm.sf((s - 1) / deviation), rel=1e-9)


def test_eleven_by_hand() -> None:
    """S = 55, variance 11 · 10 · 27 / 18 = 165, z = 54 / √165 = 4.204."""
    assert kendall_p(list(range(11))) == pytest.approx(2 * stats.norm.sf(54 / math.sqrt(165)), rel=1e-9)
    assert kendall_p(list(range(11))) == pytest.approx(2.6e-5, rel=0.02)


@pytest.mark.parametrize("n", [4, 5, 7, 10, 15, 30])
def test_slope_and_band_are_those_of_the_library(n: int) -> None:
    for seed in range(10):
        rng = np.random.default_rng(seed)
        times = np.cumsum(rng.uniform(0.1, 1.0, n))
        values = np.round(20 - times + rng.normal(0, 0.7, n), 1)
        found = stats.theilslopes(values, times, alpha=0.95)
        wanted = (found[0], found[2], found[3])
        assert sen_slope(times.tolist(), values.tolist()) == pytest.approx(wanted, rel=1e-9)


def test_slopes_by_hand() -> None:
    """Six slopes of four points: 1, 2, 2, 3, 2.5, 2; in order 1, 2, 2, 2, 2.5, 3, so that the median is 2."""
    assert sen_slope([0, 1, 2, 3], [0, 1, 4, 6])[0] == pytest.approx(2.0)
    with pytest.raises(ValueError, match="two values"):
        sen_slope([1.0], [2.0])


def test_a_year_is_the_unit_of_time() -> None:
    found = trend(dated([21.0, 19.0, 17.0, 15.0, 13.0], 365))
    assert found is not None
    assert found.slope == pytest.approx(-2 * 365.25 / 365)
    assert found.likely


def test_fewer_than_four_days_have_no_trend() -> None:
    assert trend(dated([3.0, 2.0, 1.0])) is None
    assert trend([*dated([3.0, 2.0, 1.0]), (DAY, 9.0)]) is None


def test_of_one_day_the_last_value_counts_and_order_does_not() -> None:
    points = dated([5.0, 4.0, 3.0, 2.0, 1.0])
    assert trend([(DAY, 0.0), *points]) == trend(reversed(points))


def test_four_can_never_be_likely_and_flat_never_is() -> None:
    """The rarest order of four still comes about once in twelve times."""
    four = trend(dated([4.0, 3.0, 2.0, 1.0]))
    assert four is not None
    assert not four.likely
    assert trend(dated([2.0] * 12)) == Trend(12, 0, 1.0, 0.0, 0.0, 0.0)
