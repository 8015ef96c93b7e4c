"""Spaced repetition: what is known fades, what is done well is asked for later, what fails comes next."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.practice.exercise import Exercise, Result
from diagnose.practice.progress import HIGHEST, UNTRIED, grade, kept_of, standing, standings, weakest

NOW = datetime(2030, 5, 1, 12, tzinfo=UTC)


def result(
    complaint: str = "rinse_cold",
    days: float = 0.0,
    minutes: float = 20,
    solved: bool = True,
    unsafe: bool = False,
    wrong: int = 0,
) -> Result:
    return Result(
        exercise=Exercise(seed=1, level=1, machine="m", faults=[("a.b", 1.0)], complaint=complaint),
        at=(NOW - timedelta(days=days)).isoformat(),
        minutes=minutes,
        expected=30,
        best=20,
        solved=solved,
        unsafe=["opened live"] if unsafe else [],
        wrong_repairs=wrong,
    )


RESULTS = st.builds(
    result,
    days=st.floats(0, 400),
    minutes=st.floats(1, 300),
    solved=st.booleans(),
    unsafe=st.booleans(),
    wrong=st.integers(0, 4),
)


@pytest.mark.parametrize(
    ("given_", "is_"),
    [
        (result(), 1.0),
        (result(minutes=45.0), 1.0),
        (result(minutes=45.1), 0.5),
        (result(wrong=1), 1.0),
        (result(wrong=2), 0.5),
        (result(solved=False), 0.0),
        (result(unsafe=True), 0.0),
    ],
)
def test_grades(given_: Result, is_: float) -> None:
    assert grade(given_) == is_


def test_worked_by_hand() -> None:
    # Twice well, the last four days ago: box 2, half-life 4 days, so half is left of (0.3 + 1 + 1) / 3.
    twice = standing("rinse_cold", [result(days=9), result(days=4)], NOW)
    assert (twice.box, twice.level, twice.tried, twice.found) == (2, 3, 2, 2)
    assert twice.strength == pytest.approx(2.3 / 3 / 2)
    # 2.3 / 3 fades to 0.3 in 4 log2(2.5556) = 5.41455 days, 1.41455 from now.
    assert twice.due == pytest.approx(1.41455, abs=1e-5)


def test_a_failure_comes_next_and_a_success_does_not() -> None:
    stand = standings(["noise", "rinse_cold", "steam_out"], [result(solved=False), result("steam_out")], NOW)
    assert [s.complaint for s in weakest(stand, {})] == ["rinse_cold", "noise", "steam_out"]
    assert stand[0].strength == UNTRIED


def test_what_was_known_once_comes_again() -> None:
    later = NOW + timedelta(days=60)
    stand = standings(["noise", "rinse_cold"], [result()], later)
    assert weakest(stand, {})[0].complaint == "rinse_cold"


def test_of_equals_the_first_in_order() -> None:
    stand = standings(["a", "b", "c"], [], NOW)
    assert [s.complaint for s in weakest(stand, {"c": 0, "a": 1, "b": 2})] == ["c", "a", "b"]


def test_a_time_that_cannot_be_read_counts_as_now() -> None:
    import msgspec

    odd = msgspec.structs.replace(result(), at="last week")
    assert standing("rinse_cold", [odd], NOW).days == 0.0


@given(st.lists(RESULTS, max_size=8))
def test_bounds(results: list[Result]) -> None:
    (stand,) = standings(["rinse_cold"], results, NOW)
    assert 0.0 <= stand.strength <= 1.0
    assert 0 <= stand.box <= HIGHEST
    assert 1 <= stand.level <= 5
    assert stand.found <= stand.tried == len(results)


@given(st.lists(RESULTS, min_size=1, max_size=8), st.floats(0, 100), st.floats(0, 100))
def test_it_only_fades(results: list[Result], one: float, more: float) -> None:
    soon, late = (
        standings(["rinse_cold"], results, NOW + timedelta(days=days))[0].strength for days in (one, one + more)
    )
    assert late <= soon + 1e-12


@given(st.lists(RESULTS, max_size=8))
def test_a_good_exercise_never_weakens_and_a_failed_one_never_strengthens(results: list[Result]) -> None:
    before = standings(["rinse_cold"], results, NOW)[0]
    good = standings(["rinse_cold"], [*results, result()], NOW)[0]
    assert good.strength >= min(before.strength, 0.5)
    assert good.box >= before.box
    failed = standings(["rinse_cold"], [*results, result(solved=False)], NOW)[0]
    assert failed.box == 0
    assert failed.strength < good.strength


@given(st.floats(0, 1000), st.integers(0, HIGHEST - 1))
def test_a_higher_box_keeps_longer(days: float, box: int) -> None:
    assert kept_of(days, box + 1) >= kept_of(days, box)


@given(st.lists(RESULTS, min_size=1, max_size=6))
def test_due_is_when_it_is_as_weak_as_untried(results: list[Result]) -> None:
    stand = standings(["rinse_cold"], results, NOW)[0]
    if 0.0 < stand.due < 300.0:
        then = standings(["rinse_cold"], results, NOW + timedelta(days=stand.due))[0]
        assert then.strength == pytest.approx(UNTRIED, rel=1e-3)
