"""The judge: the tool's advice works jobs on simulated machines that never saw a likelihood; beside other ways.

    python -m tests.bench.judge                  every fault twice, 80 pairs, 60 jobs without their cause
    python -m tests.bench.judge --quick          a small sample
    python -m tests.bench.judge --only booster   faults whose name has this in it, each job told
    python -m tests.bench.judge --part 2/6 --keep two.jsonl
    python -m tests.bench.judge --of one.jsonl two.jsonl

Run by hand: it takes hours on two cores, so it can be played in parts that are reported together. What is kept is
written as it comes, in an order drawn by chance, so that a run that was stopped is a fair sample. What each figure
means stands in the printed report.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import traceback
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from pathlib import Path
from typing import Any

import msgspec

from diagnose.model import Book
from diagnose.model.loader import load_book
from diagnose.practice.exercise import Exercise
from diagnose.simulator import FAULTS
from tests.bench.judging.jobs import Job, pair, singles
from tests.bench.judging.played import Outcome, perfect_minutes, play
from tests.bench.judging.report import Played, report
from tests.bench.judging.ways import WAYS

__all__ = ["judge", "main", "read"]

KNOWLEDGE = Path(__file__).resolve().parents[2] / "knowledge"
Task = tuple[Job, str, str]  # the job, the way of working, the cause left out
_book: Book | None = None


def _work(task: Task) -> Outcome:
    global _book
    if _book is None:
        _book = load_book(KNOWLEDGE)
    job, way, without = task
    try:
        return play(_book, job, way, without)
    except Exception:  # one crash must not end a run of hours: it is told in the report
        return Outcome(job, way, crash=traceback.format_exc(limit=-2))


def judge(tasks: Sequence[Task], workers: int, tell: bool = False, keep: Path | None = None) -> list[Outcome]:
    """Play all tasks (job, way, cause left out); progress goes to stderr, each outcome to a line of `keep`."""
    found: dict[int, Outcome] = {}
    with ProcessPoolExecutor(workers) as pool:
        running = {pool.submit(_work, task): nth for nth, task in enumerate(tasks)}
        for done in as_completed(running):
            nth, outcome = running[done], done.result()
            found[nth] = outcome
            if keep:
                with keep.open("a", encoding="utf-8") as file:
                    file.write(json.dumps(_kept(outcome, tasks[nth][2])) + "\n")
            if tell:
                print(_told(outcome, tasks[nth][2]), flush=True)
            elif len(found) % 20 == 0 or len(found) == len(tasks):
                print(f"{len(found)} of {len(tasks)}", file=sys.stderr, flush=True)
    return [found[nth] for nth in range(len(tasks))]


def _built(a_fault: int, seed: int, only: Sequence[str], workers: int) -> list[Job]:
    """The jobs with one fault, in the order of the faults."""
    wanted = [(name, a_fault, seed) for name in sorted(FAULTS) if not only or any(each in name for each in only)]
    with ProcessPoolExecutor(workers) as pool:
        return [job for jobs in pool.map(_jobs, wanted, chunksize=8) for job in jobs]


def _jobs(fault: tuple[str, int, int]) -> list[Job]:
    global _book
    if _book is None:
        _book = load_book(KNOWLEDGE)
    jobs = singles(_book, fault[1], fault[2], (fault[0],))
    return [job for job in jobs if job.causes == (fault[0],)]


def _paired(count: int, seed: int, workers: int) -> list[Job]:
    """So many jobs with two faults."""
    found: list[Job] = []
    with ProcessPoolExecutor(workers) as pool:
        for start in range(0, 40 * count, 8 * workers):
            if len(found) >= count:
                break
            drawn = pool.map(_pair, [(seed, nth) for nth in range(start, start + 8 * workers)])
            found += [job for job in drawn if job is not None]
    return found[:count]


def _pair(drawn: tuple[int, int]) -> Job | None:
    global _book
    if _book is None:
        _book = load_book(KNOWLEDGE)
    return pair(_book, *drawn)


def _told(outcome: Outcome, left_out: str) -> str:
    end = "solved" if outcome.solved else "HELP" if outcome.helped else "GIVEN UP"
    causes, exercise = ", ".join(outcome.job.causes), outcome.job.exercise
    way = f"{outcome.way}, cause left out" if left_out else outcome.way
    return (
        f"{way}: {causes} on {exercise.machine} ({outcome.job.said[0]}): {end} after {outcome.minutes:.0f} min, "
        f"wrong {outcome.wrong}, led {outcome.first} ({outcome.took:.0f} s)\n"
        f"      {' > '.join(outcome.path)}"
    )


def main() -> None:
    """Print the report, and keep all outcomes where `--keep` says."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--a-fault", type=int, default=2)
    options.add_argument("--pairs", type=int, default=80)
    options.add_argument("--left-out", type=int, default=60)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--every", type=int, default=1, help="of the single faults, take each n-th job only")
    options.add_argument("--others", type=int, default=4, help="other ways work each n-th job only")
    options.add_argument("--workers", type=int, default=2)
    options.add_argument("--only", nargs="*", default=[])
    options.add_argument("--quick", action="store_true")
    options.add_argument("--tell", action="store_true")
    options.add_argument("--keep", type=Path)
    options.add_argument("--part", default="1/1", help="K/N: of all plays, the K-th of N parts")
    options.add_argument("--of", type=Path, nargs="*", default=[], help="report what these files keep; play nothing")
    given = options.parse_args()
    if given.quick:
        given.a_fault, given.every, given.pairs, given.left_out, given.others = 1, 6, 8, 8, 3
    book = load_book(KNOWLEDGE)
    kept = [line for file in given.of for line in file.read_text("utf-8").splitlines()]
    played = [read(json.loads(line)) for line in kept] if kept else _played(given)
    known = {job.key: job for (job, way, _), _ in played if way != "advice"}
    perfect = {key: perfect_minutes(book, job) for key, job in known.items()}
    print("\n".join(report(played, perfect)))


def _played(given: argparse.Namespace) -> list[Played]:
    alone = _built(given.a_fault, given.seed, given.only, given.workers)[:: given.every]
    two = [] if given.only else _paired(given.pairs, given.seed, given.workers)
    tasks = [(job, "advice", "") for job in [*alone, *two]]
    if not given.only:
        tasks += [(job, way, "") for job in alone[:: given.others] for way in WAYS if way != "advice"]
        step = max(1, len(alone) // max(given.left_out, 1))
        tasks += [(job, "advice", job.causes[0]) for job in alone[::step][: given.left_out]]
    random.Random(given.seed).shuffle(tasks)
    nth, parts = map(int, given.part.split("/"))
    tasks = tasks[nth - 1 :: parts]
    print(f"{len(alone)} jobs with one fault, {len(two)} with two; {len(tasks)} plays", file=sys.stderr, flush=True)
    found = judge(tasks, given.workers, given.tell or bool(given.only), given.keep)
    return list(zip(tasks, found, strict=True))


def _kept(outcome: Outcome, left_out: str) -> dict[str, object]:
    data = {k: v for k, v in vars(outcome).items() if k != "job"}
    exercise: Exercise = outcome.job.exercise
    return {**data, "left_out": left_out, "said": outcome.job.said, "exercise": msgspec.to_builtins(exercise)}


def read(kept: dict[str, Any]) -> Played:
    """A play as `_kept` wrote it."""
    data = dict(kept)
    left_out = data.pop("left_out")
    job = Job(msgspec.convert(data.pop("exercise"), Exercise), tuple(data.pop("said")))
    outcome = Outcome(job, **{**data, "three": tuple(data["three"])})
    return (job, outcome.way, left_out), outcome


if __name__ == "__main__":
    main()
