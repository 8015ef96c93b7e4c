"""NUREG-0492, Fault Tree Handbook (1981), VIII-13: the pressure tank. The total is worked out from its numbers."""

from __future__ import annotations

import pytest

from diagnose.inference import FaultTree, Node, Situation, solve
from tests.books import make_tree
from tests.cut_sets import minimal_cut_sets


def pressure_tank(k1: float = 3e-5) -> FaultTree:
    """E1 = T + K2 + S (S1 + K1 + R)."""
    priors = {"T": 5e-6, "K2": 3e-5, "S": 1e-4, "S1": 3e-5, "K1": k1, "R": 1e-4}
    return make_tree(
        [
            *(Node(name, "cause", prior=p) for name, p in priors.items()),
            Node("E5", "event", ("S1", "K1", "R")),
            Node("E4", "event", ("S", "E5"), need=2),
            Node("E2", "event", ("K2", "E4")),
            Node("E1", "event", ("T", "E2")),
        ]
    )


def test_rupture() -> None:
    assert solve(pressure_tank(), Situation()).posterior["E1"] == pytest.approx(3.501584875e-5, rel=1e-9)


def test_cut_sets() -> None:
    published = {("T",), ("K2",), ("S", "S1"), ("S", "K1"), ("S", "R")}
    assert minimal_cut_sets(pressure_tank(), "E1") == {frozenset(each) for each in published}


def test_share_of_each_cut_set() -> None:
    """Given the rupture: 14.3 % the tank itself, 85.7 % relay K2, 0.046 % the pressure switch with another."""
    solution = solve(pressure_tank(), Situation((("E1", 0, True),)))
    assert solution.posterior["T"] == pytest.approx(0.143, abs=5e-4)
    assert solution.posterior["K2"] == pytest.approx(0.857, abs=5e-4)
    assert solution.posterior["E4"] == pytest.approx(0.00046, abs=5e-6)
