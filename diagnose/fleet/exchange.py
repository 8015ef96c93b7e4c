"""The journal's side of the exchange: what waits to be sent, what was delivered, what came from others.

An exchange has a connection of its own, for use in one thread. Its transactions are short and wait for no network.
They need not be on disk at once: what is lost with the power is sent, or fetched, again.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from diagnose.fleet.errors import Refused
from diagnose.fleet.letter import ALONE, Key, Letter
from diagnose.job.journal import Journal, JournalError

__all__ = ["Exchange"]

_PENDING = """
select event.rowid, job, writer, coalesce(seq, event.number), seen, at, body
from event left join sent using (job, number)
where event.rowid > ? and writer = ? and position is null order by event.rowid limit ?
"""
_BY_KEY = """
select event.number, job, writer, coalesce(seq, event.number), seen, at, body
from event where job = ? and writer = ? and coalesce(seq, event.number) = ?
"""
_SENT = "insert into sent values (?, ?, ?) on conflict do nothing"
_NUMBER = "select coalesce(max(number), 0) + 1 from event where job = ?"
_EVENT = "insert into event (job, number, writer, at, body, seq, seen) values (?, ?, ?, ?, ?, ?, ?)"
_CURSOR, _STORE = "cursor", "store"
_PUT = "insert into own values (?, ?) on conflict (name) do update set value = excluded.value"


class Exchange:
    """The journal at `path`, as the one who sends and fetches sees it. Raises JournalError where it can't be used."""

    def __init__(self, path: Path) -> None:
        self.path = path
        Journal(path, writer=None).close()  # makes it, or brings it up to date
        self._db = sqlite3.connect(path, isolation_level=None, timeout=5.0)
        self._db.execute("pragma synchronous=normal")
        self._done = 0  # all events of ours up to this row are sent

    def close(self) -> None:
        self._db.close()

    @property
    def writer(self) -> str:
        """The name this journal writes under."""
        return self._own("writer")

    @property
    def cursor(self) -> int:
        """The place in the store up to which everything is here."""
        return int(self._own(_CURSOR) or 0)

    def _own(self, name: str) -> str:
        row = self._db.execute("select value from own where name = ?", (name,)).fetchone()
        return str(row[0]) if row else ""

    def greet(self, store: str, at_cursor: Key | None) -> None:
        """Hold what the store says of itself against what is known here. Raises Refused.

        `at_cursor` is the key of the event which the store has at this journal's cursor.
        """
        self._done = 0
        known = self._own(_STORE)
        if known and known != store:
            raise Refused(
                "this journal has been sent to another store, or for another company; name that one, or give all of "
                "it to this one too: diagnose sync --new-store"
            )
        cursor = self.cursor
        here = self._db.execute(
            "select job, writer, coalesce(seq, event.number) from event join sent using (job, number) "
            "where position = ?",
            (cursor,),
        ).fetchone()
        if cursor and here != at_cursor:
            raise Refused(
                "the store lacks events that it had: it was put back to an earlier state. Send it all of this "
                "journal again: diagnose sync --new-store"
            )
        if not known:
            with self._writing():
                self._db.execute(_PUT, (_STORE, store))

    def forget_store(self) -> None:
        """Begin anew with whichever store is met next; the events stay."""
        with self._writing():
            self._db.execute("delete from sent")
            self._db.execute("delete from own where name in (?, ?)", (_CURSOR, _STORE))
        self._done = 0

    def pending(self, most: int = 500, most_text: int = 1_000_000) -> tuple[Letter, ...]:
        """The next events of ours that the store has not, in the order written: `most`, or somewhat of `most_text`."""
        writer = self.writer
        if writer == ALONE:
            return ()
        (newest,) = self._db.execute("select coalesce(max(rowid), 0) from event").fetchone()
        rows = self._db.execute(_PENDING, (self._done, writer, most)).fetchall()
        self._done = rows[0][0] - 1 if rows else newest
        letters: list[Letter] = []
        for _, *told in rows:
            letters.append(Letter(*told))
            most_text -= len(letters[-1].body)
            if most_text < 0:
                break
        return tuple(letters)

    def unsent(self) -> int:
        """How many events of ours the store has not, as far as is known here."""
        (count,) = self._db.execute(f"select count(*) from ({_PENDING})", (self._done, self.writer, -1)).fetchone()
        return int(count)

    def delivered(self, positions: Mapping[Key, int]) -> None:
        """The store has these events of ours, at these places."""
        with self._writing():
            cursor = self.cursor
            for key, position in sorted(positions.items(), key=lambda item: item[1]):
                (number, *_) = self._db.execute(_BY_KEY, key).fetchone()
                self._db.execute(_SENT, (key[0], number, position))
                cursor += position == cursor + 1  # nobody else's lies between
            self._db.execute(_PUT, (_CURSOR, str(cursor)))

    def receive(self, letters: Iterable[Letter]) -> tuple[Letter, ...]:
        """Take in what the store has after the cursor, and return what was new here; all of it, or Refused."""
        fresh = []
        with self._writing():
            cursor = self.cursor
            for letter in letters:
                letter.check()
                fresh += [letter] if self._take(letter) else []
                cursor = max(cursor, letter.position)
            self._db.execute(_PUT, (_CURSOR, str(cursor)))
        return tuple(fresh)

    def _take(self, letter: Letter) -> bool:
        row = self._db.execute(_BY_KEY, letter.key).fetchone()
        if row is None:
            (number,) = self._db.execute(_NUMBER, (letter.job,)).fetchone()
            told = (letter.job, number, letter.writer, letter.at, letter.body, letter.seq, letter.seen)
            self._db.execute(_EVENT, told)
        else:
            number, *told_here = row
            if not letter.same_as(Letter(*told_here)):
                raise Refused(_COPIED.format(letter.name))
        self._db.execute(_SENT, (letter.job, number, letter.position))
        return row is None

    def rewrite(self, work: Callable[[sqlite3.Connection], int]) -> int:
        """Do `work` in one transaction that is on disk when this returns."""
        self._db.execute("pragma synchronous=full")
        try:
            with self._writing():
                return work(self._db)
        finally:
            self._db.execute("pragma synchronous=normal")
            self._done = 0

    @contextmanager
    def _writing(self) -> Iterator[None]:
        try:
            self._db.execute("begin immediate")
            yield
            self._db.execute("commit")
        except sqlite3.Error as error:
            raise JournalError(f"{self.path} could not be written ({error}); what came is fetched again") from None
        finally:
            if self._db.in_transaction:
                with suppress(sqlite3.Error):
                    self._db.execute("rollback")


_COPIED = (
    "{} is in the store with another content: a copy of this journal writes under the same name. Give this one a "
    "name of its own: diagnose sync --new-writer"
)
