"""Sums over the values of a few variables one by one, where tables that hold them all, for all cases, are too much.

Some supplies and contacts bear on nearly everything: after many answers a table over all of them at once may need
millions of cells. That is still done for things as they stand, but not for hundreds of cases. With the value of each of
these few known, what is left falls apart into small tables, and the answers for each combination of their values are
mixed by how probable it is ("cutset conditioning"; Pearl 1988, section 4.3). As things stand most of them are as good
as certain, so that few combinations count.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from contextlib import suppress

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.certain import without_certain
from diagnose.inference.cutset import Choice, around, cutset, enough, others
from diagnose.inference.network import Factor
from diagnose.inference.propagation import Clusters, Marginals, sweep
from diagnose.inference.situation import TooWideError

__all__ = ["MOST_WORK", "WIDEST", "little_enough", "propagate"]

# Cells over all tables and cases that are done without conditioning: for many cases, and for one (a second or two); and
# of the largest table of one case (2**24 are 128 MiB).
PLAIN = 2**26
PLAIN_ONE = 2**28
WIDEST = 2**24
# Cells over all tables, combinations and cases: 2**26 are a second.
MOST_WORK = 2**26
MOST_SEARCHED = 2**28
# So many combinations times cases are done in one batch; of more, each combination by itself, as what is the same for
# all cases then stays so.
AT_ONCE = 2**11
# Cases that know less than the first one make other combinations probable: of any that has this share of a case, all
# are tried that differ in one or two fixed variables.
WORTH_ONE = 1e-4
WORTH_TWO = 1e-2

Array = NDArray[np.float64]
Choices = NDArray[np.intp]  # (combinations, fixed variables)


def propagate(
    cards: Sequence[int],
    factors: Sequence[Factor],
    wanted: Iterable[int],
    believed: Callable[[], Mapping[int, float]] | None = None,
    fixed: list[int] | None = None,
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
            conditioned = _Conditioned(left, factors, cases, so, fixed or ())
            if fixed is not None:
                fixed[:] = conditioned.fixed
            found = _narrowed(shape, conditioned, wanted)
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


def _narrowed(shape: Clusters, conditioned: _Conditioned, wanted: set[int]) -> Marginals | None:
    """By the combinations that count in the first case; None where too many do, and few cases can be done plainly."""
    try:
        return conditioned.narrowed(wanted)
    except TooWideError:
        if _too_much(shape) or shape.cells * conditioned.cases > PLAIN_ONE:
            raise
        return None


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

    def __init__(
        self,
        cards: Sequence[int],
        factors: Sequence[Factor],
        cases: int,
        so: Mapping[int, float],
        begin: Sequence[int] = (),
    ) -> None:
        self.cards, self.factors, self.cases = cards, factors, cases
        scopes = [f.variables for f in factors]
        self.fixed = cutset(cards, scopes, so, begin)
        self.so = np.array([so[variable] for variable in self.fixed])
        gone = set(self.fixed)
        self.shape = Clusters(
            [1 if v in gone else card for v, card in enumerate(cards)],
            [left for scope in scopes if (left := tuple(v for v in scope if v not in gone))],
        )

    def narrowed(self, wanted: set[int]) -> Marginals:
        """The mixture over the combinations that count in the first case; every case knows that, and more."""
        choices, share = self._first_case(around(self.so))
        return self._mixed(choices[self._enough(share)], self.cases, wanted)

    def searched(self, wanted: set[int]) -> Marginals:
        """The mixture over the combinations that count in any case."""
        choices, share = self._every_case(around(self.so))
        return self._mixed(choices[self._enough(share)], self.cases, wanted)

    def _first_case(self, fresh: list[Choice]) -> tuple[Choices, Array]:
        """These combinations with the share of each in the first case."""
        choices = np.array(fresh, dtype=np.intp)
        log_evidence, _ = self._swept(choices, 1, ())
        return choices, np.exp(log_evidence - np.logaddexp.reduce(log_evidence))[:, 0]

    def _every_case(self, fresh: list[Choice]) -> tuple[Choices, Array]:
        """These and others as far as they are worth a look, and the greatest share of each in any case."""
        nothing = (0,) * len(self.fixed)
        fresh = list(dict.fromkeys([*fresh, *(c for n in range(3) for c in others(nothing, n))]))
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
                        ahead |= dict.fromkeys(others(choice, count))
            fresh = [choice for choice in ahead if choice not in tried]
        if fresh:
            raise TooWideError(f"{len(self.fixed)} things bear on all the others at once")
        return np.array(list(tried), dtype=np.intp).reshape(-1, len(self.fixed)), share

    def _enough(self, share: Array) -> Choices:
        """The places of the combinations that count, as far as the work allows."""
        return enough(share, MOST_WORK // (self.shape.cells * self.cases))

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
