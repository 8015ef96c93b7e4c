"""What follows from a set of causes: which events and complaints are then so, and which row of a check."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from diagnose.model.book import Book
from diagnose.model.entities import Check
from diagnose.model.machine import Machine, fits

__all__ = ["belongs", "likelihood_row", "parents", "row_of", "so_nodes", "under"]


def belongs(book: Book, machine: Machine | None, node: str) -> bool:
    """Whether an event or cause exists on this machine (None: on any)."""
    entry = book.causes.get(node) or book.events.get(node)
    return entry is not None and (machine is None or fits(machine, entry.fits))


def parents(book: Book) -> dict[str, tuple[str, ...]]:
    """For each event and cause, the events and complaints it stands under."""
    up: dict[str, list[str]] = {name: [] for name in (*book.events, *book.causes)}
    for parent in (*book.complaints, *book.events):
        for child in book.children(parent):
            up.setdefault(child, []).append(parent)
    return {name: tuple(each) for name, each in up.items()}


def under(book: Book, node: str, machine: Machine | None = None) -> frozenset[str]:
    """All events and causes below a node, itself excluded; cycles are walked once."""
    seen: set[str] = set()
    todo = list(book.children(node))
    while todo:
        each = todo.pop()
        if each not in seen and belongs(book, machine, each):
            seen.add(each)
            todo.extend(book.children(each))
    return frozenset(seen)


def so_nodes(book: Book, causes: Collection[str], machine: Machine | None = None) -> frozenset[str]:
    """Every cause, event and complaint that is so when exactly these causes are present."""
    known: dict[str, bool] = {}

    def so(node: str) -> bool:
        if node not in known:
            known[node] = False  # breaks cycles, which lint reports
            known[node] = _gate(book, node, machine, so, causes)
        return known[node]

    return frozenset(n for n in (*book.causes, *book.events, *book.complaints) if so(n))


def _gate(book: Book, node: str, machine: Machine | None, so: object, causes: Collection[str]) -> bool:
    assert callable(so)
    if node in book.causes:
        return node in causes and belongs(book, machine, node)
    if node in book.complaints:
        return any(so(child) for child in book.complaints[node].of)
    if not belongs(book, machine, node):
        return False
    event = book.events[node]
    there = [child for child in event.of if belongs(book, machine, child)]
    count = sum(bool(so(child)) for child in there)
    if event.gate == "all":
        return count == len(event.of)
    return count >= ((event.k or 1) if event.gate == "at_least" else 1)


def row_of(check: Check, so: Collection[str]) -> str:
    """The row of `shows` that decides when these nodes are so: the first looked at, else "none"."""
    return next((node for node in check.looks_at if node in so), "none")


# Nothing is impossible: an outcome no row names can still be misread or mistyped.
LEAST = 0.002
# A row that names two outcomes and more has said what is seen; all others together are then seldom.
MOST_UNNAMED = 0.07


def likelihood_row(book: Book, check: Check, row: str) -> Mapping[str, float]:
    """The probability of each outcome in a row.

    Outcomes the row does not name share what is left of 1; where it names several and leaves several, at most
    MOST_UNNAMED among them. None is under LEAST. Then the whole is scaled to 1.
    """
    named = {outcome: book.likelihood(word) for outcome, word in check.shows[row].items()}
    rest = [outcome for outcome in check.outcomes if outcome not in named]
    left = 1 - sum(named.values())
    if len(named) > 1 and len(rest) > 1:
        left = min(left, MOST_UNNAMED)
    share = max(left / len(rest), LEAST) if rest else 0.0
    full = {outcome: named.get(outcome, share) for outcome in check.outcomes}
    total = sum(full.values())
    return {outcome: value / total for outcome, value in full.items()}
