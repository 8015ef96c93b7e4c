"""The pages of the desk served on a free port of this computer, and a browser's plainest requests to them."""

from __future__ import annotations

import http.client
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import quote_plus

from diagnose.desk.web.app import Desk
from diagnose.desk.web.gate import Gate
from diagnose.desk.web.reader import Reader
from diagnose.desk.web.serve import Server, Serving, listening, made
from diagnose.model import Book
from tests.desk_jobs import NOW

__all__ = ["TOKEN", "Answer", "Site", "served"]

TOKEN = "the-token-of-these-tests"


@dataclass(frozen=True)
class Answer:
    """What came back."""

    status: int
    headers: http.client.HTTPMessage
    text: str

    def cookies(self) -> list[str]:
        return self.headers.get_all("set-cookie") or []


@dataclass
class Site:
    """The pages while they are served."""

    port: int
    desk: Desk
    gate: Gate
    server: Server
    cookie: str = ""
    more: dict[str, str] = field(default_factory=dict)

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def ask(self, path: str, form: Mapping[str, str] | bytes | None = None, method: str = "", **headers: str) -> Answer:
        """One request, with the session's cookie where one is open."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=20)
        told = {name.replace("_", "-"): value for name, value in headers.items()}
        if self.cookie:
            told.setdefault("Cookie", self.cookie)
        body = form
        if isinstance(form, Mapping):
            body = "&".join(f"{k}={quote_plus(v)}" for k, v in form.items()).encode()
        try:
            connection.request(method or ("GET" if form is None else "POST"), path, body, told)  # type: ignore[arg-type]
            answer = connection.getresponse()
            return Answer(answer.status, answer.headers, answer.read().decode())
        finally:
            connection.close()

    def log_in(self) -> Answer:
        """Open a session and keep it."""
        answer = self.ask("/login", {"token": TOKEN})
        self.cookie = answer.cookies()[0].partition(";")[0]
        return answer

    @contextmanager
    def events(self) -> Iterator[http.client.HTTPResponse]:
        """The stream of changes."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=20)
        connection.request("GET", "/events", headers={"Cookie": self.cookie})
        answer = connection.getresponse()
        try:
            yield answer
        finally:
            answer.close()
            connection.close()


@contextmanager
def served(
    book: Book,
    journal: Path,
    gate: Gate | None = None,
    streams: int = 24,
    cache: Path | None = None,
    secure: bool = False,
) -> Iterator[Site]:
    """The pages over this journal, for as long as the block runs. Their clock stands still."""
    door = listening(Serving(port=0))
    port = door.getsockname()[1]
    gate = gate or Gate(TOKEN)
    desk = Desk(Reader(book, journal, cache, lambda: NOW), gate, port, secure=secure, streams=streams)
    server = made(desk, Serving())
    thread = threading.Thread(target=server.run, args=([door],), daemon=True)
    thread.start()
    try:
        yield Site(port, desk, gate, server)
    finally:
        server.should_exit = True
        thread.join(20)
        door.close()
    assert not thread.is_alive()
