"""Which parts to carry to a visit: those that most raise the chance that one visit does, for what carrying them costs.

A visit is finished where every cause that is there can be repaired: where all the parts that it needs are at hand.
Only each cause's own probability is known, not the joint one, so causes are taken as in `repairs.py`: independent of
one another, at least one of them being present. Something not listed can't be finished whatever is carried.

A load is worth the chance to finish times the price of coming a second time, less the price of carrying its parts. All
loads are tried where they are few; else the load is filled part by part, each cause giving every part it still lacks an
equal share of its probability, and then parts are exchanged as long as that helps.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from itertools import chain, combinations
from math import comb

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.repairs import fitted_scale

__all__ = ["Load", "Needs", "best_load", "filled"]

_FEW = 4000  # loads that are all tried
_SURE = 1.0 - 1e-12  # keeps logarithms finite
_A_HAIR = 1e-9
_STARTS = 6  # loads of one cause's parts from which a good one is looked for

Array = NDArray[np.float64]
Flags = NDArray[np.bool_]


@dataclass(frozen=True)
class Needs:
    """What the causes need: `parts[c, j]` is how likely cause c, where it is there, needs part j.

    `belief` has the probability of each cause, `possible` whether it can be finished at a visit at all.
    """

    belief: Array
    parts: Array
    possible: Flags

    @cached_property
    def there(self) -> Array:
        """The probability of each cause where causes are independent and at least one is present."""
        p = np.minimum(self.belief, _SURE)
        return np.asarray(p * self._scale)

    @cached_property
    def _scale(self) -> float:
        return float(fitted_scale(np.minimum(self.belief, _SURE)[None, :])[0])

    def needed(self) -> Array:
        """How likely each part is needed."""
        none = np.log1p(-np.minimum(self.there[:, None] * self.parts, _SURE)).sum(axis=0)
        return np.asarray(-np.expm1(none) / self._scale)

    def finished(self, loads: Flags) -> Array:
        """The chance to finish with each load (loads, parts)."""
        lacks = np.log1p(-np.minimum(self.parts, _SURE))
        able = np.exp((~loads).astype(float) @ lacks.T) * self.possible
        every = np.log1p(-self.there * (1.0 - able)).sum(axis=1)
        none = np.log1p(-self.there).sum()
        return np.asarray(np.clip((np.exp(every) - np.exp(none)) / self._scale, 0.0, 1.0))


@dataclass(frozen=True)
class Load:
    """The parts carried (columns), and the chance to finish the visit with them."""

    parts: tuple[int, ...]
    chance: float


def best_load(needs: Needs, carrying: Array, second: float, most: int) -> Load:
    """The load of at most so many parts worth most: `carrying` is the price of each, `second` that of coming again."""
    tried = _Tried(needs, carrying, second)
    # A part that spares less than it costs even where nothing else is lacking is never carried.
    able = np.flatnonzero(needs.needed() * second > carrying)
    most = min(most, len(able))
    if sum(comb(len(able), k) for k in range(most + 1)) <= _FEW:
        every = chain.from_iterable(combinations(able.tolist(), k) for k in range(most + 1))
        return tried.best([frozenset(each) for each in every])
    first = filled(needs.there[None, :] * needs.possible, needs.parts >= 0.5, most)[0]
    starts = [frozenset(np.flatnonzero(first).tolist()) & frozenset(able.tolist()), frozenset[int]()]
    starts += tried.best_bundles(most)[:_STARTS]
    return max((tried.improved(each, able.tolist(), most) for each in starts), key=tried.worth)


@dataclass(frozen=True)
class _Tried:
    needs: Needs
    carrying: Array
    second: float

    def best(self, loads: list[frozenset[int]]) -> Load:
        """Of these the one worth most; of equals the first."""
        flags = np.zeros((len(loads), self.needs.parts.shape[1]), dtype=bool)
        for nth, load in enumerate(loads):
            flags[nth, sorted(load)] = True
        chance = self.needs.finished(flags)
        worth = np.round(chance * self.second - flags @ self.carrying, 9)
        best = int(worth.argmax())
        return Load(tuple(sorted(loads[best])), float(chance[best]))

    def worth(self, load: Load) -> float:
        return load.chance * self.second - float(self.carrying[list(load.parts)].sum())

    def improved(self, begun: frozenset[int], able: list[int], most: int) -> Load:
        """From a load on: what one cause needs is put in, or one part dropped or exchanged, as long as that helps."""
        bundles = self._bundles(most)
        best = self.best([begun])
        while True:
            have = frozenset(best.parts)
            near = [have - {out} for out in have]
            near += [
                load
                for out in (frozenset[int](), *(frozenset((each,)) for each in have))
                for new in bundles
                if len(load := (have - out) | new) <= most
            ]
            near += [have - frozenset(pair) | new for pair in combinations(sorted(have), 2) for new in bundles]
            near += [have | {new} for new in able if len(have) < most]
            found = self.best([have, *(load for load in near if len(load) <= most)])
            if self.worth(found) <= self.worth(best) + _A_HAIR:
                return best
            best = found

    def best_bundles(self, most: int) -> list[frozenset[int]]:
        """What single causes need, the set first that is worth most by itself."""
        return sorted(self._bundles(most), key=lambda each: -self.worth(self.best([each])))

    def _bundles(self, most: int) -> list[frozenset[int]]:
        """What single causes need, each set once, where it can be carried at all."""
        rows = np.unique(self.needs.parts[self.needs.possible & (self.needs.belief > 0)] > 0, axis=0)
        sets = [frozenset(np.flatnonzero(row).tolist()) for row in rows]
        return [each for each in sets if 0 < len(each) <= most]


def filled(weights: Array, need: Flags, most: int) -> Flags:
    """For each row of causes' weights (rows, causes) a load of at most `most` parts, quickly: (rows, parts).

    Part by part, the one next to which most weight falls, where each cause that could still be finished with what is
    left to carry gives its weight in equal shares to the parts it lacks.
    """
    wants = need.astype(float)
    have = np.zeros((len(weights), need.shape[1]), dtype=bool)
    rows = np.arange(len(weights))
    for turn in range(min(most, need.shape[1])):
        lacking = wants.sum(axis=1) - have @ wants.T
        could = (lacking > 0.5) & (lacking < most - turn + 0.5)
        share = np.where(could, weights / np.maximum(lacking, 1.0), 0.0) @ wants
        share[have] = 0.0
        pick = share.argmax(axis=1)
        have[rows, pick] |= share[rows, pick] > 0.0
    return have
