"""What lies outside: causes that nothing known bears on, folded into the tables of the checks that see them too.

A check often looks at events made of causes far from what is complained of. As long as nothing said or found bears on
those causes, they are independent of everything else, and at an "any" gate they only add a fixed chance of being the
reason for it. So a node is split into its part inside (in the network) and its part outside (a number). The first true
node of a check is the earlier of the first one true inside and the first one true outside; summing over the latter
turns the table of the check into one over the inner parts alone. That is exact, and the network stays as small as what
is known, however much the knowledge grows.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import prod
from weakref import WeakKeyDictionary

import numpy as np

from diagnose.inference.situation import Situation
from diagnose.inference.tree import FaultTree, TreeCheck

__all__ = ["Modules", "concerning", "grouped", "inner_check", "modules_of", "opened"]


TOGETHER = 6  # so many leaves seen twice outside may stand in one network with all that they tie together


class Modules:
    """What each node of a tree is made of.

    `causes` are the leaves below each node, `shared` those of them reached on more than one way, `alone` the prior
    probability of every node that shares none; `counting` the gates at or below it that need more than one input.
    """

    def __init__(self, tree: FaultTree) -> None:
        self.alone: dict[str, float] = {leaf: tree.nodes[leaf].prior for leaf in tree.leaves}
        self.causes: dict[str, frozenset[str]] = {leaf: frozenset((leaf,)) for leaf in tree.leaves}
        self.shared: dict[str, frozenset[str]] = dict.fromkeys(tree.leaves, frozenset())
        self.counting: dict[str, frozenset[str]] = dict.fromkeys(tree.leaves, frozenset())
        for gate in tree.gates:
            node = tree.nodes[gate]
            self.causes[gate], self.shared[gate] = self.together(node.inputs)
            own = frozenset((gate,)) if node.need > 1 else frozenset[str]()
            self.counting[gate] = own.union(*(self.counting[each] for each in node.inputs))
            if not self.shared[gate]:
                self.alone[gate] = _at_least([self.alone[each] for each in node.inputs], node.need)

    def together(self, nodes: Iterable[str]) -> tuple[frozenset[str], frozenset[str]]:
        """The leaves below several nodes, and those of them reached on more than one way."""
        every: set[str] = set()
        shared: set[str] = set()
        for node in nodes:
            shared |= self.shared[node] | (every & self.causes[node])
            every |= self.causes[node]
        return frozenset(every), frozenset(shared)


def _at_least(chances: Iterable[float], need: int) -> float:
    """The probability that at least `need` of independent things are so."""
    counts = [1.0] + [0.0] * need  # how many so far; the last: `need` and more
    for p in chances:
        up = [0.0, *(c * p for c in counts[:-1])]
        stay = [*(c * (1.0 - p) for c in counts[:-1]), counts[-1]]
        counts = [a + b for a, b in zip(up, stay, strict=True)]
    return counts[need]


_KNOWN: WeakKeyDictionary[FaultTree, Modules] = WeakKeyDictionary()


def modules_of(tree: FaultTree) -> Modules:
    """The modules of a tree, worked out once."""
    if tree not in _KNOWN:
        _KNOWN[tree] = Modules(tree)
    return _KNOWN[tree]


def concerning(tree: FaultTree, situation: Situation) -> frozenset[str]:
    """The leaves below what was complained of, ruled out, seen or repaired; all where nothing is complained of."""
    if not situation.still_there:
        return frozenset(tree.leaves)
    nodes = (
        *(complaint for complaint, _, _ in situation.complaints),
        *situation.ruled_out,
        *(part for part, _, _ in situation.seen),
        *situation.repaired,
    )
    causes = modules_of(tree).causes
    return frozenset[str]().union(*(causes[node] for node in nodes if node in causes))


def opened(
    tree: FaultTree, situation: Situation, inside: frozenset[str], asked: Sequence[TreeCheck] = ()
) -> frozenset[str]:
    """The leaves that must stand in the network: those `inside`, and what can't be folded into one table.

    A gate that needs more than one input can't be split; it stays outside only as a whole, and only where what it is
    made of is reached in no other way. A leaf outside that a finding has looked at stays outside only if no other
    finding, and none of the checks `asked`, looks at it too.
    """
    found = [tree.checks[f.check] for f in situation.findings if f.check in tree.checks]
    while True:
        more = _uncountable(tree, inside, [*found, *asked]) | _seen_twice(tree, inside, found, asked)
        if more <= inside:
            return inside
        inside = inside | more


def grouped(tree: FaultTree, situation: Situation, checks: Sequence[TreeCheck]) -> list[list[str]]:
    """The checks in groups, each to be asked of one network: few leaves outside are then seen twice in any of them."""
    inside = opened(tree, situation, concerning(tree, situation))
    found = [tree.checks[f.check] for f in situation.findings if f.check in tree.checks]
    seen = frozenset[str]().union(*(_outside(tree, check, inside) for check in found))
    groups: list[tuple[frozenset[str], list[str]]] = []
    for check in sorted(checks, key=lambda c: len(_outside(tree, c, inside) & seen)):
        twice = _outside(tree, check, inside) & seen
        for nth, (leaves, members) in enumerate(groups):
            if len(leaves | twice) <= max(TOGETHER, len(leaves), len(twice)):
                groups[nth] = (leaves | twice, [*members, check.id])
                break
        else:
            groups.append((twice, [check.id]))
    return [members for _, members in groups]


def _outside(tree: FaultTree, check: TreeCheck, inside: frozenset[str]) -> frozenset[str]:
    causes = modules_of(tree).causes
    return frozenset[str]().union(*(causes[node] for node in check.looks_at)) - inside


def _uncountable(tree: FaultTree, inside: frozenset[str], checks: Sequence[TreeCheck]) -> set[str]:
    modules = modules_of(tree)
    more: set[str] = set()
    for check in checks:
        gates = frozenset[str]().union(*(modules.counting[node] for node in check.looks_at))
        if not gates:
            continue
        shared = modules.together(check.looks_at)[1]
        for gate in gates:
            causes = modules.causes[gate]
            if not causes <= inside and (causes & inside or causes & shared):
                more |= causes
    return more


def _seen_twice(
    tree: FaultTree, inside: frozenset[str], found: Sequence[TreeCheck], asked: Sequence[TreeCheck]
) -> set[str]:
    once: set[str] = set()
    twice: set[str] = set()
    for check in found:
        leaves = _outside(tree, check, inside)
        twice |= once & leaves
        once |= leaves
    for check in asked if once else ():
        twice |= once & _outside(tree, check, inside)
    return twice


def inner_check(tree: FaultTree, check: TreeCheck, inside: frozenset[str]) -> TreeCheck:
    """The check as a table over the inner parts of its nodes; nodes wholly outside drop out."""
    modules = modules_of(tree)
    if all(modules.causes[node] <= inside for node in check.looks_at):
        return check
    seen: set[str] = set()
    before = np.zeros(check.shows.shape[1])  # sum over earlier nodes: chance to be first outside, times its row
    none_so_far = 1.0
    kept, rows = [], []
    for nth, node in enumerate(check.looks_at):
        if not modules.causes[node].isdisjoint(inside):
            kept.append(node)
            rows.append(before + none_so_far * check.shows[nth])
        seen |= _outer(tree, node, inside)
        none = prod(1.0 - modules.alone[each] for each in seen)
        before = before + (none_so_far - none) * check.shows[nth]
        none_so_far = none
    rows.append(before + none_so_far * check.shows[-1])
    return TreeCheck(check.id, tuple(kept), check.outcomes, np.array(rows), check.computed)


def _outer(tree: FaultTree, node: str, inside: frozenset[str]) -> set[str]:
    """The leaves, and whole counting gates, that can make the node true from outside."""
    causes = modules_of(tree).causes[node]
    if causes <= inside:
        return set()
    entry = tree.nodes[node]
    if entry.leaf or entry.need > 1:
        return {node}
    return set().union(*(_outer(tree, each, inside) for each in entry.inputs))
