"""Signals that end a process: the front hangs up, and what was answered is on disk."""

from __future__ import annotations

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType

from diagnose.terminal.front import Front

__all__ = ["signals_hang_up"]


@contextmanager
def signals_hang_up(*fronts: Front) -> Iterator[None]:
    """While the block runs, a hang-up, a request to end or an interrupt pauses each front at its question."""

    def hang_up(number: int, frame: FrameType | None) -> None:
        for front in fronts:
            front.hang_up()

    wanted = [getattr(signal, name) for name in ("SIGHUP", "SIGTERM", "SIGINT") if hasattr(signal, name)]
    if threading.current_thread() is not threading.main_thread():
        wanted = []
    before = {each: signal.signal(each, hang_up) for each in wanted}
    try:
        yield
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)
