"""Jobs for the judge: every fault on several types of machine with plates drawn at random, and pairs of faults.

The kitchen says what the simulated machine makes it say; nothing is chosen by what the knowledge would find.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice

from diagnose.model import Book, Machine, fits
from diagnose.practice.exercise import Exercise
from diagnose.practice.making import draw_plate
from diagnose.practice.port import figures_of, machine_of, simulate, simulator_here
from diagnose.simulator import FAULTS, Plate

__all__ = ["SEVERITY", "Job", "complaints_of", "pair", "singles"]

WORLD = simulator_here()
SEVERITY = (0.45, 1.0)
_TRIES = 6  # draws of machine and severity before a fault is given up as one that nobody complains of


@dataclass(frozen=True)
class Job:
    """One job: the exercise, and what the kitchen says, the worst first."""

    exercise: Exercise
    said: tuple[str, ...]

    @property
    def key(self) -> str:
        """One job from another, in whichever process."""
        return f"{self.exercise.machine} {self.exercise.seed} {self.exercise.faults}"

    @property
    def causes(self) -> tuple[str, ...]:
        return tuple(name for name, _ in self.exercise.faults)


def singles(book: Book, a_fault: int, seed: int, only: Sequence[str] = ()) -> Iterator[Job]:
    """So many jobs for each fault that the book knows (or those named), as far as somebody complains."""
    for name in sorted(FAULTS):
        if name in book.causes and (not only or any(each in name for each in only)):
            yield from islice(_tries(book, (name,), seed), a_fault)


def pair(book: Book, seed: int, nth: int) -> Job | None:
    """A job with two faults that bring the same complaint, each of which would be complained of alone.

    None where the two that are drawn have no complaint in common.
    """
    chance = random.Random(f"pair {seed} {nth}")
    names = [name for name in sorted(FAULTS) if name in book.causes]
    first = chance.choice(names)
    alone = next(_tries(book, (first,), seed + nth), None)
    if alone is None:
        return None
    plate, machine = _plate(book, alone.exercise), _machine(book, alone)
    others = [n for n in names if n != first and FAULTS[n].fits(plate) and fits(machine, book.causes[n].fits)]
    second, severity = chance.choice(others), round(chance.uniform(*SEVERITY), 2)
    both = _exercise(alone.exercise, (*alone.exercise.faults, (second, severity)))
    if not set(complaints_of(book, _exercise(both, ((second, severity),)))) & set(alone.said[:1]):
        return None
    said = complaints_of(book, both)
    return Job(_exercise(both, both.faults, said[0]), said) if said else None


def complaints_of(book: Book, exercise: Exercise) -> tuple[str, ...]:
    """What the kitchen says of this machine, as far as the book has it on this type."""
    machine = machine_of(book, exercise.machine, exercise.own)
    said = simulate(WORLD, book, exercise).complaints()
    return tuple(c for c in said if c in book.complaints and fits(machine, book.complaints[c].fits))


def _tries(book: Book, causes: tuple[str, ...], seed: int) -> Iterator[Job]:
    for nth in range(_TRIES):
        chance = random.Random(f"judge {seed} {causes} {nth}")
        kinds = [k for k in sorted(book.machines) if _possible(book, k, causes)]
        if not kinds:
            return
        kind = chance.choice(kinds)
        own = draw_plate(book, kind, chance)
        faults = [(name, round(chance.uniform(*SEVERITY), 2)) for name in causes]
        eyes = chance.randrange(1, 10**6)  # a seed of its own, so that no misreading is common to all jobs
        exercise = Exercise(seed=eyes, level=3, machine=kind, own=own, faults=faults, complaint="")
        said = complaints_of(book, exercise)
        if said:
            yield Job(_exercise(exercise, tuple(faults), said[0]), said)


def _possible(book: Book, kind: str, causes: Sequence[str]) -> bool:
    machine = machine_of(book, kind, {})
    plate = Plate(machine.type.traits, figures_of(machine))
    return all(FAULTS[c].fits(plate) and fits(machine, book.causes[c].fits) for c in causes)


def _machine(book: Book, job: Job) -> Machine:
    return machine_of(book, job.exercise.machine, job.exercise.own)


def _plate(book: Book, exercise: Exercise) -> Plate:
    machine = machine_of(book, exercise.machine, exercise.own)
    return Plate(machine.type.traits, figures_of(machine))


def _exercise(like: Exercise, faults: Sequence[tuple[str, float]], complaint: str = "") -> Exercise:
    return Exercise(
        seed=like.seed, level=like.level, machine=like.machine, own=like.own, faults=list(faults), complaint=complaint
    )
