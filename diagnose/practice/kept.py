"""Exercises as they go, and what came of them, in one SQLite file: appended, never changed, on disk when done.

Steps of an exercise are all that is kept; how it stands follows from playing them again.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable
from pathlib import Path
from typing import Any

import msgspec

from diagnose.job.journal import JournalError, utc_now
from diagnose.practice.exercise import Exercise, Result

__all__ = ["Kept", "Looked", "Noted", "Said", "Step", "Turned", "Worked"]


class _Step(msgspec.Struct, frozen=True, forbid_unknown_fields=True, tag_field="kind", tag=str):
    pass


class Turned(_Step, frozen=True):
    """What the trainee is about: a check or repair before which there is a question, the cause to be said, nothing."""

    what: str = ""  # "check", "repair", "end" or ""
    id: str = ""


class Worked(_Step, frozen=True):
    """A check or repair was begun. `first`: what was done before it, where its cautions asked for a choice."""

    what: str  # "check" or "repair"
    id: str
    first: str = ""


class Looked(_Step, frozen=True):
    """The tool was asked for its judgement."""

    what: str


class Noted(_Step, frozen=True):
    """A note of the trainee's."""

    text: str


class Said(_Step, frozen=True):
    """The cause was said; "" ends what is said."""

    cause: str


Step = Turned | Worked | Looked | Noted | Said

_SCHEMA = """
create table if not exists exercise (name text primary key, at text not null, body text not null);
create table if not exists step (
    name text not null, number integer not null, at text not null, body text not null, primary key (name, number)
);
create table if not exists result (name text primary key, at text not null, body text not null);
"""


class Kept:
    """One file of exercises. `clock` is replaced in tests. Raises JournalError where the file can't be used."""

    def __init__(self, path: Path, clock: Callable[[], str] = utc_now) -> None:
        self.path = path
        self.clock = clock
        try:
            path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            if not path.exists():
                os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))
            self._db = sqlite3.connect(path, isolation_level=None, timeout=5.0)
            self._db.execute("pragma journal_mode=wal")
            self._db.execute("pragma synchronous=full")
            self._db.executescript(_SCHEMA)
        except (OSError, sqlite3.Error) as error:
            raise JournalError(f"{path} can't be used for exercises ({error}); move it away and begin anew") from None

    def close(self) -> None:
        self._db.close()

    def begin(self, exercise: Exercise) -> str:
        """Keep a new exercise; returns its name, like `exercise-12`."""
        (count,) = self._ask("select count(*) from exercise").fetchone()
        name = f"exercise-{count + 1}"
        self._ask("insert into exercise values (?, ?, ?)", name, self.clock(), _text(exercise))
        return name

    def exercise(self, name: str) -> Exercise | None:
        """The exercise of that name; None when there is none."""
        row = self._ask("select body from exercise where name = ?", name).fetchone()
        return None if row is None else _read(row[0], Exercise, name)

    def add(self, name: str, step: Step) -> None:
        """Append a step; it is on disk when this returns."""
        self._ask(
            "insert into step select ?, coalesce(max(number), 0) + 1, ?, ? from step where name = ?",
            *(name, self.clock(), _text(step), name),
        )

    def steps(self, name: str) -> list[Step]:
        """All steps of an exercise, in order."""
        rows = self._ask("select body from step where name = ? order by number", name).fetchall()
        return [_read(body, Step, name) for (body,) in rows]

    def finish(self, name: str, result: Result) -> None:
        """Keep what came of it; a result once kept stands."""
        self._ask("insert or ignore into result values (?, ?, ?)", name, result.at, _text(result))

    def result(self, name: str) -> Result | None:
        """What came of the exercise; None while it goes on."""
        row = self._ask("select body from result where name = ?", name).fetchone()
        return None if row is None else _read(row[0], Result, name)

    def results(self) -> list[Result]:
        """Every result, the oldest first."""
        rows = self._ask("select name, body from result order by at, rowid").fetchall()
        return [_read(body, Result, name) for name, body in rows]

    def open(self) -> list[str]:
        """The exercises that have no result yet, the one begun last first."""
        return [
            name
            for (name,) in self._ask(
                "select name from exercise where name not in (select name from result) order by rowid desc"
            )
        ]

    def _ask(self, statement: str, *values: object) -> sqlite3.Cursor:
        try:
            return self._db.execute(statement, values)
        except sqlite3.Error as error:
            raise JournalError(f"{self.path} could not be used ({error}); free space, then practice resume") from None


def _text(record: msgspec.Struct) -> str:
    return msgspec.json.encode(record).decode()


def _read(body: str, kind: Any, name: str) -> Any:
    try:
        return msgspec.json.decode(body, type=kind)
    except msgspec.MsgspecError as error:
        raise JournalError(f"a record of {name} can't be read ({error}); it was left as it is") from None
