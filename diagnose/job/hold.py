"""Who holds a job: one process writes it at a time, the next is told who does."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

__all__ = ["JobHeld", "hold"]


class JobHeld(Exception):
    """Another process has the job open; the message says which."""


@contextmanager
def hold(folder: Path, job: str) -> Iterator[None]:
    """Hold `job` while the block runs; the hold ends with the process, however it ends.

    The hold is an exclusive lock on a small SQLite file: the one lock in the standard library
    that works alike on every system and dies with its process.
    Raises JobHeld with the holder's process number.
    """
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    who = folder / f"{job}.who"
    database = sqlite3.connect(folder / f"{job}.hold", isolation_level=None, timeout=0)
    try:
        try:
            database.execute("begin exclusive")
        except sqlite3.OperationalError:
            holder = who.read_text("ascii", "replace").strip() if who.exists() else "unknown"
            told = f"{job} is open in another window (process {holder}); close it there first"
            raise JobHeld(f"{told}, or look on: diagnose desk follow {job}") from None
        who.write_text(str(os.getpid()), "ascii")
        yield
    finally:
        database.close()
