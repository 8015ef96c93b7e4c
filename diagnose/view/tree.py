"""The fault tree on the screen: complaint, events, causes, each with its percent; branches fold."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from diagnose.model import Book, Machine
from diagnose.model.truth import belongs
from diagnose.view.layout import Line, number_word, percent, wrap
from diagnose.view.outline import Outline, Row, opened_to_fit

__all__ = ["Branch", "branches", "gate_words", "tree_block"]

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

    def children(node: str) -> list[str]:
        there = [c for c in book.children(node) if belongs(book, machine, c)]
        return sorted(there, key=lambda c: -round(probability.get(c, 0.0), 12))

    outline = Outline(children)

    def rows_of(opened: Collection[str]) -> list[Row]:
        return outline.rows(complaints, opened)

    if everything:
        rows = outline.rows(complaints)
    else:
        above = (n for node in unfolded for c in complaints for n in outline.above(c, node))
        opened = {*complaints, *unfolded, *above}
        rows = opened_to_fit(rows_of, opened, probability, lambda grown: len(grown) <= MOST_ROWS)
    return [Branch(n, r.node, r.depth, probability.get(r.node, 0.0), r.folded) for n, r in enumerate(rows, 1)]


def gate_words(book: Book, node: str) -> str:
    """What a gate asks of its members where any one of them is not enough: " (all of)"; else nothing."""
    event = book.events.get(node)
    if event is None or event.gate == "any":
        return ""
    return " (all of)" if event.gate == "all" else f" (at least {number_word(event.k or 1)} of)"


def tree_block(rows: Sequence[Branch], book: Book, width: int) -> list[Line]:
    """The tree as indented lines; a folded branch says how many causes it hides."""
    step = 2 if width >= 45 else 1
    lines: list[Line] = []
    for row in rows:
        title = book.title(row.node) + gate_words(book, row.node)
        if row.folded:
            title += f" [+ {number_word(row.folded)} {'cause' if row.folded == 1 else 'causes'}, t {row.number}]"
        lead = f"{row.number:>3} {percent(row.probability)}  {' ' * step * row.depth}"
        lines += wrap(title, width, lead, " " * min(len(lead) + 1, 14))
    return lines
