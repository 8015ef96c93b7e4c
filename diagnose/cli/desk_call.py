"""`diagnose desk call` and `diagnose desk visit`: solve it on the telephone, or prepare whoever comes."""

from __future__ import annotations

import sys

import click

from diagnose.cli.kit import AS_JSON, Setup, fail, found, show, width
from diagnose.view.exits import Exit

__all__ = ["call", "visit"]


@click.command()
@click.argument("job", required=False)
@click.option("--lang", "language", metavar="LANG", default="", help="Say it in this language too, like es.")
@click.pass_obj
def call(setup: Setup, job: str | None, language: str) -> None:
    """Take a call: ask aloud, type what you hear. JOB goes on with one.

    \b
    A kitchen worker is asked only what eyes, ears and the machine's own dials tell.
    The call ends: solved, machine not to be used, or a visit with its parts.
    """
    from diagnose.desk.call import take_call
    from diagnose.language import LanguageError, load_texts
    from diagnose.terminal.fronts import front_here

    try:
        load_texts(language or "en")
    except LanguageError as error:
        raise click.UsageError(str(error)) from None
    journal = setup.journal()
    places, person = setup.places, setup.person
    with setup.background(journal) as worker:
        name = found(journal, job, worker) if job else None
        if job and name is None:
            fail(f"no job {job[:40]!r}; `diagnose jobs` lists them", Exit.NO_SUCH_JOB)
        front, book = front_here(setup.plain), setup.book()
        code = take_call(book, journal, places.machines, front, name, places.holds, person=person, language=language)
    if code:
        sys.exit(int(code))


@click.command()
@click.argument("job")
@AS_JSON
@click.pass_obj
def visit(setup: Setup, job: str, as_json: bool) -> None:
    """The sheet for whoever comes to JOB: what is known, parts for the van, who, how long."""
    from diagnose.desk.visit_sheet import visit_json, visit_lines
    from diagnose.dialogue.scene import Scene
    from diagnose.job.session import Session
    from diagnose.view import call_words

    journal = setup.journal()
    name = journal.find(job)
    if name is None:
        fail(f"no job {job[:40]!r}; `diagnose jobs` lists them", Exit.NO_SUCH_JOB)
    scene = Scene(Session(setup.book(), journal, name), setup.places.machines)
    if not scene.ranked:
        missing = call_words.NO_VISIT if scene.state.machine is None else call_words.NO_COMPLAINT
        fail(missing.format(job=name), Exit.FAILURE)
    show([visit_json(scene)] if as_json else [str(line) for line in visit_lines(scene, width())])
