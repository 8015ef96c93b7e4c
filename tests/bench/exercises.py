"""A thousand exercises at seeds drawn at random: does each tell one story, and does the best path end in a proof?

    python -m tests.bench.exercises              a thousand, on two processes
    python -m tests.bench.exercises --count 40
    python -m tests.bench.exercises --part 1/4   a quarter of them

Run by hand. Prints how many can be made, how many the best path solves, and those where the advice did not lead there
by itself, so that the path goes on as one who knows the fault.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path

from diagnose.model import Book, fits
from diagnose.model.loader import load_book
from diagnose.practice.best import best_path
from diagnose.practice.debrief import LONGEST
from diagnose.practice.making import LEVELS, NoExerciseError, causes_under, make
from diagnose.practice.port import machine_of, simulate, simulator_here

__all__ = ["Tried", "main", "try_exercise"]

KNOWLEDGE = Path(__file__).resolve().parents[2] / "knowledge"
_book: Book | None = None


@dataclass(frozen=True)
class Tried:
    """One exercise: whether it could be made, what is wrong with it, whether the best path proves its repairs."""

    seed: int
    level: int
    made: bool
    problems: tuple[str, ...] = ()
    solved: bool = False
    alone: bool = False  # by the advice, without going on as one who knows
    minutes: float = 0.0
    told: str = ""


def try_exercise(book: Book, seed: int, level: int) -> Tried:
    """Make an exercise, look whether story, plate and readings agree, and play its best path."""
    try:
        exercise = make(book, seed, level)
    except NoExerciseError as error:
        return Tried(seed, level, made=False, problems=(str(error),))
    world = simulator_here()
    machine = machine_of(book, exercise.machine, exercise.own)
    sim = simulate(world, book, exercise)
    problems = []
    if exercise != make(book, seed, level):
        problems.append("the same seed gave another exercise")
    if exercise.complaint not in sim.complaints():
        problems.append(f"the kitchen does not say {exercise.complaint}")
    problems += [
        f"{c} is not under the complaint" for c, _ in exercise.faults if c not in causes_under(book, exercise.complaint)
    ]
    if not any(machine.type.title in sentence for sentence in exercise.story):
        problems.append("the story tells of another machine")
    for name in book.checks:
        if fits(machine, book.checks[name].fits) and sim.can_read(name):
            answer = sim.read(name)
            spec = book.checks[name].reading
            if spec is None and answer.outcome not in book.checks[name].outcomes:
                problems.append(f"{name} reads {answer.outcome}")
            elif spec is not None and list(answer.values) != (spec.each or [""]):
                problems.append(f"{name} reads at {list(answer.values)}")
    best = best_path(book, world, exercise, LONGEST)  # as the trainee is shown it
    told = f"{exercise.faults} on {exercise.machine} ({exercise.complaint}): {' > '.join(s.id for s in best.path)}"
    return Tried(seed, level, True, tuple(problems), best.solved, best.solved and not best.known, best.minutes, told)


def _work(task: tuple[int, int]) -> Tried:
    global _book
    if _book is None:
        _book = load_book(KNOWLEDGE)
    return try_exercise(_book, *task)


def main() -> None:
    """Print what came of them."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--count", type=int, default=1000)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--workers", type=int, default=2)
    options.add_argument("--part", default="1/1", help="K/N: the K-th of N parts")
    given = options.parse_args()
    chance = random.Random(given.seed)
    tasks = [(chance.randrange(10**6), 1 + nth % len(LEVELS)) for nth in range(given.count)]
    part, parts = map(int, given.part.split("/"))
    tasks = tasks[part - 1 :: parts]
    found = []
    with ProcessPoolExecutor(given.workers) as pool:
        for nth, tried in enumerate(pool.map(_work, tasks, chunksize=4), 1):
            found.append(tried)
            if nth % 50 == 0:
                print(f"{nth} of {len(tasks)}", file=sys.stderr, flush=True)
    for tried in found:
        for problem in tried.problems:
            print(f"level {tried.level} seed {tried.seed}: {problem}")
        if tried.made and not tried.alone:
            how = "only by one who knows" if tried.solved else "not solved"
            print(f"level {tried.level} seed {tried.seed}: {how}: {tried.told}")
    made, solved, alone = (Counter(t.level for t in found if getattr(t, what)) for what in ("made", "solved", "alone"))
    for level in LEVELS:
        print(f"level {level}: {made[level]} made, {solved[level]} solved, {alone[level]} by the advice alone")
    print(f"in all {len(found)}: {made.total()} made, {solved.total()} solved, {alone.total()} by the advice alone")


if __name__ == "__main__":
    main()
