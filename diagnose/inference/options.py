"""Ranking what can be done next: a check, a repair or the call for help, by expected minutes to a verified repair.

One step ahead: a check costs its own minutes, the covers it opens and the change of the machine's state, and then the
repairs as they would be tried after each of its outcomes. It is worth doing where that is less than repairing now. A
cover stays open for whatever comes after, so that it is paid once. Of the checks worth doing, the one that spares most
per minute goes first: the others can follow it.

Where causes are many, one check alone often cannot beat the call for help, although a few would. So when repairing at
once comes near that call while most of what may be the matter can be mended here, what is left after each outcome is
priced as a search (see `repairs.py`), and the checks that spare minutes by that price go first. Help finds what is the
matter; the repairs are then still to be done, and count on both sides.

What is as good as known is repaired before anything else is looked at. With several complaints it may be behind the
other one too, in a way not listed, and checks go on more plainly on a machine with one fault less.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.economy import Circumstances, Task
from diagnose.inference.repairs import HELP, Repairs, Stands
from diagnose.inference.situation import Prediction

__all__ = ["Advice", "Option", "weigh_options"]

# Help goes first without more ado where less than half of what may be the matter can be mended here.
_MOSTLY = 0.5
# From this share of the call for help on, the price of repairing at once is cut off by that call and tells one check
# from another no longer.
_NEAR_HELP = 0.9
# What a check in a search must spare of its own minutes, at least; judgement.
_WORTH_A_LOOK = 0.2
# So far what is foretold may be off by rounding.
_EXACT = 1e-6

Array = NDArray[np.float64]
Numbers = NDArray[np.intp]


@dataclass(frozen=True)
class Option:
    """Something that can be done next.

    `expected` minutes from now to a verified repair when this is done next, of which `minutes` for the step itself
    (`opening` of them for covers, `moving` for the machine's state). `saves` minutes against the best that can be done
    without another check. For a check, `outcomes` says how likely each answer is and `then` what would be tried first
    after it: a cause to repair, or "help". For a repair, `probability` is that of the cause.
    """

    kind: Literal["check", "repair", "help"]
    id: str
    expected: float
    saves: float
    minutes: float
    opening: float = 0.0
    moving: float = 0.0
    probability: float | None = None
    outcomes: Mapping[str, float] | None = None
    then: Mapping[str, str] | None = None


@dataclass(frozen=True)
class Advice:
    """All options, the best first.

    With `search`, no single check settles enough to repair at once, but several together will: minutes are then those
    of the search, and `saves` is against a search without this check.
    """

    options: tuple[Option, ...]
    search: bool = False

    @property
    def best(self) -> Option:
        return self.options[0]

    def top(self, count: int = 3) -> tuple[Option, ...]:
        return self.options[:count]


def weigh_options(
    causes: Sequence[str],
    belief: Array,
    predictions: Sequence[Prediction],
    tasks: Mapping[str, Task],
    repairs: Repairs,
    now: Circumstances,
) -> Advice:
    """Rank repairing at once, every check in `predictions` (with its `tasks`), and calling for help.

    `belief` and the predictions' `after` have their columns in the order of `causes`, as have the repairs.
    """
    weigher = _Weigher(causes, belief, predictions, [tasks[p.check] for p in predictions], repairs, now)
    advice = weigher.advice()
    dear = min(o.expected for o in advice.options if o.kind != "check") >= _NEAR_HELP * repairs.economy.help_minutes
    if dear and repairs.within_reach(belief) > _MOSTLY:
        search = weigher.advice(search=True)
        if search.best.kind == "check":
            return search
    return advice


@dataclass(frozen=True)
class _Weigher:
    causes: Sequence[str]
    belief: Array
    predictions: Sequence[Prediction]
    tasks: Sequence[Task]
    repairs: Repairs
    now: Circumstances

    def advice(self, search: bool = False) -> Advice:
        stands = self.repairs.stands([(self.now.open, self.now.state)])
        minutes, first = self.repairs.at_once(self.belief[None, :], stands)
        at_once, begin = float(minutes[0]), int(first[0])
        known = self.repairs.surest(self.belief, stands)
        begin = begin if known == HELP else known
        base = float(self._searched(self.belief[None, :], minutes, stands)[0]) if search else at_once
        options = self._checks(base, search) if self.predictions else []
        by_help, call = self.repairs.by_help(self.belief, stands), self.repairs.economy.help_minutes
        work = float(self.repairs.work(self.belief[None, :], stands)[0]) if search else 0.0
        by_help += work
        options.append(Option("help", "help", by_help, min(at_once - by_help, 0.0), call))
        if begin != HELP:
            cost = float(self.repairs.each(stands)[0, begin])
            options.append(
                Option("repair", self.causes[begin], at_once, 0.0, cost, probability=float(self.belief[begin]))
            )
        without = min(o.expected for o in options if o.kind != "check")
        worth = (base - work) / max(without - work, 1e-9) if search else np.inf
        ranked = sorted(options, key=lambda o: _order(o, max(worth, _WORTH_A_LOOK)))
        if known != HELP:
            ranked.sort(key=lambda o: o.kind != "repair")
        return Advice(tuple(ranked), search)

    def _checks(self, base: float, search: bool) -> list[Option]:
        """All checks in one go: a row for each outcome of each."""
        own = np.repeat(np.arange(len(self.tasks)), [len(each.outcomes) for each in self.predictions])
        ahead = [(self.now.open | task.open, task.state) for task in self.tasks]
        stands = self.repairs.stands([ahead[nth] for nth in own.tolist()])
        after = np.concatenate([each.after for each in self.predictions])
        rest, first = self.repairs.at_once(after, stands)
        if search:
            rest = self._searched(after, rest, stands)
        chance = np.concatenate([list(each.outcomes.values()) for each in self.predictions])
        expected = np.bincount(own, weights=chance * rest, minlength=len(self.tasks)) + self._too_little(base, search)
        return [
            self._check(nth, float(expected[nth]), first[own == nth].tolist(), base) for nth in range(len(self.tasks))
        ]

    def _too_little(self, base: float, search: bool) -> Array:
        """What the price of things as they stand is too little by, where a check was foretold nearly exactly only.

        What is believed after each outcome, weighed by its chance, should be what is believed now. Where it is not, a
        check that tells nothing would seem to save the difference.
        """
        before = np.array([np.array(list(each.outcomes.values())) @ each.after for each in self.predictions])
        off = np.flatnonzero(np.abs(before - self.belief).max(axis=1) > _EXACT)
        much = np.zeros(len(self.predictions))
        if off.size:
            stands = self.repairs.stands([(self.now.open, self.now.state)] * len(off))
            now, _ = self.repairs.at_once(before[off], stands)
            much[off] = base - (self._searched(before[off], now, stands) if search else now)
        return much

    def _searched(self, beliefs: Array, at_once: Array, stands: Stands) -> Array:
        """Expected minutes per row of a search, or of what is done `at_once`, which may be a call and then the work."""
        called = self.repairs.dear(at_once)
        by_help = at_once + np.where(called, self.repairs.work(beliefs, stands), 0.0)
        return np.minimum(by_help, self.repairs.by_search(beliefs, stands))

    def _check(self, nth: int, rest: float, first: list[int], base: float) -> Option:
        each, task, economy = self.predictions[nth], self.tasks[nth], self.repairs.economy
        opening = float(sum(economy.access[a] for a in task.open - self.now.open))
        moving = economy.move(self.now.state, task.state)
        minutes = task.minutes + opening + moving
        names = ["help" if f == HELP else self.causes[f] for f in first]
        return Option(
            "check",
            each.check,
            minutes + rest,
            base - minutes - rest,
            minutes,
            opening,
            moving,
            outcomes=each.outcomes,
            then=dict(zip(each.outcomes, names, strict=True)),
        )


def _order(option: Option, worth: float) -> tuple[int, float, str]:
    """Checks that save, by what they spare per minute; then what can be done without one; then the other checks.

    In a search one that spares less than it takes still goes first, where its share of that is `worth` it: with checks
    that poor, what is left to look for would take so much longer, and still less than what can be done without one.
    """
    if option.kind != "check":
        return 1, round(option.expected, 6), f"{option.kind == 'help':d} {option.id}"
    spared = (option.saves + option.minutes) / option.minutes
    if option.saves > 0.0 or spared > worth:
        return 0, -round(spared, 6), option.id
    return 2, round(option.expected, 6), option.id
