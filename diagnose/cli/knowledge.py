"""`diagnose knowledge`: see, check and count what the program knows."""

from __future__ import annotations

import sys
from difflib import get_close_matches
from pathlib import Path
from typing import Any

import click

from diagnose.cli.kit import AS_JSON, Group, Setup, fail, show, width
from diagnose.cli.new import knowledge_new
from diagnose.view.exits import Exit

__all__ = ["knowledge"]


@click.group(cls=Group)
def knowledge() -> None:
    """See, check and count what the program knows."""


_LISTED = [
    "complaints",
    "events",
    "causes",
    "checks",
    "machines",
    "lines",
    "adjustments",
    "limits",
    "instruments",
    "sources",
    "cautions",
    "words",
]


@knowledge.command("list")
@click.argument("kind", metavar="KIND", type=click.Choice(_LISTED))
@AS_JSON
@click.pass_obj
def knowledge_list(setup: Setup, kind: str, as_json: bool) -> None:
    """List all entries of a KIND, with their titles.

    KIND: complaints, events, causes, checks, machines, limits,
    instruments, sources, cautions or words.
    """
    from diagnose.batch.shelf import list_entries

    show(list_entries(setup.book(), kind, as_json, width()))


@knowledge.command("show")
@click.argument("id")
@AS_JSON
@click.pass_obj
def knowledge_show(setup: Setup, id: str, as_json: bool) -> None:
    """Show all that an entry says."""
    from diagnose.batch.shelf import show_entry

    book = setup.book()
    lines = show_entry(book, id, as_json, width())
    if lines is None:
        known = [
            *book.complaints,
            *book.events,
            *book.causes,
            *book.checks,
            *book.machines,
            *book.limits,
            *book.instruments,
        ]
        close = get_close_matches(id, known, 1)
        fail(f"no entry {id[:60]!r}" + (f"; did you mean {close[0]}?" if close else ""), Exit.FAILURE)
    show(lines)


@knowledge.command("lint")
@click.argument("folder", metavar="DIR", required=False)
@click.option("--cases", metavar="DIR", help="Judge by the cases there too, and name causes that have none.")
@AS_JSON
@click.pass_obj
def knowledge_lint(setup: Setup, folder: str | None, cases: str | None, as_json: bool) -> None:
    """Check the knowledge; with DIR, ours and yours with that folder added."""
    from diagnose.batch.shelf import lint_knowledge
    from diagnose.model import KnowledgeError, load_book

    book: Any
    try:
        book = load_book(*setup.folders(), *([Path(folder)] if folder else []))
    except KnowledgeError as error:
        book = error
    lines, clean = lint_knowledge(book, as_json, width(), Path(cases) if cases else None)
    show(lines)
    if not clean:
        sys.exit(Exit.FAILURE)


@knowledge.command("stats")
@click.option("--jobs", default=1, show_default=True, type=click.IntRange(0, 1000), help="Jobs played per complaint.")
@AS_JSON
@click.pass_obj
def knowledge_stats(setup: Setup, jobs: int, as_json: bool) -> None:
    """Count what is known, and measure how far it carries.

    For each complaint: causes, pairs of them no check tells apart, and, over
    jobs played from the tables, minutes to a verified repair and the share of
    looking that could not change the advice. `--jobs 0` only counts.
    """
    from diagnose.batch.stats import show_stats

    at_terminal = sys.stderr.isatty()

    def progress(text: str) -> None:
        if at_terminal and jobs:
            print(f"\r\x1b[K{text}", end="", file=sys.stderr, flush=True)

    lines = show_stats(setup.book(), jobs, as_json, width(), progress)
    progress("")
    show(lines)


knowledge.add_command(knowledge_new)
