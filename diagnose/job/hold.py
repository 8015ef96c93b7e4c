"""Who holds a job: one process writes it at a time, the next is told who does."""

from __future__ import annotations

import fcntl
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

__all__ = ["JobHeld", "hold"]


class JobHeld(Exception):
    """Another process has the job open; the message says which."""


@contextmanager
def hold(folder: Path, job: str) -> Iterator[None]:
    """Hold `job` while the block runs; the hold ends with the process, however it ends.

    Raises JobHeld with the holder's process number.
    """
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    path = folder / f"{job}.hold"
    descriptor = os.open(path, os.O_CREAT | os.O_RDWR, 0o600)
    try:
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            holder = os.read(descriptor, 20).decode("ascii", "replace").strip() or "unknown"
            raise JobHeld(f"{job} is open in another window (process {holder}); close it there first") from None
        os.ftruncate(descriptor, 0)
        os.pwrite(descriptor, str(os.getpid()).encode(), 0)
        yield
    finally:
        os.close(descriptor)
