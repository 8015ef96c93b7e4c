"""The tree must have no cycle, and each gate must be one that can be so."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.problems import Problem

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Cycles, doubled or too few members, and a k that no number of members can reach."""
    for name, event in book.events.items():
        place = book.places[name]
        if len(set(event.of)) < len(event.of):
            yield Problem(place, f"{name}: a member stands twice in of", "name each once")
        if event.gate == "at_least" and not 2 <= (event.k or 0) < len(event.of):
            yield Problem(
                place, f"{name}: at_least needs k from 2 to one less than its members", "set k, or use any or all"
            )
        if event.gate != "at_least" and event.k is not None:
            yield Problem(place, f"{name}: k belongs to at_least only", "take k out")
        if event.gate == "all" and len(event.of) < 2:
            yield Problem(place, f"{name}: an all gate with one member", "use any, or name the other members")
        if not event.of:
            yield Problem(place, f"{name}: an event of nothing", "name what can bring it about")
    for cycle in _cycles(book):
        yield Problem(book.places[cycle[0]], f"{' -> '.join(cycle)} leads round in a circle", "break it")


def _cycles(book: Book) -> Iterator[list[str]]:
    done: set[str] = set()

    def walk(node: str, path: list[str]) -> Iterator[list[str]]:
        if node in path:
            yield [*path[path.index(node) :], node]
            return
        if node in done:
            return
        for child in book.children(node):
            yield from walk(child, [*path, node])
        done.add(node)

    for event in book.events:
        yield from walk(event, [])
