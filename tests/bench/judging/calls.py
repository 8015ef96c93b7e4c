"""Calls for the judge: faults drawn as often as they are found, and a kitchen worker who answers the telephone.

The worker sees and hears the simulated machine with the errors of eyes, ears and panel that the simulator has; some
questions they can't answer, and some of what they are told to do they do wrongly.
"""

from __future__ import annotations

import math
import random
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache

import msgspec

from diagnose.inference import Situation, build_tree, kept, parts_of, solve
from diagnose.job import events as ev
from diagnose.job.assess import Assessment
from diagnose.job.telephone import Ending, Step, ending, last_ending, next_step
from diagnose.job.van import VanList, van_list
from diagnose.model import Book, load_book
from diagnose.practice.exercise import Exercise
from diagnose.practice.making import draw_plate
from diagnose.practice.port import figures_of, machine_of
from diagnose.simulator import FAULTS, Plate
from tests.bench.judging.jobs import SEVERITY, WORLD, Job, complaints_of
from tests.bench.judging.played import Bench

__all__ = ["MOST", "Call", "drawn", "held", "made_call", "parts_needed"]

MOST = 4  # parts carried
CANT_TELL = 0.05  # of questions, a kitchen worker can't answer; judgement
DONE_RIGHT = 0.8  # of what they are told to put right, they do so; judgement
_MOST_STEPS = 40


@dataclass
class Call:
    """How a call went, and what came of it."""

    job: Job
    end: Ending | None = None
    van: VanList | None = None
    asked: list[str] = field(default_factory=list)
    mended: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)
    minutes: float = 0.0
    slowest: float = 0.0  # seconds of one step
    rank: int = 0  # of the true cause when the call ended, from 1
    frequent: tuple[str, ...] = ()  # what the baselines would carry
    likeliest: tuple[str, ...] = ()


def drawn(book: Book, seed: int) -> Job:
    """A job with one fault on a machine: causes as often as they are found there, as far as somebody complains."""
    chance = random.Random(f"call {seed}")
    while True:
        kind = chance.choice(sorted(book.machines))
        machine = machine_of(book, kind, {})
        tree = build_tree(book, machine, {})
        plate = Plate(machine.type.traits, figures_of(machine))
        names = [n for n in sorted(FAULTS) if n in tree.nodes and FAULTS[n].fits(plate)]
        behind = _behind_complaints(kind)
        cause = chance.choices(names, [behind.get(name, 0.0) for name in names])[0]
        own = draw_plate(book, kind, chance)
        faults = [(cause, round(chance.uniform(*SEVERITY), 2))]
        eyes = chance.randrange(1, 10**6)  # a seed of its own, so that no misreading is common to all jobs
        exercise = Exercise(seed=eyes, level=3, machine=kind, own=own, faults=faults, complaint="")
        said = complaints_of(book, exercise)
        if said:
            return Job(msgspec.structs.replace(exercise, complaint=said[0]), said)


@cache
def _behind_complaints(kind: str) -> dict[str, float]:
    """Cause -> how often it is behind a complaint on a type of machine, by the frequencies of the knowledge.

    That of a cause which brings a complaint alone is its own; of one that needs another beside it, theirs together.
    """
    book = load_book()
    tree = build_tree(book, machine_of(book, kind, {}), {})
    found: dict[str, float] = {}
    for complaint in (name for name, node in tree.nodes.items() if node.kind == "complaint"):
        told = solve(tree, Situation(((complaint, 0, True),)))
        odds = 1.0 / (math.exp(-told.log_evidence) - 1.0)
        for cause in tree.causes_under(complaint):
            more = (told.posterior[cause] - tree.nodes[cause].prior) * odds
            found[cause] = max(more, found.get(cause, 0.0))
    return found


class Telephone(Bench):
    """The same machine with a kitchen worker on the telephone before it."""

    def __init__(self, book: Book, job: Job) -> None:
        super().__init__(book, WORLD, job.exercise)
        self.chance = random.Random(f"worker {job.exercise.seed}")
        self.note(ev.CallBegun("kitchen"))
        self.note(ev.SafetyAnswered())

    def answer(self, check: str) -> None:
        """What the worker says; or that they can't tell."""
        if self.chance.random() < CANT_TELL or not self.can_read(check):
            self.note(ev.Skipped(check, "don't know"))
        else:
            self.read(check)

    def put_right(self, cause: str) -> bool:
        """Whether it was that: the worker does it, mostly as told, and says whether the complaint is gone."""
        present = cause in self.sim.present
        if present and self.chance.random() < DONE_RIGHT:
            self.repair(cause)
        else:
            self.note(ev.Repaired(cause, "can't tell"))
            for complaint in self.state.present:
                self.note(ev.ComplaintSaid(complaint))
        return present

    def _proofs(self) -> Iterator[str]:
        yield from (check for check in super()._proofs() if self.book.checks[check].aloud)


def made_call(book: Book, job: Job) -> Call:
    """One call, from the complaint to its end."""
    worker, done = Telephone(book, job), Call(job)
    for nth in range(_MOST_STEPS):
        begun = time.process_time()
        seen = worker.judged()
        if nth == 0:
            done.frequent = most_frequent(book, seen)
        step: Step = next_step(seen, len(done.asked))
        done.slowest = max(done.slowest, time.process_time() - begun)
        if step.what == "end":
            done.end = last_ending(seen, step.why)
            break
        done.minutes += step.minutes
        if step.what == "ask":
            done.asked.append(step.id)
            worker.answer(step.id)
        else:
            (done.mended if worker.put_right(step.id) else done.wrong).append(step.id)
    else:
        raise RuntimeError(f"no end after {_MOST_STEPS} steps: {job.key}")
    done.end = ending(book, seen.state) or done.end
    if done.end is not None and done.end.how == "solved":
        return done
    done.van, done.likeliest = van_list(seen, MOST), of_the_likeliest(book, seen)
    order = [row.id for row in seen.rows]
    done.rank = order.index(job.causes[0]) + 1 if job.causes[0] in order else len(order) + 1
    return done


def parts_needed(book: Book, cause: str) -> tuple[str, ...]:
    """The names of the parts a repair always needs and that are loaded for a visit, the main one first."""
    parts = [part for part in parts_of(book, cause) if not part.only]
    return tuple(dict.fromkeys(part.name for part in parts if kept(book, part.name) == "store"))


def held(needed: tuple[str, ...], carried: tuple[str, ...]) -> tuple[bool, bool]:
    """Whether the main part is among those carried, and whether all are."""
    return needed[0] in carried, set(needed) <= set(carried)


def most_frequent(book: Book, seen: Assessment) -> tuple[str, ...]:
    """A baseline: the parts most often needed for what is complained of, by what is known when the call begins."""
    often: dict[str, float] = {}
    for row in seen.rows:
        for name in parts_needed(book, row.id) if row.id in book.causes else ():
            often[name] = often.get(name, 0.0) + row.probability
    return tuple(sorted(often, key=lambda name: (-often[name], name))[:MOST])


def of_the_likeliest(book: Book, seen: Assessment) -> tuple[str, ...]:
    """A baseline: after the same questions, the parts of the four likeliest causes that need any."""
    needed = [parts for row in seen.rows if row.id in book.causes and (parts := parts_needed(book, row.id))]
    return tuple(dict.fromkeys(name for parts in needed[:4] for name in parts))[:MOST]
