"""Sum-product over a tree of clusters: once towards the roots, once back, for many cases in one go.

The last axis of every table is the batch of cases (last, so that numpy's inner loops run along it). A table that is
the same for all cases keeps length 1 there, and so does every message computed from such tables only: the work for many
cases is done only where they differ. All numbers are sums
and products of probabilities, hence positive: nothing cancels. Each message is scaled to sum 1 and the logarithms of
the scales add up to the logarithm of the evidence.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import reduce
from math import prod

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.elimination import cluster_tree, elimination_order
from diagnose.inference.network import Factor
from diagnose.inference.situation import TooWideError

__all__ = ["MOST_CELLS", "Clusters", "Marginals", "propagate"]

# Cells of the largest table over all cases of a batch: 2**24 are 128 MiB. More raises an error, rather than bringing
# the technician's laptop to its knees.
MOST_CELLS = 2**24

Array = NDArray[np.float64]


class Clusters:
    """The shape of the computation: clusters, and which of them holds what."""

    def __init__(self, cards: Sequence[int], scopes: Sequence[Sequence[int]]) -> None:
        self.cards = cards
        self.clusters = cluster_tree(elimination_order(cards, scopes))
        self.widest = max((self._cells(cluster.variables) for cluster in self.clusters), default=1)
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
        self._tables = tables

    def __getitem__(self, variable: int) -> Array:
        """Probability of each value, (values, batch or 1); zeros where the case is impossible."""
        return self._tables[variable]


def propagate(cards: Sequence[int], factors: Sequence[Factor], wanted: Iterable[int]) -> Marginals:
    """Log evidence of every case and the marginals of the wanted variables.

    >>> prior, seen = Factor((0,), np.array([[0.9], [0.1]])), Factor((0,), np.array([[0.2], [0.8]]))
    >>> propagate([2], [prior, seen], [0])[0].round(3).tolist()
    [[0.692], [0.308]]
    """
    shape = Clusters(cards, [factor.variables for factor in factors])
    cases = max((factor.table.shape[-1] for factor in factors), default=1)
    if shape.widest * cases > MOST_CELLS:
        raise TooWideError(f"{cases} cases of up to {shape.widest} cells are more than {MOST_CELLS} cells")
    beliefs, messages, log_evidence = _collect(shape, factors)
    homes = {variable: shape.home((variable,)) for variable in wanted}
    _distribute(shape, beliefs, messages, set(homes.values()))
    tables = {v: shape.kept(beliefs[number], number, (v,)) for v, number in homes.items()}
    return Marginals(log_evidence, tables)


def _collect(shape: Clusters, factors: Sequence[Factor]) -> tuple[list[Array], list[Array], Array]:
    """Towards the roots: each cluster's product, scaled by the sum of what it sends on, and what it sends."""
    waiting: list[list[Array]] = [[] for _ in shape.clusters]
    for factor in factors:
        number = shape.home(factor.variables)
        waiting[number].append(shape.aligned(factor.table, factor.variables, number))
    beliefs: list[Array] = []
    messages: list[Array] = []
    log_evidence = np.zeros(1)
    for number, cluster in enumerate(shape.clusters):
        whole = np.ones((*(shape.cards[v] for v in cluster.variables), 1))
        belief = reduce(np.multiply, sorted(waiting[number], key=_cases), whole)
        message = shape.kept(belief, number, cluster.separator)
        scale = message.reshape(-1, message.shape[-1]).sum(axis=0)
        with np.errstate(divide="ignore"):
            log_evidence = log_evidence + np.log(scale)
        scale = np.where(scale > 0.0, scale, 1.0)
        messages.append(message / scale)
        beliefs.append(belief / scale)
        if cluster.parent is not None:
            waiting[cluster.parent].append(shape.aligned(messages[-1], cluster.separator, cluster.parent))
    return beliefs, messages, log_evidence


def _cases(table: Array) -> int:
    return int(table.shape[-1])


def _distribute(shape: Clusters, beliefs: list[Array], messages: list[Array], wanted: set[int]) -> None:
    """Back from the roots, only as far as something is wanted: each belief becomes the joint probability."""
    needed = set(wanted)
    for number, cluster in enumerate(shape.clusters):
        if number in needed and cluster.parent is not None:
            needed.add(cluster.parent)
    for number in sorted(needed, reverse=True):
        cluster = shape.clusters[number]
        if cluster.parent is None:
            continue
        above = shape.kept(beliefs[cluster.parent], cluster.parent, cluster.separator)
        below = messages[number]
        ratio = above / np.where(below > 0.0, below, 1.0)  # where the message is 0, so is what it is divided into
        beliefs[number] = beliefs[number] * shape.aligned(ratio, cluster.separator, number)


