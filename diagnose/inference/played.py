"""Jobs played from the knowledge's own tables: what the advice takes, in minutes, until a repair is verified.

The machine answers as the tables say, so this measures knowledge and advice against themselves: whether what is
written suffices to find what is written. It says nothing of whether the tables are right.
"""

from __future__ import annotations

import random
from dataclasses import dataclass

from diagnose.inference.advice import advise
from diagnose.inference.economy import Circumstances, Economy
from diagnose.inference.network import REPAIR_DID_NOT_TAKE
from diagnose.inference.options import Option
from diagnose.inference.posterior import bearing_checks, predict, solve
from diagnose.inference.situation import Prediction, Situation, TooWideError
from diagnose.inference.tree import FaultTree, TreeCheck, so_in
from diagnose.model import Book, Finding

__all__ = ["Play", "likely_causes", "play"]

MOST_STEPS = 60
_REAL = 1e-6  # an answer less likely than this is none


@dataclass(frozen=True)
class Play:
    """One job from the complaint to its end.

    `minutes` in all, of which `looking` were spent on checks, and `idle` of those on checks after none of whose answers
    another repair would have come first, nor another cause been the likeliest.
    """

    cause: str
    minutes: float
    looking: float
    idle: float
    checks: int
    wrong_repairs: int
    helped: bool


def likely_causes(tree: FaultTree, complaint: str, count: int) -> list[str]:
    """So many causes of a complaint, spread over all of them as often as they are found, each alone able to bring it.

    The middle of each of `count` equal shares of their probability is taken, causes in the order of the book.
    """
    alone = [c for c in tree.causes_under(complaint) if complaint in so_in(tree, {c})]
    total = sum(tree.nodes[c].prior for c in alone)
    marks = [(nth + 0.5) / count * total for nth in range(count)]
    found: list[str] = []
    passed = 0.0
    for cause in alone:
        passed += tree.nodes[cause].prior
        while len(found) < count and marks[len(found)] < passed:
            found.append(cause)
    return found


def play(book: Book, tree: FaultTree, complaint: str, cause: str, seed: int) -> Play:
    """Play one job: this cause alone is there, checks answer at random as their tables say, the advice decides."""
    return _Game(book, tree, complaint, cause, random.Random(f"{complaint} {cause} {seed}")).play()


class _Game:
    def __init__(self, book: Book, tree: FaultTree, complaint: str, cause: str, rng: random.Random) -> None:
        self.book, self.tree, self.complaint, self.cause, self.rng = book, tree, complaint, cause, rng
        self.economy = Economy.of(book)
        self.now = Circumstances()
        self.so = so_in(tree, {cause})
        self.findings: list[Finding] = []
        self.repaired: list[str] = []
        self.complaints = [(complaint, 0, True)]
        self.minutes = self.looking = self.idle = 0.0
        self.checks = 0

    def play(self) -> Play:
        for _ in range(MOST_STEPS):
            situation = Situation(tuple(self.complaints), tuple(self.findings), tuple(self.repaired))
            done = {f.check for f in self.findings if f.stage == situation.stage}
            asked = [c for c in bearing_checks(self.tree, situation) if c not in done]
            try:
                solution, predictions = solve(self.tree, situation), predict(self.tree, situation, asked)
            except TooWideError:  # as in a job: the oldest reading is left aside
                self.findings.pop(0)
                continue
            best = advise(self.book, self.tree, situation, solution, predictions, self.economy, self.now).best
            self.minutes += best.minutes
            if best.kind == "help":
                return self._end(helped=True)
            if best.kind == "check":
                self._check(best, predictions[best.id])
            elif self._repair(best):
                return self._end(helped=False)
        return self._end(helped=True)

    def _check(self, option: Option, prediction: Prediction) -> None:
        check = self.tree.checks[option.id]
        outcome = self.rng.choices(check.outcomes, _row(check, self.so))[0]
        self.findings.append(Finding(check.id, {outcome: 1.0}, "played", (), stage=len(self.repaired)))
        self.checks += 1
        self.looking += option.minutes
        if not _can_change(option, prediction):
            self.idle += option.minutes
        entry = self.book.checks[check.id]
        self.now = Circumstances(self.now.open | (set(entry.open) - {"none"}), entry.state)

    def _repair(self, option: Option) -> bool:
        """Whether the complaint is gone after it."""
        took = option.id == self.cause and self.rng.random() >= REPAIR_DID_NOT_TAKE
        self.repaired.append(option.id)
        if took:
            return True
        self.complaints.append((self.complaint, len(self.repaired), True))
        self.now = Circumstances(state="running")
        return False

    def _end(self, helped: bool) -> Play:
        wrong = sum(cause != self.cause for cause in self.repaired)
        return Play(self.cause, self.minutes, self.looking, self.idle, self.checks, wrong, helped)


def _can_change(option: Option, prediction: Prediction) -> bool:
    """Whether after some answer another repair would come first, or another cause be the likeliest."""
    real = [(nth, outcome) for nth, (outcome, p) in enumerate(prediction.outcomes.items()) if p > _REAL]
    leading = {int(prediction.after[nth].argmax()) for nth, _ in real}
    then = {(option.then or {}).get(outcome) for _, outcome in real}
    return len(leading) > 1 or len(then) > 1


def _row(check: TreeCheck, so: frozenset[str]) -> list[float]:
    return [float(p) for p in check.shows[check.row(so)]]
