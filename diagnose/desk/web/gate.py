"""Who may look: a token is typed once and opens a session; wrong ones are slowed down. It knows no web server."""

from __future__ import annotations

import hmac
import ipaddress
import os
import secrets
import stat
import time
from collections.abc import Callable, Iterable
from hashlib import sha256
from pathlib import Path

__all__ = ["Gate", "TokenError", "is_loopback", "name_in", "new_token", "token_in"]

SESSION_SECONDS = 12 * 3600.0  # a shift; then the token is asked for again
MOST_SESSIONS = 64  # the oldest goes; more browsers than that do not sit at one desk
_FREE_TRIES = 3  # wrong tokens before one has to wait
_LONGEST_WAIT = 30.0  # seconds
_FORGOTTEN = 600.0  # seconds without a wrong token, after which it begins anew
_SHORTEST_TOKEN = 16  # signs of a token in a file
_LONGEST_TOKEN = 200
_LOOPBACK = ("localhost",)


class TokenError(Exception):
    """The file of the token can't be used; the message says what to do."""


class Gate:
    """The token, the sessions it opened, and how long after wrong ones nobody is heard. `clock` counts seconds."""

    def __init__(self, token: str, clock: Callable[[], float] = time.monotonic) -> None:
        self._token = _digest(token)
        self._clock = clock
        self._sessions: dict[bytes, float] = {}  # digest of the session's id -> when it ends
        self._wrong = 0
        self._last_wrong = 0.0

    def wait(self) -> float:
        """Seconds until the next token is looked at; 0 when at once."""
        if self._wrong < _FREE_TRIES:
            return 0.0
        hold = min(_LONGEST_WAIT, 2.0 ** (self._wrong - _FREE_TRIES))
        return max(0.0, self._last_wrong + hold - self._clock())

    def enter(self, token: str) -> str | None:
        """The id of a new session for the right token; None for a wrong one, or while one has to wait."""
        now = self._clock()
        if self.wait() > 0.0:
            return None
        if not hmac.compare_digest(_digest(token.strip()), self._token):
            self._wrong = self._wrong + 1 if now - self._last_wrong < _FORGOTTEN else 1
            self._last_wrong = now
            return None
        self._wrong = 0
        self._sessions = {key: end for key, end in self._sessions.items() if end > now}
        while len(self._sessions) >= MOST_SESSIONS:
            del self._sessions[next(iter(self._sessions))]
        session = secrets.token_urlsafe(32)
        self._sessions[_digest(session)] = now + SESSION_SECONDS
        return session

    def holds(self, session: str | None) -> bool:
        """Whether a session is open."""
        end = self._sessions.get(_digest(session)) if session else None
        return end is not None and end > self._clock()

    def leave(self, session: str | None) -> None:
        """End a session."""
        if session:
            self._sessions.pop(_digest(session), None)


def _digest(text: str) -> bytes:
    return sha256(text.encode("utf-8", "replace")).digest()


def new_token() -> str:
    """A token nobody can guess."""
    return secrets.token_urlsafe(24)


def token_in(path: Path) -> str:
    """The token kept in a file that only its owner can read; made where there is none. Raises TokenError."""
    try:
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_NOFOLLOW", 0), 0o600)
    except FileExistsError:
        return _read(path)
    except OSError as error:
        raise TokenError(f"{path} can't be made ({error.strerror}); name another with --token-file") from None
    token = new_token()
    with os.fdopen(handle, "w", encoding="ascii") as file:
        file.write(token + "\n")
    return token


def _read(path: Path) -> str:
    try:
        handle = os.open(path, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0))
        with os.fdopen(handle, "r", encoding="ascii") as file:
            told = os.fstat(file.fileno())
            if not stat.S_ISREG(told.st_mode):
                raise TokenError(f"{path} is no ordinary file; name another with --token-file")
            if os.name == "posix" and (told.st_mode & 0o077 or told.st_uid != os.getuid()):
                raise TokenError(f"{path} can be read by others; make it yours alone: chmod 600")
            token = file.read(_LONGEST_TOKEN + 1).strip()
    except (OSError, UnicodeDecodeError) as error:
        raise TokenError(f"{path} can't be read ({error}); name another with --token-file") from None
    if not _SHORTEST_TOKEN <= len(token) <= _LONGEST_TOKEN or not token.isprintable():
        raise TokenError(f"{path} holds no token of {_SHORTEST_TOKEN} signs or more; take it away, and one is made")
    return token


def is_loopback(host: str) -> bool:
    """Whether only this computer can reach a server on this host."""
    if host.casefold() in _LOOPBACK:
        return True
    try:
        return ipaddress.ip_address(host.strip("[]")).is_loopback
    except ValueError:
        return False


def name_in(host_header: str, names: Iterable[str]) -> bool:
    """Whether a `Host` header names this server: a loopback name, or one of these, with any port.

    A page elsewhere whose name was bent to this address comes with its own name, and is turned away.

    >>> name_in("127.0.0.1:8377", ()), name_in("[::1]:8377", ()), name_in("desk.invalid", ["desk.invalid"])
    (True, True, True)
    >>> name_in("elsewhere.invalid:8377", ()), name_in("127.0.0.1.elsewhere.invalid", ()), name_in("", ())
    (False, False, False)
    """
    host = host_header.strip().casefold()
    if host.startswith("["):
        name, closed, rest = host[1:].partition("]")
        port = rest.removeprefix(":") if closed and (not rest or rest.startswith(":")) else "?"
    else:
        name, _, port = host.partition(":")
    if port and not (port.isascii() and port.isdigit()):
        return False
    known = {each.strip("[]").casefold() for each in names}
    return name in known or is_loopback(name)
