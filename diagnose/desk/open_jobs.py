"""The open jobs of a journal as rows: where, what is complained of, how old, and whom each waits for."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from hashlib import sha256

from diagnose.job import JournalError, fold
from diagnose.job.events import Record
from diagnose.job.folding import standing
from diagnose.job.journal import JobEntry, Journal
from diagnose.job.state import JobState
from diagnose.model import Book, KnowledgeError
from diagnose.units import UnitError
from diagnose.view import board_words as words
from diagnose.view.encode import clean

__all__ = ["WAITS", "OpenJob", "OpenJobs", "Waiting", "minutes_since", "row_of", "short", "time_of", "waiting_of"]

WAITS = ("technician", "desk", "parts", "another trade", "kitchen", "call", "hint", "danger")
_LONGEST = 200  # signs of a text in a row; the job itself shows all of it


@dataclass(frozen=True)
class Waiting:
    """Whom a job waits for, and why: `handed on`, a `call` that is on, a `hint`, a `danger`, or somebody `at work`."""

    on: str
    why: str
    text: str = ""
    who: str = ""

    @property
    def told(self) -> str:
        """In words, for a board."""
        match self.why:
            case "call":
                return f"{words.CALL}: {self.who}"
            case "hint":
                return words.HINT
            case "danger":
                return f"{words.DANGER}: {self.text}" if self.text else words.DANGER
            case "at work":
                return f"{words.AT_WORK}: {self.who}" if self.who else words.AT_WORK
            case "unread":
                return words.UNREAD
        whom = words.WAITS_FOR.get(self.on, self.on)
        return f"{whom}: {self.text}" if self.text else whom


@dataclass(frozen=True)
class OpenJob:
    """One open job. `key` changes with its events; `trouble` says why it can't be read, then hardly more is known."""

    job: str
    key: str
    begun: datetime | None = None
    touched: datetime | None = None
    purpose: str = "repair"
    site: str = ""
    machine: str = ""  # its own name; empty where it has none
    type: str = ""  # the title of its type
    complaints: tuple[tuple[str, str], ...] = ()  # id and title of those there now
    waiting: Waiting = Waiting("technician", "at work")
    trouble: str = ""
    state: JobState = field(default_factory=JobState, repr=False, compare=False)

    @property
    def where(self) -> str:
        """The site, or the best there is instead."""
        return self.site or self.machine or self.type or words.NO_MACHINE

    @property
    def complaint(self) -> str:
        """What is complained of now, in words."""
        return "; ".join(title for _, title in self.complaints)


class OpenJobs:
    """Reads the open jobs of a journal again and again; a job that did not change is not folded twice."""

    def __init__(self, journal: Journal, book: Book) -> None:
        self._journal = journal
        self._book = book
        self._kept: dict[str, tuple[str, OpenJob | None]] = {}

    def rows(self) -> tuple[OpenJob, ...]:
        """The jobs that are open now, touched longest ago first."""
        entries = self._journal.open_jobs()
        self._kept = {entry.job: self._known(entry) for entry in entries}
        return tuple(row for _, row in self._kept.values() if row is not None)

    def _known(self, entry: JobEntry) -> tuple[str, OpenJob | None]:
        kept = self._kept.get(entry.job)
        return kept if kept is not None and kept[0] == entry.mark else (entry.mark, self._read(entry))

    def _read(self, entry: JobEntry) -> OpenJob | None:
        """The row of a job, None where it is closed after all. What fails in one job is said in its row alone."""
        try:
            return row_of(entry.job, self._journal.records(entry.job), self._book)
        except Exception as error:
            known = isinstance(error, JournalError | UnitError | KnowledgeError)
            told = str(error) if known else words.INSIDE.format(name=type(error).__name__, job=entry.job)
            begun, touched = time_of(entry.begun), time_of(entry.touched)
            waiting = Waiting("desk", "unread")
            return OpenJob(entry.job, "", begun, touched, waiting=waiting, trouble=short(told))


def row_of(job: str, records: Sequence[Record], book: Book) -> OpenJob | None:
    """One row from the events of a job; None where it is closed. Raises what the fold raises."""
    state = fold(records, book)
    if state.closed is not None:
        return None
    machine = state.machine
    times = [time for time in (time_of(record.at) for record in records) if time is not None]
    titles = ((name, book.title(name)) for name in state.present if name in book.complaints)
    return OpenJob(
        job,
        _key(records),
        min(times, default=None),
        max(times, default=None),
        state.purpose,
        short(machine.site) if machine else "",
        short(machine.name) if machine and machine.name != machine.type.id else "",
        machine.type.title if machine else "",
        tuple(titles),
        waiting_of(state, records, book),
        state=state,
    )


def waiting_of(state: JobState, records: Sequence[Record], book: Book) -> Waiting:
    """Whom the job waits for: what can hurt comes first, then a call, then what was handed on, then a hint."""
    if state.stop is not None:
        stop = book.stops.get(state.stop)
        return Waiting("technician", "danger", stop.ask if stop else "")
    if state.call is not None:
        return Waiting("desk", "call", who=short(state.call.name) or words.CALLERS[state.call.caller])
    if state.waits is not None:
        return Waiting(state.waits.to, "handed on", short(state.waits.text))
    if state.open_hint is not None:
        return Waiting("technician", "hint")
    return Waiting("technician", "at work", who=short(_at_machine(state, records)))


def _at_machine(state: JobState, records: Sequence[Record]) -> str:
    """The name of whoever wrote last at the machine; empty where it was not said."""
    writers = (record.writer for record in reversed(standing(records)))
    return next((state.presence(w).name for w in writers if state.presence(w).place == "machine"), "")


def time_of(at: str) -> datetime | None:
    """A time as it is written in the journal; None where it is none."""
    try:
        time = datetime.fromisoformat(at)
    except ValueError:
        return None
    return time if time.tzinfo is not None else None


def minutes_since(time: datetime | None, now: datetime) -> float | None:
    """How long ago, in minutes; below nothing where somebody's clock is ahead."""
    return None if time is None else (now - time).total_seconds() / 60


def _key(records: Iterable[Record]) -> str:
    """The events of a job and their order, in short: the same events in another order may come to another state."""
    return sha256("\n".join(f"{w}:{seq}" for w, seq in (r.key for r in records)).encode("utf-8", "replace")).hexdigest()


def short(text: str) -> str:
    """A text for one line of a list: cleaned, and its end left out where it is very long."""
    told = " ".join(clean(text[: 2 * _LONGEST]).split())
    return told if len(told) <= _LONGEST else f"{told[: _LONGEST - 3]}..."
