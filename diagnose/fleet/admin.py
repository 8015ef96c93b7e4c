"""For who keeps the store: make it, and say who may come in. Needs the login of an administrator."""

from __future__ import annotations

import re
from importlib.resources import files
from typing import Literal

from diagnose.fleet.errors import Refused
from diagnose.fleet.store import Store
from diagnose.fleet.trouble import told_plainly

__all__ = ["KINDS", "Kind", "make_store", "new_member", "schema_text", "set_password"]

Kind = Literal["technician", "desk", "reader"]
KINDS: tuple[Kind, ...] = ("technician", "desk", "reader")
_OLDEST = 130000
_LOGIN = re.compile(r"[A-Za-z][A-Za-z0-9_.@-]{0,62}")
_COMPANY = re.compile(r"\S(.{0,78}\S)?")
_DENIED = "this login may not do that; name one that may make schemas and logins in this database, like postgres"


def schema_text() -> str:
    """The store in SQL."""
    return files("diagnose.fleet").joinpath("schema.sql").read_text("utf-8")


def make_store(store: Store) -> None:
    """Make the store in this database, or bring it up to date. Raises StoreError."""
    connection = store.connection
    if connection.info.server_version < _OLDEST:
        raise Refused("the store needs PostgreSQL 13 or newer")
    with told_plainly(_DENIED), connection.transaction():
        connection.execute(schema_text().encode())


def new_member(store: Store, login: str, kind: Kind, company: str) -> bool:
    """Let `login` in as a member of `company`; whether it was made now, and so has no password. Raises StoreError."""
    from psycopg import sql

    if not _LOGIN.fullmatch(login) or login.lower().startswith(("pg_", "diagnose_")):
        raise Refused(f"{login[:40]!r} won't do as a login; begin with a letter, go on with letters, digits or _")
    if not _COMPANY.fullmatch(company) or not company.isprintable():
        raise Refused(f"{company[:40]!r} won't do as the name of a company; use up to 80 letters")
    name, connection = sql.Identifier(login), store.connection
    with told_plainly(_DENIED), connection.transaction():
        known = connection.execute("select rolsuper from pg_roles where rolname = %s", (login,)).fetchone()
        if known is not None and known[0]:
            raise Refused(f"{login} is an administrator, whom the store can't hold to its rules; make another login")
        if known is None:
            connection.execute(sql.SQL("create role {} login").format(name))
        for each in KINDS:
            done = "grant {} to {}" if each == kind else "revoke {} from {}"
            connection.execute(sql.SQL(done).format(sql.Identifier(f"diagnose_{each}"), name))
        connection.execute("set local role diagnose_owner")
        connection.execute("select diagnose.admit(%s, %s, %s)", (login, kind, company))
    return known is None


def set_password(store: Store, login: str, password: str) -> None:
    """Give a login a password. Only what it is checked against goes over the network. Raises StoreError."""
    from psycopg import sql

    verifier = store.connection.pgconn.encrypt_password(password.encode(), login.encode(), b"scram-sha-256")
    change = sql.SQL("alter role {} password {}").format(sql.Identifier(login), sql.Literal(verifier.decode()))
    with told_plainly(_DENIED):
        store.connection.execute(change)
