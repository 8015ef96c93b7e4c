"""Fault trees of any size for the benches: a tenth of the inputs shared, a tenth of the gates "all", some "2 of"."""

from __future__ import annotations

import random

import numpy as np

from diagnose.inference import FaultTree, Node, Situation, TreeCheck, unlisted
from tests.books import finding, make_tree

__all__ = ["answered", "bench_tree"]


def bench_tree(causes: int, seed: int = 1) -> FaultTree:
    """`causes` causes under one complaint, as many checks, gates of about five inputs."""
    rng = random.Random(seed)
    nodes = [Node(f"c{n}", "cause", prior=rng.choice([0.001, 0.0025, 0.006, 0.016, 0.04])) for n in range(causes)]
    level = [node.id for node in nodes]
    count = 0
    while len(level) > 6:
        above, position = [], 0
        while position < len(level):
            inputs = level[position : position + rng.randint(3, 6)]
            position += len(inputs)
            inputs += [rng.choice(level) for _ in range(len(inputs)) if rng.random() < 0.1]
            inputs = list(dict.fromkeys(inputs))
            roll = rng.random()
            need = len(inputs) if roll < 0.1 else 2 if roll < 0.13 and len(inputs) > 1 else 1
            nodes.append(Node(f"e{count}", "event", tuple(inputs[:2] if need == len(inputs) else inputs), min(need, 2)))
            if need == len(inputs) and len(inputs) > 2:
                above += inputs[2:]
            above.append(f"e{count}")
            count += 1
        level = above if len(above) < len(level) else above[:6]
    leak = Node(unlisted("top"), "unlisted", prior=0.0025)
    nodes += [leak, Node("top", "complaint", (*level, leak.id))]
    return make_tree(nodes, [_check(rng, f"k{n}", nodes) for n in range(causes)])


def _check(rng: random.Random, name: str, nodes: list[Node]) -> TreeCheck:
    """Looks at neighbours: a stretch of causes, or events near one another."""
    pool = [n.id for n in nodes if n.kind in ("cause", "event")]
    start = rng.randrange(len(pool))
    looks_at = tuple(pool[start : start + rng.randint(1, 4)])
    outcomes = tuple(f"o{n}" for n in range(len(looks_at) + 1))
    rows = np.full((len(looks_at) + 1, len(outcomes)), 0.07 / max(len(outcomes) - 1, 1))
    np.fill_diagonal(rows, 0.93)
    return TreeCheck(name, looks_at, outcomes, rows)


def answered(tree: FaultTree, answers: int, seed: int = 2) -> tuple[Situation, list[str]]:
    """A complaint, some checks answered, the others open."""
    rng = random.Random(seed)
    checks = list(tree.checks)
    rng.shuffle(checks)
    found = tuple(finding(c, {rng.choice(tree.checks[c].outcomes): 1.0}) for c in checks[:answers])
    return Situation((("top", 0, True),), found), checks[answers:]
