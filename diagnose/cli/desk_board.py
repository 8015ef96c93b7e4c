"""`diagnose desk board` and `diagnose desk serve`: every open job, on the terminal or as a page for browsers."""

from __future__ import annotations

import sys
from collections.abc import Callable
from typing import TYPE_CHECKING

import click

from diagnose.cli.kit import AS_JSON, Setup, fail, show, width
from diagnose.cli.tree import complaint_named
from diagnose.view.exits import Exit

if TYPE_CHECKING:
    from diagnose.desk.board_filters import Wanted
    from diagnose.fleet.worker import Worker
    from diagnose.model import Book
    from diagnose.terminal.front import Front

__all__ = ["board", "serve"]

_SORTS = ("touched", "age", "site", "waiting")
_WAITS = ("technician", "desk", "parts", "another trade", "kitchen", "call", "hint", "danger")


@click.command()
@click.option("--sort", type=click.Choice(_SORTS), default="touched", help="touched: longest ago first; age: begun.")
@click.option("--site", metavar="WORDS", default="", help="Only sites with these words in their name.")
@click.option("--complaint", metavar="ID", help="Only this complaint, by id or in words.")
@click.option("--waiting", type=click.Choice(_WAITS), help="Only jobs that wait for this.")
@click.option("--older", metavar="TIME", help="Only jobs not touched for so long: 30min, 2h, 3d.")
@AS_JSON
@click.pass_obj
def board(
    setup: Setup, sort: str, site: str, complaint: str | None, waiting: str | None, older: str | None, as_json: bool
) -> None:
    """Show every open job: where, what, how old, what leads, and whom it waits for.

    \b
    diagnose desk board
    diagnose desk board --sort site --older 2h
    diagnose desk board --waiting parts
    diagnose desk board --json

    On a terminal a digit follows that job, words look for jobs, p leaves.
    """
    from diagnose.desk.board import Board
    from diagnose.desk.board_leading import Leading
    from diagnose.terminal import front_here
    from diagnose.terminal.fronts import wants_plain
    from diagnose.terminal.signals import signals_hang_up

    wanted = _wanted(setup, site, complaint, waiting, older)
    if as_json or setup.plain or wants_plain():
        show(_printed(setup, wanted, sort, as_json))
        return
    book, journal = setup.book(), setup.journal()
    leading = Leading(book, setup.places.cache / "board")
    front = front_here()
    with setup.background(journal) as worker, signals_hang_up(front):
        Board(book, journal, leading, front, _follow(setup, book, worker, front), wanted, sort).run()


def _follow(setup: Setup, book: Book, worker: Worker | None, board_front: Front) -> Callable[[str], None]:
    """Follow one job as `diagnose desk follow` does, and come back."""

    def follow(job: str) -> None:
        from diagnose.desk.follow import follow as follow_job
        from diagnose.terminal import front_here
        from diagnose.terminal.signals import signals_hang_up

        front = front_here()
        with signals_hang_up(front, board_front):
            opened = setup.looking_on(book, job, worker)
            follow_job(opened, front, setup.person, lambda: worker is None or not worker.only_reads)

    return follow


def _at_once(text: str) -> None:
    """Print a line that is needed now, whoever reads it."""
    show([text])
    sys.stdout.flush()


def _printed(setup: Setup, wanted: Wanted, sort: str, as_json: bool) -> list[str]:
    """The whole board, once."""
    from diagnose.desk.board import board_once, utc_now
    from diagnose.desk.board_json import board_json
    from diagnose.desk.board_leading import Leading
    from diagnose.desk.board_lines import Place, board_lines, head_line
    from diagnose.desk.open_jobs import OpenJobs

    book = setup.book()
    leading = Leading(book, setup.places.cache / "board")
    rows, count = board_once(OpenJobs(setup.journal(), book), leading, wanted, sort)
    if as_json:
        return [board_json(rows, utc_now())]
    head = head_line(Place(1, len(rows), count, sort), len(rows), width())
    return [str(line) for line in (*head, *board_lines(rows, utc_now(), width()))]


def _wanted(setup: Setup, site: str, complaint: str | None, waiting: str | None, older: str | None) -> Wanted:
    """What is asked for, refused where it can't be meant."""
    from diagnose.batch.tree import NotThereError
    from diagnose.desk.board_filters import Wanted, age_minutes

    minutes = age_minutes(older) if older is not None else None
    if older is not None and minutes is None:
        raise click.UsageError(f"{older[:20]!r} is no length of time; say it like 30min, 2h or 3d")
    try:
        named = complaint_named(setup.book(), complaint) if complaint else ""
    except NotThereError as error:
        fail(str(error), Exit.FAILURE)
    return Wanted(site, named, waiting or "", minutes)


@click.command()
@click.option("--host", default="127.0.0.1", metavar="HOST", help="Where it is served; this computer alone by default.")
@click.option("--port", type=click.IntRange(0, 65535), default=8377, help="0: any that is free.")
@click.option("--name", multiple=True, metavar="NAME", help="What browsers call this computer; may be repeated.")
@click.option("--token-file", metavar="FILE", help="Keep the token in this file, yours alone, instead of a new one.")
@click.option("--certificate", metavar="FILE", help="Certificate, without which nobody beyond this computer is served.")
@click.option("--key", metavar="FILE", help="The key of the certificate.")
@click.pass_obj
def serve(
    setup: Setup,
    host: str,
    port: int,
    name: tuple[str, ...],
    token_file: str | None,
    certificate: str | None,
    key: str | None,
) -> None:
    """Show the board in a browser: read-only, behind a token, always the newest.

    \b
    diagnose desk serve
    diagnose desk serve --port 9000 --token-file desk.token
    diagnose desk serve --host 0.0.0.0 --name desk.example --certificate c.pem --key k.pem
    """
    from pathlib import Path

    try:
        from diagnose.desk.web.gate import TokenError
        from diagnose.desk.web.serve import ServeError, Serving
        from diagnose.desk.web.serve import serve as serve_board
    except ImportError as error:
        if (error.name or "").partition(".")[0] not in ("starlette", "uvicorn"):
            raise
        fail("pages for browsers need more: pip install 'diagnose[web]'", Exit.FAILURE)
    files = [Path(file) if file else None for file in (token_file, certificate, key)]
    serving = Serving(host, port, name, *files)
    try:
        serving.check()
        journal = setup.journal()
        with setup.background(journal):
            serve_board(setup.book(), journal.path, setup.places.cache / "board", serving, _at_once)
    except ServeError as error:
        raise click.UsageError(str(error)) from None
    except TokenError as error:
        fail(str(error), Exit.BAD_DATA)
