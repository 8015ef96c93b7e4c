"""Which exercise comes next when nobody says: the complaint a trainee is weakest at, and its level."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime

from diagnose.model import Book
from diagnose.practice.exercise import Exercise, Result
from diagnose.practice.making import NoExerciseError, causes_under, make
from diagnose.practice.port import World
from diagnose.practice.progress import Standing, standings, weakest

__all__ = ["next_exercise", "ranked"]

_TRIED = 4  # complaints tried before giving up: of some, no exercise can be made on a level


def ranked(book: Book, world: World, results: Iterable[Result], trainee: str = "") -> list[Standing]:
    """How a trainee (all, where nobody is named) stands with each complaint that can be practised, weakest first."""
    own = [r for r in results if not trainee or r.trainee == trainee]
    faults = world.faults.keys()
    said = book.complaints.keys() if world.complaints is None else world.complaints
    possible = [c for c in book.complaints if c in said and causes_under(book, c) & faults]
    # Of complaints alike in strength, the one with more behind it first.
    wealth = sorted(possible, key=lambda c: -len(causes_under(book, c) & faults))
    return weakest(standings(possible, own, datetime.now(UTC)), {name: nth for nth, name in enumerate(wealth)})


def next_exercise(book: Book, world: World, seed: int, level: int | None, order: Iterable[Standing]) -> Exercise:
    """An exercise of the weakest complaint of which one can be made, on its level unless one is named.

    Raises NoExerciseError.
    """
    last: NoExerciseError | None = None
    for nth, stand in enumerate(order):
        if nth == _TRIED:
            break
        for of_level in dict.fromkeys((level or stand.level, level or 1)):
            try:
                return make(book, seed, of_level, stand.complaint, world)
            except NoExerciseError as error:
                last = error
    raise last or NoExerciseError("nothing can be practised with this knowledge; see diagnose practice --list")
