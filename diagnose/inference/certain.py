"""What is certain needs no arithmetic: known variables are cut out of the tables before anything is summed.

A table that allows one value of a variable only makes it known; a known variable leaves all other tables; a table
that then no longer depends on one of its variables lets go of it. So a part seen to be faulty makes every "any" gate
above it true, whatever else goes into that gate, and a complaint that is gone makes every cause under it false.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.network import Factor

__all__ = ["without_certain"]

Array = NDArray[np.float64]


def without_certain(factors: Sequence[Factor]) -> tuple[list[Factor], dict[int, int], Array]:
    """The tables that are left, the value of each known variable, and the logarithm of what was cut off (per case).

    >>> seen = Factor((0,), np.array([[0.0], [1.0]]))
    >>> either = Factor((0, 1), np.array([[[1.0], [0.0]], [[0.2], [0.8]]]))
    >>> left, known, log_weight = without_certain([seen, either])
    >>> [f.variables for f in left], known, log_weight.tolist()
    ([(1,)], {0: 1}, [0.0])
    """
    known: dict[int, int] = {}
    log_weight = np.zeros(1)
    left = list(factors)
    changed = left  # only a table that is new can make something known
    while True:
        fresh = _known_by(changed, known)
        if not fresh:
            return left, known, log_weight
        known |= fresh
        kept, changed = [], []
        for factor in left:
            if fresh.keys().isdisjoint(factor.variables):
                kept.append(factor)
                continue
            factor = _loosened(_cut(factor, fresh))
            if factor.variables:
                kept.append(factor)
                changed.append(factor)
            else:
                with np.errstate(divide="ignore"):
                    log_weight = log_weight + np.log(factor.table)
        left = kept


def _known_by(factors: Sequence[Factor], known: dict[int, int]) -> dict[int, int]:
    """Variables of which some table allows one value only, in every case of the batch."""
    fresh: dict[int, int] = {}
    for factor in factors:
        if factor.table.shape[-1] > 1:
            continue
        if factor.table.all():
            continue
        for axis, variable in enumerate(factor.variables):
            others = tuple(a for a in range(factor.table.ndim) if a != axis)
            allowed = np.flatnonzero(factor.table.any(axis=others))
            if len(allowed) == 1 and variable not in known and variable not in fresh:
                fresh[variable] = int(allowed[0])
    return fresh


def _cut(factor: Factor, known: dict[int, int]) -> Factor:
    """The table at the known values of its variables."""
    index = tuple(known.get(v, slice(None)) for v in factor.variables)
    return Factor(tuple(v for v in factor.variables if v not in known), factor.table[index])


def _loosened(factor: Factor) -> Factor:
    """The table without the variables it does not depend on."""
    variables, table = list(factor.variables), factor.table
    for axis in reversed(range(len(variables))):
        first = table.take([0], axis=axis)
        if np.array_equal(np.broadcast_to(first, table.shape), table):
            table = first.squeeze(axis)
            del variables[axis]
    return Factor(tuple(variables), table)
