"""What must be open, the state of the machine and the time must go together."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.entities import Cause, Check
from diagnose.model.problems import Problem

__all__ = ["check"]

_NOT_FOR_OPERATORS = {"live_parts", "isolate"}


def check(book: Book) -> Iterator[Problem]:
    """Access beside "none", a drained tank on a running machine, times out of all range."""
    entries: dict[str, Cause | Check] = {**book.causes, **book.checks}
    for name, entry in entries.items():
        place = book.places[name]
        if "none" in entry.open and len(entry.open) > 1:
            yield Problem(place, f"{name}: open says none and more", "drop none")
        if "tank drained" in entry.open and entry.state not in ("cold and drained", "isolated"):
            yield Problem(place, f"{name}: tank drained while {entry.state}", "say cold and drained, or isolated")
        if not 0 < entry.minutes <= 480:
            yield Problem(place, f"{name}: {entry.minutes} minutes", "give the minutes a practised technician takes")
    for name, entry in entries.items():
        beyond = _NOT_FOR_OPERATORS.intersection(entry.cautions) if entry.who == "operator" else ()
        for caution in sorted(beyond):
            yield Problem(
                book.places[name],
                f"{name}: {caution} is not work for an operator",
                "say technician, or describe it so that it needs no such caution",
            )
