"""Where the store is: an address is read strictly, made safe for the network, and never repeated on a screen."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from ipaddress import ip_address

from diagnose.fleet.errors import Refused

__all__ = ["Address", "read_address"]

NO_LIBRARY = "the library that talks to a store is not installed; install it: pip install 'diagnose[fleet]'"
_UNREADABLE = "the address of the store can't be read; write it like postgresql://login@host/database"
_PASSWORD = (
    "a password stands in the address of the store, where others can see it; take it out and put it into a password "
    "file (PGPASSFILE, with `host:port:database:login:password`), a service file, or PGPASSWORD"
)
_SYSTEM_ROOTS = 160000  # libpq from this version on knows the certificates of the system
_PATIENCE = {
    "connect_timeout": "10",
    "keepalives": "1",
    "keepalives_idle": "20",
    "keepalives_interval": "5",
    "keepalives_count": "3",
    "tcp_user_timeout": "20000",  # milliseconds
    "options": "-c statement_timeout=30s -c idle_in_transaction_session_timeout=30s",
    "application_name": "diagnose",
    "client_encoding": "utf8",
}


@dataclass(frozen=True)
class Address:
    """`parameters` for libpq; `host` is the one thing of it that is told."""

    parameters: Mapping[str, str]
    host: str


def read_address(text: str, environ: Mapping[str, str] = os.environ) -> Address:
    """What to connect with. Raises Refused for an address that can't be read, or has a password in it."""
    try:
        import psycopg
        from psycopg.conninfo import conninfo_to_dict
    except ImportError:
        raise Refused(NO_LIBRARY) from None
    try:
        told = {name: str(value) for name, value in conninfo_to_dict(text).items() if value is not None}
    except psycopg.Error:
        raise Refused(_UNREADABLE) from None
    if told.get("password") or told.get("sslpassword"):
        raise Refused(_PASSWORD)
    host = told.get("host") or told.get("hostaddr") or environ.get("PGHOST") or environ.get("PGHOSTADDR") or ""
    safe = {} if _stays_here(told, environ) else _encrypted(environ, psycopg.pq.version())
    if told.get("sslmode", "verify-full") != "verify-full":
        safe.pop("sslrootcert", None)  # libpq takes the certificates of the system with the full check only
    return Address({**_PATIENCE, **safe, **told}, host)


def _stays_here(told: Mapping[str, str], environ: Mapping[str, str]) -> bool:
    """Whether nothing goes over a network: a socket of this system, or its loopback. A service may be anywhere."""
    if told.get("service") or environ.get("PGSERVICE"):
        return False
    hosts = told.get("host") or environ.get("PGHOST") or ""
    addresses = told.get("hostaddr") or environ.get("PGHOSTADDR") or ""
    return all(_local(each.strip()) for each in (addresses or hosts).split(","))


def _local(host: str) -> bool:
    if not host or host.startswith(("/", "@")) or host == "localhost":
        return True
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return False


def _encrypted(environ: Mapping[str, str], version: int) -> dict[str, str]:
    """The certificate of the store is checked, by default against those that this system trusts."""
    safe = {"sslmode": "verify-full"}
    if version >= _SYSTEM_ROOTS and not environ.get("PGSSLROOTCERT"):
        safe["sslrootcert"] = "system"
    return safe
