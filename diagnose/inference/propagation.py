"""Sum-product over a tree of clusters: once towards the roots, once back, for many cases in one go.

The last axis of every table is the batch of cases (last, so that numpy's inner loops run along it). A table that is
the same for all cases keeps length 1 there, and so does every message computed from such tables only: the work for
many cases is done only where they differ. All numbers are sums and products of probabilities, hence positive: nothing
cancels. Each message is scaled to sum 1, and the logarithms of the scales add up to the logarithm of the evidence.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import reduce
from math import prod

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.elimination import cluster_tree, elimination_order
from diagnose.inference.network import Factor

__all__ = ["MOST_CELLS", "Clusters", "Marginals", "sweep"]

# Cells of the largest table over all cases at a time: 2**22 are 32 MiB. Longer batches are cut.
MOST_CELLS = 2**22
Array = NDArray[np.float64]


class Clusters:
    """The shape of the computation: clusters, and which of them holds what."""

    def __init__(self, cards: Sequence[int], scopes: Sequence[Sequence[int]], cases: int = 1) -> None:
        self.cards = cards
        self.clusters = cluster_tree(elimination_order(cards, scopes, cases))
        sizes = [self._cells(cluster.variables) for cluster in self.clusters]
        self.widest, self.cells = max(sizes, default=1), sum(sizes)
        self._holding: list[set[int]] = [set() for _ in cards]
        for number, cluster in enumerate(self.clusters):
            for variable in cluster.variables:
                self._holding[variable].add(number)

    def _cells(self, variables: Iterable[int]) -> int:
        return prod(self.cards[v] for v in variables)

    def home(self, variables: Sequence[int]) -> int:
        """The smallest cluster that holds all these variables."""
        holding = set.intersection(*(self._holding[v] for v in variables))
        return min(holding, key=lambda n: (len(self.clusters[n].variables), n))

    def aligned(self, table: Array, variables: Sequence[int], number: int) -> Array:
        """The table with an axis of length 1 for each variable of the cluster that it does not have."""
        own = set(variables)
        inside = self.clusters[number].variables
        return table.reshape(*(self.cards[v] if v in own else 1 for v in inside), table.shape[-1])

    def kept(self, table: Array, number: int, variables: Sequence[int]) -> Array:
        """The table of a cluster summed over all but these variables."""
        keep = set(variables)
        axes = tuple(axis for axis, v in enumerate(self.clusters[number].variables) if v not in keep)
        return np.asarray(table.sum(axis=axes)) if axes else table


class Marginals:
    """The answer: `log_evidence` per case, and the probabilities of any wanted variable."""

    def __init__(self, log_evidence: Array, tables: dict[int, Array]) -> None:
        self.log_evidence = log_evidence
        self.tables = tables

    def __getitem__(self, variable: int) -> Array:
        """Probability of each value, (values, cases or 1); zeros where the case is impossible."""
        return self.tables[variable]


def sweep(shape: Clusters, factors: Sequence[Factor], cases: int, wanted: Iterable[int]) -> Marginals:
    """Log evidence of every case, and the marginals of the `wanted` variables.

    `shape` is that of these factors; long batches are cut.

    >>> prior, seen = Factor((0,), np.array([[0.9], [0.1]])), Factor((0,), np.array([[0.2], [0.8]]))
    >>> sweep(Clusters([2], [(0,), (0,)]), [prior, seen], 1, [0])[0].round(3).tolist()
    [[0.692], [0.308]]
    """
    wanted = set(wanted)
    step = max(1, MOST_CELLS // shape.widest)
    parts = []
    for start in range(0, cases, step):
        part = slice(start, start + step)
        cut = [Factor(f.variables, f.table[..., part]) if f.table.shape[-1] > 1 else f for f in factors]
        parts.append(_both_ways(shape, cut, wanted))
    return _joined(parts, [len(range(cases)[start : start + step]) for start in range(0, cases, step)])


def _both_ways(shape: Clusters, factors: Sequence[Factor], wanted: set[int]) -> Marginals:
    beliefs, sent, log_evidence = _collect(shape, factors)
    homes = {variable: shape.home((variable,)) for variable in wanted}
    _distribute(shape, beliefs, sent, set(homes.values()))
    tables = {v: shape.kept(beliefs[number], number, (v,)) for v, number in homes.items()}
    return Marginals(log_evidence, tables)


def _joined(parts: Sequence[Marginals], cases: Sequence[int]) -> Marginals:
    """The parts of a batch that was cut, put together again."""
    if len(parts) == 1:
        return parts[0]
    log_evidence = [np.broadcast_to(part.log_evidence, (n,)) for part, n in zip(parts, cases, strict=True)]
    tables = {}
    for variable, table in parts[0].tables.items():
        each = [np.broadcast_to(p[variable], (len(table), n)) for p, n in zip(parts, cases, strict=True)]
        tables[variable] = np.concatenate(each, axis=1)
    return Marginals(np.concatenate(log_evidence), tables)


def _cases(table: Array) -> int:
    return int(table.shape[-1])


def _collect(shape: Clusters, factors: Sequence[Factor]) -> tuple[list[Array], list[Array], Array]:
    """Towards the roots: each cluster's product, and what it sends on (its parent gets that scaled to sum 1)."""
    waiting: list[list[Array]] = [[] for _ in shape.clusters]
    for factor in factors:
        number = shape.home(factor.variables)
        waiting[number].append(shape.aligned(factor.table, factor.variables, number))
    beliefs: list[Array] = []
    sent: list[Array] = []
    log_evidence = np.zeros(1)
    for number, cluster in enumerate(shape.clusters):
        belief = _product(waiting[number], (*(shape.cards[v] for v in cluster.variables), 1))
        message = shape.kept(belief, number, cluster.separator)
        scale = message.reshape(-1, message.shape[-1]).sum(axis=0)
        with np.errstate(divide="ignore"):
            log_evidence = log_evidence + np.log(scale)
        scaled = message / np.where(scale > 0.0, scale, 1.0)
        if cluster.parent is None:
            belief = belief / np.where(scale > 0.0, scale, 1.0)
        else:
            waiting[cluster.parent].append(shape.aligned(scaled, cluster.separator, cluster.parent))
        beliefs.append(belief)
        sent.append(message)
    return beliefs, sent, log_evidence


def _product(tables: Sequence[Array], whole: tuple[int, ...]) -> Array:
    """The product of aligned tables, the small ones first; what differs from case to case meets the rest at the end."""
    rising = sorted(tables, key=lambda table: (_cases(table) > 1, table.size))
    product = reduce(np.multiply, rising) if rising else np.ones(whole)
    full = (*whole[:-1], product.shape[-1])
    fresh = len(rising) > 1 and product.shape == full  # it may be changed in place: no factor's own table
    return np.asarray(product) if fresh else np.array(np.broadcast_to(product, full))


def _distribute(shape: Clusters, beliefs: list[Array], sent: list[Array], wanted: set[int]) -> None:
    """Back from the roots, only as far as something is wanted: each belief becomes the joint probability."""
    for number in sorted(_with_parents(shape, wanted), reverse=True):
        cluster = shape.clusters[number]
        if cluster.parent is None:
            continue
        below = sent[number]
        above = shape.kept(beliefs[cluster.parent], cluster.parent, cluster.separator)
        ratio = shape.aligned(above / np.where(below > 0.0, below, 1.0), cluster.separator, number)
        if _cases(beliefs[number]) == _cases(ratio):
            beliefs[number] *= ratio  # in place: fresh memory for large tables costs more than the sums
        else:
            beliefs[number] = beliefs[number] * ratio


def _with_parents(shape: Clusters, numbers: set[int]) -> set[int]:
    needed = set(numbers)
    for number, cluster in enumerate(shape.clusters):
        if number in needed and cluster.parent is not None:
            needed.add(cluster.parent)
    return needed
