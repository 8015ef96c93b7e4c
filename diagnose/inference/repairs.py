"""The cost of stopping to look and starting to repair: expected minutes until the complaint is seen to be gone.

Repairs are done one after the other, each followed by a look whether the complaint is gone. What counts is how likely
the complaint is still there after the first few of them. Only each cause's own probability is known here, not the
joint one, so the joint is taken to be that of causes independent of one another of which at least one is present:
with pi = z * p for every cause, z is fitted so that the probabilities p come out as they are. For z near 0 that is one
single fault (the p sum to 1) and the best order is by probability over cost; for z = 1 the faults are simply
independent and it is by odds over cost; anything between fits in between.

A repair that was not the one also wastes what it is fitted with: where the complaint is still there after it, that is
added to its minutes.

Where causes are many, trying repairs one after the other soon costs more than the call for help, whatever one more
check may say. A belief is then also priced as a search: the bits still open, at a fixed price each, and the repair of
what is found. The price must not depend on which checks are left: else a check that tells nothing would seem as good as
one that tells much, the telling being left to the others.

All of it runs for many beliefs at once (rows): after every outcome of every open check.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.economy import Economy, Task
from diagnose.inference.network import REPAIR_DID_NOT_TAKE

__all__ = [
    "AS_GOOD_AS_KNOWN",
    "HELP",
    "KNOWN_OF_SEVERAL",
    "MINUTES_A_BIT",
    "Repairs",
    "Stands",
    "fitted_scale",
    "open_bits",
]

HELP = -1  # begin with the call for help
# What closing one bit of doubt takes, with covers and the checks that say nothing new. Judgement, and trial: 4, 6, 10
# and 16 minutes led to 107, 101, 98 and 99 minutes a job over sixty jobs played through with the shipped knowledge.
MINUTES_A_BIT = 10.0
# Of what was believed at 0.8 to 0.9 in 106 simulated jobs, 14 of 15 were so. With several complaints less will do, as a
# repair also tells what becomes of the others. Judgement.
AS_GOOD_AS_KNOWN = 0.9
KNOWN_OF_SEVERAL = 0.8
_CERTAIN = 1.0 - 1e-12  # keeps odds finite
_LIKELY = 0.5  # to begin with a cause of a complaint that another one explains as well; judgement
_A_HAIR = 0.001  # minutes: the price of the call comes out so near where the scale of single faults is fitted
_NEVER = 1e-300  # and their logarithms

Array = NDArray[np.float64]
Flags = NDArray[np.bool_]
Numbers = NDArray[np.intp]


@dataclass(frozen=True)
class Stands:
    """How things stand, row by row: what is open (rows, accesses) and the machine's state (a number per row)."""

    opened: Flags
    states: Numbers


class Repairs:
    """The repairs that may be done, with their costs; column by column as the beliefs have them.

    A cause without a repair here (None: not this person's, or "something not listed") only help can mend. `groups` are
    columns of causes per complaint, each cause in one group: a complaint is done with when none of its group is left.
    `rest` are columns of groups whose complaint has causes in an earlier group as well.
    """

    def __init__(
        self,
        tasks: Sequence[Task | None],
        groups: Sequence[Sequence[int]],
        proof: Task,
        economy: Economy,
        rest: Collection[int] = (),
    ) -> None:
        self.economy = economy
        self.accesses = sorted(a for a, minutes in economy.access.items() if minutes > 0)
        self.states = sorted(economy.enter)
        self.groups = [np.array(group, dtype=np.intp) for group in groups if group]
        # Groups that another complaint shares causes with hold the rest of them: it may be that none of it is there.
        self._rest = {nth for nth, group in enumerate(g for g in groups if g) if set(group) & set(rest)}
        self._possible = np.array([task is not None for task in tasks], dtype=bool)
        done = [task or Task(economy.help_minutes, state=proof.state) for task in tasks]
        self._opening = np.array([economy.access[a] for a in self.accesses])
        self._needs = self._needed([task.open | proof.open for task in done])
        self._moves = self._moved(done)
        self._work = np.array([task.minutes + economy.move(task.state, proof.state) + proof.minutes for task in done])
        self._wasted = np.array([task.wasted for task in done])
        self._after = self.states.index(proof.state)

    def _needed(self, opens: Sequence[frozenset[str]]) -> Array:
        needs = [[a in each for each in opens] for a in self.accesses]
        return np.array(needs, dtype=float).reshape(len(self.accesses), len(opens))

    def _moved(self, tasks: Sequence[Task]) -> Array:
        moves = [[self.economy.move(state, task.state) for task in tasks] for state in self.states]
        return np.array(moves, dtype=float).reshape(len(self.states), len(tasks))

    def stands(self, each: Sequence[tuple[frozenset[str], str]]) -> Stands:
        """Rows from what is open and the state of the machine."""
        opened = [[a in opens for a in self.accesses] for opens, _ in each]
        states = [self.states.index(state) for _, state in each]
        return Stands(np.array(opened, dtype=bool).reshape(len(each), len(self.accesses)), np.array(states))

    def minutes(self, tasks: Sequence[Task], stands: Stands) -> Array:
        """What each task would take in each row, with its covers and the change of state: (rows, tasks)."""
        own = np.array([task.minutes for task in tasks])
        opening = (~stands.opened * self._opening) @ self._needed([task.open for task in tasks])
        return np.asarray(own + opening + self._moved(tasks)[stands.states])

    def each(self, stands: Stands) -> Array:
        """The cost of each repair with the look afterwards, (rows, causes)."""
        return np.asarray(self._work + self._moves[stands.states] + (~stands.opened * self._opening) @ self._needs)

    def within_reach(self, belief: Array) -> float:
        """How much of the belief (causes) in what may be the matter can be mended here."""
        under = np.concatenate(self.groups)
        return float(belief[under] @ self._possible[under] / max(belief[under].sum(), 1e-300))

    def surest(self, belief: Array, stands: Stands) -> int:
        """Of what is as good as known and can be mended here, the column of the quickest repair; HELP for none."""
        enough = KNOWN_OF_SEVERAL if len(self.groups) > 1 else AS_GOOD_AS_KNOWN
        known = np.flatnonzero((belief >= enough) & self._possible)
        return int(known[self.each(stands)[0, known].argmin()]) if known.size else HELP

    def by_search(self, beliefs: Array, stands: Stands) -> Array:
        """Expected minutes per row if one goes on looking until the cause is known and then repairs it."""
        bits = np.zeros(len(beliefs))
        for nth, group in enumerate(self.groups):
            p = beliefs[:, group]
            bits += _bits_if_any(p) if nth in self._rest else open_bits(p)
        return MINUTES_A_BIT * bits + self.work(beliefs, stands)

    def work(self, beliefs: Array, stands: Stands) -> Array:
        """Expected minutes per row of the repairs themselves, whoever has found what is to be repaired."""
        under = np.concatenate(self.groups)
        return np.asarray((beliefs * self.each(stands))[:, under].sum(axis=1))

    def at_once(self, beliefs: Array, stands: Stands) -> tuple[Array, Numbers]:
        """Expected minutes per row, and the column of the repair to begin with (or HELP), without another check."""
        plain = np.zeros(len(beliefs))
        called = np.zeros(len(beliefs), dtype=bool)
        first = np.full(len(beliefs), HELP)
        for nth, group in enumerate(self.groups):
            minutes, begin = self._one_group(beliefs[:, group], group, stands, nth in self._rest)
            dear = self.dear(minutes)
            plain, called = plain + np.where(dear, 0.0, minutes), called | dear
            # What another complaint explains as well is not the one to begin with where it is likely none of this.
            likely = nth not in self._rest or -np.expm1(np.log1p(-np.minimum(beliefs[:, group], _CERTAIN)).sum(axis=1))
            first = np.where((first == HELP) & ~dear & (likely >= _LIKELY), begin, first)
        # One call does for all that is dear; what is plain here is not made quicker by it, and is done first.
        return plain + np.where(called, self.economy.help_minutes, 0.0), first

    def dear(self, minutes: Array | float) -> Flags:
        """Whether something takes as long as the call for help; where it is that call, its last digit may be off."""
        return np.asarray(minutes >= self.economy.help_minutes - _A_HAIR)

    def by_help(self, belief: Array, stands: Stands) -> float:
        """Expected minutes with the call made now, for one belief: the plain complaints but one come on top."""
        each = [
            float(self._one_group(belief[None, group], group, stands, nth in self._rest)[0][0])
            for nth, group in enumerate(self.groups)
        ]
        plain = sorted(minutes for minutes in each if not self.dear(minutes))
        return self.economy.help_minutes + sum(plain[: len(each) - 1])

    def _one_group(self, beliefs: Array, group: Numbers, stands: Stands, rest: bool) -> tuple[Array, Numbers]:
        """For one complaint, `beliefs` (rows, group): always the repair with the most odds per minute next.

        Of a `rest` none need be there, so its causes are taken to be simply independent.
        """
        rows = np.arange(len(beliefs))
        p = np.minimum(beliefs, _CERTAIN)
        z = np.ones(len(p)) if rest else fitted_scale(p)
        pi = p * z[:, None]
        left = np.log1p(-pi)
        # Rounded, so that of siblings as probable as each other the first goes first, whatever their last digits.
        worth = np.log(np.maximum(pi, _NEVER)) - left
        remaining = np.broadcast_to(self._possible[group], p.shape).copy()
        need, work, wasted, opened = self._needs[:, group], self._work[group], self._wasted[group], stands.opened
        moves = self._moves[stands.states][:, group]
        still = before = -np.expm1(left.sum(axis=1)) / z
        spent, took = np.zeros(len(beliefs)), 1.0
        best = still * self.economy.help_minutes
        first = began = np.full(len(beliefs), HELP)
        for turn in range(int(self._possible[group].sum())):
            cost = work + moves + (~opened * self._opening) @ need
            choice = np.where(remaining, np.round(worth - np.log(cost + wasted), 6), -np.inf).argmax(axis=1)
            began = began if turn else group[choice]
            spent = spent + still * cost[rows, choice]
            remaining[rows, choice] = False
            left[rows, choice] = 0.0
            opened = opened | (need[:, choice].T > 0)
            moves = self._moves[self._after][group]
            took *= 1.0 - REPAIR_DID_NOT_TAKE
            now = -np.expm1(left.sum(axis=1)) / z
            still, before = still - (before - now) * took, now
            spent = spent + still * wasted[choice]
            whole = spent + still * self.economy.help_minutes
            better = whole < best
            first, best = np.where(better, began, first), np.where(better, whole, best)
            if np.all(spent >= best):
                break
        return best, first


def fitted_scale(p: Array) -> Array:
    """Per row the z with z = 1 - prod(1 - z p): how far the causes are from a single fault (towards 0).

    >>> fitted_scale(np.array([[0.5, 0.5], [1.0, 0.3]])).round(3).tolist()
    [0.0, 1.0]
    """
    p = np.minimum(p, _CERTAIN)
    z = np.ones(len(p))
    for _ in range(40):  # Newton from above on a concave function: it never oversteps the root
        none = np.exp(np.log1p(-p * z[:, None]).sum(axis=1))
        slope = none * (p / (1.0 - p * z[:, None])).sum(axis=1) - 1.0
        step = (1.0 - none - z) / np.where(slope < -1e-9, slope, -1.0)
        z = np.maximum(z - np.where(slope < -1e-9, step, 0.0), 1e-6)
        if np.all(np.abs(step) < 1e-9 + 1e-6 * z):
            break
    return z


def open_bits(p: Array) -> Array:
    """Entropy per row of which causes are present, at least one being so (see `fitted_scale`).

    >>> open_bits(np.array([[0.5, 0.5], [0.25, 0.75]])).round(3).tolist()
    [1.0, 0.811]
    """
    p = np.minimum(p, _CERTAIN)
    z = fitted_scale(p)
    pi = p * z[:, None]
    each = (_surprise(pi) + _surprise(1.0 - pi)).sum(axis=1)
    return np.asarray(np.maximum((each - _surprise(z) - _surprise(1.0 - z)) / z, 0.0))


def _bits_if_any(p: Array) -> Array:
    """Per row, what is open of causes independent of one another once it shows that one of them is there at all.

    Where none is, nobody looks for it: the complaint is gone with what explained it.
    """
    some = np.maximum(-np.expm1(np.log1p(-np.minimum(p, _CERTAIN)).sum(axis=1)), 1e-12)
    return np.asarray(some * open_bits(p / some[:, None]))


def _surprise(p: Array) -> Array:
    return np.asarray(-p * np.log2(np.where(p > 0.0, p, 1.0)))
