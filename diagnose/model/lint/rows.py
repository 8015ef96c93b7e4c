"""Each check says what is seen in each case, and each of its outcomes can be seen."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.entities import Check
from diagnose.model.problems import Problem

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Rows missing or too many, outcomes unknown or dead, sums over 1, no healthy outcome."""
    for name, each in book.checks.items():
        for what, remedy in _faults(each, book):
            yield Problem(book.places[name], f"{name}: {what}", remedy)


def _faults(each: Check, book: Book) -> Iterator[tuple[str, str]]:
    wanted = [*each.looks_at, "none"] if each.looks_at else []
    if len(set(each.looks_at)) < len(each.looks_at):
        yield "looks_at names something twice", "name each once"
    for row in wanted:
        if row not in each.shows:
            yield f"shows has no row for {row}", "say what is then seen"
    for row, seen in each.shows.items():
        if row not in wanted:
            yield f"shows has a row for {row}, which looks_at does not name", "name it in looks_at, or drop it"
        for outcome in seen:
            if outcome not in each.outcomes:
                yield f"row {row} names outcome {outcome}, which does not exist", f"use {', '.join(each.outcomes)}"
        total = sum(book.likelihood(word) for word in seen.values())
        if total > 1.1:
            yield f"row {row} sums to {total:.2f}", "choose words that share 1 among them"
    named = {outcome for seen in each.shows.values() for outcome in seen}
    for outcome in each.outcomes:
        if outcome not in named and each.looks_at:
            yield f"outcome {outcome} is named in no row", "say when it is seen, or drop it"
    if not any(outcome.good for outcome in each.outcomes.values()) and not each.computed:
        yield "no outcome is marked good", "mark what a healthy machine shows"
    if len(each.outcomes) < 2:
        yield "has fewer than two outcomes", "add what else can be seen"
