"""Which variable to sum out next, and the tree of clusters that this order makes."""

from __future__ import annotations

import heapq
import random
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import prod

__all__ = ["Cluster", "cluster_tree", "elimination_order"]


@dataclass(frozen=True)
class Cluster:
    """Variables handled together. `separator` is what it shares with `parent`; children stand before their parents."""

    variables: tuple[int, ...]
    separator: tuple[int, ...]
    parent: int | None


Order = list[tuple[int, frozenset[int]]]

# Where the first order makes a wide table, so many others are tried, ties broken by chance; each takes tens of
# milliseconds with hundreds of variables, as much as a table of so many cells over all cases.
WIDE = 2**20
TRIES = 6
VERY_WIDE = 2**23  # then more of them
MORE_TRIES = 24
# A table of one case is wide beyond this, however few the cases.
WIDE_ALONE = 2**16


def elimination_order(cards: Sequence[int], scopes: Iterable[Sequence[int]], cases: int = 1) -> Order:
    """Each variable with the neighbours it has when it is summed out, cheapest next; for so many cases in one go.

    Greedy: the variable whose neighbours lack the fewest connections goes first, among equals the one that makes the
    smallest table. Finding the best order of all is out of reach; this one is near it on trees that share little. Where
    it is not, the best of some others is taken.

    >>> [v for v, _ in elimination_order([2, 2, 2], [(0, 1), (1, 2)])]
    [0, 1, 2]
    """
    scopes = [tuple(scope) for scope in scopes]
    wide = min(WIDE_ALONE, WIDE // cases)
    very_wide = wide * VERY_WIDE // WIDE
    best = _greedy(cards, scopes, None)
    if _widest(best, cards) <= wide:
        return best
    chance = random.Random(len(cards))
    for tries, enough in ((TRIES, very_wide), (MORE_TRIES, 0)):
        others = (_greedy(cards, scopes, chance) for _ in range(tries))
        best = min([best, *others], key=lambda order: _work(order, cards))
        if _widest(best, cards) <= (enough or wide):
            break
    return best


def _widest(order: Order, cards: Sequence[int]) -> int:
    return max((_cells(step, cards) for step in order), default=1)


def _work(order: Order, cards: Sequence[int]) -> tuple[int, int]:
    cells = [_cells(step, cards) for step in order]
    return max(cells, default=1), sum(cells)


def _cells(step: tuple[int, frozenset[int]], cards: Sequence[int]) -> int:
    return cards[step[0]] * prod(cards[other] for other in step[1])


def _greedy(cards: Sequence[int], scopes: Sequence[Sequence[int]], chance: random.Random | None) -> Order:
    near: list[set[int]] = [set() for _ in cards]
    for scope in scopes:
        for variable in scope:
            near[variable].update(scope)
    for variable, others in enumerate(near):
        others.discard(variable)
    prices = [_price(variable, near, cards) for variable in range(len(cards))]
    queue = [(*price, _tie(variable, chance), variable) for variable, price in enumerate(prices)]
    heapq.heapify(queue)
    done = [False] * len(cards)
    order: Order = []
    while queue:
        lacking, size, _, variable = heapq.heappop(queue)
        if done[variable] or (lacking, size) != prices[variable]:
            continue  # an old price: a newer entry is in the queue
        done[variable] = True
        order.append((variable, frozenset(near[variable])))
        for changed in _remove(variable, near):
            prices[changed] = _price(changed, near, cards)
            heapq.heappush(queue, (*prices[changed], _tie(changed, chance), changed))
    return order


def _tie(variable: int, chance: random.Random | None) -> float:
    return float(variable) if chance is None else chance.random()


def _price(variable: int, near: Sequence[set[int]], cards: Sequence[int]) -> tuple[int, int]:
    """Connections its neighbours lack (each counted from both ends), and the cells of their common table."""
    others = near[variable]
    size = 1
    for other in others:
        size *= cards[other]
    if len(others) < 2:
        return 0, size
    lacking = len(others) * (len(others) - 1)
    for other in others:
        lacking -= len(others & near[other])
    return lacking, size


def _remove(variable: int, near: Sequence[set[int]]) -> set[int]:
    """Take the variable out, join its neighbours, and name those whose price may have changed."""
    others = near[variable]
    changed = set(others)
    for other in others:
        missing = others - near[other]
        missing.discard(other)
        near[other] |= missing
        near[other].discard(variable)
        if missing:
            changed |= near[other]
    return changed


def cluster_tree(order: Order) -> list[Cluster]:
    """The clusters of an elimination order; those that lie within another one are merged into it."""
    position = {variable: index for index, (variable, _) in enumerate(order)}
    parent: list[int | None] = [min((position[o] for o in near), default=None) for _, near in order]
    scopes = [near | {variable} for variable, near in order]
    home = list(range(len(order)))  # into which cluster each one is merged
    for index, above in enumerate(parent):
        if above is not None and len(scopes[above]) == len(order[index][1]) and home[above] == above:
            home[above] = index  # the parent's scope is this one's separator: it adds nothing
    return _merged(scopes, parent, home)


def _merged(scopes: Sequence[frozenset[int]], parent: Sequence[int | None], home: list[int]) -> list[Cluster]:
    def stays(index: int) -> int:
        while home[index] != index:
            index = home[index]
        return index

    last: dict[int, int] = {}  # cluster that stays -> the last one merged into it, whose parent it takes over
    for index in range(len(scopes)):
        last[stays(index)] = index
    upward = sorted(last, key=lambda kept: last[kept])
    number = {kept: nth for nth, kept in enumerate(upward)}
    clusters = []
    for kept in upward:
        above = parent[last[kept]]
        beyond = None if above is None else stays(above)
        shared = () if beyond is None else tuple(sorted(scopes[kept] & scopes[beyond]))
        clusters.append(Cluster(tuple(sorted(scopes[kept])), shared, None if beyond is None else number[beyond]))
    return clusters
