"""Nothing in the knowledge lies about unused."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.lint.basis import all_bases
from diagnose.model.problems import Problem
from diagnose.model.truth import under

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Events and causes under no complaint, checks that look at nothing reachable, idle limits and sources."""
    reached = frozenset().union(*(under(book, c) for c in book.complaints)) if book.complaints else frozenset()
    looked = {node for each in book.checks.values() for node in each.looks_at}
    looked |= {below for node in looked if node in book.events for below in under(book, node)}
    for name in book.causes:
        if name not in reached:
            yield Problem(book.places[name], f"{name}: stands under no complaint", "name it in an event, or drop it")
        if name not in looked:
            yield Problem(book.places[name], f"{name}: no check looks at it", "name it in a check's looks_at")
    for name in book.events:
        if name not in reached and name not in looked:
            yield Problem(book.places[name], f"{name}: stands under no complaint", "name it in an event, or drop it")
    on_sheet = {line.check for line in book.lines.values()}
    for name, each in book.checks.items():
        if not each.looks_at:
            if name not in on_sheet:
                yield Problem(book.places[name], f"{name}: looks at nothing, and no sheet has it", "see looks_at")
        elif not reached.intersection(each.looks_at):
            yield Problem(book.places[name], f"{name}: looks at nothing that stands under a complaint", "see looks_at")
    yield from _idle(book)


def _idle(book: Book) -> Iterator[Problem]:
    sources = {basis.source for _, basis in all_bases(book)} | {s for x in book.scales.values() for s in x.sources}
    for name in book.sources:
        if name not in sources:
            yield Problem(book.places[f"source:{name}"], f"{name}: no entry rests on it", "use it, or drop it")
    cautions = {c for table in (book.causes, book.checks, book.adjustments) for e in table.values() for c in e.cautions}
    for name in book.cautions:
        if name not in cautions:
            yield Problem(book.places[f"caution:{name}"], f"{name}: no check or repair names it", "use it, or drop it")
