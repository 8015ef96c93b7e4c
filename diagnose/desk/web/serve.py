"""`diagnose desk serve`: the server itself. Beyond this computer only with a certificate."""

from __future__ import annotations

import logging
import socket
import ssl
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import uvicorn

from diagnose.desk.web.app import Desk
from diagnose.desk.web.gate import Gate, is_loopback, new_token, token_in
from diagnose.desk.web.reader import Reader
from diagnose.model import Book

__all__ = ["ServeError", "Server", "Serving", "serve"]

_ANY = ("", "0.0.0.0", "::")


class ServeError(Exception):
    """It can't be served like that; the message says what to do."""


@dataclass(frozen=True)
class Serving:
    """Where and how it is served. `names`: what browsers call this computer, where the host does not say it."""

    host: str = "127.0.0.1"
    port: int = 8377
    names: tuple[str, ...] = ()
    token_file: Path | None = None
    certificate: Path | None = None
    key: Path | None = None

    def check(self) -> None:
        """Raises ServeError where the token or the jobs could be read on the way, or no browser could come."""
        if (self.certificate is None) != (self.key is None):
            raise ServeError("a certificate needs its key, and a key its certificate: --certificate and --key")
        if not is_loopback(self.host) and self.certificate is None:
            raise ServeError(
                f"{self.host or 'every address'} can be reached by others: name --certificate and --key, "
                "or serve on 127.0.0.1 and come in through a tunnel"
            )
        if self.host in _ANY and not self.names:
            raise ServeError("say what browsers call this computer: --name, once for each name")


class Server(uvicorn.Server):
    """Ends open streams before it waits for them."""

    def __init__(self, config: uvicorn.Config, desk: Desk) -> None:
        super().__init__(config)
        self._desk = desk

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        await self._desk.changes.end()
        await super().shutdown(sockets)


def made(desk: Desk, serving: Serving) -> Server:
    """The server for these pages; it says nothing by itself."""
    logging.getLogger("uvicorn").setLevel(logging.CRITICAL)
    config = uvicorn.Config(
        desk.app,
        http="h11",
        ws="none",
        loop="asyncio",
        lifespan="on",
        log_config=None,
        access_log=False,
        server_header=False,
        proxy_headers=False,
        limit_concurrency=200,
        timeout_graceful_shutdown=2,
        ssl_certfile=serving.certificate,
        ssl_keyfile=serving.key,
    )
    try:
        config.load()
    except (OSError, ssl.SSLError) as error:
        raise ServeError(f"certificate and key can't be used ({error}); name others") from None
    return Server(config, desk)


def listening(serving: Serving) -> socket.socket:
    """The socket browsers come to. Raises ServeError."""
    family = socket.AF_INET6 if ":" in serving.host else socket.AF_INET
    try:
        return socket.create_server((serving.host.strip("[]"), serving.port), family=family, backlog=100)
    except (OSError, OverflowError) as error:
        where = f"port {serving.port} of {serving.host}"
        raise ServeError(f"{where} can't be used ({error}); name others with --host and --port") from None


def serve(book: Book, journal: Path, cache: Path | None, serving: Serving, say: Callable[[str], object]) -> None:
    """Serve until the person at this terminal ends it. Raises ServeError, TokenError and JournalError."""
    serving.check()
    token = token_in(serving.token_file) if serving.token_file is not None else new_token()
    door = listening(serving)
    with door:
        port = door.getsockname()[1]
        names = (*serving.names, *([] if serving.host in _ANY else [serving.host]))
        secure = serving.certificate is not None
        desk = Desk(Reader(book, journal, cache), Gate(token), port, names, secure)
        server = made(desk, serving)
        name = serving.names[0] if serving.names else serving.host
        say(f"The board of open jobs: {'https' if secure else 'http'}://{_in_address(name)}:{port}/")
        told = f"as it stands in {serving.token_file}" if serving.token_file is not None else token
        say(f"Token, asked for at the login: {told}")
        say("It only shows, and changes nothing. Ctrl-C ends it.")
        try:
            server.run(sockets=[door])
        except KeyboardInterrupt:
            return


def _in_address(host: str) -> str:
    return f"[{host}]" if ":" in host and not host.startswith("[") else host
