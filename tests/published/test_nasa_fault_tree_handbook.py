"""NASA, Fault Tree Handbook with Aerospace Applications (2002): pressure tank and compression seals."""

from __future__ import annotations

import pytest

from diagnose.inference import Node, Situation, solve
from tests.books import make_tree
from tests.published.test_nureg_0492 import pressure_tank


def test_pressure_tank_with_the_better_relay() -> None:
    """3.5013349162e-5 in closed form; the benchmark's 3.5013348120867e-5 differs in the eighth digit."""
    rupture = solve(pressure_tank(k1=5e-6), Situation()).posterior["E1"]
    assert rupture == pytest.approx(3.5013349162e-5, rel=1e-10)
    assert rupture == pytest.approx(3.5013348120867e-5, rel=1e-7)


def test_compression_seals() -> None:
    """(0.1 x 1e-5) or (1e-3)^4."""
    seals = make_tree(
        [
            Node("a", "cause", prior=0.1),
            Node("b", "cause", prior=1e-5),
            *(Node(f"seal{n}", "cause", prior=1e-3) for n in range(4)),
            Node("ab", "event", ("a", "b"), need=2),
            Node("seals", "event", tuple(f"seal{n}" for n in range(4)), need=4),
            Node("top", "event", ("ab", "seals")),
        ]
    )
    assert solve(seals, Situation()).posterior["top"] == pytest.approx(1.000000999999e-6, rel=1e-12)
