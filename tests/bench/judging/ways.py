"""Ways of working a job: the tool's advice and what it is held against. None of them sees the fault."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from diagnose.inference import Economy
from diagnose.job.assess import Assessment
from diagnose.model import Book
from diagnose.practice.machine import Practice

__all__ = ["WAYS", "Move"]

Beliefs = NDArray[np.float64]
Move = tuple[Literal["check", "repair", "help"], str]
SURE = 0.8  # a way without prices repairs what it is so sure of


def by_advice(seen: Assessment, practice: Practice) -> Move:
    """The tool: what its advice puts first, of what can be read here."""
    best = next(o for o in seen.options if o.what != "check" or practice.can_read(o.id))
    return best.what, best.id


def by_list(seen: Assessment, practice: Practice) -> Move:
    """A fixed checklist: checks from the quickest to the dearest, whatever they say, until one cause is sure."""
    open_checks = sorted(_open(seen, practice), key=lambda c: (_alone(seen.book, c), c))
    return _until_sure(seen, open_checks)


def by_probability(seen: Assessment, practice: Practice) -> Move:
    """The most probable cause first: the quickest check that looks at it, until it is sure or there is none left."""
    leading = next((row.id for row in seen.rows if row.kind != "unlisted" and row.id not in _repaired(seen)), None)
    if leading is None:
        return "help", "help"
    above = {leading} | {node for node in seen.tree.nodes if leading in seen.tree.causes_under(node)}
    at_it = [c for c in _open(seen, practice) if above & set(seen.book.checks[c].looks_at)]
    return _until_sure(seen, sorted(at_it, key=lambda c: (_alone(seen.book, c), c)))


def by_information(seen: Assessment, practice: Practice) -> Move:
    """The check with the most bits a minute, until one cause is sure."""
    now = _bits(_belief(seen)[None, :])[0]
    gains = {}
    for check in _open(seen, practice):
        if check not in seen.predictions:
            continue  # too many at once to foretell
        prediction = seen.predictions[check]
        chance = np.array(list(prediction.outcomes.values()))
        gain = now - float(chance @ _bits(np.clip(prediction.after, 0.0, 1.0)))
        gains[check] = gain / practice.cost(seen.book.checks[check])
    best = sorted((c for c in gains if gains[c] > 1e-4), key=lambda c: (-gains[c], c))
    return _until_sure(seen, best)


def _until_sure(seen: Assessment, checks: list[str]) -> Move:
    tried = _repaired(seen)
    rows = [row for row in seen.rows if row.id not in tried]
    if rows and rows[0].kind != "unlisted" and (rows[0].probability >= SURE or not checks):
        return "repair", rows[0].id
    return ("check", checks[0]) if checks else ("help", "help")


def _repaired(seen: Assessment) -> set[str]:
    return {repair.cause for repair in seen.state.repairs}


def _open(seen: Assessment, practice: Practice) -> list[str]:
    """Checks that bear on the complaint and can be read here."""
    return [c for c in seen._open_checks() if practice.can_read(c)]


def _alone(book: Book, check: str) -> float:
    """Minutes of a check done for itself: with its covers and the machine's state."""
    economy, entry = Economy.of(book), book.checks[check]
    covers = sum(economy.access[a] for a in entry.open)
    return float(entry.minutes + covers + economy.move("running", entry.state))


def _belief(seen: Assessment) -> Beliefs:
    return np.array([seen.solution.posterior[c] for c in seen.solution.causes])


def _bits(p: Beliefs) -> Beliefs:
    q = np.clip(p, 1e-12, 1 - 1e-12)
    return np.asarray(-(q * np.log2(q) + (1 - q) * np.log2(1 - q)).sum(axis=1))


WAYS: dict[str, Callable[[Assessment, Practice], Move]] = {
    "advice": by_advice,
    "checklist": by_list,
    "most probable": by_probability,
    "bits a minute": by_information,
}
