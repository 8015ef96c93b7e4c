"""Sums over the values of a few variables one by one, where tables that hold them all, for all cases, are too much.

Some supplies and contacts bear on nearly everything: after many answers a table over all of them at once may need
millions of cells. That is still done for things as they stand, but not for hundreds of cases. With the value of each of
these few known, what is left falls apart into small tables, and the answers for each combination of their values are
mixed by how probable it is ("cutset conditioning"; Pearl 1988, section 4.3). As things stand most of them are as good
as certain, so that few combinations count.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.certain import without_certain
from diagnose.inference.elimination import elimination_order, weights
from diagnose.inference.network import Factor
from diagnose.inference.propagation import Clusters, Marginals, sweep
from diagnose.inference.situation import TooWideError

__all__ = ["MOST_WORK", "WIDEST", "little_enough", "propagate"]

# Cells over all tables and cases that are done without conditioning: for many cases, and for one (a second or two); and
# of the largest table of one case (2**24 are 128 MiB).
PLAIN = 2**26
PLAIN_ONE = 2**28
WIDEST = 2**24
# So small the tables become, by fixing so many variables at the most.
SMALL = 2**13
MOST_FIXED = 30
# Cells over all tables, combinations and cases: 2**26 are a second.
MOST_WORK = 2**26
MOST_SEARCHED = 2**28
# So many combinations times cases are done in one batch; of more, each combination by itself, as what is the same for
# all cases then stays so.
AT_ONCE = 2**11
# Of the fixed variables so many may be in doubt at the most. What together makes up LEFT_OUT is left out, of doubts and
# of combinations; where the work is too much, MOST_LEFT_OUT. What is foretold is off by no more than twice that.
MOST_OPEN = 12
LEFT_OUT = 0.003
MOST_LEFT_OUT = 0.1
# Cases that know less than the first one make other combinations probable: of any that has this share of a case, all
# are tried that differ in one or two fixed variables.
WORTH_ONE = 1e-4
WORTH_TWO = 1e-2

Array = NDArray[np.float64]
Choice = tuple[int, ...]  # the value of each fixed variable, 0 or 1
Choices = NDArray[np.intp]  # (combinations, fixed variables)


def propagate(
    cards: Sequence[int],
    factors: Sequence[Factor],
    wanted: Iterable[int],
    believed: Callable[[], Mapping[int, float]] | None = None,
) -> Marginals:
    """Log evidence of every case, and the marginals of the `wanted` variables.

    `believed`, where every case knows what the first one knows, and more: how probable some variables of two values
    are in the first one; asked for only where needed. Raises TooWideError where a table of one case has more than
    WIDEST cells and fixing what is believed does not help, or too many combinations count.

    >>> prior, seen = Factor((0,), np.array([[0.9], [0.1]])), Factor((0,), np.array([[0.2], [0.8]]))
    >>> propagate([2], [prior, seen], [0])[0].round(3).tolist()
    [[0.692], [0.308]]
    """
    cases = max((f.table.shape[-1] for f in factors), default=1)
    factors, known, log_weight = without_certain(factors)
    left = _left(cards, known)
    wanted = set(wanted)
    certain = {v: np.eye(cards[v])[:, known[v], None] for v in wanted & known.keys()}
    wanted = wanted - known.keys()
    shape = Clusters(left, [f.variables for f in factors], cases)
    found = None
    if cases > 1 and shape.cells * cases > PLAIN:
        if believed is not None:
            so = {v: p for v, p in believed().items() if v not in known}
            found = _Conditioned(left, factors, cases, so).narrowed(wanted)
        else:
            found = _searched(shape, left, factors, cases, wanted)
    if found is None:
        found = sweep(_feasible(shape), factors, cases, wanted)
    return Marginals(found.log_evidence + log_weight, {**found.tables, **certain})


def little_enough(cards: Sequence[int], factors: Sequence[Factor], roughly: bool = False) -> bool:
    """Whether `propagate` can do one case of this, by its shape alone; `roughly`: by the first order tried only."""
    factors, known, _ = without_certain(factors)
    return not _too_much(Clusters(_left(cards, known), [f.variables for f in factors], 0 if roughly else 1))


def _left(cards: Sequence[int], known: Mapping[int, int]) -> list[int]:
    """How many values each variable has; a known one has one left, as it would count twice in the evidence."""
    return [1 if v in known else card for v, card in enumerate(cards)]


def _too_much(shape: Clusters) -> bool:
    return shape.widest > WIDEST or shape.cells > PLAIN_ONE


def _feasible(shape: Clusters) -> Clusters:
    if _too_much(shape):
        raise TooWideError(f"a table of {shape.widest} cells is needed, {WIDEST} are allowed")
    return shape


def _searched(
    shape: Clusters, cards: Sequence[int], factors: Sequence[Factor], cases: int, wanted: set[int]
) -> Marginals | None:
    """By combinations looked for from those of the first case; None where that is no less work."""
    if _too_much(shape):  # for one case, more orders are tried
        shape = _feasible(Clusters(cards, [f.variables for f in factors]))
    one = [Factor(f.variables, f.table[..., :1]) for f in factors]
    now = sweep(shape, one, 1, (v for v, card in enumerate(cards) if card == 2))
    so = {v: float(table[1, 0]) for v, table in now.tables.items()}
    with suppress(TooWideError):
        return _Conditioned(cards, factors, cases, so).searched(wanted)
    return None


class _Conditioned:
    """One network with some of its variables fixed: such as it is known of how probable they are in the first case."""

    def __init__(self, cards: Sequence[int], factors: Sequence[Factor], cases: int, so: Mapping[int, float]) -> None:
        self.cards, self.factors, self.cases = cards, factors, cases
        scopes = [f.variables for f in factors]
        self.fixed = _cutset(cards, scopes, so)
        self.so = np.array([so[variable] for variable in self.fixed])
        gone = set(self.fixed)
        self.shape = Clusters(
            [1 if v in gone else card for v, card in enumerate(cards)],
            [left for scope in scopes if (left := tuple(v for v in scope if v not in gone))],
        )

    def narrowed(self, wanted: set[int]) -> Marginals:
        """The mixture over the combinations that count in the first case; every case knows that, and more."""
        choices, share = self._first_case(_around(self.so))
        return self._mixed(choices[self._enough(share)], self.cases, wanted)

    def searched(self, wanted: set[int]) -> Marginals:
        """The mixture over the combinations that count in any case."""
        choices, share = self._every_case(_around(self.so))
        return self._mixed(choices[self._enough(share)], self.cases, wanted)

    def _first_case(self, fresh: list[Choice]) -> tuple[Choices, Array]:
        """These combinations with the share of each in the first case."""
        choices = np.array(fresh, dtype=np.intp)
        log_evidence, _ = self._swept(choices, 1, ())
        return choices, np.exp(log_evidence - np.logaddexp.reduce(log_evidence))[:, 0]

    def _every_case(self, fresh: list[Choice]) -> tuple[Choices, Array]:
        """These and others as far as they are worth a look, and the greatest share of each in any case."""
        nothing = (0,) * len(self.fixed)
        fresh = list(dict.fromkeys([*fresh, *(c for n in range(3) for c in _others(nothing, n))]))
        tried: dict[Choice, None] = {}
        log_evidence, share = np.empty((0, self.cases)), np.empty(0)
        looked: dict[int, set[Choice]] = {1: set(), 2: set()}
        while fresh and self.shape.cells * self.cases * (len(tried) + len(fresh)) <= MOST_SEARCHED:
            found, _ = self._swept(np.array(fresh, dtype=np.intp), self.cases, ())
            log_evidence = np.concatenate([log_evidence, found])
            tried |= dict.fromkeys(fresh)
            whole = np.logaddexp.reduce(log_evidence, axis=0)
            with np.errstate(invalid="ignore"):  # a case that nothing found so far makes possible: all is worth a look
                share = np.where(np.isfinite(whole), np.exp(log_evidence - whole), 1.0).max(axis=1)
            ahead = dict[Choice, None]()
            for count, worth in ((1, WORTH_ONE), (2, WORTH_TWO)):
                for choice, each in zip(tried, share, strict=True):
                    if each >= worth and choice not in looked[count]:
                        looked[count].add(choice)
                        ahead |= dict.fromkeys(_others(choice, count))
            fresh = [choice for choice in ahead if choice not in tried]
        if fresh:
            raise TooWideError(f"{len(self.fixed)} things bear on all the others at once")
        return np.array(list(tried), dtype=np.intp).reshape(-1, len(self.fixed)), share

    def _enough(self, share: Array) -> Choices:
        """The places of the combinations that count, as far as the work allows."""
        order = np.argsort(-share)
        covered = np.cumsum(share[order]) / share.sum()
        few = min(int(np.searchsorted(covered, 1.0 - LEFT_OUT)) + 1, MOST_WORK // (self.shape.cells * self.cases))
        if few == 0 or covered[min(few, len(covered)) - 1] < 1.0 - MOST_LEFT_OUT:
            raise TooWideError(f"{len(self.fixed)} things bear on all the others at once")
        return np.asarray(order[:few])

    def _mixed(self, choices: Choices, cases: int, wanted: set[int]) -> Marginals:
        """The first so many cases, each with the combinations mixed by how probable they are in it."""
        log_evidence, each = self._swept(choices, cases, wanted - set(self.fixed))
        whole = np.logaddexp.reduce(log_evidence, axis=0)
        weight = np.exp(log_evidence - np.where(np.isfinite(whole), whole, 0.0))  # (combinations, cases)
        tables = {variable: (table * weight).sum(axis=1) for variable, table in each.items()}
        for variable in wanted & set(self.fixed):
            so = choices[:, self.fixed.index(variable)] @ weight
            tables[variable] = np.array([weight.sum(axis=0) - so, so])
        return Marginals(whole, tables)

    def _swept(self, choices: Choices, cases: int, wanted: Iterable[int]) -> tuple[Array, dict[int, Array]]:
        """Log evidence (combinations, cases), and the probabilities (values, combinations, cases)."""
        if cases > 1 and len(choices) * cases > AT_ONCE:
            apart = [self._at_once(choice[None, :], cases, wanted) for choice in choices]
        else:
            apart = [self._at_once(choices, cases, wanted)]
        tables = {v: np.concatenate([tables[v] for _, tables in apart], axis=1) for v in apart[0][1]}
        return np.concatenate([log_evidence for log_evidence, _ in apart]), tables

    def _at_once(self, choices: Choices, cases: int, wanted: Iterable[int]) -> tuple[Array, dict[int, Array]]:
        """The same in one batch, which goes through the cases of one combination after another."""
        count = len(choices)
        place = {variable: nth for nth, variable in enumerate(self.fixed)}
        factors: list[Factor] = []
        scale = np.zeros(1)
        for factor in self.factors:
            table = factor.table[..., :cases]
            held = sum(v in place for v in factor.variables)
            if held:
                index = tuple(choices[:, place[v]] if v in place else slice(None) for v in factor.variables)
                table = _combined(table, index, held, len(factor.variables))
            else:
                table = table[..., None, :]
            if table.shape[-2:] != (1, 1):
                table = np.broadcast_to(table, (*table.shape[:-2], count, cases))
            table = table.reshape(*table.shape[:-2], -1)
            left = tuple(v for v in factor.variables if v not in place)
            if left:
                factors.append(Factor(left, table))
            else:
                with np.errstate(divide="ignore"):
                    scale = scale + np.log(table)
        swept = sweep(self.shape, factors, count * cases, wanted)
        log_evidence = np.broadcast_to(swept.log_evidence + scale, (count * cases,)).reshape(count, cases)
        return log_evidence, {
            v: np.broadcast_to(table, (len(table), count * cases)).reshape(-1, count, cases)
            for v, table in swept.tables.items()
        }


def _combined(table: Array, index: tuple[Choices | slice, ...], held: int, axes: int) -> Array:
    """The table at the fixed values: the axes left, then the combinations, then the cases."""
    picked = table[index]
    # numpy puts the axis of the combinations where the fixed ones stood if they are neighbours, else in front.
    at = [n for n, each in enumerate(index) if not isinstance(each, slice)]
    front = 0 if at[-1] - at[0] + 1 != held else at[0]
    return np.moveaxis(picked, front, axes - held)


def _around(so: Array) -> list[Choice]:
    """All combinations of what is in doubt, the rest being as it is most probable; `so` for each fixed variable."""
    doubt = np.minimum(so, 1.0 - so)
    order = np.argsort(-doubt)
    beyond = np.append(np.cumsum(doubt[order][::-1])[::-1], 0.0)  # what would be left out with so many in doubt
    count = min(int(np.argmax(beyond <= LEFT_OUT)), MOST_OPEN)
    if beyond[count] > MOST_LEFT_OUT:
        raise TooWideError(f"more than {MOST_OPEN} things in doubt bear on all the others at once")
    plain = tuple(int(each > 0.5) for each in so)
    return [
        tuple(1 - value if place in places else value for place, value in enumerate(plain))
        for n in range(count + 1)
        for places in combinations(order[:count].tolist(), n)
    ]


def _others(choice: Choice, count: int) -> Iterator[Choice]:
    """All that differ from it in so many places."""
    for places in combinations(range(len(choice)), count):
        yield tuple(1 - value if place in places else value for place, value in enumerate(choice))


def _cutset(cards: Sequence[int], scopes: Sequence[Sequence[int]], among: Iterable[int]) -> list[int]:
    """Some of these variables, two at a time those that weigh most in the tables left, until these are small."""
    fixed: list[int] = []
    while len(fixed) < MOST_FIXED:
        gone = set(fixed)
        order = elimination_order(cards, [[v for v in scope if v not in gone] for scope in scopes], 0)
        cells, heavy = weights(order, cards)
        more = heapq.nlargest(2, (v for v in among if v in heavy and v not in gone), key=lambda v: heavy[v])
        if cells - len(cards) <= SMALL or not more:
            break
        fixed += more
    return fixed
