"""The cost of stopping to look and starting to repair: expected minutes until the complaint is seen to be gone.

Repairs are done one after the other, each followed by a look whether the complaint is gone. What counts is how likely
the complaint is still there after the first few of them. Only each cause's own probability is known here, not the
joint one, so the joint is taken to be that of causes independent of one another of which at least one is present:
with pi = z * p for every cause, z is fitted so that the probabilities p come out as they are. For z near 0 that is one
single fault (the p sum to 1) and the best order is by probability over cost; for z = 1 the faults are simply
independent and it is by odds over cost; anything between fits in between.

All of it runs for many beliefs at once (rows): after every outcome of every open check.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.economy import Economy, Task
from diagnose.inference.network import REPAIR_DID_NOT_TAKE

__all__ = ["HELP", "Plan", "Repairs"]

HELP = -1  # the plan begins with the call for help
_CERTAIN = 1.0 - 1e-12  # keeps odds finite

Array = NDArray[np.float64]
Flags = NDArray[np.bool_]
Numbers = NDArray[np.intp]


@dataclass(frozen=True)
class Plan:
    """Per belief: expected minutes, and the repair to begin with (a column, or HELP)."""

    minutes: Array
    first: Numbers


class Repairs:
    """The repairs that may be done, with their costs; column by column as the beliefs have them.

    A cause without a repair here (None: not this person's, or "something not listed") only help can mend. `groups` are
    columns of causes per complaint, each cause in one group: a complaint is done with when none of its group is left.
    """

    def __init__(
        self, tasks: Sequence[Task | None], groups: Sequence[Sequence[int]], proof: Task, economy: Economy
    ) -> None:
        self.economy = economy
        self.accesses = sorted({a for task in (*tasks, proof) if task for a in task.open if economy.access[a] > 0})
        self.states = sorted(economy.enter)
        self.groups = [np.array(group, dtype=np.intp) for group in groups if group]
        self._possible = np.array([task is not None for task in tasks], dtype=bool)
        done = [task or Task(0.0) for task in tasks]
        self._needs = np.array([[a in task.open | proof.open for task in done] for a in self.accesses], dtype=float)
        self._needs = self._needs.reshape(len(self.accesses), len(done))
        self._opening = np.array([economy.access[a] for a in self.accesses])
        self._work = np.array(
            [task.minutes + economy.move(task.state, proof.state) + proof.minutes for task in done]
        )
        moves = [[economy.move(state, task.state) for task in done] for state in self.states]
        self._moves = np.array(moves).reshape(len(self.states), len(done))
        self._after = self.states.index(proof.state)

    def opened(self, open_now: frozenset[str]) -> Flags:
        """What is open, as one row."""
        return np.array([a in open_now for a in self.accesses], dtype=bool)

    def plan(self, beliefs: Array, opened: Flags, states: Numbers) -> Plan:
        """Expected minutes per row of `beliefs` (rows, causes), with what is open (rows, accesses) and the state."""
        total = np.zeros(len(beliefs))
        first = np.full(len(beliefs), HELP)
        for group in self.groups:
            minutes, begin = self._one_group(beliefs, group, opened, states)
            total += minutes
            first = np.where(first == HELP, begin, first)
        stop = total >= self.economy.help_minutes
        return Plan(np.minimum(total, self.economy.help_minutes), np.where(stop, HELP, first))

    def _one_group(self, beliefs: Array, group: Numbers, opened: Flags, states: Numbers) -> tuple[Array, Numbers]:
        """Greedy by odds over cost; stop for help where that is cheapest."""
        rows = np.arange(len(beliefs))
        p = np.minimum(beliefs[:, group], _CERTAIN)
        z = fitted_scale(p)
        pi = p * z[:, None]
        odds = pi / (1.0 - pi)
        left = np.log1p(-pi)
        remaining = np.broadcast_to(self._possible[group], p.shape).copy()
        need, work = self._needs[:, group], self._work[group]
        opened = opened.copy()
        moves = self._moves[states][:, group]
        still = before = -np.expm1(left.sum(axis=1)) / z
        spent = np.zeros(len(beliefs))
        best = still * self.economy.help_minutes
        first = np.full(len(beliefs), HELP)
        began = np.full(len(beliefs), HELP)
        took = 1.0
        for turn in range(int(self._possible[group].sum())):
            cost = work + moves + (~opened * self._opening) @ need
            choice = np.where(remaining, odds / cost, -1.0).argmax(axis=1)
            if turn == 0:
                began = group[choice]
            spent = spent + still * cost[rows, choice]
            remaining[rows, choice] = False
            left[rows, choice] = 0.0
            opened = opened | (need[:, choice].T > 0)
            moves = self._moves[self._after][group]
            took *= 1.0 - REPAIR_DID_NOT_TAKE
            now = -np.expm1(left.sum(axis=1)) / z
            still, before = still - (before - now) * took, now
            whole = spent + still * self.economy.help_minutes
            first = np.where(whole < best, began, first)
            best = np.minimum(best, whole)
            if np.all(spent >= best):
                break
        return best, first


def fitted_scale(p: Array) -> Array:
    """Per row the z with z = 1 - prod(1 - z p): how far the causes are from a single fault (towards 0).

    >>> fitted_scale(np.array([[0.5, 0.5], [1.0, 0.3]])).round(3).tolist()
    [0.0, 1.0]
    """
    z = np.ones(len(p))
    for _ in range(40):  # Newton from above on a concave function: it never oversteps the root
        none = np.exp(np.log1p(-p * z[:, None]).sum(axis=1))
        slope = none * (p / (1.0 - p * z[:, None])).sum(axis=1) - 1.0
        step = (1.0 - none - z) / np.where(slope < -1e-9, slope, -1.0)
        z = np.maximum(z - np.where(slope < -1e-9, step, 0.0), 1e-6)
        if np.all(np.abs(step) < 1e-9 + 1e-6 * z):
            break
    return z
