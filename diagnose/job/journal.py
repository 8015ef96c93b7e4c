"""The journal: every event of every job in one SQLite file, appended, never changed.

An append returns only when the event is on disk (WAL, synchronous FULL).
"""

from __future__ import annotations

import os
import secrets
import sqlite3
import uuid
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path

import msgspec

from diagnose.job.events import AnyEvent, Event, Record, Unknown
from diagnose.job.harmless import harmless
from diagnose.job.queries import OF_MACHINE, OPEN_JOBS

__all__ = ["JobEntry", "Journal", "JournalError", "new_job_name", "new_writer", "utc_now"]

_SCHEMA = """
create table if not exists event (
    job text not null,
    number integer not null,
    writer text not null,
    at text not null,
    body text not null,
    primary key (job, number)
);
create trigger if not exists event_no_update before update on event
begin select raise(abort, 'the journal is append-only'); end;
create trigger if not exists event_no_delete before delete on event
begin select raise(abort, 'the journal is append-only'); end;
-- What is known to be in the store of the fleet, and its place in the order of commits there.
create table if not exists sent (
    job text not null,
    number integer not null,
    position integer not null,
    primary key (job, number)
) without rowid;
-- What this journal knows of itself: the name it writes under, and how far it has read in which store.
create table if not exists own (name text primary key, value text not null) without rowid;
-- Events of this journal that were written again under another name; they count no more.
create table if not exists aside (
    job text not null,
    number integer not null,
    writer text not null,
    at text not null,
    body text not null,
    seq integer not null,
    seen text not null
);
"""
# Columns that came later; where they are empty, one alone wrote, and an event's number is its seq.
_LATER = {"seq": "integer", "seen": "text not null default ''"}
_KEY = "create unique index if not exists event_key on event (job, writer, coalesce(seq, number))"
# Events that the store knows stand in its order; what it does not know yet comes after them.
_IN_ORDER = "order by position is null, position, event.number"
_NEWEST = """
select writer, coalesce(seq, event.number) from event left join sent using (job, number) where job = ?
order by position is null desc, position desc, event.number desc limit 1
"""
_OWN_NAME = "select value from own where name = 'writer'"
_LAST_OF_WRITER = "select coalesce(max(coalesce(seq, number)), 0) from event where job = ? and writer = ?"
_SIGNS = "bcdfghjkmnpqrstvwxz23456789"  # no vowels, so that no word comes out; nothing that looks like another


class JournalError(Exception):
    """The journal can't be used; the message says why and what to do."""


@dataclass(frozen=True)
class JobEntry:
    """A job in the list: its name, when it was begun and last touched, how many events.

    `mark` changes with anything that may change how the job stands, where it was asked for.
    """

    job: str
    begun: str
    touched: str
    events: int
    mark: str = ""


def utc_now() -> str:
    """The time now, UTC, to the second, ISO 8601."""
    return datetime.now(UTC).isoformat(timespec="seconds")


def new_job_name(existing: Callable[[str], bool], tag: str = "") -> str:
    """A short name that is not in use, easy to say on a telephone: `job-4821`; `job-4821-kf7q` with a tag."""
    while True:
        name = f"job-{uuid.uuid4().int % 9000 + 1000}{'-' if tag else ''}{tag}"
        if not existing(name):
            return name


def new_writer() -> str:
    """A name for a journal to write under, unlike that of any other: `kf7q-x3mzb8rw`."""
    signs = [secrets.choice(_SIGNS) for _ in range(12)]
    return f"{''.join(signs[:4])}-{''.join(signs[4:])}"


class Journal:
    """One journal file. `clock` is replaced in tests.

    `writer` is the name it writes under; None: its own, made up when the file is made and kept in it.
    """

    def __init__(self, path: Path, writer: str | None = "local", clock: Callable[[], str] = utc_now) -> None:
        self.path = path
        self._clock = clock
        self._heard: list[Callable[[], None]] = []
        try:
            path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            if not path.exists():
                os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))
            self._db = sqlite3.connect(path, isolation_level=None, timeout=5.0)
            self._db.execute("pragma journal_mode=wal")
            self._db.execute("pragma synchronous=full")
            self._db.create_function("casefold", 1, _folded, deterministic=True)
            self._prepare()
            self._named = writer
            self._begin_own_name()
            self._version = self._data_version()
        except (OSError, sqlite3.Error) as error:
            raise JournalError(f"{path} can't be used as a journal ({error}); name another with --journal") from None

    def _prepare(self) -> None:
        self._db.executescript(_SCHEMA)
        there = {row[1] for row in self._db.execute("pragma table_info(event)")}
        for column, kind in _LATER.items():
            if column not in there:
                self._db.execute(f"alter table event add column {column} {kind}")
        self._db.execute(_KEY)

    def _begin_own_name(self) -> None:
        if self._named is None and self._db.execute(_OWN_NAME).fetchone() is None:
            self._db.execute("insert into own values ('writer', ?) on conflict do nothing", (new_writer(),))

    @property
    def writer(self) -> str:
        """The name it writes under; its own is looked up, since a copied journal takes another."""
        return self._named or str(self._db.execute(_OWN_NAME).fetchone()[0])

    @property
    def tag(self) -> str:
        """What tells the jobs begun here from those of other journals; empty for a journal that meets no other."""
        first, dash, _ = self.writer.partition("-")
        return first if dash else ""

    def new_name(self) -> str:
        """A name for a new job, used neither here nor, as good as surely, anywhere else."""
        return new_job_name(self.has, self.tag)

    def find(self, words: str) -> str | None:
        """The job of this name, or the only one whose name has these words in it: `4821`."""
        if self.has(words):
            return words
        rows = self._db.execute("select distinct job from event where instr(job, ?)", (words,)).fetchall()
        return str(rows[0][0]) if words and len(rows) == 1 else None

    def hear(self, heard: Callable[[], None]) -> None:
        """Call `heard` after each append; it must return at once."""
        self._heard.append(heard)

    def changed(self) -> bool:
        """Whether somebody else wrote into the file since this was asked last."""
        before, self._version = self._version, self._data_version()
        return before != self._version

    def _data_version(self) -> int:
        return int(self._db.execute("pragma data_version").fetchone()[0])

    def close(self) -> None:
        self._db.close()

    def has(self, job: str) -> bool:
        row = self._db.execute("select 1 from event where job = ? limit 1", (job,)).fetchone()
        return row is not None

    def append(self, job: str, event: Event) -> Record:
        """Write one event; it is on disk when this returns."""
        body = msgspec.json.encode(event).decode()
        try:
            self._db.execute("begin immediate")
            (last,) = self._db.execute("select coalesce(max(number), 0) from event where job = ?", (job,)).fetchone()
            writer = self.writer
            (mine,) = self._db.execute(_LAST_OF_WRITER, (job, writer)).fetchone()
            newest = self._db.execute(_NEWEST, (job,)).fetchone()
            seen = f"{newest[0]}:{newest[1]}" if newest else ""
            record = Record(number=last + 1, at=self._clock(), writer=writer, event=event, seq=mine + 1, seen=seen)
            self._db.execute(
                "insert into event (job, number, writer, at, body, seq, seen) values (?, ?, ?, ?, ?, ?, ?)",
                (job, record.number, record.writer, record.at, body, record.seq, seen),
            )
            self._db.execute("commit")
        except sqlite3.Error as error:
            if self._db.in_transaction:
                self._db.execute("rollback")
            raise JournalError(f"{self.path} could not be written ({error}); free space, then resume {job}") from None
        for heard in self._heard:
            heard()
        return record

    def records(self, job: str) -> tuple[Record, ...]:
        """All events of a job, in order; raises JournalError when one can't be read.

        The order is that of commits in the store of the fleet; what is not there yet comes last.
        """
        rows = self._db.execute(
            "select event.number, writer, at, body, coalesce(seq, event.number), seen "
            f"from event left join sent using (job, number) where job = ? {_IN_ORDER}",
            (job,),
        ).fetchall()
        return tuple(self._record(job, *row) for row in rows)

    def _record(self, job: str, number: int, writer: str, at: str, body: str, seq: int, seen: str) -> Record:
        event: AnyEvent
        try:
            event = msgspec.json.decode(body, type=Event)
        except (msgspec.MsgspecError, RecursionError) as error:
            if writer == self.writer or not body.lstrip().startswith("{"):
                raise JournalError(f"event {number} of {job} can't be read ({error}); it was left as it is") from None
            event = Unknown(_kind(body))
        if writer != self.writer:
            event = harmless(event)
        return Record(number=number, at=at, writer=writer, event=event, seq=seq, seen=seen)

    def today(self) -> date:
        """The day by this journal's clock."""
        return date.fromisoformat(self._clock()[:10])

    def jobs(self) -> tuple[JobEntry, ...]:
        """Every job, the one touched last first."""
        rows = self._db.execute(
            "select job, min(at), max(at), count(*) from event group by job order by max(at) desc, job"
        ).fetchall()
        return tuple(JobEntry(*row) for row in rows)

    def open_jobs(self) -> tuple[JobEntry, ...]:
        """The jobs that are not closed, and the few of which only the fold can tell; touched longest ago first."""
        return tuple(JobEntry(*row) for row in self._db.execute(OPEN_JOBS).fetchall())

    def written_here(self) -> frozenset[str]:
        """The jobs into which this journal itself wrote something."""
        rows = self._db.execute(
            "select distinct job from event where writer = ? or writer in (select writer from aside)", (self.writer,)
        ).fetchall()
        return frozenset(str(job) for (job,) in rows)

    def of_machine(self, name: str) -> tuple[JobEntry, ...]:
        """The jobs of the machine saved under that name, whatever its case, the oldest first.

        One whose choice of the machine was taken back is among them; the fold says which machine it is on.
        """
        wanted = _folded(name)
        if not wanted:
            return ()
        try:
            rows = self._db.execute(OF_MACHINE, {"name": wanted}).fetchall()
        except sqlite3.Error as error:
            raise JournalError(
                f"{self.path} could not be searched ({error}); the jobs in it are as they were"
            ) from None
        return tuple(JobEntry(*row) for row in rows)


def _kind(body: str) -> str:
    """The kind of an event that this program can't read."""
    try:
        return str(msgspec.json.decode(body, type=dict[str, object]).get("kind", "?"))[:40]
    except (msgspec.MsgspecError, RecursionError):
        return "?"


def _folded(name: object) -> str:
    return str(name or "").strip().casefold()
