"""Where the boxes of a drawn tree stand: in columns by depth, each branch in a strip of its own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import networkx as nx

__all__ = ["layered"]


def layered(
    edges: Sequence[tuple[str, str]], top: str, sizes: Mapping[str, tuple[float, float]], across: float, between: float
) -> dict[str, tuple[float, float]]:
    """The upper left corner of every box of a tree that grows from left to right.

    `sizes` are widths and heights; `across` is the gap between columns, `between` that between boxes. A node's column
    is its depth. Each branch gets a strip as high as its own box or its branches need, so that no two boxes meet; a
    gate stands at the upper edge of its strip, so that reading begins above. ValueError where the edges make no tree.

    >>> layered([("a", "b"), ("a", "c")], "a", {"a": (10, 4), "b": (10, 4), "c": (10, 4)}, 5, 2)
    {'a': (0.0, 0.0), 'b': (15.0, 0.0), 'c': (15.0, 6.0)}
    """
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_node(top)
    graph.add_edges_from(edges)
    if not nx.is_arborescence(graph) or graph.in_degree(top):
        raise ValueError("only a tree can be laid out in strips")
    left: dict[str, float] = {}
    at = 0.0
    for column in nx.bfs_layers(graph, top):
        left.update(dict.fromkeys(column, at))
        at += max(sizes[node][0] for node in column) + across
    high: dict[str, float] = {}
    for node in nx.dfs_postorder_nodes(graph, top):
        below = list(graph.successors(node))
        high[node] = max(sizes[node][1], sum(high[b] for b in below) + between * max(len(below) - 1, 0))
    upper = {top: 0.0}  # of each strip
    for node in nx.dfs_preorder_nodes(graph, top):
        edge = upper[node]
        for each in graph.successors(node):
            upper[each] = edge
            edge += high[each] + between
    return {node: (left[node], upper[node]) for node in graph}
