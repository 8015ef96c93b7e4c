"""`diagnose practice progress`, `new` and `class`: how a trainee stands, and what an instructor does."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.kit import AS_JSON, Setup, aside, fail, show, width
from diagnose.cli.practice import kept_here
from diagnose.view.exits import Exit

__all__ = ["class_table", "progress"]


@click.command("progress")
@click.option("--trainee", metavar="NAME", default="", help="This trainee's exercises only.")
@AS_JSON
@click.pass_obj
def progress(setup: Setup, trainee: str, as_json: bool) -> None:
    """Show how you stand with each complaint, the weakest first.

    What was found safely and in time moves a box up and is asked for again
    later; what failed goes back to box 0. The weakest complaint comes next.
    """
    from diagnose.practice.choosing import ranked
    from diagnose.practice.handing import progress_json, progress_lines
    from diagnose.practice.port import simulator_here

    book = setup.book()
    order = ranked(book, simulator_here(), kept_here(setup).results(), trainee)
    show([progress_json(order)] if as_json else [*progress_lines(book, order, width())])


@click.command("class")
@click.argument("folder", metavar="FOLDER")
@AS_JSON
@click.pass_obj
def class_table(setup: Setup, folder: str, as_json: bool) -> None:
    """Show the results in FOLDER as a table.

    Trainees hand one in with: diagnose practice --trainee NAME --result FILE
    """
    from diagnose.practice.handing import class_json, class_lines, read_class

    try:
        handed = read_class(Path(folder))
    except OSError as error:
        fail(f"{folder} can't be read ({error.strerror}); name a folder of results", Exit.BAD_DATA)
    show([class_json(handed)] if as_json else [*class_lines(setup.book(), handed.results, width())])
    if handed.refused:
        aside("".join(f"diagnose: {sentence}\n" for sentence in handed.refused))
        raise SystemExit(int(Exit.BAD_DATA))
