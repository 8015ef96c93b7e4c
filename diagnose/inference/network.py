"""A situation written as many small tables over yes-or-no variables, whose product is the joint probability.

Gates with many inputs would need one huge table each. They are unrolled instead: "any" into a chain of variables
"one of the first i is true", "at least k" into a chain that counts up to k. The answer of a check is unrolled the same
way, since the *first* true node it looks at decides: the chain carries "an earlier one was true". So no table has more
than three variables, whatever the knowledge looks like.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.modules import modules_of
from diagnose.inference.situation import Situation
from diagnose.inference.tree import FaultTree, Node, TreeCheck

__all__ = ["REPAIR_DID_NOT_TAKE", "Copy", "Factor", "Network"]

# How often a repair leaves the cause in place (wrong part, loose lead, not the cause's cause). Judgement.
REPAIR_DID_NOT_TAKE = 0.03

Array = NDArray[np.float64]
Copy = tuple[str, int]  # a node, and the last repair below it that had been made: 0 for none


@dataclass(frozen=True)
class Factor:
    """A table over `variables` (ascending). Its last axis is the batch: length 1, or one entry per case."""

    variables: tuple[int, ...]
    table: Array


class Network:
    """Variables and tables for one situation, built node by node as they are asked for.

    `unasked` lists, for context questions, the cases of the batch (True) that do as if they had not been answered.
    With `inside`, an "any" gate has only the inputs made of these leaves (see `modules`).
    """

    def __init__(
        self,
        tree: FaultTree,
        situation: Situation,
        unasked: Mapping[str, NDArray[np.bool_]] | None = None,
        inside: frozenset[str] | None = None,
    ) -> None:
        self.tree = tree
        self.situation = situation
        self._unasked = unasked or {}
        self._inside = inside
        self.cards: list[int] = []
        self.factors: list[Factor] = []
        self._variables: dict[Copy, int] = {}
        self._steady_counts: dict[str, int] = {}
        self._changing = frozenset(situation.repaired)
        for cause in situation.repaired:
            if cause not in tree.nodes or not tree.nodes[cause].leaf:
                raise ValueError(f"{cause} is no cause of this machine, so it cannot have been repaired")

    def copy(self, node: str, stage: int) -> Copy:
        """Which copy of a node stands for it at a stage: a repair below a node starts a new copy, others do not."""
        if node not in self.tree.nodes:
            raise ValueError(f"{node} is nothing that this machine can have")
        if not 0 <= stage <= self.situation.stage:
            raise ValueError(f"stage {stage} of {node} lies outside 0 to {self.situation.stage}")
        below = self.tree.below(node)
        made = [k for k, cause in enumerate(self.situation.repaired[:stage], 1) if cause in below]
        return node, made[-1] if made else 0

    def variable(self, node: str, stage: int) -> int:
        """The variable of a node at a stage; made, with all below it, when first asked for."""
        copy = self.copy(node, stage)
        if copy not in self._variables:
            self._variables[copy] = self._make(*copy)
        return self._variables[copy]

    @property
    def copies(self) -> Mapping[Copy, int]:
        """The variables that stand for nodes."""
        return self._variables

    def _make(self, name: str, stage: int) -> int:
        node = self.tree.nodes[name]
        if node.leaf:
            variable = self._fresh(2)
            prior = np.array([REPAIR_DID_NOT_TAKE]) if stage else self._prior(node)
            self.weigh(variable, np.array([1.0 - prior, prior]))
            return variable
        within = self._within(node)
        steady = [each for each in within if self._changing.isdisjoint(self.tree.below(each))]
        moving = [each for each in within if each not in steady]
        counted = [self._steady(name, steady)] if steady and moving else []
        inputs = self._distinct(self.variable(each, stage) for each in (moving if counted else within))
        return self._chain([*counted, *inputs], node.need, gate=True)

    def _within(self, node: Node) -> Sequence[str]:
        if self._inside is None or node.need > 1:
            return node.inputs
        causes = modules_of(self.tree).causes
        return [each for each in node.inputs if not causes[each].isdisjoint(self._inside)]

    def _steady(self, name: str, inputs: Sequence[str]) -> int:
        """How many of a gate's inputs are true among those that no repair touches: one variable for all stages.

        Without it each stage would count them anew, and the arithmetic would have to carry all those counts at once.
        """
        if name not in self._steady_counts:
            variables = self._distinct(self.variable(each, 0) for each in inputs)
            self._steady_counts[name] = self._chain(variables, self.tree.nodes[name].need, gate=False)
        return self._steady_counts[name]

    def _prior(self, node: Node) -> Array:
        odds = np.array([node.prior / (1.0 - node.prior)])
        for question, by in node.shifts:
            if question in self._unasked:
                odds = np.where(self._unasked[question], odds / by, odds)
        return odds / (1.0 + odds)

    def _fresh(self, card: int) -> int:
        self.cards.append(card)
        return len(self.cards) - 1

    def _distinct(self, variables: Iterable[int]) -> list[int]:
        """The variables, a repeated one replaced by a twin: a gate with one input stands for that input."""
        each_once: list[int] = []
        for variable in variables:
            if variable in each_once:
                twin = self._fresh(self.cards[variable])
                self._add((variable, twin), np.eye(self.cards[variable])[:, :, None])
                variable = twin
            each_once.append(variable)
        return each_once

    def _add(self, variables: Sequence[int], table: Array) -> None:
        """Add a table whose axes before the batch follow `variables`."""
        order = sorted(range(len(variables)), key=lambda axis: variables[axis])
        axes = (*order, len(order))
        self.factors.append(Factor(tuple(variables[axis] for axis in order), table.transpose(axes)))

    def weigh(self, variable: int, weights: Array) -> None:
        """Multiply by weights (values, batch) on one variable."""
        self._add((variable,), weights)

    def _chain(self, inputs: Sequence[int], need: int, gate: bool) -> int:
        """How many of the inputs are true, up to `need`; as a `gate`: whether `need` are. One stands for itself."""
        counted, most = inputs[0], self.cards[inputs[0]] - 1
        for nth, more in enumerate(inputs[1:], 2):
            decides = gate and nth == len(inputs)
            most = min(most + 1, need)
            total = self._fresh(2 if decides else most + 1)
            table = np.zeros((self.cards[counted], 2, self.cards[total], 1))
            for before in range(self.cards[counted]):
                for true in range(2):
                    now = min(before + true, need)
                    table[before, true, int(now >= need) if decides else now] = 1.0
            self._add((counted, more, total), table)
            counted = total
        return counted

    def observe(self, check: TreeCheck, stage: int, likelihoods: Array) -> None:
        """A check was answered: `likelihoods` (rows of the check, batch) of that answer, row by row.

        Nodes one after the other under which the answer is equally likely count as one: it does not matter which of
        them is so.
        """
        nodes = self._distinct(self.variable(each, stage) for each in check.looks_at)
        none = likelihoods[-1]
        runs: list[tuple[list[int], Array]] = []
        for node, likelihood in zip(nodes, likelihoods[:-1], strict=True):
            if runs and np.array_equal(runs[-1][1], likelihood):
                runs[-1][0].append(node)
            else:
                runs.append(([node], likelihood))
        if runs and np.array_equal(runs[-1][1], none):
            runs.pop()  # looked at last, and no different from "none": it decides nothing
        if not runs:
            self.weigh(self._fresh(1), none[None, :])
            return
        first_of = [self._chain(run, 1, gate=True) for run, _ in runs]
        seen = [likelihood for _, likelihood in runs]
        if len(runs) == 1:
            self.weigh(first_of[0], np.array([none, seen[0]]))
            return
        self.weigh(first_of[0], np.array([np.ones_like(none), seen[0]]))
        earlier = first_of[0]
        for node, likelihood in zip(first_of[1:-1], seen[1:-1], strict=True):
            one_of_them = self._fresh(2)
            table = np.zeros((2, 2, 2, len(none)))
            table[0, 0, 0] = table[1, 0, 1] = table[1, 1, 1] = 1.0
            table[0, 1, 1] = likelihood
            self._add((earlier, node, one_of_them), table)
            earlier = one_of_them
        table = np.ones((2, 2, len(none)))
        table[0, 0] = none
        table[0, 1] = seen[-1]
        self._add((earlier, first_of[-1]), table)
