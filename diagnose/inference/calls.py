"""What a telephone call is worth: a question, a kitchen that mends it, or the visit of a technician, in minutes.

The call ends in one of two ways. The kitchen may put causes right itself, one after the other, each with its minutes
and a chance that it does so rightly; where the machine is still wrong after that, or nothing is the kitchen's to mend,
somebody comes: the way there, the search and the repair on the spot, and a second visit where a part is lacking that
was not carried. A question is worth asking where its minutes on the telephone are fewer than those it is expected to
spare of all this.

Beliefs are weighed as shares of one fault (each probability over the sum of all): shares after the outcomes of a check
mix to those of now, and every price here is a minimum of what is linear in them, or their entropy; so no answer can
make things dearer on the average, and a check that tells nothing spares nothing.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.repairs import MINUTES_A_BIT
from diagnose.inference.situation import Prediction
from diagnose.inference.van import filled

__all__ = ["VISIT", "CallPrices", "Ends", "Question", "weigh_questions"]

VISIT = -1
_MENDS = 3  # that a kitchen is asked for, one after the other, before somebody comes; judgement

Array = NDArray[np.float64]
Flags = NDArray[np.bool_]
Numbers = NDArray[np.intp]


@dataclass(frozen=True)
class CallPrices:
    """In minutes: a visit and a second one, a part carried; a mend that was not the one; and how surely one is done."""

    visit: float
    second: float
    part: float
    wrong: float
    done_right: float
    most: int  # parts carried


@dataclass(frozen=True)
class Ends:
    """The ways a call can end, column by column as the beliefs have their causes.

    `need` says which parts (columns) each cause needs, `possible` whether a visit can finish it at all, `work` its
    repair on the spot in minutes, `mends` those of the kitchen's doing, not a number where it is none of the kitchen's.
    """

    need: Flags
    possible: Flags
    work: Array
    mends: Array
    prices: CallPrices

    def best(self, shares: Array) -> tuple[Array, Numbers]:
        """Minutes per row if nothing more is asked, and the column that the kitchen mends first, or VISIT."""
        rows = np.arange(len(shares))
        left, still, spent = shares.copy(), np.ones(len(shares)), np.zeros(len(shares))
        best, first = self.visit(left, still), np.full(len(shares), VISIT)
        able = np.isfinite(self.mends)
        begun = first
        for turn in range(min(_MENDS, int(able.sum()))):
            cost = np.where(able, self.mends, 1.0) + self.prices.wrong
            choice = np.where(able & (left == shares), left / cost, -1.0).argmax(axis=1)
            begun = begun if turn else choice
            mended = left[rows, choice] * self.prices.done_right
            spent = spent + still * self.mends[choice]
            left[rows, choice] -= mended
            still = np.maximum(still - mended, 1e-9)
            spent = spent + still * self.prices.wrong
            whole = spent + self.visit(left, still)
            better = whole < best
            best, first = np.where(better, whole, best), np.where(better, begun, first)
        return best, first

    def visit(self, shares: Array, still: Array) -> Array:
        """Minutes per row of a visit that is needed with the chance `still`, shares being of what is then left."""
        have = filled(shares * self.possible, self.need, self.prices.most)
        lacking = self.need.sum(axis=1) - have @ self.need.T.astype(float)
        finished = (shares * ((lacking < 0.5) & self.possible)).sum(axis=1)
        carried = have.sum(axis=1) * self.prices.part
        each = shares / np.maximum(still, 1e-9)[:, None]
        bits = -(each * np.log2(np.where(each > 0.0, each, 1.0))).sum(axis=1)
        there = self.prices.visit + carried + MINUTES_A_BIT * np.maximum(bits, 0.0)
        return np.asarray(still * there + self.prices.second * (still - finished) + shares @ self.work)


@dataclass(frozen=True)
class Question:
    """A check as a question on the telephone: its minutes, and what it is expected to spare of what follows."""

    check: str
    minutes: float
    spares: float

    @property
    def saves(self) -> float:
        """Minutes in all: below nothing, the question is not worth asking."""
        return self.spares - self.minutes


def weigh_questions(
    ends: Ends, belief: Array, predictions: Sequence[Prediction], minutes: Mapping[str, float]
) -> list[Question]:
    """Every question, those worth asking first, by what they spare per minute.

    `belief` and the predictions' `after` have their columns in the order of the causes of `ends`.
    """
    if not predictions:
        return []
    total = max(float(belief.sum()), 1e-12)
    own = np.repeat(np.arange(len(predictions)), [len(each.outcomes) for each in predictions])
    chance = np.concatenate([list(each.outcomes.values()) for each in predictions])
    after = np.concatenate([each.after for each in predictions]) / total
    # Weighed against its own mixture: what is foretold nearly exactly only must not seem to spare anything.
    before = np.array([np.array(list(each.outcomes.values())) @ each.after for each in predictions]) / total
    then = np.bincount(own, weights=chance * ends.best(after)[0], minlength=len(predictions))
    spares = ends.best(before)[0] - then
    found = [Question(p.check, minutes[p.check], float(s)) for p, s in zip(predictions, spares, strict=True)]
    return sorted(found, key=lambda q: (q.saves <= 0.0, -round(q.spares / q.minutes, 6), q.check))
