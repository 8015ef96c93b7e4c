"""What the properties are tried on."""

from __future__ import annotations

from dataclasses import dataclass

from hypothesis import strategies as st

from diagnose.inference import FaultTree, Situation
from tests.books import random_situation, random_tree

__all__ = ["Trouble", "troubles"]


@dataclass(frozen=True)
class Trouble:
    """A fault tree, what is known, and the checks still open."""

    tree: FaultTree
    situation: Situation
    open: tuple[str, ...]


@st.composite
def troubles(draw: st.DrawFn, stages: int = 0) -> Trouble:
    """Small trees of all shapes with statements, soft findings and repairs."""
    rng = draw(st.randoms(use_true_random=False))
    causes, events = draw(st.integers(2, 9)), draw(st.integers(0, 6))
    tree = random_tree(rng, causes, events, draw(st.integers(1, 2)), checks=6)
    situation = random_situation(rng, tree, draw(st.integers(0, stages)), findings=draw(st.integers(0, 4)))
    done = {finding.check for finding in situation.findings}
    return Trouble(tree, situation, tuple(check for check in tree.checks if check not in done))
