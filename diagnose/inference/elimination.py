"""Which variable to sum out next, and the tree of clusters that this order makes."""

from __future__ import annotations

import heapq
import random
from collections import deque
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import prod

__all__ = ["Cluster", "cluster_tree", "elimination_order", "weights"]


@dataclass(frozen=True)
class Cluster:
    """Variables handled together. `separator` is what it shares with `parent`; children stand before their parents."""

    variables: tuple[int, ...]
    separator: tuple[int, ...]
    parent: int | None


Order = list[tuple[int, frozenset[int]]]

# Where the first order makes so many cells over all cases and tables, some others are tried, ties broken by chance: one
# takes some ten milliseconds with hundreds of variables, as much as two million cells; more for one case that is large.
MANY = 2**25
TRIES = 4
TOO_MUCH = 16.0  # times that, and for one case eight times that: no other order would make it little enough


def elimination_order(cards: Sequence[int], scopes: Iterable[Sequence[int]], cases: int = 1) -> Order:
    """Each variable with the neighbours it has when it is summed out, cheapest next; for so many cases in one go.

    Greedy: the variable goes first whose neighbours lack the fewest connections, for each of them, among equals the one
    that makes the smallest table. (By the plain count of what is lacking the tables come out half as large again on the
    shipped knowledge.) Finding the best order of all is out of reach; this one is near it on trees that share little.
    Where it makes many cells, the best of some others is taken; for no cases, it is always this one.

    >>> [v for v, _ in elimination_order([2, 2, 2], [(0, 1), (1, 2)])]
    [0, 1, 2]
    """
    near = _neighbours(len(cards), scopes)
    simple = _simple(near)
    best = simple + _greedy(cards, near, None)
    much = _work(best, cards)[1] * cases / MANY
    if much <= 1.0 or much > (TOO_MUCH if cases > 1 else 8.0 * TOO_MUCH):
        return best
    chance = random.Random(len(cards))
    others = (simple + _greedy(cards, near, chance) for _ in range(TRIES if cases > 1 or much < 2.0 else 4 * TRIES))
    return min([best, *others], key=lambda order: _work(order, cards))


def _work(order: Order, cards: Sequence[int]) -> tuple[int, int]:
    """Cells of the largest table, and of all."""
    cells = [cards[variable] * prod(cards[other] for other in others) for variable, others in order]
    return max(cells, default=1), sum(cells)


def weights(order: Order, cards: Sequence[int]) -> tuple[int, dict[int, int]]:
    """Cells of all tables that an order makes, and of those that hold each variable beside others."""
    whole, heavy = 0, dict[int, int]()
    for variable, others in order:
        cells = cards[variable] * prod([cards[other] for other in others])
        whole += cells
        for each in (variable, *others) if others else ():
            heavy[each] = heavy.get(each, 0) + cells
    return whole, heavy


def _neighbours(count: int, scopes: Iterable[Sequence[int]]) -> list[set[int]]:
    near: list[set[int]] = [set() for _ in range(count)]
    for scope in scopes:
        for variable in scope:
            near[variable].update(scope)
    for variable, others in enumerate(near):
        others.discard(variable)
    return near


def _simple(near: list[set[int]]) -> Order:
    """Take out all whose neighbours lack nothing: no order is better than one that begins with them.

    The sets of the others are those of what is left; those taken out have none.
    """
    order: Order = []
    queue, waiting, done = deque(range(len(near))), [True] * len(near), [False] * len(near)
    while queue:
        variable = queue.popleft()
        waiting[variable] = False
        others = near[variable]
        if done[variable] or _lacking(others, near):
            continue
        done[variable] = True
        order.append((variable, frozenset(others)))
        for other in others:
            near[other].discard(variable)
            if not waiting[other]:
                waiting[other] = True
                queue.append(other)
        near[variable] = set()
    return order


def _greedy(cards: Sequence[int], near: Sequence[set[int]], chance: random.Random | None) -> Order:
    """An order of what is connected; `near` stays as it is."""
    near = [set(others) for others in near]
    lacking = [_lacking(others, near) for others in near]
    prices: dict[int, tuple[float, int]] = {}
    queue: list[tuple[float, int, float, int]] = []

    def put(variable: int) -> None:
        """At its price: connections lacking for each neighbour, and the cells of the neighbours' common table."""
        others = near[variable]
        price = lacking[variable] / max(len(others), 1), prod([cards[other] for other in others])
        if prices.get(variable) != price:
            prices[variable] = price
            tie = float(variable) if chance is None else chance.random()
            heapq.heappush(queue, (*price, tie, variable))

    for variable, others in enumerate(near):
        if others:
            put(variable)
    order: Order = []
    while queue:
        each, size, _, variable = heapq.heappop(queue)
        if prices.get(variable) != (each, size):
            continue  # an old price: a newer entry is in the queue, or it is out already
        del prices[variable]
        order.append((variable, frozenset(near[variable])))
        for changed in _remove(variable, near, lacking):
            put(changed)
    return order


def _lacking(others: set[int], near: Sequence[set[int]]) -> int:
    """Connections these lack among themselves, each counted from both ends."""
    if len(others) < 2:
        return 0
    return len(others) * (len(others) - 1) - sum([len(others & near[other]) for other in others])


def _remove(variable: int, near: Sequence[set[int]], lacking: list[int]) -> set[int]:
    """Take the variable out, join its neighbours, and name those whose price may have changed."""
    others = near[variable]
    beyond: set[int] = set()
    for one in others:
        near[one].discard(variable)
    for one in others:
        for other in others - near[one]:
            if other != one:
                for both in (near[one] & near[other]) - others:  # what these two meet at lacks one connection less
                    lacking[both] -= 2
                    beyond.add(both)
                near[one].add(other)
                near[other].add(one)
    for one in others:
        lacking[one] = _lacking(near[one], near)
    return others | beyond


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
