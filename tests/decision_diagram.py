"""The exact probability of a gate by a binary decision diagram: a second judge that shares no code with the product."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.inference import FaultTree

__all__ = ["top_probability"]

FALSE, TRUE = 0, 1


class _Diagram:
    """Nodes (variable, low, high), each once; variables in the order in which the tree is walked."""

    def __init__(self) -> None:
        self.nodes: list[tuple[int, int, int]] = [(1 << 30, 0, 0), (1 << 30, 1, 1)]
        self.unique: dict[tuple[int, int, int], int] = {}
        self.known: dict[tuple[int, int, int], int] = {}

    def make(self, variable: int, low: int, high: int) -> int:
        if low == high:
            return low
        key = (variable, low, high)
        if key not in self.unique:
            self.unique[key] = len(self.nodes)
            self.nodes.append(key)
        return self.unique[key]

    def choose(self, test: int, then: int, other: int) -> int:
        """`then` where `test` is so, else `other`."""
        if test in (FALSE, TRUE):
            return then if test == TRUE else other
        key = (test, then, other)
        if key not in self.known:
            first = min(self.nodes[each][0] for each in key)
            low, high = (self.choose(*(self._branch(each, first, side) for each in key)) for side in (1, 2))
            self.known[key] = self.make(first, low, high)
        return self.known[key]

    def _branch(self, node: int, variable: int, side: int) -> int:
        return self.nodes[node][side] if self.nodes[node][0] == variable else node

    def at_least(self, need: int, members: Sequence[int]) -> int:
        if need <= 0:
            return TRUE
        if need > len(members):
            return FALSE
        first, rest = members[0], members[1:]
        return self.choose(first, self.at_least(need - 1, rest), self.at_least(need, rest))


def top_probability(tree: FaultTree, top: str) -> float:
    """How probable a gate is before anything is known."""
    diagram, made, priors = _Diagram(), {}, []

    def build(name: str) -> int:
        if name not in made:
            node = tree.nodes[name]
            if node.leaf:
                priors.append(node.prior)
                made[name] = diagram.make(len(priors) - 1, FALSE, TRUE)
            else:
                made[name] = diagram.at_least(node.need, [build(each) for each in node.inputs])
        return made[name]

    root = build(top)
    chance = {FALSE: 0.0, TRUE: 1.0}

    def probability(node: int) -> float:
        if node not in chance:
            variable, low, high = diagram.nodes[node]
            chance[node] = (1 - priors[variable]) * probability(low) + priors[variable] * probability(high)
        return chance[node]

    return probability(root)
