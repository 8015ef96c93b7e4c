"""The fault tree on the screen: complaint, events, causes, each with its percent; branches fold."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from diagnose.model import Book, Machine, fits
from diagnose.view.layout import Line, number_word, percent, wrap

__all__ = ["Branch", "branches", "tree_block"]

FOLD_BELOW = 0.05  # an event less probable than this is shown folded


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

    An event that was shown before is named again but not opened again.
    """
    walk = _Walk(book, machine, probability, frozenset(unfolded), everything)
    rows = [row for complaint in complaints for row in walk.below(complaint, 0)]
    return [Branch(n, node, depth, p, folded) for n, (node, depth, p, folded) in enumerate(rows, 1)]


@dataclass
class _Walk:
    book: Book
    machine: Machine
    probability: Mapping[str, float]
    unfolded: frozenset[str]
    everything: bool

    def __post_init__(self) -> None:
        self.opened: set[str] = set()

    def below(self, node: str, depth: int) -> Iterator[tuple[str, int, float, int]]:
        children = self.children(node)
        likely = self.probability.get(node, 0.0)
        shut = bool(children) and not (depth == 0 or self.everything or node in self.unfolded or likely >= FOLD_BELOW)
        if shut or (children and node in self.opened):
            yield node, depth, likely, len(self.causes(node, set()))
            return
        self.opened.add(node)
        yield node, depth, likely, 0
        for child in children:
            yield from self.below(child, depth + 1)

    def children(self, node: str) -> list[str]:
        there = [c for c in self.book.children(node) if self._fits(c)]
        return sorted(there, key=lambda c: -self.probability.get(c, 0.0))

    def causes(self, node: str, seen: set[str]) -> set[str]:
        if node in seen:
            return set()
        seen.add(node)
        children = self.children(node)
        return {node} if not children else {c for child in children for c in self.causes(child, seen)}

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
