"""What a check would answer, told at once and roughly: as if one thing alone were the matter.

Late in a wide job the exact foretelling (`posterior.py`) takes seconds, and on the telephone somebody waits. Each cause
then decides by itself which row of the check's table holds, and an answer reweighs the causes as they are believed now.
Only the choice of the next question goes by this; what is believed once it is answered is exact.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from diagnose.inference.kept import Kept
from diagnose.inference.posterior import concerned
from diagnose.inference.situation import Prediction, Situation, Solution
from diagnose.inference.tree import FaultTree, TreeCheck, so_in

__all__ = ["foretold_roughly"]

_ALONE, _ROWS = 2_000, 200_000  # kept of one tree


def foretold_roughly(
    tree: FaultTree, situation: Situation, solution: Solution, check_ids: Iterable[str]
) -> dict[str, Prediction]:
    """For each check, how likely each outcome is, and every cause's probability after it."""
    causes = concerned(tree, situation)
    belief = np.array([solution.posterior[cause] for cause in causes])
    total = max(float(belief.sum()), 1e-12)
    found: dict[str, Prediction] = {}
    for name in check_ids:
        check = tree.checks[name]
        row = [_row(tree, check, cause) for cause in causes]
        joint = (belief / total)[:, None] * check.shows[row]
        outcome = joint.sum(axis=0)
        after = (joint / np.where(outcome > 0.0, outcome, 1.0)).T * total
        found[name] = Prediction(name, dict(zip(check.outcomes, outcome.tolist(), strict=True)), causes, after)
    return found


def _row(tree: FaultTree, check: TreeCheck, cause: str) -> int:
    """The row of the check's table that holds where this cause alone is there."""
    rows: Kept[int] = Kept.of(tree, "row alone", most=_ROWS)
    return rows.get_or((check.id, cause), lambda: check.row(_so(tree, cause)))


def _so(tree: FaultTree, cause: str) -> frozenset[str]:
    """Everything that is so where this cause alone is there."""
    kept: Kept[frozenset[str]] = Kept.of(tree, "so alone", most=_ALONE)
    return kept.get_or(cause, lambda: so_in(tree, {cause}))
