"""Example trees in the Open-PSA exchange format (repository rakhimov/scram: two_train.xml, abc.xml and their tests)."""

from __future__ import annotations

import pytest

from diagnose.inference import FaultTree, Node, Situation, solve
from tests.books import make_tree
from tests.cut_sets import minimal_cut_sets

A, B, C = (Node(name, "cause", prior=p) for name, p in (("a", 0.1), ("b", 0.2), ("c", 0.3)))


def top(*nodes: Node) -> float:
    return solve(make_tree(nodes), Situation()).posterior["top"]


def two_trains() -> FaultTree:
    return make_tree(
        [
            *(Node(f"valve{n}", "cause", prior=0.5) for n in (1, 2)),
            *(Node(f"pump{n}", "cause", prior=0.7) for n in (1, 2)),
            *(Node(f"train{n}", "event", (f"valve{n}", f"pump{n}")) for n in (1, 2)),
            Node("top", "event", ("train1", "train2"), need=2),
        ]
    )


def test_two_trains() -> None:
    assert solve(two_trains(), Situation()).posterior["top"] == pytest.approx(0.7225, rel=1e-12)
    published = [("valve1", "valve2"), ("valve1", "pump2"), ("pump1", "valve2"), ("pump1", "pump2")]
    assert minimal_cut_sets(two_trains(), "top") == {frozenset(each) for each in published}


def test_the_sum_of_cut_sets_is_no_probability() -> None:
    """0.25 + 0.35 + 0.35 + 0.49 = 1.44 for the two trains: only the exact way stays below 1."""
    tree = two_trains()
    total = 0.0
    for cut in minimal_cut_sets(tree, "top"):
        product = 1.0
        for cause in cut:
            product *= tree.nodes[cause].prior
        total += product
    assert total == pytest.approx(1.44)


def test_any_of_three() -> None:
    assert top(A, B, C, Node("top", "event", ("a", "b", "c"))) == pytest.approx(0.496, rel=1e-12)


def test_shared_input() -> None:
    """ab + bc."""
    ab, bc = Node("ab", "event", ("a", "b"), need=2), Node("bc", "event", ("b", "c"), need=2)
    assert top(A, B, C, ab, bc, Node("top", "event", ("ab", "bc"))) == pytest.approx(0.074, rel=1e-12)


def test_two_of_three() -> None:
    assert top(A, B, C, Node("top", "event", ("a", "b", "c"), need=2)) == pytest.approx(0.098, rel=1e-12)
