"""Small books and fault trees made up for tests, and the slow judge: every combination of causes in turn."""

from __future__ import annotations

import itertools
import random
from collections.abc import Mapping, Sequence

import numpy as np

from diagnose.inference import FaultTree, Node, Situation, TreeCheck, unlisted
from diagnose.inference.evidence import KEEPS_IT_UP
from diagnose.inference.network import REPAIR_DID_NOT_TAKE
from diagnose.model import Finding

__all__ = ["enumerate_situation", "finding", "make_tree", "random_situation", "random_tree"]


def make_tree(nodes: Sequence[Node], checks: Sequence[TreeCheck] = ()) -> FaultTree:
    """A tree from its nodes, inputs before gates."""
    return FaultTree({node.id: node for node in nodes}, {check.id: check for check in checks})


def finding(check: str, weights: Mapping[str, float], stage: int = 0) -> Finding:
    return Finding(check=check, weights=weights, rule="made up", counts=(f"reading of {check}",), stage=stage)


def random_tree(
    rng: random.Random, causes: int = 6, events: int = 4, complaints: int = 1, checks: int = 4
) -> FaultTree:
    """A tree with shared inputs, all three kinds of gate, and noisy checks that look at several nodes."""
    nodes = [Node(f"c{n}", "cause", prior=rng.uniform(0.01, 0.4)) for n in range(causes)]
    for n in range(events):
        inputs = tuple(node.id for node in rng.sample(nodes, min(rng.choice([1, 2, 2, 3, 3, 4]), len(nodes))))
        need = rng.choice([1, 1, 1, len(inputs), rng.randint(1, len(inputs))])
        nodes.append(Node(f"e{n}", "event", inputs, need))
    below = list(nodes)
    for n in range(complaints):
        leak = Node(unlisted(f"t{n}"), "unlisted", prior=rng.uniform(0.005, 0.05))
        inputs = tuple(node.id for node in rng.sample(below, rng.randint(1, min(5, len(below)))))
        nodes += [leak, Node(f"t{n}", "complaint", (*inputs, leak.id))]
    return make_tree(nodes, [_random_check(rng, f"k{n}", [b.id for b in below]) for n in range(checks)])


def _random_check(rng: random.Random, name: str, nodes: Sequence[str]) -> TreeCheck:
    looks_at = tuple(rng.sample(list(nodes), rng.randint(1, min(4, len(nodes)))))
    outcomes = tuple(f"o{n}" for n in range(rng.randint(2, 4)))
    rows = np.array([[rng.choice([0.002, 0.05, 0.3, 0.9]) for _ in outcomes] for _ in (*looks_at, "none")])
    return TreeCheck(name, looks_at, outcomes, rows / rows.sum(axis=1, keepdims=True))


def random_situation(rng: random.Random, tree: FaultTree, stages: int = 0, findings: int = 3) -> Situation:
    """Statements, soft findings and repairs, all of them possible."""
    causes = [leaf for leaf in tree.leaves if tree.nodes[leaf].kind == "cause"]
    repaired = tuple(rng.choice(causes) for _ in range(stages))
    said = []
    for complaint in (n.id for n in tree.nodes.values() if n.kind == "complaint"):
        gone = rng.randint(0, stages) if stages and rng.random() < 0.3 else None
        said += [(complaint, s, gone is None or s < gone) for s in range(stages + 1) if rng.random() < 0.8]
    found = []
    for check in rng.sample(sorted(tree.checks), min(findings, len(tree.checks))):
        weights = [rng.choice([0.0, 0.2, 1.0]) + 1e-3 for _ in tree.checks[check].outcomes]
        shares = {o: w / sum(weights) for o, w in zip(tree.checks[check].outcomes, weights, strict=True)}
        found.append(finding(check, shares, rng.randint(0, stages)))
    out = (rng.choice(causes),) if rng.random() < 0.3 else ()
    # Of parts repaired twice nothing is said: what was seen the second time is of another stage's making.
    once = [(cause, k) for k, cause in enumerate(repaired) if repaired.count(cause) == 1 and cause not in out]
    seen = tuple((cause, k, True) for cause, k in once if rng.random() < 0.4)
    return Situation(tuple(said), tuple(found), repaired, out, seen)


def enumerate_situation(
    tree: FaultTree, situation: Situation, checks: Sequence[str] = ()
) -> tuple[dict[str, float], float, dict[str, dict[str, tuple[float, dict[str, float]]]]]:
    """Posterior, evidence, and per check and outcome (probability, posterior after it), by trying everything.

    Written from the meaning of the model alone; shares no code with the product.
    """
    bits = [(leaf, 0) for leaf in tree.leaves] + [(cause, k) for k, cause in enumerate(situation.repaired, 1)]
    total, so = 0.0, dict.fromkeys(tree.nodes, 0.0)
    answers: dict[str, dict[str, tuple[float, dict[str, float]]]] = {
        c: {o: (0.0, dict.fromkeys(tree.leaves, 0.0)) for o in tree.checks[c].outcomes} for c in checks
    }
    for values in itertools.product((False, True), repeat=len(bits)):
        weight, worlds = _world(tree, situation, dict(zip(bits, values, strict=True)))
        weight *= _likelihood(tree, situation, worlds)
        total += weight
        now = worlds[-1]
        for node in tree.nodes:
            so[node] += weight * now[node]
        for check in checks:
            row = _row(tree.checks[check], now)
            for nth, outcome in enumerate(tree.checks[check].outcomes):
                chance, after = answers[check][outcome]
                share = weight * row[nth]
                answers[check][outcome] = (chance + share, {c: p + share * now[c] for c, p in after.items()})
    if total == 0.0:
        return so, total, answers
    for of_check in answers.values():
        for outcome, (chance, after) in of_check.items():
            of_check[outcome] = (chance / total, {c: p / chance if chance else 0.0 for c, p in after.items()})
    return {node: p / total for node, p in so.items()}, total, answers


def _world(
    tree: FaultTree, situation: Situation, bits: Mapping[tuple[str, int], bool]
) -> tuple[float, list[dict[str, bool]]]:
    weight = 1.0
    for (leaf, born), true in bits.items():
        p = REPAIR_DID_NOT_TAKE if born else tree.nodes[leaf].prior
        weight *= p if true else 1.0 - p
    worlds = []
    state = {leaf: bits[leaf, 0] for leaf in tree.leaves}
    for stage in range(len(situation.repaired) + 1):
        if stage:
            state[situation.repaired[stage - 1]] = bits[situation.repaired[stage - 1], stage]
        world = dict(state)
        for node in tree.nodes.values():
            if not node.leaf:
                world[node.id] = sum(world[i] for i in node.inputs) >= node.need
        worlds.append(world)
    return weight, worlds


def _likelihood(tree: FaultTree, situation: Situation, worlds: Sequence[Mapping[str, bool]]) -> float:
    likelihood = 1.0
    for complaint, stage, present in situation.complaints:
        others = [] if present else _others_there(situation, complaint, stage)
        if not others and worlds[stage][complaint] != present:
            return 0.0
        of_others = {leaf for other in others for leaf in _leaves(tree, other)}
        for maker in _makers(tree, complaint) if others else ():
            if worlds[stage][maker]:
                likelihood *= 0.0 if of_others.isdisjoint(_leaves(tree, maker)) else 1.0 - KEEPS_IT_UP
    if any(worlds[-1][node] for node in situation.ruled_out):
        return 0.0
    if any(worlds[stage][part] != so for part, stage, so in situation.seen):
        return 0.0
    for each in situation.findings:
        check = tree.checks[each.check]
        row = _row(check, worlds[each.stage])
        likelihood *= sum(each.weights.get(o, 0.0) * p for o, p in zip(check.outcomes, row, strict=True))
    return likelihood


def _others_there(situation: Situation, complaint: str, stage: int) -> list[str]:
    """Other complaints whose latest word, up to a stage, is that they are there."""
    names = {name for name, _, _ in situation.complaints} - {complaint}
    words = {name: [(k, so) for n, k, so in situation.complaints if n == name and k <= stage] for name in names}
    return [name for name, said in words.items() if said and max(said, key=lambda word: word[0])[1]]


def _leaves(tree: FaultTree, node: str) -> set[str]:
    inputs = tree.nodes[node].inputs
    return set().union(*(_leaves(tree, each) for each in inputs)) if inputs else {node}


def _makers(tree: FaultTree, node: str) -> set[str]:
    """The leaves and counting gates each of which brings the node about by itself."""
    entry = tree.nodes[node]
    if not entry.inputs or entry.need > 1:
        return {node}
    return set().union(*(_makers(tree, each) for each in entry.inputs))


def _row(check: TreeCheck, world: Mapping[str, bool]) -> Sequence[float]:
    first = next((n for n, node in enumerate(check.looks_at) if world[node]), len(check.looks_at))
    return [float(p) for p in check.shows[first]]
