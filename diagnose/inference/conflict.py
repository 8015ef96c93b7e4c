"""Readings that can hardly both be right, and complaints that nothing listed explains.

Two findings that belong together are more probable together than apart. The measure is the usual one
for Bayesian networks: log2 P(a) P(b) / P(a, b), here given the complaints. Well above 0, the findings contradict one
another, unless a cause that is then plausible makes both of them likely: that is no contradiction but a discovery.
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.conditioning import propagate
from diagnose.inference.evidence import check_of, evidence_network, items
from diagnose.inference.kept import Kept
from diagnose.inference.modules import concerning, opened
from diagnose.inference.situation import Situation, Solution, TooWideError
from diagnose.inference.tree import FaultTree

__all__ = ["LEAST_CONFLICT_BITS", "PLAUSIBLE", "Conflict", "conflicts", "nothing_listed_fits"]

# Two bits: together four times rarer than if they had nothing to do with one another. In jobs made up from the model
# itself about one in a hundred reaches that by honest readings, with one fault or two; looks at the same thing that
# contradict one another reach it unless both are poor witnesses. Judgement on that trial.
LEAST_CONFLICT_BITS = 2.0
# A cause counts as a way out of a contradiction from one in five. Below, taking a reading again costs less than
# believing it. Judgement; none of the technicians' cases raises a false alarm at it.
PLAUSIBLE = 0.2
_PAIRS = 4000  # weighed for one tree that are kept

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Conflict:
    """Two findings (their places in the situation), how far they contradict one another, and their checks."""

    first: int
    second: int
    bits: float
    checks: tuple[str, str]


def conflicts(tree: FaultTree, situation: Situation) -> tuple[Conflict, ...]:
    """Pairs of findings that can hardly both be right, the worst first.

    A pair is weighed by itself, given the complaints and repairs, so that each is weighed once in a job. Of what was
    read before the last repair only what a later reading contradicts is looked at: the rest was said then.
    """
    pairs = [
        (a, b) for a, b in combinations(range(len(situation.findings)), 2) if _may_contradict(tree, situation, a, b)
    ]
    known: Kept[float] = Kept.of(tree, "conflicts", _PAIRS)
    keys = {pair: _key(situation, pair) for pair in pairs}
    weighed = {pair: known[keys[pair]] for pair in pairs if keys[pair] in known}
    fresh = [pair for pair in pairs if pair not in weighed]
    for pair, bits in zip(fresh, _bits(tree, situation, fresh), strict=True):
        weighed[pair] = known.get_or(keys[pair], partial(float, bits))
    found = [(bits, pair) for pair, bits in weighed.items() if bits >= LEAST_CONFLICT_BITS]
    checks = [finding.check for finding in situation.findings]
    told = [Conflict(a, b, bits, (checks[a], checks[b])) for bits, (a, b) in found]
    return tuple(sorted(told, key=lambda c: -c.bits))


def _may_contradict(tree: FaultTree, situation: Situation, a: int, b: int) -> bool:
    """Only looks that share something below what they look at can contradict one another."""
    first, second = situation.findings[a], situation.findings[b]
    if max(first.stage, second.stage) < situation.stage:
        return False
    return not _seen(tree, first.check).isdisjoint(_seen(tree, second.check))


def _key(situation: Situation, pair: tuple[int, int]) -> Hashable:
    """All that the weight of a pair depends on besides the tree."""
    of_pair = [situation.findings[nth] for nth in pair]
    told = tuple((f.check, f.stage, tuple(sorted(f.weights.items()))) for f in of_pair)
    return situation.complaints, situation.repaired, situation.ruled_out, situation.seen, told


def _bits(tree: FaultTree, situation: Situation, pairs: Sequence[tuple[int, int]]) -> list[float]:
    """Per pair how far its findings contradict one another; 0 where a plausible cause makes both of them likely."""
    if not pairs:
        return []
    found = sorted({nth for pair in pairs for nth in pair})
    column = {nth: 1 + case for case, nth in enumerate(found)}
    every = items(tree, situation)
    kept = np.ones((len(every), 1 + len(found) + len(pairs)), dtype=bool)
    place = {item.nth: row for row, item in enumerate(every) if item.kind == "finding"}
    for finding, row in place.items():
        kept[row] = False
        if finding in column:
            kept[row, column[finding]] = True
    for case, pair in enumerate(pairs, 1 + len(found)):
        kept[[place[pair[0]], place[pair[1]]], case] = True
    inside = opened(tree, situation, concerning(tree, situation))
    try:
        evidence, so = _weighed(tree, situation, inside, kept)
    except TooWideError:  # all of them at once are too much; of two findings alone each network is small
        alone = [(), *((nth,) for nth in found), *pairs]
        each = [_weighed(tree, _with_only(situation, findings), inside) for findings in alone]
        evidence, so = (np.concatenate(parts, axis=-1) for parts in zip(*each, strict=True))
    told = []
    for case, (a, b) in enumerate(pairs, 1 + len(found)):
        bits = float(evidence[column[a]] + evidence[column[b]] - evidence[case] - evidence[0])
        told.append(0.0 if _resolved(bits, so[:, case], so[:, 0]) else bits)
    return told


def _weighed(
    tree: FaultTree, situation: Situation, inside: frozenset[str], kept: NDArray[np.bool_] | None = None
) -> tuple[Array, Array]:
    """Per case the binary logarithm of the evidence, and the probability of each cause (causes, cases)."""
    network = evidence_network(tree, situation, kept, inside)
    causes = [leaf for leaf in tree.leaves if leaf in inside and tree.nodes[leaf].kind == "cause"]
    variables = [network.variable(cause, situation.stage) for cause in causes]
    marginals = propagate(network.cards, network.factors, variables)
    cases = (1,) if kept is None else kept.shape[1:]
    evidence = np.broadcast_to(marginals.log_evidence, cases) / np.log(2.0)
    return evidence, np.array([np.broadcast_to(marginals[v][1], cases) for v in variables])


def _with_only(situation: Situation, findings: tuple[int, ...]) -> Situation:
    return replace(situation, findings=tuple(situation.findings[nth] for nth in findings))


def _seen(tree: FaultTree, check: str) -> frozenset[str]:
    """All that lies below what a check looks at."""
    return frozenset[str]().union(*(tree.below(node) for node in check_of(tree, check).looks_at))


def _resolved(bits: float, after: Array, before: Array) -> bool:
    """Whether some plausible cause makes the pair at least as likely as the two would be on their own.

    By Bayes, P(a, b | cause) >= P(a) P(b) says the same as log2 P(cause | a, b) / P(cause) >= bits.
    """
    with np.errstate(divide="ignore", invalid="ignore"):
        gained = np.log2(after) - np.log2(before)
    return bool(np.any((after >= PLAUSIBLE) & (gained >= bits)))


def nothing_listed_fits(tree: FaultTree, situation: Situation, solution: Solution) -> tuple[str, ...]:
    """Complaints for which "something not listed here" is more probable than any single listed cause under them."""
    lead = []
    for complaint in situation.still_there:
        under = tree.causes_under(complaint)
        listed = max((solution.posterior[cause] for cause in under if tree.nodes[cause].kind == "cause"), default=0.0)
        if sum(solution.posterior[leaf] for leaf in under if tree.nodes[leaf].kind == "unlisted") > listed:
            lead.append(complaint)
    return tuple(lead)
