"""Everything that was said, found or answered, item by item, and the network that holds it.

Reasons and conflicts ask "what if this had not been found?". Each such question is one case of a batch in which the
item weighs 1 whatever is the matter, so that all of them are answered in one sweep.

A complaint that is gone, with nothing else complained of, clears all that could bring it. While another complaint is
still there it is a weaker witness for the causes that bring both: half mended, or with the other fault of two taken
away, a machine may show one of its complaints no longer and the other one still. Each such cause counts as one that
keeps the complaint going with KEEPS_IT_UP by itself (a noisy "or").
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.modules import inner_check, modules_of
from diagnose.inference.network import Network
from diagnose.inference.situation import Situation
from diagnose.inference.tree import FaultTree, TreeCheck

__all__ = ["KEEPS_IT_UP", "Item", "check_of", "evidence_network", "items"]

# How often a cause that brings two complaints, one of them there, brings the other as well. Judgement.
KEEPS_IT_UP = 0.75

Flags = NDArray[np.bool_]


@dataclass(frozen=True)
class Item:
    """One piece of evidence: the `nth` complaint statement, ruled-out node, part seen or finding, or a context answer.

    `what` is the id of the complaint, node, check or context question.
    """

    kind: Literal["complaint", "ruled out", "seen", "finding", "context"]
    what: str
    nth: int = 0


def items(tree: FaultTree, situation: Situation) -> tuple[Item, ...]:
    """All evidence, in a fixed order: complaints, ruled out, seen, findings, context answers that moved any prior."""
    questions = dict.fromkeys(question for leaf in tree.leaves for question, _ in tree.nodes[leaf].shifts)
    return (
        *(Item("complaint", said[0], nth) for nth, said in enumerate(situation.complaints)),
        *(Item("ruled out", node, nth) for nth, node in enumerate(situation.ruled_out)),
        *(Item("seen", part[0], nth) for nth, part in enumerate(situation.seen)),
        *(Item("finding", found.check, nth) for nth, found in enumerate(situation.findings)),
        *(Item("context", question) for question in questions),
    )


def evidence_network(
    tree: FaultTree, situation: Situation, kept: Flags | None = None, inside: frozenset[str] | None = None
) -> Network:
    """The network of a situation, each finding counting once.

    `kept` (items, cases) says which items count in which case of a batch; None: all, and one case. `inside`: see
    Network.
    """
    every = items(tree, situation)
    if kept is None:
        kept = np.ones((len(every), 1), dtype=bool)
    context = [(item.what, ~keep) for item, keep in zip(every, kept, strict=True) if item.kind == "context"]
    unasked = {question: left for question, left in context if left.any()}
    network = Network(tree, situation, unasked, inside)
    for item, keep in zip(every, kept, strict=True):
        if item.kind == "complaint":
            complaint, stage, present = situation.complaints[item.nth]
            others = () if present else situation.there_at(stage)
            if others:
                _gone(network, complaint, stage, others, keep)
            else:
                _know(network, complaint, stage, present, keep)
        elif item.kind == "ruled out":
            _know(network, item.what, situation.stage, False, keep)
        elif item.kind == "seen":
            part, stage, so = situation.seen[item.nth]
            _know(network, part, stage, so, keep)
        elif item.kind == "finding":
            finding = situation.findings[item.nth]
            check = check_of(tree, finding.check)
            check = check if inside is None else inner_check(tree, check, inside)
            likelihoods = check.likelihoods(finding.weights)[:, None]
            network.observe(check, finding.stage, likelihoods if keep.all() else np.where(keep, likelihoods, 1.0))
    return network


def _know(network: Network, node: str, stage: int, true: bool, keep: Flags) -> None:
    """The node is true, or false, in the cases that keep it."""
    _weigh(network, node, stage, 1.0 - true, true, keep)


def _weigh(network: Network, node: str, stage: int, not_so: float, so: float, keep: Flags) -> None:
    weights = np.array([[not_so], [so]])
    network.weigh(network.variable(node, stage), weights if keep.all() else np.where(keep, weights, 1.0))


def _gone(network: Network, complaint: str, stage: int, others: Sequence[str], keep: Flags) -> None:
    """The complaint is gone while the others are there, in the cases that keep it."""
    tree = network.tree
    causes = modules_of(tree).causes
    both = causes[complaint] & frozenset[str]().union(*(causes[other] for other in others))
    todo, met = [complaint], {complaint}
    while todo:
        node = tree.nodes[todo.pop()]
        if both.isdisjoint(causes[node.id]):
            _know(network, node.id, stage, False, keep)
        elif node.leaf or node.need > 1:
            _weigh(network, node.id, stage, 1.0, 1.0 - KEEPS_IT_UP, keep)
        else:
            todo += [each for each in node.inputs if each not in met]
            met.update(node.inputs)


def check_of(tree: FaultTree, check: str) -> TreeCheck:
    """A check of this machine; ValueError for another."""
    if check not in tree.checks:
        raise ValueError(f"check {check} does not belong to this machine")
    return tree.checks[check]
