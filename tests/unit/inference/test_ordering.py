"""The order of the tree is that of a library of graphs, name by name; rings are named whole."""

from __future__ import annotations

import networkx as nx
import pytest

from diagnose.inference import build_tree
from diagnose.inference.ordering import in_order
from diagnose.model import load_book


def test_it_is_the_librarys_order() -> None:
    tree = build_tree(load_book(), None)
    assert in_order(tree.nodes, lambda name: tree.nodes[name].inputs) == list(nx.topological_sort(tree.graph))


def test_a_ring_is_told_and_not_what_hangs_on_it() -> None:
    leads = {"start": ["b"], "b": ["c"], "c": ["a", "after"], "a": ["b"], "after": []}
    with pytest.raises(ValueError, match=r": (a -> b -> c|b -> c -> a|c -> a -> b)$"):
        in_order(leads, lambda name: leads[name])
