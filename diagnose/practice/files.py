"""An exercise as a file: written to be handed on, read strictly."""

from __future__ import annotations

from pathlib import Path

import msgspec

from diagnose.job.machines import MachineError, check_plate
from diagnose.model import Book, fits
from diagnose.practice.exercise import Exercise
from diagnose.practice.port import World, figures_of, machine_of, simulate

__all__ = ["ExerciseError", "check_exercise", "read_exercise", "write_exercise"]

ABOUT = "An exercise of an invented machine, for: diagnose practice --file. What is wrong stands below under faults."


class ExerciseError(ValueError):
    """An exercise can't be used; the message gives the remedy."""


def write_exercise(path: Path, exercise: Exercise) -> None:
    """Write an exercise as JSON that says what it is. Raises OSError."""
    told = msgspec.structs.replace(exercise, about=ABOUT)
    path.write_bytes(msgspec.json.format(msgspec.json.encode(told), indent=2) + b"\n")


def read_exercise(path: Path, book: Book, world: World) -> Exercise:
    """The exercise in a file, looked through. Raises ExerciseError."""
    try:
        exercise = msgspec.json.decode(path.read_bytes(), type=Exercise)
    except OSError as error:
        raise ExerciseError(f"{path} can't be read ({error.strerror}); name an exercise's file") from None
    except msgspec.MsgspecError as error:
        raise ExerciseError(f"{path} is no exercise ({error}); have it written anew") from None
    check_exercise(exercise, book, world)
    return msgspec.structs.replace(exercise, about="")


def check_exercise(exercise: Exercise, book: Book, world: World) -> None:
    """Whether this knowledge and this simulator carry it. Raises ExerciseError."""
    if exercise.machine not in book.machines:
        raise ExerciseError(f"no type of machine is called {exercise.machine[:40]!r}; knowledge list machines has them")
    if exercise.complaint not in book.complaints:
        raise ExerciseError(f"no complaint is called {exercise.complaint[:40]!r}; practice --list has them")
    if not exercise.faults:
        raise ExerciseError("it hides no fault; name one at least")
    try:
        for name, text in exercise.own.items():
            check_plate(name, text)
    except MachineError as error:
        raise ExerciseError(f"its plate won't do: {error}") from None
    machine = machine_of(book, exercise.machine, exercise.own)
    for name, severity in exercise.faults:
        if name not in world.faults or name not in book.causes:
            raise ExerciseError(f"{name[:60]!r} is no fault that can be simulated")
        figures = figures_of(machine)
        if not fits(machine, book.causes[name].fits) or not world.fits(name, machine.type.traits, figures):
            raise ExerciseError(f"{name} can't be on this type of machine; take another type or fault")
        if not 0.0 <= severity <= 1.0:
            raise ExerciseError(f"a severity goes from 0 to 1, not {severity:g}")
    try:
        simulate(world, book, exercise)
    except ValueError as error:
        raise ExerciseError(f"it can't be simulated: {error}") from None
