"""Watching something that goes on elsewhere while a line can be typed here: what is new is printed above the line."""

from __future__ import annotations

import queue
import sys
import threading
from collections.abc import Callable, Iterable, Sequence
from contextlib import ExitStack
from typing import Protocol

from diagnose.terminal.front import Front, Paused, tidy
from diagnose.terminal.live import LiveFront
from diagnose.terminal.plain import PlainFront

__all__ = ["Watched", "watch"]

_LOOK = 0.01  # seconds between two looks; one costs some millionths of a second


class Watched(Protocol):
    """What is watched: asked in one thread only."""

    @property
    def done(self) -> bool:
        """Whether nothing more will come."""
        ...

    def catch_up(self, width: int, bars: bool) -> Iterable[Sequence[str]]:
        """How it stands, before anything new."""
        ...

    def fresh(self, width: int, bars: bool) -> Iterable[Sequence[str]]:
        """What came since the last look; nothing where nothing came."""
        ...


def watch(front: Front, opened: Callable[[], Watched], typed: Callable[[str], None]) -> None:
    """Print what is new until it is done or the person leaves; `typed` gets each line. Raises Paused.

    `opened` makes what is watched, in the thread that will watch it. A front that plays a script looks once before
    each of its lines.
    """
    if isinstance(front, LiveFront):
        _live(front, opened, typed)
    elif isinstance(front, PlainFront):
        _plain(front, opened, typed)
    else:
        _by_turns(front, opened(), typed)


def _say(front: Front, blocks: Iterable[Sequence[str]]) -> None:
    for lines in blocks:
        if lines:
            front.say(lines)


def _by_turns(front: Front, watched: Watched, typed: Callable[[str], None]) -> None:
    _say(front, watched.catch_up(front.width, front.bars))
    while not watched.done:
        typed(front.ask())
        _say(front, watched.fresh(front.width, front.bars))


def _live(front: LiveFront, opened: Callable[[], Watched], typed: Callable[[str], None]) -> None:
    """The line editor has this thread; another one watches, and prints above the line."""
    stop, over, failed = threading.Event(), threading.Event(), list[BaseException]()

    def look() -> None:
        try:
            watched = opened()
            _say(front, watched.catch_up(front.width, front.bars))
            while not (watched.done or stop.wait(_LOOK)):
                _say(front, watched.fresh(front.width, front.bars))
        except Exception as error:
            failed.append(error)
        finally:
            over.set()
            front.hang_up()

    with ExitStack() as stack:
        stack.enter_context(front.printing_above())
        watcher = threading.Thread(target=look, name="watcher", daemon=True)
        watcher.start()
        try:
            while True:
                typed(front.ask())
        except Paused:
            if not over.is_set():
                raise
        finally:
            stop.set()
            watcher.join(2.0)
    if failed:
        raise failed[0]


def _plain(front: PlainFront, opened: Callable[[], Watched], typed: Callable[[str], None]) -> None:
    """This thread watches; another one reads lines. The end of input leaves only where a person sat at it."""
    lines: queue.SimpleQueue[str] = queue.SimpleQueue()

    def read() -> None:
        for line in sys.stdin:
            lines.put(line)
        if sys.stdin.isatty():
            lines.put("")

    threading.Thread(target=read, name="reader", daemon=True).start()
    watched = opened()
    _say(front, watched.catch_up(front.width, front.bars))
    try:
        while not watched.done:
            _say(front, watched.fresh(front.width, front.bars))
            try:
                line = lines.get(timeout=_LOOK)
            except queue.Empty:
                continue
            if not line:
                raise Paused
            typed(tidy(line))
    except KeyboardInterrupt:
        raise Paused from None
