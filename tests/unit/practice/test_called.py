"""The judge of the telephone in small: a few calls with a simulated kitchen that never saw a likelihood.

The whole judge is run by hand: `python -m tests.bench.van`.
"""

from __future__ import annotations

import pytest

from diagnose.model import load_book
from diagnose.practice.exercise import Exercise
from tests.bench.judging.calls import Call, drawn, held, made_call, parts_needed
from tests.bench.judging.jobs import Job, complaints_of
from tests.bench.van import finished, report, told

BOOK = load_book()
CALLS = [
    ("booster_electric.element_open", "two_tank_electric_208", "visit"),
    ("curtains.exit_torn", "two_tank_electric_240", "visit"),
    ("drain_overflow.drain_left_open", "single_tank_electric_208", "solved"),
]


@pytest.fixture(scope="module")
def calls() -> list[Call]:
    made = []
    for cause, machine, _ in CALLS:
        silent = Exercise(seed=5, level=3, machine=machine, own={}, faults=[(cause, 0.8)], complaint="")
        said = complaints_of(BOOK, silent)
        job = Job(Exercise(seed=5, level=3, machine=machine, own={}, faults=silent.faults, complaint=said[0]), said)
        made.append(made_call(BOOK, job))
    return made


def test_calls_end_as_they_should_and_the_part_is_carried(calls: list[Call]) -> None:
    for call, (cause, _, how) in zip(calls, CALLS, strict=True):
        assert call.end is not None
        assert call.end.how == how, told(BOOK, call)
        needed = parts_needed(BOOK, cause)
        if how == "visit":
            assert call.van is not None
            assert held(needed, tuple(part.name for part in call.van.carried))[0], told(BOOK, call)
            assert finished(BOOK, call)
    assert not any(call.wrong for call in calls)


def test_the_report_counts_what_the_calls_came_to(calls: list[Call]) -> None:
    lines = list(report(BOOK, calls))
    assert lines[0] == "3 calls: 33 % solved by telephone"
    assert any(line.split() == ["van", "list", "100", "%", "100", "%"] for line in lines)
    assert any("promised" in line for line in lines)


def test_a_seed_gives_one_job() -> None:
    job = drawn(BOOK, 3)
    assert job == drawn(BOOK, 3)
    assert job.said[0] == job.exercise.complaint
    assert job.causes[0] in BOOK.causes


def test_what_is_held_goes_by_the_main_part_and_by_all() -> None:
    assert held(("a", "b"), ("a", "c")) == (True, False)
    assert held(("a", "b"), ("b", "a")) == (True, True)
    assert held(("a",), ("b",)) == (False, False)
