"""The judge of the posterior: on every case, cut to eleven causes, the posterior equals full enumeration.

The judge here goes through all 2**n combinations of causes at once as the rows of one array; it shares no code with
the product's inference.
"""

from __future__ import annotations

import numpy as np

from diagnose.inference import FaultTree, Node, Situation, TreeCheck
from tests.books import make_tree

__all__ = ["CAUSES", "cut", "enumerated"]

CAUSES = 11


def cut(tree: FaultTree, keep: frozenset[str]) -> FaultTree:
    """The tree as if these were all the leaves there are."""
    nodes: dict[str, Node] = {leaf: tree.nodes[leaf] for leaf in tree.leaves if leaf in keep}
    for gate in tree.gates:
        node = tree.nodes[gate]
        inputs = tuple(i for i in node.inputs if i in nodes)
        if len(inputs) >= node.need:
            nodes[gate] = Node(gate, node.kind, inputs, node.need)
    checks = []
    for check in tree.checks.values():
        rows = [n for n, looked in enumerate(check.looks_at) if looked in nodes]
        looks_at = tuple(check.looks_at[n] for n in rows)
        checks.append(TreeCheck(check.id, looks_at, check.outcomes, check.shows[[*rows, -1]], check.computed))
    return make_tree(list(nodes.values()), checks)


def enumerated(tree: FaultTree, situation: Situation) -> dict[str, float]:
    """P(node | everything said and found), over every combination of leaves."""
    leaves = list(tree.leaves)
    worlds = (np.arange(2 ** len(leaves))[:, None] >> np.arange(len(leaves))) & 1 == 1
    so = {leaf: worlds[:, n] for n, leaf in enumerate(leaves)}
    weight = np.ones(len(worlds))
    for leaf in leaves:
        weight *= np.where(so[leaf], tree.nodes[leaf].prior, 1 - tree.nodes[leaf].prior)
    waiting = [n for n in tree.nodes.values() if not n.leaf]
    while waiting:
        node = next(n for n in waiting if all(i in so for i in n.inputs))
        so[node.id] = sum(so[i].astype(int) for i in node.inputs) >= node.need
        waiting.remove(node)
    for complaint, _, present in situation.complaints:
        weight *= so[complaint] == present
    for finding in situation.findings:
        check = tree.checks[finding.check]
        row = np.full(len(worlds), len(check.looks_at))
        for n in reversed(range(len(check.looks_at))):
            row = np.where(so[check.looks_at[n]], n, row)
        weights = np.array([finding.weights.get(o, 0.0) for o in check.outcomes])
        weight *= (check.shows @ weights)[row]
    return {node: float(weight @ s / weight.sum()) for node, s in so.items()}
