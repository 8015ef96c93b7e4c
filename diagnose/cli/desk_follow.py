"""`diagnose desk follow`: another terminal, or another computer, sees a job as it goes on."""

from __future__ import annotations

import sys

import click

from diagnose.cli.kit import Setup, fail, found
from diagnose.view.exits import Exit

__all__ = ["follow"]


@click.command()
@click.argument("job", required=False)
@click.option("--once", is_flag=True, help="Show how it stands, and end.")
@click.option("--read-only", is_flag=True, help="Look on only: no hints.")
@click.option("--json", "as_json", is_flag=True, help="For machines: a JSON object a line, as things happen.")
@click.pass_obj
def follow(setup: Setup, job: str | None, once: bool, read_only: bool, as_json: bool) -> None:
    """Follow JOB live (or the open job touched last): each answer, how the ranking moves, what is asked next.

    \b
    c inlet temperature    suggests a check there
    n ask when it began    says something there
    p                      leaves; the job goes on

    A hint appears there between two questions and is taken or left; it changes no answer.
    """
    from diagnose.desk.follow import follow as follow_job
    from diagnose.desk.stream import stream
    from diagnose.dialogue.start import last_open
    from diagnose.terminal.fronts import front_here
    from diagnose.view import desk_words

    journal = setup.journal()
    book = setup.book()
    with setup.background(journal) as worker:
        name = found(journal, job, worker) if job else last_open(book, journal)
        if name is None:
            what = f"no job {job[:40]!r}; `diagnose jobs` lists them" if job else desk_words.NOTHING_OPEN
            fail(what, Exit.NO_SUCH_JOB)

        opened = setup.looking_on(book, name, worker)
        if as_json:
            for line in stream(opened(), once):
                print(line, flush=True)
            return

        def may_write() -> bool:
            return not (read_only or (worker is not None and worker.only_reads))

        code = follow_job(opened, front_here(setup.plain), setup.person, may_write, once)
    sys.exit(int(code))
