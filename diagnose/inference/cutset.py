"""Which variables to fix so that the rest falls apart into small tables, and which of their values are worth a look."""

from __future__ import annotations

import heapq
from collections.abc import Collection, Iterable, Iterator, Sequence
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.elimination import elimination_order, weights
from diagnose.inference.situation import TooWideError

__all__ = ["Choice", "around", "cutset", "enough", "others"]

# So small the tables become, by fixing so many variables at the most.
SMALL = 2**13
MOST_FIXED = 30
# Of so many fixed variables in doubt all combinations are tried; of more, as many again, of those in which no more than
# MOST_TURNED are other than most probable: where there are many, each is seldom so. Judgement, by trial.
MOST_OPEN = 12
MOST_TURNED = 3
# What together makes up LEFT_OUT is left out, of doubts and of combinations; where the work is too much, MOST_LEFT_OUT.
# What is foretold is off by no more than twice that.
LEFT_OUT = 0.003
MOST_LEFT_OUT = 0.1

Array = NDArray[np.float64]
Choice = tuple[int, ...]  # the value of each fixed variable, 0 or 1


def around(so: Array) -> list[Choice]:
    """Combinations of what is in doubt, the rest being as it is most probable; `so` for each fixed variable.

    All of them where few are in doubt; else the most probable ones with MOST_TURNED things other than most probable.
    """
    doubt = np.minimum(so, 1.0 - so)
    order = np.argsort(-doubt)
    beyond = np.append(np.cumsum(doubt[order][::-1])[::-1], 0.0)  # what would be left out with so many in doubt
    count = int(np.argmax(beyond <= LEFT_OUT))
    plain = tuple(int(each > 0.5) for each in so)
    if count <= MOST_OPEN:
        turned = [each for n in range(count + 1) for each in combinations(order[:count].tolist(), n)]
    else:
        turned = [each for n in range(MOST_TURNED + 1) for each in combinations(order.tolist(), n)]
        weight = np.array([float(np.prod(doubt[list(each)] / (1.0 - doubt[list(each)]))) for each in turned])
        best = np.argsort(-weight, kind="stable")[: 2**MOST_OPEN]
        if weight[best].sum() * float(np.prod(1.0 - doubt)) < 1.0 - MOST_LEFT_OUT:
            raise TooWideError(f"more than {MOST_OPEN} things in doubt bear on all the others at once")
        turned = [turned[nth] for nth in best.tolist()]
    return [tuple(1 - value if place in places else value for place, value in enumerate(plain)) for places in turned]


def enough(share: Array, most: int) -> NDArray[np.intp]:
    """The places of those, by their `share`, that together leave out LEFT_OUT; no more than so many.

    Raises TooWideError where that leaves out more than MOST_LEFT_OUT.
    """
    order = np.argsort(-share)
    covered = np.cumsum(share[order]) / share.sum()
    few = min(int(np.searchsorted(covered, 1.0 - LEFT_OUT)) + 1, most)
    if few == 0 or covered[min(few, len(covered)) - 1] < 1.0 - MOST_LEFT_OUT:
        raise TooWideError("too many combinations of what bears on all the others count")
    return np.asarray(order[:few])


def others(choice: Choice, count: int) -> Iterator[Choice]:
    """All that differ from it in so many places."""
    for places in combinations(range(len(choice)), count):
        yield tuple(1 - value if place in places else value for place, value in enumerate(choice))


def cutset(
    cards: Sequence[int], scopes: Sequence[Sequence[int]], among: Collection[int], begin: Iterable[int] = ()
) -> list[int]:
    """Some of these variables: those to `begin` with, then two at a time those that weigh most in the tables left.

    Until the tables are small, or MOST_FIXED are fixed.

    >>> cutset([2, 2, 2], [(0, 1), (1, 2)], [0, 1, 2])
    []
    """
    fixed = [variable for variable in begin if variable in among]
    while len(fixed) < MOST_FIXED:
        gone = set(fixed)
        order = elimination_order(cards, [[v for v in scope if v not in gone] for scope in scopes], 0)
        cells, heavy = weights(order, cards)
        more = heapq.nlargest(2, (v for v in among if v in heavy and v not in gone), key=lambda v: heavy[v])
        if cells - len(cards) <= SMALL or not more:
            break
        fixed += more
    return fixed
