"""A copied journal takes another name: what the store has not got from it is written again under that name.

The events written again keep their time and their words. Where they point at one another (taken back, a hint answered,
what the writer had seen), they point at the new ones. The old ones are set aside, so that nothing is lost or doubled.
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.job.journal import new_writer

__all__ = ["renew"]

Moved = Mapping[tuple[str, int], int]  # (job, seq) under the old name -> seq under the new

_UNSENT = """
select job, event.number, writer, at, body, coalesce(seq, event.number), seen
from event left join sent using (job, number) where writer = ? and position is null order by event.rowid
"""
_AGAIN = "insert into event (job, number, writer, at, body, seq, seen) values (?, ?, ?, ?, ?, ?, ?)"
_LAST = "select coalesce(max(number), 0) from event where job = ?"
_NO_DELETE = "select sql from sqlite_master where name = 'event_no_delete'"


def renew(database: sqlite3.Connection) -> int:
    """Take a new name and write all unsent events of the old one again; how many. In a transaction of the caller."""
    (old,) = database.execute("select value from own where name = 'writer'").fetchone()
    new = new_writer()
    rows = database.execute(_UNSENT, (old,)).fetchall()
    moved: dict[tuple[str, int], int] = {}
    counts: dict[str, int] = {}
    for job, _, _, _, _, seq, _ in rows:
        counts[job] = moved[job, seq] = counts.get(job, 0) + 1
    for job, _, _, at, body, seq, seen in rows:
        (last,) = database.execute(_LAST, (job,)).fetchone()
        names = _Names(job, old, new, moved)
        told = (job, last + 1, new, at, names.body(body), moved[job, seq], names.seen(seen))
        database.execute(_AGAIN, told)
    _set_aside(database, rows)
    database.execute("update own set value = ? where name = 'writer'", (new,))
    return len(rows)


def _set_aside(database: sqlite3.Connection, rows: list[tuple[object, ...]]) -> None:
    """Move rows out of the journal. Nothing is deleted there at any other time."""
    (guard,) = database.execute(_NO_DELETE).fetchone()
    database.execute("drop trigger event_no_delete")
    for row in rows:
        database.execute("insert into aside values (?, ?, ?, ?, ?, ?, ?)", row)
        database.execute("delete from event where job = ? and number = ?", row[:2])
    database.execute(guard)


@dataclass(frozen=True)
class _Names:
    """How the events of one job are called that are written again."""

    job: str
    old: str
    new: str
    moved: Moved

    def body(self, body: str) -> str:
        """The body, pointing where it pointed: an event that was not moved is now one of another writer."""
        told = json.loads(body)
        whose = {"Withdrawn": ("", self.old), "HintAnswered": (self.old,)}.get(told.get("kind"), ())
        if told.get("of", "") not in whose:
            return body
        seq = self.moved.get((self.job, told["number"]))
        told |= {"of": self.old} if seq is None else {"number": seq, "of": self.new}
        return json.dumps(told, ensure_ascii=False, separators=(",", ":"))

    def seen(self, seen: str) -> str:
        """The newest event that was known, under its name of now."""
        writer, _, seq = seen.rpartition(":")
        if writer != self.old or (self.job, int(seq)) not in self.moved:
            return seen
        return f"{self.new}:{self.moved[self.job, int(seq)]}"
