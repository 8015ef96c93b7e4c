"""Which check decides at a node of the tree: how much of the doubt between its branches it takes away, in bits."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations, product
from math import prod

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.tree import FaultTree, TreeCheck

__all__ = ["Parting", "Told"]

MOST_WAYS = 400  # sets of causes considered for one branch; the least probable are left out beyond

Array = NDArray[np.float64]
Way = tuple[float, frozenset[str]]  # how probable a set of causes is, and the set


@dataclass(frozen=True)
class Told:
    """What a check is expected to tell between branches: `bits` of the `doubt` there is about them."""

    check: str
    bits: float
    doubt: float

    @property
    def share(self) -> float:
        return self.bits / self.doubt if self.doubt > 0 else 0.0


class Parting:
    """The checks that part the branches of one complaint.

    One fault at a time: each way in which a branch can come about by itself weighs as much as it is probable.
    What each check shows then follows from its table. Checks that are computed from others are left out.
    """

    def __init__(self, tree: FaultTree, top: str) -> None:
        self.tree = tree
        self.top = top
        self._above: dict[str, list[str]] = {n: list(tree.graph.predecessors(n)) for n in tree.nodes}
        self._asked: dict[str, list[TreeCheck]] = {}
        for check in tree.checks.values():
            for node in check.looks_at if not check.computed else ():
                self._asked.setdefault(node, []).append(check)
        self._so: dict[frozenset[str], frozenset[str]] = {}
        self._ways: dict[str, list[Way]] = {}
        self._whole: dict[str, Array] = {}

    def between(self, gate: str) -> list[Told]:
        """The checks that tell which branch of an "any" gate it is, the most telling first."""
        branches = [ways for each in self.tree.nodes[gate].inputs if (ways := self.ways(each))]
        weight = [sum(p for p, _ in ways) for ways in branches]
        bearing = self._bearing(way for ways in branches for way in ways)
        return _told(weight, ((c, np.array([self._rows(c, ways) for ways in branches])) for c in bearing))

    def among(self, gate: str, branch: str) -> list[Told]:
        """The checks of one branch of a gate that tell it from all the others."""
        rest = [way for each in self.tree.nodes[gate].inputs if each != branch for way in self.ways(each)]
        mine = self.ways(branch)
        weight = [sum(p for p, _ in ways) for ways in (mine, rest)]
        return _told(weight, ((c, np.array([self._rows(c, mine), self._rows(c, rest)])) for c in self._bearing(mine)))

    def shown(self, node: str) -> list[Told]:
        """The checks of a node that show that it is this, among all the complaint can come from, at even odds."""
        below = self.tree.below(node)
        inside = [way for leaf in self.tree.causes_under(self.top) if leaf in below for way in self.ways(leaf)]
        mine = self.ways(node)
        return _told(
            [0.5, 0.5],
            (
                (c, np.array([self._rows(c, mine), self._all_rows(c) - self._rows(c, inside)]).clip(0.0))
                for c in self._bearing(mine)
            ),
        )

    def likely_outcome(self, check: str, node: str) -> str:
        """What the check most often shows when this node is so and nothing else."""
        table = self.tree.checks[check]
        return table.outcomes[int(np.argmax(self._rows(table, self.ways(node)) @ table.shows))]

    def ways(self, node: str) -> list[Way]:
        """The sets of causes that make the node so with nothing to spare, each with its probability."""
        if node not in self._ways:
            entry = self.tree.nodes[node]
            if entry.leaf:
                found = [(entry.prior, frozenset((node,)))]
            elif entry.need == 1:
                found = [way for each in entry.inputs for way in self.ways(each)]
            else:
                chosen = combinations((self.ways(each) for each in entry.inputs), entry.need)
                found = [self._joined(each) for some in chosen for each in product(*some)]
            self._ways[node] = sorted({s: (p, s) for p, s in found}.values(), key=lambda w: -w[0])[:MOST_WAYS]
        return self._ways[node]

    def _joined(self, ways: Iterable[Way]) -> Way:
        causes = frozenset[str]().union(*(s for _, s in ways))
        return prod(self.tree.nodes[c].prior for c in causes), causes

    def _bearing(self, ways: Iterable[Way]) -> list[TreeCheck]:
        """The checks that look at anything that is then so."""
        so = {node for _, causes in ways for node in self._true(causes)}
        return list({check.id: check for node in sorted(so) for check in self._asked.get(node, ())}.values())

    def _rows(self, check: TreeCheck, ways: Iterable[Way]) -> Array:
        """How much of the weight falls on each row of the check's table."""
        rows = np.zeros(len(check.looks_at) + 1)
        for probability, causes in ways:
            rows[_first(check, self._true(causes))] += probability
        return rows

    def _all_rows(self, check: TreeCheck) -> Array:
        """The same over all single causes of the complaint."""
        if check.id not in self._whole:
            leaves = self.tree.causes_under(self.top)
            self._whole[check.id] = self._rows(check, (way for leaf in leaves for way in self.ways(leaf)))
        return self._whole[check.id]

    def _true(self, causes: frozenset[str]) -> frozenset[str]:
        """Everything that is so when exactly these causes are present."""
        if causes not in self._so:
            count: dict[str, int] = {}
            so, todo = set(causes), list(causes)
            while todo:
                for gate in self._above[todo.pop()]:
                    count[gate] = count.get(gate, 0) + 1
                    if count[gate] == self.tree.nodes[gate].need:
                        so.add(gate)
                        todo.append(gate)
            self._so[causes] = frozenset(so)
        return self._so[causes]


def _first(check: TreeCheck, so: frozenset[str]) -> int:
    return next((n for n, node in enumerate(check.looks_at) if node in so), len(check.looks_at))


def _told(weights: Sequence[float], checks: Iterable[tuple[TreeCheck, Array]]) -> list[Told]:
    """Each check with the bits it tells between branches of these weights; its rows are given branch by branch."""
    total = sum(weights)
    if total <= 0 or min(weights) <= 0 or len(weights) < 2:
        return []
    weight = np.array(weights) / total
    doubt = _entropy(weight)
    found = []
    for check, rows in checks:
        sums = rows.sum(axis=1, keepdims=True)
        if (sums > 0).all():
            seen = rows / sums @ check.shows
            bits = _entropy(weight @ seen) - float(weight @ np.array([_entropy(row) for row in seen]))
            found.append(Told(check.id, max(bits, 0.0), doubt))
    return sorted(found, key=lambda t: (-t.bits, t.check))


def _entropy(shares: Array) -> float:
    some = shares[shares > 0]
    return float(-(some * np.log2(some)).sum())
