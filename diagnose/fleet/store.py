"""The store's side of the exchange: a connection, and the few questions that are asked over it.

Each question is one round trip. Nothing is left open between two of them.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any

from diagnose.fleet.address import read_address
from diagnose.fleet.errors import Refused
from diagnose.fleet.letter import Key, Letter
from diagnose.fleet.trouble import told_plainly, while_connecting

if TYPE_CHECKING:
    import psycopg

__all__ = ["BATCH", "Hello", "Page", "Store", "connect"]

BATCH = 500  # letters sent, or fetched, at once
_ANY_PLACE = 2**62
_SHAPE = 1  # of the store, as in schema.sql
_STRANGER = (
    "this login belongs to no company in the store; whoever keeps the store can change that: "
    "diagnose store member LOGIN --as technician --company NAME"
)
_SHAPED = "the store was made for another version of this program; install the newer one"


@dataclass(frozen=True)
class Hello:
    """What the store says of itself and of who asks. `ahead`: seconds by which its clock is ahead of ours."""

    store: str
    company: str
    kind: str
    channel: str
    newest: int
    at_cursor: Key | None
    ahead: float

    @property
    def may_write(self) -> bool:
        return self.kind != "reader"


@dataclass(frozen=True)
class Page:
    """Letters in the order of commits, and the newest place of all."""

    letters: tuple[Letter, ...]
    newest: int


class Store:
    """A connection to the store. Raises StoreError. For use in one thread."""

    def __init__(self, connection: psycopg.Connection[tuple[Any, ...]], host: str) -> None:
        self.connection = connection
        self.host = host
        self._told: int | None = None  # the newest place that was told of
        connection.add_notify_handler(lambda notify: self._tell(notify.payload))

    def close(self) -> None:
        self.connection.close()

    def _ask(self, question: str, *values: object) -> list[tuple[Any, ...]]:
        with told_plainly():
            return self.connection.execute(question, values).fetchall()

    def hello(self, cursor: int = 0) -> Hello:
        """Who we are there, and which event stands at our cursor. Raises Refused for a stranger."""
        asked = datetime.now(UTC)
        rows = self._ask("select * from diagnose.hello(%s)", cursor)
        between = asked + (datetime.now(UTC) - asked) / 2
        if not rows:
            raise Refused(_STRANGER)
        shape, store, company, kind, channel, newest, clock, *key = rows[0]
        if shape != _SHAPE:
            raise Refused(_SHAPED)
        at_cursor = (key[0], key[1], key[2]) if key[0] else None
        return Hello(store, company, kind, channel, newest, at_cursor, (clock - between).total_seconds())

    def push(self, letters: Sequence[Letter]) -> dict[Key, int]:
        """Send letters; the place of each. Those that are there already stay as they are."""
        told = json.dumps([(one.job, one.writer, one.seq, one.seen, one.at, one.body) for one in letters])
        rows = self._ask("select job, writer, seq, position from diagnose.push_events(%s::jsonb)", told)
        places = {(job, writer, seq): position for job, writer, seq, position in rows}
        if places.keys() != {one.key for one in letters}:
            raise Refused("the store does not keep what it is sent; ask whoever keeps it")
        return places

    def read(self, after: int, most: int = BATCH) -> Page:
        """What stands after a place."""
        rows = self._ask(
            "select job, writer, seq, seen, at, body, position, newest from diagnose.read_events(%s, %s)", after, most
        )
        letters = tuple(Letter(*row[:7]) for row in rows)
        if letters and letters[0].position <= after:
            raise Refused("the store does not keep its events in order; ask whoever keeps it")
        return Page(letters, rows[-1][7] if rows else after)

    def kept(self, letters: Sequence[Letter]) -> dict[Key, Letter]:
        """What the store has under the keys of these letters."""
        keys = [[one.job for one in letters], [one.writer for one in letters], [one.seq for one in letters]]
        rows = self._ask(
            "select e.job, e.writer, e.seq, e.seen, e.at, e.body, e.position from diagnose.event e "
            "join unnest(%s::text[], %s::text[], %s::integer[]) as asked (job, writer, seq) using (job, writer, seq)",
            *keys,
        )
        return {letter.key: letter for letter in (Letter(*row) for row in rows)}

    def listen(self, channel: str) -> None:
        """From now on `heard` knows when something comes."""
        from psycopg import sql

        with told_plainly():
            self.connection.execute(sql.SQL("listen {}").format(sql.Identifier(channel)))

    def fileno(self) -> int:
        """The socket, to wait for something to be heard."""
        return self.connection.fileno()

    def heard(self) -> int | None:
        """The newest place the store has told of since this was asked last, or None. Waits for nothing.

        Anybody can say anything on a channel: it is a reason to look, not more.
        """
        from psycopg import OperationalError

        with told_plainly():
            pgconn = self.connection.pgconn
            pgconn.consume_input()
            while notify := pgconn.notifies():
                self._tell(notify.extra.decode("ascii", "replace"))
            if self.connection.broken:
                raise OperationalError("gone")
        told, self._told = self._told, None
        return told

    def _tell(self, payload: str) -> None:
        place = int(payload) if payload.isascii() and payload.isdigit() and len(payload) < 19 else _ANY_PLACE
        self._told = max(self._told or 0, place)


def connect(text: str, patience: int | None = None) -> Store:
    """Connect to the store at this address; `patience`: seconds to wait for it. Raises StoreError."""
    address = read_address(text)
    import psycopg

    parameters = dict(address.parameters)
    if patience is not None:
        parameters["connect_timeout"] = str(patience)
    with while_connecting(address.host):
        connection: psycopg.Connection[tuple[Any, ...]] = psycopg.connect(
            autocommit=True,
            prepare_threshold=None,
            **parameters,  # type: ignore[arg-type]
        )
    return Store(connection, address.host or "this computer")
