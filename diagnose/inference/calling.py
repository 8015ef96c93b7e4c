"""What to do next in a telephone call with a kitchen, from the knowledge and what is believed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from diagnose.inference.calls import VISIT, CallPrices, Ends, Question, weigh_questions
from diagnose.inference.economy import Economy
from diagnose.inference.needs import belief_of, minutes_of, needs_of
from diagnose.inference.situation import Prediction, Situation, Solution
from diagnose.inference.tree import FaultTree
from diagnose.model import Book, Cause

__all__ = ["DONE_RIGHT", "CallAdvice", "advise_call"]

DONE_RIGHT = 0.8  # how surely a kitchen puts right what it is told to by telephone; judgement


@dataclass(frozen=True)
class CallAdvice:
    """What is best if nothing more is asked, and every question, those worth asking first.

    `mend`: the cause that the kitchen puts right first, with its share of what is believed and its minutes, or None for
    a visit at once. `expected` are the minutes of all that follows.
    """

    mend: str | None
    share: float
    minutes: float
    expected: float
    questions: tuple[Question, ...]


def advise_call(
    book: Book,
    tree: FaultTree,
    situation: Situation,
    solution: Solution,
    predictions: Mapping[str, Prediction],
    beyond: frozenset[str],
    most: int,
) -> CallAdvice:
    """Weigh the end of the call against every question in `predictions`.

    `beyond` are causes that the kitchen is not asked to put right; `most`, how many parts a visit carries.
    """
    causes, sums, belief = belief_of(tree, situation, solution)
    _, needs = needs_of(book, causes, belief)
    done = [_minutes(Economy.of(book), book.causes[cause]) if cause in book.causes else 0.0 for cause in causes]
    mended = [cause in book.causes and bool(book.causes[cause].aloud) and cause not in beyond for cause in causes]
    work = np.array(done)
    mends = np.where(mended, work + minutes_of(book, "question"), np.nan)
    ends = Ends(needs.parts >= 0.5, needs.possible, work, mends, _prices(book, most))
    shares = belief / max(float(belief.sum()), 1e-12)
    expected, first = ends.best(shares[None, :])
    counted = [replace(p, causes=causes, after=np.minimum(p.after @ sums, 1.0)) for p in predictions.values()]
    takes = {p.check: book.checks[p.check].minutes + minutes_of(book, "question") for p in counted}
    questions = tuple(weigh_questions(ends, belief, counted, takes))
    nth = int(first[0])
    if nth == VISIT:
        return CallAdvice(None, 0.0, 0.0, float(expected[0]), questions)
    return CallAdvice(causes[nth], float(shares[nth]), float(ends.mends[nth]), float(expected[0]), questions)


def _minutes(economy: Economy, cause: Cause) -> float:
    """A repair done for itself, on a running machine."""
    moved = economy.move("running", cause.state) + economy.move(cause.state, "running")
    return cause.minutes + moved + sum(economy.access[access] for access in cause.open)


def _prices(book: Book, most: int) -> CallPrices:
    visit, second, part, wrong = (minutes_of(book, what) for what in ("first", "second", "part", "wrong"))
    return CallPrices(visit, second, part, wrong, DONE_RIGHT, most)
