"""A store as one might write it at first: each statement by itself, and everything read again when something came."""

from __future__ import annotations

import time
from collections.abc import Sequence
from pathlib import Path
from typing import Any

__all__ = ["PEER", "naive_follower", "naive_writer"]

PEER = """
create schema peer;
create table peer.event (id serial primary key, job text, body text);
grant usage on schema peer to diagnose_technician, diagnose_desk;
grant select, insert on peer.event to diagnose_technician, diagnose_desk;
grant usage on sequence peer.event_id_seq to diagnose_technician, diagnose_desk;
"""


def naive_writer(address: str, texts: Sequence[str], gap: float) -> dict[int, float]:
    """Begin, lock, insert, notify and commit, one after the other; when each text was begun."""
    import psycopg

    written = {}
    with psycopg.connect(address) as connection:
        for nth, text in enumerate(texts):
            written[nth] = time.perf_counter()
            connection.execute("select pg_advisory_xact_lock(1)")
            connection.execute("insert into peer.event (job, body) values ('job-1', %s)", (text,))
            connection.execute("notify peer")
            connection.commit()
            time.sleep(gap)
    return written


def naive_follower(journal: Path, address: str, tag: str, ready: Any, seen: Any) -> None:
    """Told of something, it reads the whole job again."""
    import psycopg

    with psycopg.connect(address, autocommit=True) as connection:
        connection.execute("listen peer")
        ready.set()
        while True:
            if list(connection.notifies(timeout=60, stop_after=1)):
                rows: list[Any] = connection.execute("select body from peer.event order by id").fetchall()
                now = time.perf_counter()
                seen.put([(int(body.split()[1]), now) for (body,) in rows if body.startswith(f"{tag} ")])
