"""Where the simulated machine shows what the knowledge says it hardly ever shows: readings that mislead.

    python -m tests.bench.misleading                 all faults
    python -m tests.bench.misleading booster         faults whose name has this in it

For each fault, as the kitchen tells of it, every check that bears on the complaint is read on a few machines. A reading
misleads by as many bits as it makes the true cause less likely against all that the complaint can come of, each cause
taken alone. What misleads on most of the machines is printed, the worst first: there the knowledge leaves a cause out
that shows the same, or the simulated machine is wrong. A quarter of an hour on two cores; by hand.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from functools import cache
from math import log2
from statistics import median

from diagnose.inference import FaultTree, Situation, bearing_checks, build_tree
from diagnose.inference.tree import so_in
from diagnose.model import Book, Reading
from diagnose.model.answers import show_values
from diagnose.model.loader import load_book
from diagnose.practice.exercise import Exercise
from diagnose.practice.port import Answer, machine_of, simulate
from diagnose.rules import findings
from diagnose.simulator import FAULTS
from diagnose.units import Quantity, find_unit
from tests.bench.judge import KNOWLEDGE
from tests.bench.judging.jobs import WORLD, Job, singles

__all__ = ["misleading"]

MACHINES = 3  # for each fault
LEAST = 2.0  # bits


@cache
def _book() -> Book:
    return load_book(KNOWLEDGE)


@cache
def _tree(kind: str) -> FaultTree:
    return build_tree(_book(), machine_of(_book(), kind, {}))


@cache
def _so(kind: str, cause: str) -> frozenset[str]:
    return so_in(_tree(kind), {cause})


def misleading(job: Job) -> Iterator[tuple[str, float, str]]:
    """Check, bits and what was shown, for each check that bears on the job."""
    exercise: Exercise = job.exercise
    machine, tree = machine_of(_book(), exercise.machine, exercise.own), _tree(exercise.machine)
    said = tuple((c, 0, True) for c in job.said[:1] if c in tree.nodes)
    sim = simulate(WORLD, _book(), exercise)
    (cause,) = job.causes
    under = [c for complaint, _, _ in said for c in tree.causes_under(complaint)]
    for name in bearing_checks(tree, Situation(said)):
        if sim.can_read(name):
            shown = _reading(name, sim.read(name))
            run = findings(_book(), machine, (shown,))
            found = next((f for f in run.findings if f.check == name), None)
            if found is None:
                continue
            check = tree.checks[name]
            likelihood = check.likelihoods(found.weights)
            at = {c: likelihood[check.row(_so(exercise.machine, c))] for c in {*under, cause}}
            usual = sum(tree.nodes[c].prior * at[c] for c in under) / sum(tree.nodes[c].prior for c in under)
            yield name, log2(max(at[cause], 1e-4) / max(usual, 1e-4)), shown.outcome or show_values(shown.values)


def _reading(check: str, answer: Answer) -> Reading:
    """What is shown, rounded as one would type it."""
    spec = _book().checks[check].reading
    if spec is None:
        return Reading(check, check, outcome=answer.outcome)
    unit = find_unit(spec.unit, spec.quantity)
    assert unit is not None
    return Reading(check, check, {p: Quantity(float(f"{unit.from_si(v):.4g}"), unit) for p, v in answer.values.items()})


def _of_one(fault: str) -> list[str]:
    told: dict[str, list[tuple[float, str]]] = {}
    jobs = [job for job in singles(_book(), MACHINES, 3, [fault]) if job.causes == (fault,)]
    for job in jobs:
        for check, bits, words in misleading(job):
            told.setdefault(check, []).append((bits, words))
    lines = []
    for check, each in told.items():
        middle = median(b for b, _ in each)
        if middle <= -LEAST:
            lines.append(f"{-middle:5.1f} {jobs[0].causes[0]} ({jobs[0].said[0]}): {check} {[w for _, w in each]}")
    return lines


def main() -> None:
    """Print what misleads, the worst first."""
    wanted = [name for name in sorted(FAULTS) if not sys.argv[1:] or any(each in name for each in sys.argv[1:])]
    with ProcessPoolExecutor(2) as pool:
        lines = [line for found in pool.map(_of_one, wanted) for line in found]
    print("\n".join(sorted(lines, reverse=True)))


if __name__ == "__main__":
    main()
