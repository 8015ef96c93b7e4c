"""`diagnose desk`: the support desk. Every open job on a board, on the terminal or as a page for browsers."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from diagnose.cli.kit import AS_JSON, Group, Setup, fail, show, width
from diagnose.cli.tree import complaint_named
from diagnose.view.exits import Exit

if TYPE_CHECKING:
    from diagnose.desk.board_filters import Wanted

__all__ = ["desk"]

_SORTS = ("touched", "age", "site", "waiting")
_WAITS = ("technician", "desk", "parts", "another trade", "kitchen", "call", "hint", "danger")


@click.group(cls=Group)
def desk() -> None:
    """See every open job, on the terminal or in a browser."""


@desk.command()
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

    On a terminal a digit looks at that job, words look for jobs, p leaves.
    """
    from functools import partial

    from diagnose.desk.board import Board
    from diagnose.desk.board_leading import Leading
    from diagnose.desk.board_look import look_at
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
    follow = partial(look_at, book, journal, front)
    with signals_hang_up(front):
        Board(book, journal, leading, front, follow, wanted, sort).run()


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
