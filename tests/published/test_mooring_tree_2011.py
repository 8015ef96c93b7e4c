"""A paper on mooring systems, Ocean Engineering 2011, doi 10.1016/j.oceaneng.2010.11.003: ten single causes."""

from __future__ import annotations

import pytest

from diagnose.inference import Node, Situation, solve
from tests.books import make_tree

PRIORS = (1.73e-5, 4.20e-3, 9.31e-3, 8.64e-3, 8.95e-6, 8.95e-6, 9.93e-5, 4.37e-5, 5.46e-8, 4.17e-3)


def test_any_of_ten() -> None:
    causes = [Node(f"x{n}", "cause", prior=p) for n, p in enumerate(PRIORS)]
    tree = make_tree([*causes, Node("top", "event", tuple(cause.id for cause in causes))])
    assert solve(tree, Situation()).posterior["top"] == pytest.approx(0.026246389824230, rel=1e-12)
