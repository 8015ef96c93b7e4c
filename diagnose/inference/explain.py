"""Why a cause stands where it stands: what speaks for it and what against, in bits.

The weight of an item is the log-odds of the cause with all that is known, minus its log-odds with everything but this
item (the weight of evidence, taken last). One bit doubles the odds. Weights of items that say the same thing do not add
up to the whole, as each is weighed against the others; that is what "would it matter if this reading were wrong?" asks.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.conditioning import propagate
from diagnose.inference.evidence import Item, evidence_network, items
from diagnose.inference.modules import concerning, modules_of, opened
from diagnose.inference.situation import ImpossibleSituationError, Situation, TooWideError
from diagnose.inference.tree import FaultTree

__all__ = ["FEWEST_BITS", "Explanation", "Reason", "explain"]

# A weight that moves the odds by less than seven in a hundred is no reason to speak of.
FEWEST_BITS = 0.1


@dataclass(frozen=True)
class Reason:
    """One item and its weight: above 0 it speaks for the node, below 0 against. `sole`: nothing else does its work.

    `sole` marks an item without which the node would be certain or impossible, so that no number of bits tells it.
    """

    item: Item
    bits: float
    sole: bool = False


@dataclass(frozen=True)
class Explanation:
    """The probability of a node now, before any evidence, and the reasons, the weightiest first."""

    node: str
    probability: float
    prior: float
    speaks_for: tuple[Reason, ...]
    speaks_against: tuple[Reason, ...]


def explain(tree: FaultTree, situation: Situation, node: str) -> Explanation:
    """Weigh every complaint, finding, ruled-out node and context answer for one cause or event."""
    every = items(tree, situation)
    cases = len(every) + 2
    kept = np.ones((len(every), cases), dtype=bool)
    for row in range(len(every)):
        kept[row, row + 1] = False
    kept[:, -1] = False
    try:
        table = _weighed(tree, situation, node, kept)
    except TooWideError:  # all cases at once are too much
        table = np.concatenate([_weighed(tree, situation, node, kept[:, [case]]) for case in range(cases)], axis=1)
    with np.errstate(divide="ignore"):
        odds = np.log2(table[1]) - np.log2(table[0])
    reasons = [_reason(item, float(odds[0]), float(odds[nth + 1])) for nth, item in enumerate(every)]
    weighty = sorted((r for r in reasons if abs(r.bits) >= FEWEST_BITS), key=lambda r: -round(abs(r.bits), 9))
    return Explanation(
        node,
        float(table[1, 0]),
        float(table[1, -1]),
        tuple(r for r in weighty if r.bits > 0),
        tuple(r for r in weighty if r.bits < 0),
    )


def _weighed(tree: FaultTree, situation: Situation, node: str, kept: NDArray[np.bool_]) -> NDArray[np.float64]:
    """Per case how probable the node is not, and is, (2, cases)."""
    network = evidence_network(tree, situation, kept, _inside(tree, situation, node))
    variable = network.variable(node, situation.stage)
    marginals = propagate(network.cards, network.factors, [variable])
    if not np.isfinite(marginals.log_evidence[0]):
        raise ImpossibleSituationError("what was said and found cannot all be so; take something back")
    return np.broadcast_to(marginals[variable], (2, kept.shape[1]))


def _inside(tree: FaultTree, situation: Situation, node: str) -> frozenset[str]:
    """What must stand in the network: also the causes whose prior differs where a context answer is left out."""
    shifted = frozenset(leaf for leaf in tree.leaves if tree.nodes[leaf].shifts)
    return opened(tree, situation, concerning(tree, situation) | modules_of(tree).causes[node] | shifted)


def _reason(item: Item, whole: float, without: float) -> Reason:
    if whole == without:
        return Reason(item, 0.0)
    bits = whole - without
    return Reason(item, bits, sole=not np.isfinite(bits))
