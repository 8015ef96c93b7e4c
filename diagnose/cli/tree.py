"""`diagnose tree`: what can be the reason of a complaint, drawn, and every way to one cause."""

from __future__ import annotations

import shutil
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diagnose.cli.kit import Setup, aside, fail, machine_named, show, width
from diagnose.view.exits import Exit

if TYPE_CHECKING:
    from diagnose.model import Book

__all__ = ["complaint_named", "tree"]

_FORMATS = ("text", "json", "dot", "mermaid", "svg", "open-psa")


@click.command()
@click.argument("words", nargs=-1, metavar="[COMPLAINT]")
@click.option("--cause", metavar="ID", help="Show every way from every complaint to this cause instead.")
@click.option("--machine", metavar="NAME", help="Only what fits this saved machine, or type.")
@click.option("--unfold", multiple=True, metavar="NODE", help="Open this branch (number or id); may be repeated.")
@click.option("--fold", multiple=True, metavar="NODE", help="Shut this branch (number or id); may be repeated.")
@click.option("--depth", type=click.IntRange(1), metavar="N", help="Open so many levels.")
@click.option("--all", "everything", is_flag=True, help="Open everything.")
@click.option(
    "--format",
    "form",
    type=click.Choice(_FORMATS),
    default="text",
    help="text folds to a screen; json, dot, mermaid and svg show all unless told otherwise; open-psa is for "
    "fault-tree solvers.",
)
@click.option("--out", metavar="FILE", help="Write to this file.")
@click.pass_obj
def tree(
    setup: Setup,
    words: tuple[str, ...],
    cause: str | None,
    machine: str | None,
    unfold: tuple[str, ...],
    fold: tuple[str, ...],
    depth: int | None,
    everything: bool,
    form: str,
    out: str | None,
) -> None:
    """Draw what can be the reason of a complaint, and the checks that decide.

    \b
    diagnose tree rinse_cold              by id
    diagnose tree dishes come out wet     or in a kitchen's words
    diagnose tree rinse_cold --unfold 2.1 --machine two_tank_electric_208
    diagnose tree rinse_cold --format svg --out rinse.svg
    diagnose tree --cause supply_power.fuse_open
    """
    from diagnose.batch.tree import NotThereError, draw_tree, trace_cause, write_lines
    from diagnose.view.drawn.chart import Folding, NoSuchNodeError

    _refuse(words, cause, form, bool(unfold or fold or depth or everything))
    book = setup.book()
    whose = machine_named(setup, book, machine) if machine else None
    try:
        if cause is not None:
            lines = trace_cause(book, _cause(book, cause), whose, form == "json", width())
        else:
            folding = Folding(everything, unfold, fold, depth)
            screen = shutil.get_terminal_size().lines
            lines = draw_tree(book, complaint_named(book, " ".join(words)), whose, form, folding, width(), screen)
    except (NotThereError, NoSuchNodeError) as error:
        fail(str(error), Exit.FAILURE)
    if out is None:
        show(lines)
    else:
        aside(write_lines(lines, Path(out)) + "\n")


def _refuse(words: tuple[str, ...], cause: str | None, form: str, folds: bool) -> None:
    if cause is None and not words:
        raise click.UsageError("say which complaint; `diagnose knowledge list complaints` names them")
    if cause is not None and words:
        raise click.UsageError("say a complaint or --cause, not both")
    if cause is not None and form not in ("text", "json"):
        raise click.UsageError("the ways to a cause come as text or json")
    if folds and (cause is not None or form == "open-psa"):
        what = "the ways to a cause are shown" if cause is not None else "an open-psa file is"
        raise click.UsageError(f"{what} whole: leave out --unfold, --fold, --depth and --all")


def _cause(book: Book, said: str) -> str:
    """The id of a cause. Raises NotThereError."""
    from diagnose.batch.tree import NotThereError

    if said in book.causes:
        return said
    if said in book.complaints or said in book.events or said in book.checks:
        raise NotThereError(f"{said} is no cause; `diagnose knowledge list causes` names them")
    from diagnose.terminal.matcher import find

    near = get_close_matches(said, book.causes, 3)
    near += [m.id for m in find(said, {c.id: [c.title] for c in book.causes.values()}, 3) if m.id not in near]
    raise NotThereError(f"no cause {said[:60]!r}" + _offered(near[:3], "diagnose knowledge list causes"))


def complaint_named(book: Book, said: str) -> str:
    """The id of a complaint said by id or in words. Raises NotThereError where it is none, or several alike."""
    from diagnose.batch.tree import NotThereError

    if said in book.complaints:
        return said
    from diagnose.terminal.matcher import clear_winner, find

    found = find(said, {c.id: [c.title, *c.kitchen] for c in book.complaints.values()})
    winner = clear_winner(found)
    if winner is not None:
        return winner
    near = get_close_matches(said, book.complaints, 3)
    near += [m.id for m in found if m.id not in near]
    offered = _offered(near[:3], "diagnose knowledge list complaints")
    raise NotThereError(f"no one complaint is {said[:60]!r}{offered}")


def _offered(near: list[str], listed: str) -> str:
    return f"; did you mean {' or '.join(near)}?" if near else f"; `{listed}` names them"
