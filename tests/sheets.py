"""Sheets of handovers for tests: a machine, and readings as they would be typed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from diagnose.handover.sheet import Sheet, sheet_of
from diagnose.job import events as ev
from diagnose.job.folding import fold
from diagnose.job.state import JobState
from diagnose.model import Book
from diagnose.model.answers import parse_answer

__all__ = ["opened", "read", "sheet_with", "state_of"]


def opened(kind: str, own: Mapping[str, str] | None = None) -> ev.Opened:
    """A handover begun on a type of machine, with plate figures of its own."""
    return ev.Opened(machine=kind, type=kind, own=dict(own or {}), purpose="handover")


def read(book: Book, check: str, text: str, accuracy: str = "", kind: str = "") -> ev.ReadingTaken:
    """A check answered as typed; with an instrument of this accuracy, where one is given."""
    values, outcome = parse_answer(book.checks[check], text)
    told = {place: quantity.exact for place, quantity in values.items()}
    return ev.ReadingTaken(check, told, outcome, "mine" if accuracy else None, kind, accuracy)


def state_of(book: Book, events: Iterable[ev.Event]) -> JobState:
    """The state after these events, numbered from 1."""
    records = [ev.Record(number=n, at="", writer="test", event=event) for n, event in enumerate(events, 1)]
    return fold(records, book)


def sheet_with(book: Book, kind: str, *events: ev.Event, own: Mapping[str, str] | None = None) -> Sheet:
    """The sheet of a machine of this type after these events."""
    return sheet_of(book, state_of(book, [opened(kind, own), *events]))
