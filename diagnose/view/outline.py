"""A tree as numbered rows: branches fold and unfold, what was shown before is only named again."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

__all__ = ["Outline", "Row", "opened_to_fit"]


@dataclass(frozen=True)
class Row:
    """A node at its place. `number` is its outline number ("2.1"; empty at a single top) and stays whatever folds.

    `folded` counts the causes hidden under it; `again` is the number under which its branches stand already.
    """

    node: str
    number: str
    depth: int
    parent: str = ""  # number of the row above it
    folded: int = 0
    again: str | None = None


class Outline:
    """A graph without circles, read from its tops down; `children` gives what a node is made of, in order."""

    def __init__(self, children: Callable[[str], Sequence[str]]) -> None:
        self._asked = children
        self._known: dict[str, tuple[str, ...]] = {}

    def children(self, node: str) -> tuple[str, ...]:
        if node not in self._known:
            self._known[node] = tuple(self._asked(node))
        return self._known[node]

    def rows(
        self,
        tops: Sequence[str],
        opened: Collection[str] | None = None,
        closed: Collection[str] = (),
        deepest: int | None = None,
    ) -> list[Row]:
        """The rows from the tops down. `opened` None opens everything; what is `closed` or too deep stays shut."""
        seen: dict[str, str] = {}

        def below(node: str, number: str, depth: int, parent: str) -> Iterator[Row]:
            children = self.children(node)
            if children and node in seen:
                yield Row(node, number, depth, parent, len(self.leaves(node)), seen[node])
                return
            shut = node in closed or (opened is not None and node not in opened)
            if children and (shut or (deepest is not None and depth >= deepest)):
                yield Row(node, number, depth, parent, len(self.leaves(node)))
                return
            seen[node] = number
            yield Row(node, number, depth, parent)
            for nth, child in enumerate(children, 1):
                yield from below(child, f"{number}.{nth}" if number else str(nth), depth + 1, number)

        numbers = [str(n) for n in range(1, len(tops) + 1)] if len(tops) > 1 else [""]
        return [row for top, number in zip(tops, numbers, strict=False) for row in below(top, number, 0, "")]

    def at(self, top: str, number: str) -> str | None:
        """The node that stands at an outline number under a single top."""
        node = top
        for part in number.split("."):
            children = self.children(node)
            if not part.isdigit() or not 1 <= int(part) <= len(children):
                return None
            node = children[int(part) - 1]
        return node

    def above(self, top: str, node: str) -> list[str]:
        """The nodes between `top` and a node under it, on the path where it is shown first; none if it isn't."""
        for child in self.children(top):
            if child == node:
                return [top]
            path = self.above(child, node)
            if path:
                return [top, *path]
        return []

    def leaves(self, node: str) -> set[str]:
        """The nodes at the very bottom under a node; itself if it is one."""
        found, seen, todo = set(), {node}, [node]
        while todo:
            each = todo.pop()
            children = self.children(each)
            if not children:
                found.add(each)
            todo += [c for c in children if c not in seen]
            seen.update(children)
        return found


def opened_to_fit(
    rows_of: Callable[[Collection[str]], list[Row]],
    opened: Collection[str],
    likely: Mapping[str, float],
    fits: Callable[[list[Row]], bool],
    closed: Collection[str] = (),
) -> list[Row]:
    """The rows with as many of the most probable branches opened, besides those in `opened`, as still fit."""
    wanted, refused = set(opened), set(closed)
    rows = rows_of(wanted)
    while True:
        folded = [r.node for r in rows if r.folded and r.again is None and r.node not in refused | wanted]
        if not folded:
            return rows
        more = max(folded, key=lambda node: likely.get(node, 0.0))
        grown = rows_of(wanted | {more})
        if fits(grown):
            wanted.add(more)
            rows = grown
        else:
            refused.add(more)
