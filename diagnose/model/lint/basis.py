"""Every entry says where it stands, and a published one where it can be read."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.problems import Problem
from diagnose.model.record import Basis

__all__ = ["all_bases", "check"]


def all_bases(book: Book) -> Iterator[tuple[str, Basis]]:
    """Every basis with the key of its place."""
    for table, prefix in (
        (book.complaints, ""),
        (book.events, ""),
        (book.causes, ""),
        (book.checks, ""),
        (book.lines, "line:"),
        (book.adjustments, "adjust:"),
        (book.limits, "limit:"),
        (book.instruments, "instrument:"),
        (book.machines, "machine:"),
        (book.cautions, "caution:"),
        (book.stops, "stop:"),
        (book.stocks, "stock:"),
    ):
        for name, entry in table.items():
            yield prefix + name, entry.basis
    for name, complaint in book.complaints.items():
        yield from ((name, each.basis) for each in complaint.until)
    for name, cause in book.causes.items():
        yield from ((name, shift.basis) for shift in cause.shifts if shift.basis is not None)


def check(book: Book) -> Iterator[Problem]:
    """Published without source or section, a source that is not listed, a source without published."""
    for key, basis in all_bases(book):
        place = book.places[key]
        if basis.kind == "published":
            if basis.source not in book.sources:
                yield Problem(
                    place, f"{key}: source {basis.source} is not listed", "add it to sources.toml, or say another basis"
                )
            if not basis.where:
                yield Problem(place, f"{key}: published, but not where", "name section, table or page")
        elif basis.source is not None:
            yield Problem(place, f"{key}: a source, but the basis is {basis.kind}", "say published, or put it in note")
