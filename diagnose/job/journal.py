"""The journal: every event of every job in one SQLite file, appended, never changed.

An append returns only when the event is on disk (WAL, synchronous FULL).
"""

from __future__ import annotations

import os
import sqlite3
import uuid
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path

import msgspec

from diagnose.job.events import Event, Record

__all__ = ["JobEntry", "Journal", "JournalError", "new_job_name", "utc_now"]

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
"""

# Jobs opened on a machine under a name of its own, or given that name later on. A name is compared whatever its case;
# an event of another kind, or one that is no JSON, is passed over.
_OF_MACHINE = """
select job, min(at), max(at), count(*) from event where job in (
    select job from event where case
        when instr(body, '"Opened"') and json_valid(body) then
            json_extract(body, '$.kind') = 'Opened'
            and json_extract(body, '$.machine') <> json_extract(body, '$.type')
            and casefold(json_extract(body, '$.machine')) = :name
        when instr(body, '"MachineDescribed"') and json_valid(body) then
            json_extract(body, '$.kind') = 'MachineDescribed'
            and json_extract(body, '$.what') = 'name'
            and casefold(json_extract(body, '$.text')) = :name
        else 0 end
) group by job order by min(at), job
"""


class JournalError(Exception):
    """The journal can't be used; the message says why and what to do."""


@dataclass(frozen=True)
class JobEntry:
    """A job in the list: its name, when it was begun and last touched, how many events."""

    job: str
    begun: str
    touched: str
    events: int


def utc_now() -> str:
    """The time now, UTC, to the second, ISO 8601."""
    return datetime.now(UTC).isoformat(timespec="seconds")


def new_job_name(existing: Callable[[str], bool]) -> str:
    """A short name that is not in use, easy to say on a telephone: `job-4821`."""
    while True:
        name = f"job-{uuid.uuid4().int % 9000 + 1000}"
        if not existing(name):
            return name


class Journal:
    """One journal file. `clock` is replaced in tests."""

    def __init__(self, path: Path, writer: str = "local", clock: Callable[[], str] = utc_now) -> None:
        self.path = path
        self._writer = writer
        self._clock = clock
        try:
            path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            if not path.exists():
                os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))
            self._db = sqlite3.connect(path, isolation_level=None, timeout=5.0)
            self._db.execute("pragma journal_mode=wal")
            self._db.execute("pragma synchronous=full")
            self._db.executescript(_SCHEMA)
            self._db.create_function("casefold", 1, _folded, deterministic=True)
        except (OSError, sqlite3.Error) as error:
            raise JournalError(f"{path} can't be used as a journal ({error}); name another with --journal") from None

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
            record = Record(number=last + 1, at=self._clock(), writer=self._writer, event=event)
            self._db.execute(
                "insert into event values (?, ?, ?, ?, ?)", (job, record.number, record.writer, record.at, body)
            )
            self._db.execute("commit")
        except sqlite3.Error as error:
            if self._db.in_transaction:
                self._db.execute("rollback")
            raise JournalError(f"{self.path} could not be written ({error}); free space, then resume {job}") from None
        return record

    def records(self, job: str) -> tuple[Record, ...]:
        """All events of a job, in order; raises JournalError when one can't be read."""
        rows = self._db.execute(
            "select number, writer, at, body from event where job = ? order by number", (job,)
        ).fetchall()
        return tuple(self._record(job, *row) for row in rows)

    def _record(self, job: str, number: int, writer: str, at: str, body: str) -> Record:
        try:
            event = msgspec.json.decode(body, type=Event)
        except msgspec.MsgspecError as error:
            raise JournalError(f"event {number} of {job} can't be read ({error}); it was left as it is") from None
        return Record(number=number, at=at, writer=writer, event=event)

    def today(self) -> date:
        """The day by this journal's clock."""
        return date.fromisoformat(self._clock()[:10])

    def jobs(self) -> tuple[JobEntry, ...]:
        """Every job, the one touched last first."""
        rows = self._db.execute(
            "select job, min(at), max(at), count(*) from event group by job order by max(at) desc, job"
        ).fetchall()
        return tuple(JobEntry(*row) for row in rows)

    def of_machine(self, name: str) -> tuple[JobEntry, ...]:
        """The jobs of the machine saved under that name, whatever its case, the oldest first.

        One whose choice of the machine was taken back is among them; the fold says which machine it is on.
        """
        wanted = _folded(name)
        if not wanted:
            return ()
        try:
            rows = self._db.execute(_OF_MACHINE, {"name": wanted}).fetchall()
        except sqlite3.Error as error:
            raise JournalError(
                f"{self.path} could not be searched ({error}); the jobs in it are as they were"
            ) from None
        return tuple(JobEntry(*row) for row in rows)


def _folded(name: object) -> str:
    return str(name or "").strip().casefold()
