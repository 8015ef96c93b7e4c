"""Which causes of a complaint no check of this machine tells apart, whatever is answered."""

from __future__ import annotations

from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.tree import FaultTree, TreeCheck, so_in
from diagnose.model.lint.separate import APART

__all__ = ["inseparable"]


def inseparable(tree: FaultTree, complaint: str) -> list[tuple[str, str]]:
    """Pairs of causes under the complaint for which every check shows nearly the same.

    Each cause is taken alone. Two are told apart by a check when what it shows for them differs in at least APART of
    all times it is made.
    """
    causes = [c for c in tree.causes_under(complaint) if tree.nodes[c].kind == "cause"]
    so = [so_in(tree, {cause}) for cause in causes]
    apart = np.zeros((len(causes), len(causes)), dtype=bool)
    for check in tree.checks.values():
        rows = np.array([check.row(each) for each in so])
        if (rows == rows[0]).all():
            continue
        apart |= _differ(check)[np.ix_(rows, rows)]
    pairs = combinations(range(len(causes)), 2)
    return [(causes[one], causes[other]) for one, other in pairs if not apart[one, other]]


def _differ(check: TreeCheck) -> NDArray[np.bool_]:
    """Whether two rows of the check's table differ enough, (rows, rows)."""
    between = np.abs(check.shows[:, None, :] - check.shows[None, :, :]).sum(axis=2) / 2.0
    return np.asarray(between >= APART)
