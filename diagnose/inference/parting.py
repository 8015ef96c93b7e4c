"""Which check decides at a node of the tree: how much of the doubt between its branches it takes away, in bits."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations, product
from math import prod

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.tree import FaultTree, Node, TreeCheck

__all__ = ["Parting", "Told", "entropy"]

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


@dataclass(frozen=True)
class _Spread:
    """How the weight of some ways falls on the rows of each check that looks at any of it; the rest on its last row."""

    total: float
    rows: Mapping[str, Array]

    def on(self, check: TreeCheck) -> Array:
        rows = self.rows.get(check.id)
        full = np.zeros(len(check.looks_at) + 1) if rows is None else rows.copy()
        full[-1] = max(self.total - full[:-1].sum(), 0.0)
        return full


class Parting:
    """The checks that part the branches of one complaint.

    One fault at a time: each way in which a branch can come about by itself weighs as much as it is probable.
    What each check shows then follows from its table. Checks that are computed from others are left out.
    """

    def __init__(self, tree: FaultTree, top: str) -> None:
        self.tree = tree
        self._single = [tree.nodes[leaf] for leaf in tree.causes_under(top)]
        self._above: dict[str, list[str]] = {n: list(tree.graph.predecessors(n)) for n in tree.nodes}
        self._asked: dict[str, list[tuple[TreeCheck, int]]] = {}
        for check in tree.checks.values():
            for nth, node in enumerate(check.looks_at if not check.computed else ()):
                self._asked.setdefault(node, []).append((check, nth))
        self._seen: dict[frozenset[str], dict[str, int]] = {}
        self._ways: dict[str, list[Way]] = {}

    def between(self, gate: str) -> list[Told]:
        """The checks that tell which branch of an "any" gate it is, the most telling first."""
        branches = [self._spread(ways) for each in self.tree.nodes[gate].inputs if (ways := self.ways(each))]
        return self._told(branches, [each.total for each in branches], [c for each in branches for c in each.rows])

    def among(self, gate: str, branch: str) -> list[Told]:
        """The checks of one branch of a gate that tell it from all the others."""
        rest = self._spread(w for each in self.tree.nodes[gate].inputs if each != branch for w in self.ways(each))
        mine = self._spread(self.ways(branch))
        return self._told([mine, rest], [mine.total, rest.total], mine.rows)

    def shown(self, node: str) -> list[Told]:
        """The checks of a node that show that it is this, among all the complaint can come from, at even odds."""
        below = self.tree.below(node)
        mine = self._spread(self.ways(node))
        inside = self._spread(_alone(leaf) for leaf in self._single if leaf.id in below)
        rows = {c: (each - inside.rows.get(c, 0.0)).clip(0.0) for c, each in self._all.rows.items() if c in mine.rows}
        rest = _Spread(self._all.total - inside.total, rows)
        return self._told([mine, rest], [0.5, 0.5], mine.rows)

    @cached_property
    def _all(self) -> _Spread:
        """Every single cause of the complaint."""
        return self._spread(map(_alone, self._single))

    def likely_outcome(self, check: str, node: str) -> str:
        """What the check most often shows when this node is so and nothing else."""
        table = self.tree.checks[check]
        return table.outcomes[int(np.argmax(self._spread(self.ways(node)).on(table) @ table.shows))]

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

    def _spread(self, ways: Iterable[Way]) -> _Spread:
        total, rows = 0.0, dict[str, Array]()
        for probability, causes in ways:
            total += probability
            for check, row in self._rows(causes).items():
                if check not in rows:
                    rows[check] = np.zeros(len(self.tree.checks[check].looks_at) + 1)
                rows[check][row] += probability
        return _Spread(total, rows)

    def _rows(self, causes: frozenset[str]) -> dict[str, int]:
        """The row of each check that looks at anything that is so when exactly these causes are present."""
        if causes not in self._seen:
            first: dict[str, int] = {}
            for node in self._true(causes):
                for check, nth in self._asked.get(node, ()):
                    first[check.id] = min(nth, first.get(check.id, nth))
            self._seen[causes] = first
        return self._seen[causes]

    def _true(self, causes: frozenset[str]) -> set[str]:
        """Everything that is then so."""
        count: dict[str, int] = {}
        so, todo = set(causes), list(causes)
        while todo:
            for gate in self._above[todo.pop()]:
                count[gate] = count.get(gate, 0) + 1
                if count[gate] == self.tree.nodes[gate].need:
                    so.add(gate)
                    todo.append(gate)
        return so

    def _told(self, branches: Sequence[_Spread], weights: Sequence[float], checks: Iterable[str]) -> list[Told]:
        """Each check with the bits it tells between branches of these weights, the most telling first."""
        if len(branches) < 2 or min(each.total for each in branches) <= 0:
            return []
        weight = np.array(weights) / sum(weights)
        doubt = entropy(weight)
        found = []
        for check in map(self.tree.checks.__getitem__, dict.fromkeys(checks)):
            seen = np.array([each.on(check) / each.total for each in branches]) @ check.shows
            bits = entropy(weight @ seen) - float(weight @ np.array([entropy(row) for row in seen]))
            found.append(Told(check.id, max(bits, 0.0), doubt))
        return sorted(found, key=lambda t: (-t.bits, t.check))


def _alone(leaf: Node) -> Way:
    return leaf.prior, frozenset((leaf.id,))


def entropy(shares: Array) -> float:
    """In bits, of shares that add up to one."""
    some = shares[shares > 0]
    return float(-(some * np.log2(some)).sum())
