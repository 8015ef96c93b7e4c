"""Exercises: the same at every call, what the level wants, and solvable by the tool's own advice."""

from __future__ import annotations

import random
from itertools import pairwise
from types import SimpleNamespace
from typing import cast

import msgspec
import pytest

from diagnose.model import Book, load_book
from diagnose.practice.best import best_path, settling, told
from diagnose.practice.exercise import Exercise
from diagnose.practice.machine import Practice
from diagnose.practice.making import LEVELS, NoExerciseError, causes_under, draw_plate, make
from diagnose.practice.port import machine_of, simulate, simulator_here
from tests.practice_machine import ELEMENT, INLET, LINES, exercise, world


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


@pytest.mark.parametrize("level", LEVELS)
def test_an_exercise_is_what_its_level_wants_and_the_same_again(book: Book, level: int) -> None:
    made = make(book, 11, level, "rinse_cold", world())
    assert made == make(book, 11, level, "rinse_cold", world())
    assert made != make(book, 12, level, "rinse_cold", world())
    assert len(made.faults) == (2 if level >= 4 else 1)
    assert bool(made.lies) == (level == 5)
    assert made.complaint == "rinse_cold"
    assert all(name in causes_under(book, made.complaint) for name, _ in made.faults)
    assert msgspec.json.decode(msgspec.json.encode(made), type=Exercise) == made


def test_what_cannot_be_made_says_what_would_do(book: Book) -> None:
    with pytest.raises(NoExerciseError, match="levels go from 1 to 5"):
        make(book, 1, 9, None, world())
    with pytest.raises(NoExerciseError, match="try another seed or level"):
        make(book, 1, 1, "conveyor_jerks" if "conveyor_jerks" in book.complaints else "steam_out", world())


def test_the_best_path_proves_its_repairs_blind_to_the_fault(book: Book) -> None:
    single = best_path(book, world(), exercise(ELEMENT))
    assert single.solved
    assert [s.id for s in single.path if s.what == "repair"] == [ELEMENT]
    assert single.minutes == sum(step.minutes for step in single.path)
    both = best_path(book, world(), exercise(ELEMENT, INLET))
    assert both.solved
    assert {s.id for s in both.path if s.found} == {ELEMENT, INLET}


def test_where_the_advice_does_not_lead_there_the_path_goes_on_as_one_who_knows(book: Book) -> None:
    path = best_path(book, world(), exercise(ELEMENT, INLET), most=0)
    assert path.solved
    assert path.known == len(path.path)
    for before, step in pairwise(path.path):
        if step.what == "repair":
            assert before.what != "check" or step.id in book.checks[before.id].looks_at
    assert {s.id for s in path.path if s.what == "repair"} == {ELEMENT, INLET}


def test_what_a_check_tells_is_told_in_bits_towards_the_truth(book: Book) -> None:
    practice = Practice(book, world(), exercise(ELEMENT))
    practice.read(LINES)
    (lines,) = told(book, world(), exercise(ELEMENT), tuple(practice.done))
    assert lines.before < 0.2 < 0.6 < lines.after
    assert lines.bits > 3.0
    best = settling(book, world(), exercise(ELEMENT))
    assert best
    assert best[0].bits >= lines.bits


def test_the_simulator_of_the_house_carries_an_exercise(book: Book) -> None:
    made = make(book, 1, 1, "rinse_cold")
    sim = simulate(simulator_here(), book, made)
    assert made.complaint in sim.complaints()
    assert sim.present == tuple(name for name, _ in made.faults)
    assert any(book.machines[made.machine].title in sentence for sentence in made.story)


@pytest.mark.parametrize("kind", sorted(load_book().machines))
def test_a_plate_as_awkward_as_they_are_drawn_makes_a_sound_machine(book: Book, kind: str) -> None:
    """Little rinse water that warms, much air that cools: without a fault nobody complains."""
    worst = SimpleNamespace(uniform=lambda low, high: low if low < 0.95 else high)
    own = draw_plate(book, kind, cast(random.Random, worst))
    assert ("vent_exit" in own) == (machine_of(book, kind, {}).plate("vent_exit") is not None)
    sound = Exercise(seed=7, level=1, machine=kind, own=own, faults=[], complaint="")
    assert simulate(simulator_here(), book, sound).complaints() == ()
