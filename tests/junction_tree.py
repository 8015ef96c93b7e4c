"""Our trees written out for an independent library for Bayesian networks, in code: its file reader rounds to single."""

from __future__ import annotations

import itertools
import warnings
from collections.abc import Callable, Sequence

from diagnose.inference import FaultTree, Situation, TreeCheck

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # its C++ part warns while it is imported, and dies if that is made an error
    import pyagrum as gum

__all__ = ["LazyPropagation", "answer", "network_of"]

LazyPropagation = gum.LazyPropagation


def _add(net: gum.BayesNet, name: str, parents: Sequence[str], chance: Callable[..., Sequence[float]]) -> None:
    """A variable whose table is worked out entry by entry from its parents' values."""
    size = len(chance(*(0 for _ in parents)))
    net.add(gum.LabelizedVariable(name, name, size))
    for parent in parents:
        net.addArc(parent, name)
    for values in itertools.product((0, 1), repeat=len(parents)):
        net.cpt(name)[dict(zip(parents, values, strict=True))] = list(chance(*values))


def _first(values: Sequence[int]) -> int:
    return next((nth for nth, true in enumerate(values) if true), len(values))


def network_of(
    tree: FaultTree, situation: Situation, asked: Sequence[TreeCheck]
) -> tuple[gum.BayesNet, dict[str, int]]:
    """The tree, an outcome variable per open check, and a virtual observation per finding."""
    net = gum.BayesNet()
    for node in tree.nodes.values():
        if node.leaf:
            _add(net, node.id, (), lambda prior=node.prior: (1.0 - prior, prior))
        else:
            _add(net, node.id, node.inputs, lambda *v, need=node.need: (1, 0) if sum(v) < need else (0, 1))
    for check in asked:
        _add(net, check.id, check.looks_at, lambda *v, shows=check.shows: [float(p) for p in shows[_first(v)]])
    evidence = {complaint: int(present) for complaint, _, present in situation.complaints}
    evidence.update(dict.fromkeys(situation.ruled_out, 0))
    for nth, finding in enumerate(situation.findings):
        check = tree.checks[finding.check]
        likely = check.likelihoods(finding.weights)
        _add(net, f"seen{nth}", check.looks_at, lambda *v, p=likely: (1.0 - float(p[_first(v)]), float(p[_first(v)])))
        evidence[f"seen{nth}"] = 1
    return net, evidence


def answer(net: gum.BayesNet, evidence: dict[str, int]) -> LazyPropagation:
    """A junction tree with the evidence in, and both passes done."""
    judge = LazyPropagation(net)
    judge.setEvidence(evidence)
    judge.makeInference()
    return judge
