"""`diagnose practice`: find a hidden fault on a simulated machine."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diagnose.cli.kit import Group, Setup, aside, fail, show, width
from diagnose.view.exits import Exit

if TYPE_CHECKING:
    from diagnose.model import Book
    from diagnose.practice.kept import Kept
    from diagnose.practice.port import World

__all__ = ["kept_here", "practice"]

_LEVEL = 1


@click.group(cls=Group, invoke_without_command=True)
@click.option("--level", type=click.IntRange(1, 5), help="From 1, one plain fault, to 5, two faults and a lying gauge.")
@click.option("--complaint", metavar="ID", help="What the kitchen complains of, by id or in words.")
@click.option("--seed", type=click.IntRange(0, 999_999), help="The same seed gives the same exercise again.")
@click.option("--trainee", metavar="NAME", default="", help="Whose exercise it is, for the class's table.")
@click.option("--file", metavar="FILE", help="The exercise in a file, as somebody wrote it.")
@click.option("--result", metavar="FILE", help="When it is done, write what came of it to this file, to hand in.")
@click.option("--list", "listed", is_flag=True, help="Show levels and complaints, and begin nothing.")
@click.pass_context
def practice(
    ctx: click.Context,
    level: int | None,
    complaint: str | None,
    seed: int | None,
    trainee: str,
    file: str | None,
    result: str | None,
    listed: bool,
) -> None:
    """Find a hidden fault on a simulated machine.

    You get a story, a plate and a complaint; ask for any check, pay its
    minutes, repair or say the cause. The debrief shows the best path.
    Everything is invented, and is kept as you go: practice resume.
    """
    if ctx.invoked_subcommand is not None:
        return
    setup: Setup = ctx.obj
    if listed:
        _list(setup)
        return
    if file is not None:
        _begin_from(setup, Path(file), trainee, result)
        return
    _begin(setup, level, complaint, seed, trainee, result)


@practice.command("resume")
@click.argument("name", required=False, metavar="EXERCISE")
@click.option("--trainee", metavar="NAME", default="", help="Whose exercise it is.")
@click.option("--result", metavar="FILE", help="When it is done, write what came of it to this file, to hand in.")
@click.pass_obj
def practice_resume(setup: Setup, name: str | None, trainee: str, result: str | None) -> None:
    """Go on with EXERCISE, or with the open one begun last."""
    from diagnose.practice.port import simulator_here

    kept = kept_here(setup)
    chosen = name or next(iter(kept.open()), None)
    if chosen is None:
        fail("no exercise is open; begin one with: diagnose practice", Exit.NO_SUCH_JOB)
    _see_through(setup, setup.book(), simulator_here(), kept, chosen, trainee, result)


def kept_here(setup: Setup) -> Kept:
    """The file of exercises and results."""
    from diagnose.practice.kept import Kept

    return Kept(setup.places.home / "practice.sqlite3")


def _begin(
    setup: Setup, level: int | None, complaint: str | None, seed: int | None, trainee: str, result: str | None
) -> None:
    import secrets

    from diagnose.practice.choosing import next_exercise, ranked
    from diagnose.practice.making import NoExerciseError, make
    from diagnose.practice.port import simulator_here

    book, world = setup.book(), simulator_here()
    wanted = _complaint(setup, complaint) if complaint else None
    kept = kept_here(setup)
    # Without a seed another is drawn where one leads to no exercise; a seed that was named is kept to.
    # Of the weakest complaints several are tried with each.
    for left in (0,) if seed is not None else (4, 3, 2, 1, 0) if wanted is not None else (1, 0):
        drawn = seed if seed is not None else secrets.randbelow(1_000_000)
        try:
            if seed is None and wanted is None:
                order = ranked(book, world, kept.results(), trainee)
                exercise = next_exercise(book, world, drawn, level, order)
            else:
                exercise = make(book, drawn, level or _LEVEL, wanted, world)
        except NoExerciseError as error:
            if not left:
                fail(str(error), Exit.FAILURE)
            continue
        _see_through(setup, book, world, kept, kept.begin(exercise), trainee, result)
        return


def _begin_from(setup: Setup, file: Path, trainee: str, result: str | None) -> None:
    from diagnose.practice.files import ExerciseError, read_exercise
    from diagnose.practice.port import simulator_here

    book, world = setup.book(), simulator_here()
    try:
        exercise = read_exercise(file, book, world)
    except ExerciseError as error:
        fail(str(error), Exit.BAD_DATA)
    kept = kept_here(setup)
    _see_through(setup, book, world, kept, kept.begin(exercise), trainee, result)


def _see_through(
    setup: Setup, book: Book, world: World, kept: Kept, name: str, trainee: str, result: str | None
) -> None:
    """Go on with an exercise to its end, and write the result where one is to be handed in."""
    from diagnose.practice.handing import write_result
    from diagnose.practice.start import go_on
    from diagnose.terminal import front_here

    if result is not None and Path(result).exists():
        fail(f"{result} is there already; name another file with --result", Exit.BAD_DATA)
    code = go_on(book, world, kept, front_here(setup.plain), name, trainee, setup.places.holds)
    if code:
        sys.exit(int(code))
    done = kept.result(name)
    if result is None or done is None:
        return
    try:
        write_result(Path(result), done)
    except OSError as error:
        again = f"diagnose practice resume {name} --result FILE"
        fail(f"{result} can't be written ({error.strerror}); the result is kept: {again}", Exit.BAD_DATA)
    aside(f"Result written to {result}.\n")


def _complaint(setup: Setup, text: str) -> str:
    """The complaint named by id or words."""
    from diagnose.terminal.matcher import clear_winner, find

    book = setup.book()
    if text in book.complaints:
        return text
    matches = find(text, {c.id: [c.title, *c.kitchen] for c in book.complaints.values()})
    winner = clear_winner(matches)
    if winner is not None:
        return winner
    near = ", ".join(m.id for m in matches[:4])
    remedy = f"it may be one of: {near}" if near else "diagnose practice --list shows them"
    raise click.UsageError(f"{text[:40]!r} names no complaint; {remedy}")


def _list(setup: Setup) -> None:
    from diagnose.practice.start import level_lines
    from diagnose.view.layout import wrap

    book = setup.book()
    lines = ["Levels", *level_lines(width()), "Complaints"]
    for title, names in book.areas():
        lines += wrap(title, width(), "  ")
        for name in names:
            lines += wrap(f"{name}: {book.complaints[name].title}", width(), "    ", "      ")
    show([str(line) for line in lines])
