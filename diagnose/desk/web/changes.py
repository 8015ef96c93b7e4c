"""Telling browsers that something changed: one count for all, and a bounded number of open streams that wait for it."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable

from starlette.responses import StreamingResponse
from starlette.types import Receive, Scope, Send

__all__ = ["Changes", "EventStream"]

MOST_STREAMS = 24
HEARTBEAT_SECONDS = 15.0  # a line now and then, so that a browser that went away is noticed


class Changes:
    """How often anything changed since the start, and who waits for the next time."""

    def __init__(self, most: int = MOST_STREAMS) -> None:
        self.count = 0
        self.over = False
        self.streams = 0
        self._most = most
        self._news = asyncio.Condition()

    async def add(self) -> None:
        """Something changed: wake everybody."""
        async with self._news:
            self.count += 1
            self._news.notify_all()

    async def end(self) -> None:
        """No more will come: streams end by themselves."""
        async with self._news:
            self.over = True
            self._news.notify_all()

    async def after(self, seen: int, seconds: float) -> int:
        """The count as soon as it is another than `seen`, or after so many seconds."""
        async with self._news:
            try:
                waiting = self._news.wait_for(lambda: self.over or self.count != seen)
                await asyncio.wait_for(waiting, seconds)
            except TimeoutError:
                pass
            return self.count

    def room(self) -> bool:
        """Whether one more stream may be opened."""
        return self.streams < self._most and not self.over


class EventStream(StreamingResponse):
    """Server-sent events: the count of changes, at once and whenever it grows, while the session is open."""

    def __init__(self, changes: Changes, still_open: Callable[[], bool], heartbeat: float = HEARTBEAT_SECONDS) -> None:
        super().__init__(_events(changes, still_open, heartbeat), media_type="text/event-stream")
        self._changes = changes

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        self._changes.streams += 1
        try:
            await super().__call__(scope, receive, send)
        finally:
            self._changes.streams -= 1


async def _events(changes: Changes, still_open: Callable[[], bool], heartbeat: float) -> AsyncIterator[str]:
    yield "retry: 2000\n\n"
    seen = -1
    while not changes.over and still_open():
        count = await changes.after(seen, heartbeat)
        yield f"event: changed\ndata: {count}\n\n" if count != seen else ": still here\n\n"
        seen = count
    if not still_open():
        yield "event: out\ndata: 0\n\n"
