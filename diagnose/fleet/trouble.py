"""What psycopg and the store complain of, as one sentence with what to do. The address is never repeated."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from diagnose.fleet.errors import Refused, StoreError, Unreachable

if TYPE_CHECKING:
    import psycopg

__all__ = ["told_plainly", "while_connecting"]

_KEPT = "your answers are kept here and sent later"
# The codes of schema.sql; {} is what the store said.
_OURS = {
    "DG001": "{}: a copy of this journal writes under the same name. Give this one a name of its own: "
    "diagnose sync --new-writer",
    "DG002": "{}: this journal was copied from, or used by, somebody else. Give it a name of its own: "
    "diagnose sync --new-writer",
    "DG003": "{}; run `diagnose sync`, which sends all that is missing",
    "DG004": "{}; whoever keeps the store can change that: diagnose store member LOGIN --as technician --company NAME",
    "DG005": "{}",
    "DG006": "{}; make a login for each company",
}
_NO_SCHEMA = "there is no store in this database yet; whoever keeps it makes it: diagnose store init"
_NO_MEMBER = (
    "this login may not do that in the store; whoever keeps the store can change that: "
    "diagnose store member LOGIN --as technician --company NAME"
)
_CODES = {
    "3F000": _NO_SCHEMA,
    "42P01": _NO_SCHEMA,
    "42883": _NO_SCHEMA,
    "42704": _NO_SCHEMA,
    "25006": "the store takes nothing in now, it is a copy for reading; name the one that is written to",
}
# How libpq says why no connection came about, and what to do. The first that fits is taken.
_CONNECTING = (
    (
        "no password supplied",
        "the store at {host} wants a password; put it into a password file (PGPASSFILE), a service file, or PGPASSWORD",
    ),
    (
        "authentication failed",
        "the store at {host} does not take this login with this password; mend the password file, or ask whoever "
        "keeps the store",
    ),
    (
        "certificate",
        "the certificate of the store at {host} is not trusted here; if your company signs its own, add "
        "?sslrootcert=FILE with the certificate of who signed it to the address",
    ),
    (
        "does not support SSL",
        "the store at {host} does not encrypt; whoever keeps it must switch that on (or, on a network nobody else is "
        "on, add ?sslmode=prefer to the address)",
    ),
    ("no pg_hba.conf entry", "the store at {host} lets nobody in by this way; ask whoever keeps it"),
    ("does not exist", "the store at {host} knows no such database or login; mend the address"),
    ("is not permitted to log in", "this login may not come in at {host}; ask whoever keeps the store"),
)


@contextmanager
def while_connecting(host: str) -> Iterator[None]:
    """Turn what fails while a connection is made into a StoreError."""
    import psycopg

    try:
        yield
    except psycopg.Error as error:
        raise _not_connected(str(error), host or "this computer") from None


def _not_connected(said: str, host: str) -> StoreError:
    for sign, sentence in _CONNECTING:
        if sign in said:
            return Refused(sentence.format(host=host))
    if "timeout" in said:
        return Unreachable(f"the store at {host} does not answer; {_KEPT}")
    return Unreachable(f"the store at {host} can't be reached; {_KEPT}")


@contextmanager
def told_plainly(denied: str = _NO_MEMBER) -> Iterator[None]:
    """Turn what the store, or the way to it, complains of into a StoreError; `denied`: what may not be done."""
    import psycopg

    try:
        yield
    except psycopg.Error as error:
        raise _sentence(error, denied) from None


def _sentence(error: psycopg.Error, denied: str) -> StoreError:
    code = error.sqlstate or ""
    said = (error.diag.message_primary or "").strip()[:200]
    if code in _OURS:
        return Refused(_OURS[code].format(said))
    if code == "42501":
        return Refused(denied)
    if code in _CODES:
        return Refused(_CODES[code])
    if code == "57014":
        return Unreachable(f"the store took too long; {_KEPT}")
    if not code or code[:2] in ("08", "40", "53", "55", "57", "58"):
        return Unreachable(f"the connection to the store broke off; {_KEPT}")
    return Refused(f"the store does not take this ({said or code}); ask whoever keeps it")
