"""The two questions to the fault tree: what is believed now, and what each open check would make us believe."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.conditioning import little_enough, propagate
from diagnose.inference.evidence import check_of, evidence_network
from diagnose.inference.modules import concerning, grouped, inner_check, modules_of, opened
from diagnose.inference.network import Copy, Network
from diagnose.inference.parting import entropy
from diagnose.inference.propagation import Marginals
from diagnose.inference.situation import ImpossibleSituationError, Prediction, Situation, Solution, TooWideError
from diagnose.inference.tree import FaultTree, TreeCheck

__all__ = ["bearing_checks", "concerned", "predict", "solve", "solve_and_predict", "weighable"]

# Each group of checks needs a network of its own. Of more than MANY_GROUPS, only the TELLING checks that promise most
# are foretold; where each takes a good part of a second, no more than FEW_GROUPS. Judgement, by trial.
MANY_GROUPS = 24
FEW_GROUPS = 2
TELLING = 24
# Where none could be foretold, so many are by themselves, at some seconds each. Judgement.
ALONE = 3

Array = NDArray[np.float64]


def solve(tree: FaultTree, situation: Situation) -> Solution:
    """The exact probability, as it is now, of all that is made of causes of what was complained of (see Solution)."""
    network, variables = _asked(tree, situation)
    marginals = propagate(network.cards, network.factors, variables.values())
    posterior = {node: float(marginals[variable][1, 0]) for node, variable in variables.items()}
    return Solution(posterior, _finite(marginals), tuple(leaf for leaf in tree.leaves if leaf in posterior))


def weighable(tree: FaultTree, situation: Situation, roughly: bool = False) -> bool:
    """Whether `solve` can do it; `roughly` is told in a tenth of the time, and may be a no where it can after all."""
    network, _ = _asked(tree, situation)
    return little_enough(network.cards, network.factors, roughly)


def _asked(tree: FaultTree, situation: Situation) -> tuple[Network, dict[str, int]]:
    """The network of things as they stand, and the variables of what is asked about."""
    bearing = concerning(tree, situation)
    network = evidence_network(tree, situation, inside=opened(tree, situation, bearing))
    causes = modules_of(tree).causes
    said = {complaint for complaint, _, _ in situation.complaints}
    # A complaint nobody made would only tie together, at a price, all that could bring it about.
    nodes = [n.id for n in tree.nodes.values() if (n.kind != "complaint" or n.id in said) and causes[n.id] <= bearing]
    return network, {node: network.variable(node, situation.stage) for node in nodes}


def solve_and_predict(
    tree: FaultTree, situation: Situation, check_ids: Iterable[str]
) -> tuple[Solution, dict[str, Prediction]]:
    """What is believed now, and what every one of these checks would make us believe, all checks at once."""
    return solve(tree, situation), _foretold(tree, situation, check_ids, _AsItStands(tree, situation))


def predict(tree: FaultTree, situation: Situation, check_ids: Iterable[str]) -> dict[str, Prediction]:
    """For each check, if it were done now: how likely each outcome is, and every cause's probability after it.

    Checks that see the same of what findings saw outside the complaint are taken together, as the network must hold
    that for them. Where that makes many networks, or the first one shows that each is dear, as they may be after many
    answers, only the TELLING checks that promise most are foretold of those that need one of their own. What is too
    much even so is left out; if that is everything, the ALONE most telling ones are tried one by one.
    """
    checks = list(dict.fromkeys(check_ids))
    found: dict[str, Prediction] = {}
    known = _AsItStands(tree, situation)

    def foretell(groups: Sequence[Sequence[str]]) -> None:
        for group in groups:
            with suppress(TooWideError):
                found.update(_foretold(tree, situation, group, known))

    groups = grouped(tree, situation, [check_of(tree, check) for check in checks])
    foretell(groups[:1])
    if not found:  # all of them at once are too much
        foretell([_most_telling(tree, known.now, group) for group in groups[:1]])
    dear = known.asked
    rest = groups[1:]
    if len(rest) > (FEW_GROUPS if dear else MANY_GROUPS):
        telling = _most_telling(tree, known.now, [check for group in rest for check in group])
        rest = grouped(tree, situation, [check_of(tree, check) for check in telling])
        rest.sort(key=lambda group: min(map(telling.index, group)))
    foretell(rest[:FEW_GROUPS] if dear else rest)
    if not found and checks:
        foretell([[check] for check in _most_telling(tree, known.now, checks)[:ALONE]])
    return {check: found[check] for check in checks if check in found}


def _most_telling(tree: FaultTree, belief: Mapping[str, float], checks: Sequence[str]) -> list[str]:
    """The TELLING checks whose rows part best what is believed of the causes.

    What a check tells is reckoned roughly: as if one of the nodes it looks at were the first that is so, each as far as
    what is below it and not below an earlier one is believed, or none; in bits between those rows.
    """
    causes = modules_of(tree).causes

    def tells(name: str) -> float:
        check = tree.checks[name]
        weights, seen = [], frozenset[str]()
        for node in check.looks_at:
            weights.append(sum(belief.get(leaf, 0.0) for leaf in causes[node] - seen))
            seen |= causes[node]
        share = np.array([*weights, max(1.0 - sum(weights), 0.0)])
        share /= share.sum()
        return entropy(share @ check.shows) - float(share @ np.array([entropy(row) for row in check.shows]))

    return sorted(checks, key=tells, reverse=True)[:TELLING]


def concerned(tree: FaultTree, situation: Situation) -> tuple[str, ...]:
    """The causes (and `unlisted.*`) under what is complained of and still there; all where nothing is."""
    complaints = situation.still_there
    under = frozenset[str]().union(*(tree.below(complaint) for complaint in complaints))
    return tuple(leaf for leaf in tree.leaves if leaf in under or not complaints)


def bearing_checks(tree: FaultTree, situation: Situation) -> tuple[str, ...]:
    """The checks that can be asked, whose question makes sense, and that look at anything made of causes concerned."""
    causes = frozenset(concerned(tree, situation))
    said = {complaint for complaint, _, _ in situation.complaints}
    asked = (
        c for c in tree.checks.values() if not c.computed and (not c.asked_for or not said.isdisjoint(c.asked_for))
    )
    return tuple(c.id for c in asked if any(not causes.isdisjoint(tree.below(node)) for node in c.looks_at))


class _AsItStands:
    """How probable every node is at every stage, worked out when it is first asked for; and what was fixed so far."""

    def __init__(self, tree: FaultTree, situation: Situation) -> None:
        self._tree, self._situation = tree, situation
        self.fixed: list[Copy] = []

    @property
    def asked(self) -> bool:
        return "believed" in self.__dict__

    @property
    def now(self) -> dict[str, float]:
        """How probable every node is at the last stage."""
        return {node: p for (node, _), p in sorted(self.believed.items(), key=lambda each: each[0][1])}

    @cached_property
    def believed(self) -> dict[Copy, float]:
        """As far as the network of things as they stand has it: that of `solve`, which could be done."""
        network, _ = _asked(self._tree, self._situation)
        marginals = propagate(network.cards, network.factors, network.copies.values())
        return {copy: float(marginals[variable][1, 0]) for copy, variable in network.copies.items()}


def _foretold(
    tree: FaultTree, situation: Situation, check_ids: Iterable[str], known: _AsItStands
) -> dict[str, Prediction]:
    """In one sweep, about the causes concerned.

    A check is cut into cells: "the first true node it looks at is the i-th", and "none of them". A cell is a handful
    of nodes known to be true or false, so it multiplies each of their variables by 0 or 1 and leaves the shape of the
    computation as it is; all cells of all checks are cases of one batch, case 0 being things as they stand. Outcomes
    are then mixed from cells by the check's own table.
    """
    whole = [check_of(tree, check) for check in dict.fromkeys(check_ids)]
    inside = opened(tree, situation, concerning(tree, situation), whole)
    checks = [inner_check(tree, check, inside) for check in whole]
    network = evidence_network(tree, situation, inside=inside)
    cells = _Cells(network, checks)
    causes = concerned(tree, situation)
    variables = [network.variable(cause, situation.stage) for cause in causes]

    def as_it_stands() -> dict[int, float]:
        return {network.copies[copy]: p for copy, p in known.believed.items() if copy in network.copies}

    fixed = [network.copies[copy] for copy in known.fixed if copy in network.copies]
    try:
        marginals = propagate(network.cards, network.factors, variables, as_it_stands, fixed)
    finally:
        copies = {variable: copy for copy, variable in network.copies.items()}
        known.fixed = [copies[variable] for variable in fixed]
    now = _finite(marginals)
    so = np.array([_row(marginals[variable][1], cells.cases) for variable in variables])
    chance = np.exp(_row(marginals.log_evidence, cells.cases) - now)
    return {
        check.id: _prediction(check, causes, chance[rows], so[:, rows])
        for check, rows in zip(checks, cells.rows, strict=True)
    }


def _finite(marginals: Marginals) -> float:
    """The log evidence of things as they stand."""
    log_evidence = float(marginals.log_evidence[0])
    if not np.isfinite(log_evidence):
        raise ImpossibleSituationError("what was said and found cannot all be so; take something back")
    return log_evidence


class _Cells:
    """The batch: one case for things as they stand, then one for each cell of each check."""

    def __init__(self, network: Network, checks: Sequence[TreeCheck]) -> None:
        self.cases = 1 + sum(len(check.looks_at) + 1 for check in checks)
        self.rows: list[slice] = []
        clamps: dict[int, Array] = {}
        start = 1
        for check in checks:
            for nth, node in enumerate(check.looks_at):
                variable = network.variable(node, network.situation.stage)
                clamp = clamps.setdefault(variable, np.ones((2, self.cases)))
                clamp[0, start + nth] = 0.0  # its own cell: true
                clamp[1, start + nth + 1 : start + len(check.looks_at) + 1] = 0.0  # later cells: false
            self.rows.append(slice(start, start + len(check.looks_at) + 1))
            start += len(check.looks_at) + 1
        for variable, clamp in clamps.items():
            network.weigh(variable, clamp)


def _prediction(check: TreeCheck, causes: tuple[str, ...], chance: Array, given: Array) -> Prediction:
    """Mix cells into outcomes: `chance` (cells) of each cell, `given` (causes, cells) of each cause in it."""
    joint = chance[:, None] * check.shows  # (cells, outcomes)
    outcome = joint.sum(axis=0)
    after = (given @ joint / np.where(outcome > 0.0, outcome, 1.0)).T
    return Prediction(check.id, dict(zip(check.outcomes, outcome.tolist(), strict=True)), causes, after)


def _row(values: Array, cases: int) -> Array:
    return np.broadcast_to(values, (cases,))
