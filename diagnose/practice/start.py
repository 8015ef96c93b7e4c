"""The way in from the command line: make an exercise or go on with one, and see it through to the debrief."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import ExitStack, suppress
from pathlib import Path

from diagnose.job.hold import hold
from diagnose.model import Book
from diagnose.practice import words
from diagnose.practice.course import Course
from diagnose.practice.debrief import debrief_of
from diagnose.practice.exercise import Exercise
from diagnose.practice.kept import Kept
from diagnose.practice.making import LEVELS
from diagnose.practice.port import World
from diagnose.practice.room import Room
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.signals import signals_hang_up
from diagnose.view.exits import Exit
from diagnose.view.layout import Line, wrap

__all__ = ["begin", "go_on", "level_lines"]


def begin(
    book: Book, world: World, kept: Kept, front: Front, exercise: Exercise, trainee: str = "", holds: Path | None = None
) -> Exit:
    """Keep a new exercise and see it through."""
    return go_on(book, world, kept, front, kept.begin(exercise), trainee, holds)


def go_on(
    book: Book, world: World, kept: Kept, front: Front, name: str, trainee: str = "", holds: Path | None = None
) -> Exit:
    """Go on with an exercise, to its end or until it is paused; of one that is over, the debrief again.

    Raises JobHeld where another process has it, and JournalError.
    """
    exercise = kept.exercise(name)
    if exercise is None:
        front.say(wrap(f"There is no exercise {name[:40]}. `diagnose practice` begins one.", front.width))
        return Exit.NO_SUCH_JOB
    with ExitStack() as stack:
        if holds is not None:
            stack.enter_context(hold(holds, name))
        stack.enter_context(signals_hang_up(front))
        course = Course(book, world, exercise, kept.steps(name))
        try:
            Room(course, front, lambda step: kept.add(name, step)).run()
        except Paused:
            with suppress(OSError, ValueError):  # the terminal may be gone; all is on disk
                front.say(wrap(words.PAUSED + name, front.width))
            return Exit.PAUSED
        debrief = debrief_of(course)
        best = debrief.best
        kept.finish(name, course.result(kept.clock(), trainee, best.expected, best.minutes))
        front.say(debrief.lines(front.width))
    return Exit.OK


def level_lines(width: int) -> Sequence[Line]:
    """The levels, each with what it holds."""
    lines: list[Line] = []
    for level, text in LEVELS.items():
        lines += wrap(text, width, f"  {level}  ")
    return lines
