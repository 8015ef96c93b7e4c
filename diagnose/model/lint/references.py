"""Every id named somewhere must exist and be of the kind meant there."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from difflib import get_close_matches

from diagnose.model.book import Book
from diagnose.model.problems import Problem

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Names in of, looks_at, shows, prove_by, cautions, inseparable_from and shifts that lead nowhere."""
    nodes = {**book.events, **book.causes}
    for parent in (*book.complaints, *book.events):
        yield from _missing(book, parent, "of", book.children(parent), nodes)
    for name, complaint in book.complaints.items():
        yield from _missing(book, name, "prove_by", complaint.prove_by, book.checks)
        only = (check for each in complaint.until for check in each.ask_only)
        yield from _missing(book, name, "ask_only", only, book.checks)
    for name, cause in book.causes.items():
        yield from _missing(book, name, "prove_by", cause.prove_by, book.checks)
        yield from _missing(book, name, "cautions", cause.cautions, book.cautions)
        yield from _missing(book, name, "inseparable_from", cause.inseparable_from, book.causes)
        yield from _missing(book, name, "shifts", (s.when for s in cause.shifts), book.context)
    for name, each in book.checks.items():
        yield from _missing(book, name, "looks_at", each.looks_at, nodes)
        yield from _missing(book, name, "asked_for", each.asked_for, book.complaints)
        yield from _missing(book, name, "cautions", each.cautions, book.cautions)
    for name, line in book.lines.items():
        yield from _missing(book, f"line:{name}", "check", [line.check], book.checks)
        yield from _missing(book, f"line:{name}", "adjust", line.adjust, book.adjustments)
    for name, adjustment in book.adjustments.items():
        yield from _missing(book, f"adjust:{name}", "upsets", adjustment.upsets, book.checks)
        yield from _missing(book, f"adjust:{name}", "cautions", adjustment.cautions, book.cautions)


def _missing(book: Book, name: str, key: str, ids: Iterable[str], known: Collection[str]) -> Iterator[Problem]:
    for each in ids:
        if each not in known:
            close = get_close_matches(each, list(known), 1)
            remedy = f"did you mean {close[0]}?" if close else "write that entry, or take the name out"
            told = name.partition(":")[2] or name
            yield Problem(book.places[name], f"{told}: {key} names {each}, which does not exist", remedy)
