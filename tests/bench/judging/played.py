"""One job worked on the simulated machine in one way, until the repair is proved or help is called."""

from __future__ import annotations

import math
import time
from dataclasses import dataclass, field

from diagnose.inference import Economy
from diagnose.job import events as ev
from diagnose.job.assess import Assessment
from diagnose.model import Book
from diagnose.practice.machine import Practice
from tests.bench.judging.jobs import WORLD, Job
from tests.bench.judging.ways import WAYS

__all__ = ["MOST_STEPS", "Outcome", "perfect_minutes", "play"]

MOST_STEPS = 50
_SAID = 2  # complaints the kitchen tells of


class Bench(Practice):
    """A machine in the judge's hands: the kitchen tells of its two worst complaints."""

    def _complaints(self) -> list[str]:
        return super()._complaints()[:_SAID]

    def note(self, event: ev.Event) -> None:
        """Add what is no work: a cause that is left out."""
        self._add(event)


@dataclass
class Outcome:
    """How a job went. Ranks are those at the stop: before the last repair, or when help was called."""

    job: Job
    way: str
    minutes: float = 0.0
    solved: bool = False
    helped: bool = False
    wrong: list[str] = field(default_factory=list)
    mended: list[str] = field(default_factory=list)
    path: list[str] = field(default_factory=list)
    first: str = ""  # the row that led at the stop
    three: tuple[str, ...] = ()
    first_stop: str = ""  # what led when checking first ended
    first_stop_probability: float = 0.0
    brier: float = 0.0
    log_loss: float = 0.0
    took: float = 0.0  # seconds of computing
    crash: str = ""  # where it ended in an error

    @property
    def top1(self) -> bool:
        """Whether the last cause that was there led at the stop."""
        return self.first in self.job.causes

    @property
    def both(self) -> bool:
        """Whether every cause was mended or stood among the first three at the stop."""
        return all(c in self.mended or c in self.three for c in self.job.causes)


def play(book: Book, job: Job, way: str, without: str = "") -> Outcome:
    """Work a job. `without` is a cause taken from the knowledge: it can't be thought of, nor repaired."""
    practice = Bench(book, WORLD, job.exercise)
    done, begun = Outcome(job, way), time.process_time()
    if without:
        practice.note(ev.RuledOut(without))
    for _ in range(MOST_STEPS):
        seen = practice.judged()
        kind, name = WAYS[way](seen, practice)
        if kind == "check":
            practice.read(name)
            done.path.append(name)
            continue
        _stop(done, seen)
        if kind == "help":
            done.helped = True
            practice.minutes += Economy.of(book).help_minutes
            break
        faulty = name in practice.sim.present
        practice.repair(name)
        done.path.append(f"REPAIR {name}")
        (done.mended if faulty else done.wrong).append(name)
        if practice.solved:
            done.solved = True
            break
    else:  # nobody goes on for ever: who has come to no end after so many steps calls for help
        practice.minutes += Economy.of(book).help_minutes
    done.minutes, done.took = practice.minutes, time.process_time() - begun
    return done


def _stop(done: Outcome, seen: Assessment) -> None:
    """What was believed when checking ended."""
    rows = seen.rows
    left = [c for c in done.job.causes if c not in done.mended]
    done.first = rows[0].id if rows else ""
    done.three = tuple(row.id for row in rows[:3])
    if not done.first_stop:
        done.first_stop, done.first_stop_probability = done.first, rows[0].probability if rows else 0.0
    done.brier = sum((row.probability - (row.id in left)) ** 2 for row in rows)
    true = [max(row.probability, 1e-6) for row in rows if row.id in left]
    done.log_loss = -sum(math.log(p) for p in true) if true else -math.log(1e-6)


def perfect_minutes(book: Book, job: Job) -> float:
    """Minutes of one who knows: each fault repaired and proved, nothing looked for."""
    practice = Bench(book, WORLD, job.exercise)
    for cause in job.causes:
        practice.repair(cause)
    return practice.minutes
