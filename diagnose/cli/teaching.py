"""`diagnose practice progress`, `new` and `class`: how a trainee stands, and what an instructor does."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.kit import AS_JSON, Setup, aside, fail, show, width
from diagnose.cli.practice import kept_here
from diagnose.view.exits import Exit

__all__ = ["class_table", "new_exercise", "progress"]


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


@click.command("new")
@click.argument("file", metavar="FILE")
@click.option("--seed", type=click.IntRange(0, 999_999), help="Of its readings; else one is drawn.")
@click.pass_obj
def new_exercise(setup: Setup, file: str, seed: int | None) -> None:
    """Write an exercise into FILE, for others to practise.

    You are asked for machine, faults, a lying instrument and the story; it is
    tried on the simulated machine. Trainees begin it with: practice --file
    """
    import secrets

    from diagnose.practice.authoring import Author
    from diagnose.practice.files import write_exercise
    from diagnose.practice.port import simulator_here
    from diagnose.terminal import Paused, front_here
    from diagnose.terminal.signals import signals_hang_up

    path = Path(file)
    if path.exists():
        fail(f"{file} is there already; name another file", Exit.BAD_DATA)
    if not path.absolute().parent.is_dir():
        fail(f"there is no folder {path.absolute().parent}; make it first, or name another file", Exit.BAD_DATA)
    front = front_here(setup.plain)
    drawn = secrets.randbelow(1_000_000) if seed is None else seed
    with signals_hang_up(front):
        try:
            exercise = Author(setup.book(), simulator_here(), front, drawn).write()
        except Paused:
            fail("left; nothing was written", Exit.PAUSED)
    try:
        write_exercise(path, exercise)
    except OSError as error:
        fail(f"{file} can't be written ({error.strerror}); name another file", Exit.BAD_DATA)
    aside(f"Written to {file}. It is begun with: diagnose practice --file {file}\n")
