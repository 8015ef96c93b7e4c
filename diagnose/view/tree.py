"""The fault tree on the screen: complaint, events, causes, each with its percent; branches fold."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from diagnose.model import Book, Machine, fits
from diagnose.view.layout import Line, number_word, percent, wrap

__all__ = ["Branch", "branches", "tree_block"]

MOST_ROWS = 22  # rows that are opened by themselves; more does not fit a screen


@dataclass(frozen=True)
class Branch:
    """One row: a node at a depth. `folded` counts the causes hidden under it."""

    number: int
    node: str
    depth: int
    probability: float
    folded: int = 0


def branches(
    book: Book,
    machine: Machine,
    complaints: Sequence[str],
    probability: Mapping[str, float],
    unfolded: Collection[str] = (),
    everything: bool = False,
) -> list[Branch]:
    """The rows of the tree from the complaints down, the most probable child first.

    The most probable events are opened as far as MOST_ROWS allows, besides those in `unfolded`. An
    event that was shown before is named again but not opened again.
    """
    tree = _Tree(book, machine, probability)
    opened = {*complaints, *unfolded, *(n for node in unfolded for c in complaints for n in tree.above(c, node))}
    rows = tree.rows(complaints, opened, everything)
    refused: set[str] = set()
    while not everything:
        folded = [r for r in rows if r.folded and r.node not in refused and r.node not in opened]
        if not folded:
            break
        more = max(folded, key=lambda r: r.probability).node
        grown = tree.rows(complaints, opened | {more}, everything)
        if len(grown) > MOST_ROWS:
            refused.add(more)
        else:
            opened.add(more)
            rows = grown
    return rows


@dataclass(frozen=True)
class _Tree:
    book: Book
    machine: Machine
    probability: Mapping[str, float]

    def rows(self, complaints: Sequence[str], opened: Collection[str], everything: bool) -> list[Branch]:
        seen: set[str] = set()
        found = [row for c in complaints for row in self._below(c, 0, opened, everything, seen)]
        return [Branch(n, row.node, row.depth, row.probability, row.folded) for n, row in enumerate(found, 1)]

    def _below(
        self, node: str, depth: int, opened: Collection[str], everything: bool, seen: set[str]
    ) -> Iterator[Branch]:
        children = self._children(node)
        likely = self.probability.get(node, 0.0)
        if children and (node in seen or not (everything or node in opened)):
            yield Branch(0, node, depth, likely, len(self._causes(node, set())))
            return
        seen.add(node)
        yield Branch(0, node, depth, likely)
        for child in children:
            yield from self._below(child, depth + 1, opened, everything, seen)

    def above(self, top: str, node: str) -> list[str]:
        """The events between `top` and a node under it, on the path where it is shown first; none if it isn't."""
        for child in self._children(top):
            if child == node:
                return [top]
            path = self.above(child, node)
            if path:
                return [top, *path]
        return []

    def _children(self, node: str) -> list[str]:
        there = [c for c in self.book.children(node) if self._fits(c)]
        return sorted(there, key=lambda c: -self.probability.get(c, 0.0))

    def _causes(self, node: str, seen: set[str]) -> set[str]:
        if node in seen:
            return set()
        seen.add(node)
        children = self._children(node)
        return {node} if not children else {c for child in children for c in self._causes(child, seen)}

    def _fits(self, node: str) -> bool:
        entry = self.book.causes.get(node) or self.book.events.get(node)
        return entry is not None and fits(self.machine, entry.fits)


def tree_block(rows: Sequence[Branch], book: Book, width: int) -> list[Line]:
    """The tree as indented lines; a folded branch says how many causes it hides."""
    step = 2 if width >= 45 else 1
    lines: list[Line] = []
    for row in rows:
        event = book.events.get(row.node)
        gate = {"all": " (all of)", "at_least": f" (at least {event.k} of)" if event else ""}
        title = book.title(row.node) + (gate.get(event.gate, "") if event else "")
        if row.folded:
            title += f" [+ {number_word(row.folded)} {'cause' if row.folded == 1 else 'causes'}, t {row.number}]"
        lead = f"{row.number:>3} {percent(row.probability)}  {' ' * step * row.depth}"
        lines += wrap(title, width, lead, " " * min(len(lead) + 1, 14))
    return lines
