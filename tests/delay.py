"""A way to a server that can be slow, or stand still: bytes pass through it, after a while or not for now."""

from __future__ import annotations

import contextlib
import queue
import socket
import threading
import time

__all__ = ["Delay"]


class Delay:
    """Listens on `port` of the loopback and passes on to the port `target`; each way takes `seconds`."""

    def __init__(self, target: int, seconds: float = 0.0) -> None:
        self._target = target
        self._seconds = seconds
        self._flows = threading.Event()
        self._flows.set()
        self._sockets: list[socket.socket] = []
        self._listening = socket.create_server(("127.0.0.1", 0))
        self.port = int(self._listening.getsockname()[1])
        threading.Thread(target=self._accept, daemon=True).start()

    def still(self, still: bool) -> None:
        """From now on nothing passes, or passes again."""
        (self._flows.clear if still else self._flows.set)()

    def close(self) -> None:
        self._flows.set()
        for each in (self._listening, *self._sockets):
            with contextlib.suppress(OSError):
                each.shutdown(socket.SHUT_RDWR)
            each.close()

    def _accept(self) -> None:
        with contextlib.suppress(OSError):
            while True:
                near, _ = self._listening.accept()
                far = socket.create_connection(("127.0.0.1", self._target))
                self._sockets += [near, far]
                for source, drain in ((near, far), (far, near)):
                    for each in (source, drain):
                        each.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
                    on_the_way: queue.Queue[tuple[float, bytes]] = queue.Queue()
                    threading.Thread(target=self._take, args=(source, on_the_way), daemon=True).start()
                    threading.Thread(target=self._give, args=(drain, on_the_way), daemon=True).start()

    def _take(self, source: socket.socket, on_the_way: queue.Queue[tuple[float, bytes]]) -> None:
        data = b"?"
        while data:
            try:
                data = source.recv(65536)
            except OSError:
                data = b""
            on_the_way.put((time.monotonic() + self._seconds, data))

    def _give(self, drain: socket.socket, on_the_way: queue.Queue[tuple[float, bytes]]) -> None:
        with contextlib.suppress(OSError):
            while True:
                due, data = on_the_way.get()
                time.sleep(max(0.0, due - time.monotonic()))
                self._flows.wait()
                if not data:
                    drain.shutdown(socket.SHUT_RDWR)
                    return
                drain.sendall(data)
