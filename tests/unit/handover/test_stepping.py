"""One knob: it comes there on straight and bent ones, and says so when it is not the knob."""

from __future__ import annotations

import math
import random
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.handover.stepping import Knob, Step, Try, next_setting, slope_learnt

SCREW = Knob(target=20.0, low=18.0, high=22.0, error=0.5, least=-4.0, most=4.0, slope=8.0, grain=0.25)


def played(true: Callable[[float], float], knob: Knob, start: float, seed: int = 0) -> tuple[Step, list[Try]]:
    dice, tries, setting = random.Random(seed), [], start
    while True:
        tries.append(Try(setting, true(setting) + knob.error * dice.uniform(-1.0, 1.0)))
        step = next_setting(tries, knob)
        if step.ended != "set" or len(tries) == 12:
            return step, tries
        assert knob.least <= step.setting <= knob.most
        setting = step.setting


def test_first_step_goes_by_the_slope_believed() -> None:
    step = next_setting([Try(0.0, 14.0)], SCREW)
    assert (step.ended, step.setting, step.expected) == ("set", 0.75, 20.0)  # 6 / 8


def test_second_step_goes_by_the_slope_seen() -> None:
    """2.9 for 0.75 is 3.87 a turn; 3.1 more is 0.80, to the quarter 1.5."""
    tries = [Try(0.0, 14.0), Try(0.75, 16.9)]
    assert slope_learnt(tries, SCREW) == pytest.approx(3.87, abs=0.1)
    assert next_setting(tries, SCREW).setting == pytest.approx(1.5)


def test_a_small_move_seen_badly_hardly_changes_the_belief() -> None:
    rough = Knob(20.0, 18.0, 22.0, 3.0, -4.0, 4.0, 8.0)
    assert slope_learnt([Try(0.0, 14.0), Try(0.1, 14.0)], rough) == pytest.approx(8.0, abs=0.4)


@given(st.floats(2.0, 20.0), st.floats(10.0, 30.0), st.integers(0, 50))
def test_straight_knobs_come_there(gives: float, at_nought: float, seed: int) -> None:
    """Whatever the true slope, from a quarter of what was believed to two and a half times it."""
    if not SCREW.low + 1.0 < at_nought + gives * SCREW.most or not at_nought + gives * SCREW.least < SCREW.high - 1.0:
        return
    step, tries = played(lambda x: at_nought + gives * x, SCREW, 0.0, seed)
    assert len(tries) <= 6
    # Where a quarter of a turn brings more than the band less both readings' errors, none need read within it.
    near = gives * SCREW.grain > SCREW.high - SCREW.low - 2.0 * SCREW.error
    assert step.ended == "reached" or (near and step.ended == "closest")


@pytest.mark.parametrize("start", [5.0, 30.0, 90.0])
@pytest.mark.parametrize("bend", [0.6, 1.0, 2.0])
@pytest.mark.parametrize("falling", [False, True])
def test_bent_knobs_come_there(start: float, bend: float, falling: bool) -> None:
    sign = -1.0 if falling else 1.0
    knob = Knob(sign * 40.0, sign * 40.0 - 2.0, sign * 40.0 + 2.0, 0.5, 0.0, 100.0, sign * 1.0)
    step, tries = played(lambda x: sign * 100.0 * (x / 100.0) ** bend, knob, start)
    assert step.ended == "reached"
    assert len(tries) <= 8


def test_at_its_end() -> None:
    step, tries = played(lambda x: 8.0 + 2.0 * x, SCREW, 0.0)
    assert (step.ended, tries[-1].setting) == ("end", 4.0)
    assert "end" in step.says


def test_a_reading_that_does_not_follow() -> None:
    step, tries = played(lambda x: 14.0, SCREW, 0.0)
    assert step.ended == "not this"
    assert "did not follow" in step.says
    assert len(tries) <= 4


def test_a_reading_that_goes_the_wrong_way() -> None:
    step, _ = played(lambda x: 14.0 - 4.0 * x, SCREW, 0.0)
    assert step.ended == "not this"
    assert "wrong way" in step.says


def test_too_coarse_a_knob_ends_at_its_best_place() -> None:
    coarse = Knob(20.0, 19.5, 20.5, 0.05, 0.0, 10.0, 8.0, grain=1.0)
    step, tries = played(lambda x: 3.0 + 7.0 * x, coarse, 0.0)  # 17 at 2, 24 at 3
    assert (step.ended, step.setting) == ("closest", 2.0)
    assert len(tries) <= 5


def test_what_makes_no_sense_is_refused() -> None:
    with pytest.raises(ValueError, match="read it once"):
        next_setting([], SCREW)
    with pytest.raises(ValueError, match="outside its band"):
        next_setting([Try(0.0, 1.0)], Knob(5.0, 6.0, 7.0, 0.1, 0.0, 1.0, 1.0))
    with pytest.raises(ValueError, match="slope"):
        next_setting([Try(0.0, 1.0)], Knob(6.5, 6.0, 7.0, 0.1, 0.0, 1.0, 0.0))
    with pytest.raises(ValueError, match="no number"):
        next_setting([Try(0.0, math.nan)], SCREW)
