"""Sending and fetching in the background while somebody works on a job: the prompt never waits for it.

The worker listens first, then reads after its cursor, then sends, then waits: for the store to tell of something, for
an append here, or for a heartbeat, at which it looks anyway. A connection that breaks is made anew, ever more
patiently. No lock on the journal is held while the network is waited for.
"""

from __future__ import annotations

import random
import selectors
import socket
import threading
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from diagnose.fleet.errors import Refused, StoreError
from diagnose.fleet.exchange import Exchange
from diagnose.fleet.store import Hello, Store, connect
from diagnose.fleet.sync import greet, pull, push
from diagnose.job.journal import JournalError

__all__ = ["Status", "Worker", "start"]

HEARTBEAT = 15.0  # seconds after which it looks though nothing was told
PAUSES = (0.5, 60.0)  # seconds before the first and the last of many attempts to connect


@dataclass(frozen=True)
class Status:
    """How it stands with the store; `sentence` says why where it is not connected or something is refused."""

    state: Literal["connecting", "connected", "waiting", "refused"]
    sentence: str = ""


Received = Callable[[frozenset[str]], None]


class Worker:
    """One thread with connections of its own to journal and store. Nothing it meets is raised here.

    `on_received` is called from that thread with the jobs in which something new came from others.
    """

    def __init__(
        self,
        journal: Path,
        address: str,
        on_received: Received | None = None,
        heartbeat: float = HEARTBEAT,
        pauses: tuple[float, float] = PAUSES,
    ) -> None:
        self._journal = journal
        self._address = address
        self._on_received = on_received
        self._heartbeat = heartbeat
        self._pauses = pauses
        self._passed = False  # all was fetched and sent once since it was connected
        self._send_again = 0.0  # by the monotonic clock: not before then, after a refusal
        self._woken, self._waking = socket.socketpair()
        for end in (self._woken, self._waking):
            end.setblocking(False)
        self._stopping = threading.Event()
        self.looked = threading.Event()  # all that the store had has come once, or can't come now
        self.status = Status("connecting")
        self.only_reads = False
        self.ahead = 0.0  # seconds by which the store's clock is ahead of ours
        self._thread = threading.Thread(target=self._run, name="fleet", daemon=True)
        self._thread.start()

    def wake(self) -> None:
        """Something was appended here. Returns at once."""
        with suppress(OSError):  # enough calls wait already, or it has ended
            self._waking.send(b"!")

    def stop(self, seconds: float) -> None:
        """End; where there is a connection, what waits is sent first, if that takes no longer than so many seconds."""
        connected = self.status.state == "connected"
        self._stopping.set()
        self.wake()
        self._thread.join(seconds if connected else 0.0)

    def _run(self) -> None:
        pause = self._pauses[0]
        while not self._stopping.is_set():
            self._passed = False
            self._work_and_tell()
            self.looked.set()
            if self._passed:
                pause = self._pauses[0]
            if self.status.state == "refused":
                pause = self._pauses[1]
            self._stopping.wait(pause * random.uniform(0.5, 1.0))
            pause = min(pause * 2, self._pauses[1])
        for end in (self._woken, self._waking):
            end.close()

    def _work_and_tell(self) -> None:
        """Work until told to stop, or until something fails; what it was then stands in the status."""
        try:
            self._work()
        except Refused as error:
            self.status = Status("refused", str(error))
        except (StoreError, JournalError) as error:
            self.status = Status("waiting", str(error))
        except Exception as error:  # whatever it is, the job goes on without the store
            self.status = Status("refused", f"sending failed inside ({type(error).__name__}); try: diagnose sync")

    def _work(self) -> None:
        exchange = Exchange(self._journal)
        try:
            store = connect(self._address)
            try:
                self._exchange(exchange, store)
            finally:
                store.close()
        finally:
            exchange.close()

    def _exchange(self, exchange: Exchange, store: Store) -> None:
        hello = greet(exchange, store)
        self.only_reads = not hello.may_write
        self.ahead = hello.ahead
        store.listen(hello.channel)
        self.status = Status("connected")
        self._fetch(exchange, store)
        self._send(exchange, store, hello)
        self._passed = True
        self.looked.set()
        while not self._stopping.is_set():
            called = self._wait(store)
            place = store.heard()
            beat = not called and place is None
            if beat or (place or 0) > exchange.cursor:
                self._fetch(exchange, store)
            if beat or called:
                self._send(exchange, store, hello)
        self._send(exchange, store, hello)

    def _wait(self, store: Store) -> bool:
        """Wait for the store, an append here, or a heartbeat; whether something was appended here."""
        with selectors.DefaultSelector() as selector:
            selector.register(store.fileno(), selectors.EVENT_READ)
            selector.register(self._woken, selectors.EVENT_READ)
            selector.select(self._heartbeat)
        try:
            return bool(self._woken.recv(4096))
        except BlockingIOError:
            return False

    def _fetch(self, exchange: Exchange, store: Store) -> None:
        jobs = frozenset(letter.job for letter in pull(exchange, store))
        if jobs and self._on_received is not None:
            with suppress(Exception):
                self._on_received(jobs)

    def _send(self, exchange: Exchange, store: Store, hello: Hello) -> None:
        """Send what waits. Once refused it is tried again after a while only; fetching goes on."""
        if not hello.may_write or time.monotonic() < self._send_again:
            return
        try:
            push(exchange, store)
            self.status = Status("connected")
        except Refused as error:
            self._send_again = time.monotonic() + self._pauses[1]
            self.status = Status("refused", str(error))


def start(journal: Path, address: str, on_received: Received | None = None) -> Worker:
    """Begin to keep the journal at this path and the store at this address the same."""
    return Worker(journal, address, on_received)
