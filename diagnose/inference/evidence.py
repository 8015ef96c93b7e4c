"""Everything that was said, found or answered, item by item, and the network that holds it.

Reasons and conflicts ask "what if this had not been found?". Each such question is one case of a batch in which the
item weighs 1 whatever is the matter, so that all of them are answered in one sweep.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.modules import inner_check
from diagnose.inference.network import Network
from diagnose.inference.situation import Situation
from diagnose.inference.tree import FaultTree, TreeCheck

__all__ = ["Item", "check_of", "evidence_network", "items"]

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
    weights = np.array([[0.0], [1.0]] if true else [[1.0], [0.0]])
    network.weigh(network.variable(node, stage), weights if keep.all() else np.where(keep, weights, 1.0))


def check_of(tree: FaultTree, check: str) -> TreeCheck:
    """A check of this machine; ValueError for another."""
    if check not in tree.checks:
        raise ValueError(f"check {check} does not belong to this machine")
    return tree.checks[check]
