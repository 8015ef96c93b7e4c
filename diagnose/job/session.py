"""A job in hand: append an event, and see the state and the assessment that follow from it."""

from __future__ import annotations

from datetime import date
from functools import cached_property

from diagnose.job.assess import Assessment, assess
from diagnose.job.events import (
    Acknowledged,
    CallEnded,
    Event,
    HandedOn,
    Hinted,
    InstrumentChosen,
    NoteAdded,
    Present,
    Record,
    TurnedTo,
    Withdrawn,
)
from diagnose.job.folding import after, fold, standing
from diagnose.job.journal import Journal
from diagnose.job.state import JobState
from diagnose.model import Book

__all__ = ["Session"]

# What says nothing about the machine, so that the assessment stands as it was.
_NO_BEARING = (Acknowledged, InstrumentChosen, NoteAdded, TurnedTo, Hinted)
# Who is where and what was said between people is no answer to anything.
_BETWEEN_PEOPLE = (Present, CallEnded, Hinted, HandedOn)


def _stays(event: object) -> bool:
    """Whether an event is left alone when one goes back: a note of its own, and what is between people."""
    return isinstance(event, _BETWEEN_PEOPLE) or (isinstance(event, NoteAdded) and not event.about)


class Session:
    """One job, written by this process. Every `do` is on disk before it returns."""

    def __init__(self, book: Book, journal: Journal, job: str) -> None:
        self.book = book
        self.job = job
        self._journal = journal
        self.records: tuple[Record, ...] = journal.records(job)
        self._unread = False  # others wrote, and it was not taken in yet

    @property
    def today(self) -> date:
        """The day by the clock of the journal."""
        return self._journal.today()

    @cached_property
    def state(self) -> JobState:
        return fold(self.records, self.book)

    @cached_property
    def assessment(self) -> Assessment:
        return assess(self.book, self.state)

    @property
    def writer(self) -> str:
        """Who writes here: the name of this journal among others."""
        return self._journal.writer

    def refresh(self) -> tuple[Record, ...]:
        """Take in what others wrote into this job since the last look, and return it."""
        if not (self._journal.changed() or self._unread):
            return ()
        self._unread = False
        records = self._journal.records(self.job)
        known = {record.key for record in self.records}
        fresh = tuple(record for record in records if record.key not in known)
        if [r.key for r in records] != [r.key for r in self.records]:
            self.__dict__.pop("state", None)
            self.__dict__.pop("assessment", None)
        self.records = records
        return fresh

    def waiting(self) -> bool:
        """Whether others wrote something that was not taken in yet."""
        if not self._journal.changed():
            return self._unread
        known = {record.key for record in self.records}
        self._unread = any(record.key not in known for record in self._journal.records(self.job))
        return self._unread

    def withdrawal(self, number: int) -> Withdrawn:
        """The event that takes back the one with this number here, whoever wrote it."""
        writer, seq = next(record.key for record in self.records if record.number == number)
        return Withdrawn(seq, "" if writer == self.writer else writer)

    def do(self, event: Event) -> Record:
        """Append an event and go on from the state that follows."""
        record = self._journal.append(self.job, event)
        self.records = (*self.records, record)
        state = self.__dict__.pop("state", None)
        if state is not None and not isinstance(event, Withdrawn):
            self.__dict__["state"] = after(state, record, self.book)
        if not isinstance(event, _NO_BEARING):
            self.__dict__.pop("assessment", None)
        return record

    def back(self) -> object | None:
        """Take back the newest answer, with all that followed from it, and return it; None when there is none.

        Notes and hints stay. The newest event goes first, so that a fall of the process half-way
        leaves a state that once was.
        """
        if not self.state.answers:
            return None
        last = self.state.answers[-1]
        tail = [r for r in standing(self.records) if r.number >= last and not _stays(r.event)]
        for record in reversed(tail):
            self.do(self.withdrawal(record.number))
        return tail[0].event

    def take_back(self, number: int) -> None:
        """Take back one earlier answer (and what was said in the same breath); the rest stands."""
        kept = [r for r in standing(self.records) if r.number >= number]
        group = kept[:1]
        for record in kept[1:]:
            if not getattr(record.event, "together", False):
                break
            group.append(record)
        for record in reversed(group):
            self.do(self.withdrawal(record.number))
