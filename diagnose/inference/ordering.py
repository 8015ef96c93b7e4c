"""Things in an order in which each stands before what it leads to."""

from __future__ import annotations

from collections.abc import Callable, Iterable

__all__ = ["in_order"]


def in_order(names: Iterable[str], leads_to: Callable[[str], Iterable[str]]) -> list[str]:
    """Generation by generation, each in the order in which the last of what leads to it comes (Kahn 1962).

    `leads_to` names each thing once. Raises ValueError, with the ring, where things go round in a circle.

    >>> in_order("cba", lambda name: {"a": "b", "b": "c", "c": ""}[name])
    ['a', 'b', 'c']
    """
    left = dict.fromkeys(names, 0)
    for name in list(left):
        for each in leads_to(name):
            left[each] += 1
    ahead = [name for name, count in left.items() if count == 0]
    order: list[str] = []
    while ahead:
        order += ahead
        freed = []
        for name in ahead:
            for each in leads_to(name):
                left[each] -= 1
                if left[each] == 0:
                    freed.append(each)
        ahead = freed
    if len(order) < len(left):
        raise ValueError(f"events go round in a circle: {' -> '.join(_ring(left.keys() - set(order), leads_to))}")
    return order


def _ring(stuck: Iterable[str], leads_to: Callable[[str], Iterable[str]]) -> list[str]:
    """One ring among things each of which another of them leads to."""
    inside = set(stuck)
    before = {each: name for name in sorted(inside) for each in leads_to(name) if each in inside}
    walk: list[str] = []
    at = min(inside)
    while at not in walk:
        walk.append(at)
        at = before[at]
    return walk[walk.index(at) :][::-1]
