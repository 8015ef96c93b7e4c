"""Minimal cut sets by opening gates from the top down (the MOCUS way), for trees with published lists of them."""

from __future__ import annotations

from itertools import combinations

from diagnose.inference import FaultTree

__all__ = ["minimal_cut_sets"]


def minimal_cut_sets(tree: FaultTree, top: str) -> set[frozenset[str]]:
    """The smallest sets of causes that make the top true."""
    done: set[frozenset[str]] = set()
    todo = [frozenset((top,))]
    while todo:
        row = todo.pop()
        gate = next((name for name in sorted(row) if not tree.nodes[name].leaf), None)
        if gate is None:
            done.add(row)
            continue
        node = tree.nodes[gate]
        todo += [row - {gate} | set(chosen) for chosen in combinations(node.inputs, node.need)]
    return {row for row in done if not any(other < row for other in done)}
