"""`diagnose walk`: study mode, without a fault."""

from __future__ import annotations

import click

from diagnose.cli.kit import Setup, fail, machine_named
from diagnose.cli.tree import complaint_named
from diagnose.view.exits import Exit

__all__ = ["walk"]


@click.command()
@click.argument("words", nargs=-1, metavar="COMPLAINT")
@click.option("--machine", metavar="NAME", help="On this saved machine, or type; else on an ordinary type.")
@click.pass_obj
def walk(setup: Setup, words: tuple[str, ...], machine: str | None) -> None:
    """Study a complaint without a fault: what would you check, and why?

    \b
    diagnose walk rinse_cold              by id
    diagnose walk dishes come out wet     or in a kitchen's words

    Each choice is answered with the minutes to a verified repair after it,
    the bits it closes, what it could settle, and what would have been best.
    Then you suppose what it shows, and go on. Nothing is kept.
    """
    from diagnose.batch.tree import NotThereError
    from diagnose.model import Machine, fits
    from diagnose.practice.walk import Walk
    from diagnose.practice.worth import usual_type
    from diagnose.terminal import front_here
    from diagnose.terminal.signals import signals_hang_up

    if not words:
        raise click.UsageError("say which complaint; `diagnose knowledge list complaints` names them")
    book = setup.book()
    try:
        complaint = complaint_named(book, " ".join(words))
        whose = machine_named(setup, book, machine) if machine else None
        if whose is None:
            kind = usual_type(book, complaint)
            whose = Machine(kind.id, kind)
    except (NotThereError, LookupError) as error:
        fail(str(error), Exit.FAILURE)
    if not fits(whose, book.complaints[complaint].fits):
        title = book.title(complaint)
        fail(f"{title!r} can't be complained of on this machine: {whose.type.title}; name another", Exit.FAILURE)
    front = front_here(setup.plain)
    with signals_hang_up(front):
        Walk(book, whose, complaint, front).run()
