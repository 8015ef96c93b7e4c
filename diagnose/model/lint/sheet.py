"""The sheet of a handover leads to checks, adjustments and complaints that are there, on the machines it is for."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.machine import TRAITS
from diagnose.model.problems import Problem
from diagnose.model.record import Traits
from diagnose.model.sheet import SheetLine

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Ids used twice, wrong outcomes and complaints, checks twice on one sheet, adjustments that set no line."""
    for name in book.lines:
        taken = next((k for k in ("checks", "adjustments") if name in getattr(book, k)), None)
        if taken is not None:
            yield Problem(
                book.places[f"line:{name}"], f"{name}: one of the {taken} has the same id", "name one otherwise"
            )
    used = {name for line in book.lines.values() for name in line.adjust}
    for name, line in book.lines.items():
        for what, remedy in _faults(line, book):
            yield Problem(book.places[f"line:{name}"], f"{name}: {what}", remedy)
    for name in book.adjustments:
        if name not in used:
            yield Problem(
                book.places[f"adjust:{name}"], f"{name}: no line is set by it", "name it in adjust, or drop it"
            )
    read: dict[str, list[SheetLine]] = {}
    for name, line in book.lines.items():
        for first in read.get(line.check, ()):
            if _meet((line.fits,), first.fits):
                what = f"{name}: {line.check} is read by {first.id} already"
                yield Problem(book.places[f"line:{name}"], what, "one line of a sheet for a check: merge them")
        read.setdefault(line.check, []).append(line)


def _faults(line: SheetLine, book: Book) -> Iterator[tuple[str, str]]:
    checked = book.checks[line.check]
    if line.id.partition(".")[0] not in book.sections:
        yield "its file has no title and order", "begin the file with title and order"
    for outcome, complaint in line.opens.items():
        if outcome != "any" and outcome not in checked.outcomes:
            yield f"opens names outcome {outcome}, which {line.check} has not", f"use {', '.join(checked.outcomes)}"
        elif outcome != "any" and checked.outcomes[outcome].good:
            yield f"opens names outcome {outcome}, which is good", "name what fails"
        if complaint not in book.complaints:
            yield f"opens names complaint {complaint}, which does not exist", "see knowledge/complaints"
    if checked.reading is None and not line.wanted and checked.looks_at and not checked.computed:
        yield "does not say what is wanted", "write wanted: what is seen when it is right"
    for name in line.adjust:
        if not _meet((line.fits, checked.fits), book.adjustments[name].fits):
            yield f"no machine has both it and {name}", "see fits of both"


def _meet(first: tuple[Traits, ...], second: Traits) -> bool:
    """Whether some machine fits all of them: every trait leaves a value."""
    return all(
        any(all(value in each.get(trait, values) for each in (*first, second)) for value in values)
        for trait, values in TRAITS.items()
    )
