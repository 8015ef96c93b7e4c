"""`diagnose store` and `diagnose sync`: the store of a fleet, made and looked after, and one pass to it and back."""

from __future__ import annotations

import sys
from contextlib import ExitStack, closing
from typing import TYPE_CHECKING, NoReturn

import click

from diagnose.cli.kit import Group, Setup, aside, fail, show, width
from diagnose.view.exits import Exit

if TYPE_CHECKING:
    from diagnose.fleet.store import Store

__all__ = ["store", "sync_command"]

AT = click.option("--at", "address", metavar="ADDRESS", help="The store at this address instead of the one set.")


@click.group(cls=Group)
def store() -> None:
    """Make the store of a fleet, let people in, see what you may do there."""


@store.command("init")
@AT
@click.pass_obj
def store_init(setup: Setup, address: str | None) -> None:
    """Make the store in a PostgreSQL database, or bring it up to date.

    Needs the login of an administrator, like postgres:
    diagnose store init --at postgresql://postgres@host/database
    """
    from diagnose.fleet.admin import make_store
    from diagnose.view import fleet_words as words

    with closing(_store(setup, address)) as there:
        make_store(there)
    _tell(words.MADE)


@store.command("member")
@click.argument("login")
@click.option(
    "--as", "kind", type=click.Choice(["technician", "desk", "reader"]), required=True, help="What they may do."
)
@click.option("--company", metavar="NAME", required=True, help="Whose jobs they see.")
@AT
@click.pass_obj
def store_member(setup: Setup, login: str, kind: str, company: str, address: str | None) -> None:
    """Let LOGIN in, or change what it may do. Needs the login of an administrator.

    A login that is not there is made. Its password is asked for here, unseen, when this is a terminal.
    """
    from diagnose.fleet.admin import KINDS, new_member
    from diagnose.view import fleet_words as words

    with closing(_store(setup, address)) as there:
        made = new_member(there, login, next(k for k in KINDS if k == kind), company)
        _tell(words.member_told(login, kind, company))
        if not _password(there, login) and made:
            _tell(words.NO_PASSWORD.format(login=login))
        info = there.connection.info
        _tell(words.ADDRESS.format(login=login, host=_host(there.host, info.port), database=info.dbname))


def _host(host: str, port: int) -> str:
    return host if port == 5432 else f"{host}:{port}"


def _password(there: Store, login: str) -> bool:
    """Ask for a password where somebody can answer unseen; whether one was set."""
    from diagnose.fleet.admin import set_password
    from diagnose.view import fleet_words as words

    if not (sys.stdin.isatty() and sys.stderr.isatty()):
        return False
    first = _unseen(words.PASSWORD.format(login=login))
    if not first:
        return False
    if _unseen(words.PASSWORD_AGAIN) != first:
        fail(words.PASSWORDS_DIFFER, Exit.USAGE)
    set_password(there, login, first)
    _tell(words.PASSWORD_SET)
    return True


def _unseen(asked: str) -> str:
    return click.prompt(asked, hide_input=True, default="", show_default=False, err=True)


@store.command("check")
@AT
@click.pass_obj
def store_check(setup: Setup, address: str | None) -> None:
    """Say what this login may do in the store, and whether the clocks agree."""
    from diagnose.fleet.sync import SKEW
    from diagnose.view import fleet_words as words

    with closing(_store(setup, address)) as there:
        hello = there.hello()
        login, encrypted = there.connection.info.user, bool(there.connection.pgconn.ssl_in_use)
    for line in words.check_told(login, hello.kind, hello.company, hello.newest, encrypted):
        _tell(line)
    for line in words.ahead(hello.ahead, SKEW):
        _tell(line)


@click.command("sync")
@click.option("--new-writer", is_flag=True, help="Give a copied journal a name of its own first.")
@click.option("--new-store", is_flag=True, help="Begin anew with this store: send it all of this journal.")
@click.pass_obj
def sync_command(setup: Setup, new_writer: bool, new_store: bool) -> None:
    """Send to the store of the fleet what it has not, and fetch what others wrote.

    Jobs do that by themselves while they are open. What the store is, is
    set in config.toml, as store = "postgresql://login@host/database".
    """
    from diagnose.fleet.sync import SKEW, sync
    from diagnose.view import fleet_words as words

    journal = setup.journal()
    address = setup.settings().store or _not_set(setup)
    with ExitStack() as held:
        if new_writer:
            _hold_all(setup, [entry.job for entry in journal.jobs()], held)
        passed = sync(journal.path, address, new_writer, new_store)
    for line in words.passed_told(passed.sent, passed.received, passed.renamed, passed.held):
        _tell(line)
    for line in words.ahead(passed.ahead, SKEW):
        aside(line + "\n")


def _hold_all(setup: Setup, jobs: list[str], held: ExitStack) -> None:
    """Nobody works on a job of this journal meanwhile. Raises JobHeld."""
    from diagnose.job.hold import hold

    for job in jobs:
        held.enter_context(hold(setup.places.holds, job))


def _store(setup: Setup, address: str | None) -> Store:
    from diagnose.fleet.store import connect

    return connect(address or setup.settings().store or _not_set(setup))


def _not_set(setup: Setup) -> NoReturn:
    from diagnose.view import fleet_words as words

    fail(words.NOT_SET.format(file=setup.places.config), Exit.USAGE)


def _tell(sentence: str) -> None:
    from diagnose.view.layout import wrap

    show([str(line) for line in wrap(sentence, width())])
