"""A job in hand: append an event, and see the state and the assessment that follow from it."""

from __future__ import annotations

from functools import cached_property

from diagnose.job.assess import Assessment, assess
from diagnose.job.events import Event, Record, Withdrawn
from diagnose.job.journal import Journal
from diagnose.job.state import JobState, fold
from diagnose.model import Book

__all__ = ["Session"]


class Session:
    """One job, written by this process. Every `do` is on disk before it returns."""

    def __init__(self, book: Book, journal: Journal, job: str) -> None:
        self.book = book
        self.job = job
        self._journal = journal
        self.records: tuple[Record, ...] = journal.records(job)

    @cached_property
    def state(self) -> JobState:
        return fold(self.records, self.book)

    @cached_property
    def assessment(self) -> Assessment:
        return assess(self.book, self.state)

    def do(self, event: Event) -> Record:
        """Append an event and go on from the state that follows."""
        record = self._journal.append(self.job, event)
        self.records = (*self.records, record)
        self.__dict__.pop("state", None)
        self.__dict__.pop("assessment", None)
        return record

    def back(self) -> Event | None:
        """Take back the newest answer and return it, to be offered again; None when there is none."""
        if not self.state.answers:
            return None
        number = self.state.answers[-1]
        event = next(r.event for r in self.records if r.number == number)
        self.do(Withdrawn(number))
        return event
