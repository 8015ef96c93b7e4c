"""A store for the tests of this folder: one server for all of them, a database for each module."""

from __future__ import annotations

import secrets
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pytest

from diagnose.fleet.admin import Kind, make_store, new_member, set_password
from diagnose.fleet.store import connect
from tests.postgres import ADMIN, Cluster, programs


@dataclass(frozen=True)
class Fleet:
    """A database with a store in it."""

    cluster: Cluster
    database: str

    def address(self, login: str = ADMIN) -> str:
        return self.cluster.address(login, self.database)

    def sql(self, statement: str, *values: object, login: str = ADMIN) -> list[Any]:
        return self.cluster.sql(statement, *values, login=login, database=self.database)

    def connect(self, login: str = ADMIN) -> Any:
        return self.cluster.connect(login, self.database)

    def member(self, login: str, kind: Kind = "technician", company: str = "Invented Kitchens") -> str:
        """Let somebody in; their address."""
        store = connect(self.address())
        new_member(store, login, kind, company)
        password = secrets.token_hex(8)
        set_password(store, login, password)
        store.close()
        self.cluster.keep_password(login, password)
        return self.address(login)


@pytest.fixture(scope="session")
def cluster() -> Iterator[Cluster]:
    found = programs()
    if found is None:
        pytest.skip("no PostgreSQL server is installed here (no initdb on the path or under /usr/lib/postgresql)")
    server = Cluster(found)
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("PGPASSFILE", str(server.passfile))
        for name in ("PGPASSWORD", "PGSERVICE", "PGHOST", "PGHOSTADDR"):
            patch.delenv(name, raising=False)
        yield server
    server.stop()


@pytest.fixture(scope="module")
def fleet(cluster: Cluster) -> Fleet:
    """A store of its own for each module. Logins are the server's: their names differ between modules."""
    database = f"fleet_{secrets.token_hex(4)}"
    cluster.sql(f"create database {database}")
    made = Fleet(cluster, database)
    store = connect(made.address())
    make_store(store)
    store.close()
    return made
