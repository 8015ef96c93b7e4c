"""Floor 10: the command line. Arguments in, one room called; rooms are imported when their command runs."""

from __future__ import annotations

import os
import sys
import traceback
from collections.abc import Callable
from pathlib import Path
from typing import Literal, NoReturn

import click

from diagnose import __version__
from diagnose.cli.desk import desk
from diagnose.cli.instrument import instrument
from diagnose.cli.kit import AS_JSON, Group, Setup, fail, found, say, show, width
from diagnose.cli.knowledge import knowledge
from diagnose.cli.machine import machine
from diagnose.cli.practice import practice
from diagnose.cli.report import report
from diagnose.cli.store import store, sync_command
from diagnose.cli.teaching import class_table, new_exercise, progress
from diagnose.cli.tree import tree
from diagnose.cli.walk import walk
from diagnose.cli.work import work
from diagnose.view.exits import Exit

__all__ = ["cli", "main"]

_EXITS = """
\b
Exit codes: 0 done, 1 the answer is no, 2 wrong words, 3 paused and saved,
4 a file can't be used, 5 no such job, 6 job held elsewhere, 7 fault inside,
8 store unreachable.
"""


_CONTEXT = {"help_option_names": ["-h", "--help"], "max_content_width": 79, "terminal_width": 79}


@click.group(cls=Group, invoke_without_command=True, context_settings=_CONTEXT, epilog=_EXITS)
@click.option("--plain", is_flag=True, help="Numbered lines only: no colour, nothing redrawn.")
@click.option("--knowledge", multiple=True, metavar="DIR", help="Add a folder of knowledge to ours; may be repeated.")
@click.option("--journal", metavar="FILE", help="Keep jobs in this file instead of your own journal.")
@click.option(
    "--who",
    multiple=True,
    metavar="WHO",
    help="Who works on a new job: operator, technician (when nothing is said), licensed electrician, licensed gas "
    "fitter, licensed plumber; may be repeated.",
)
@click.option(
    "--keep-closed",
    multiple=True,
    metavar="WHAT",
    help="What must stay closed on a new job, e.g. 'control box'; may be repeated.",
)
@click.option("--ours-only", is_flag=True, help="Leave your shop's own folder of knowledge aside.")
@click.option("--debug", is_flag=True, help="Show a traceback when something inside fails.")
@click.version_option(__version__, "--version", message="diagnose %(version)s")
@click.pass_context
def cli(
    ctx: click.Context,
    plain: bool,
    knowledge: tuple[str, ...],
    journal: str | None,
    who: tuple[str, ...],
    keep_closed: tuple[str, ...],
    ours_only: bool,
    debug: bool,
) -> None:
    """Find why a conveyor warewasher misbehaves, repair it, and prove the repair.

    \b
    diagnose                       begin a job, step by step
    diagnose resume                go on with the job touched last
    diagnose handover              set a new machine right, and hand it over
    diagnose rank case.toml        rank the causes of a case from a file
    diagnose knowledge list causes see what is known

    Data plate, local codes and licensed practice go before anything said here.
    """
    ctx.obj = Setup(knowledge, journal, plain, debug, who, keep_closed, ours_only)
    if ctx.invoked_subcommand is None:
        _dialogue(ctx.obj, None)


@cli.command()
@click.argument("job", required=False)
@click.pass_obj
def resume(setup: Setup, job: str | None) -> None:
    """Go on with JOB, or with the open job touched last."""
    _dialogue(setup, job or "")


@cli.command()
@click.pass_obj
def handover(setup: Setup) -> None:
    """Set a machine right, prove it line by line, and hand it over; resume goes on with one."""
    _dialogue(setup, None, "handover")


@cli.command()
@click.argument("job", required=False)
@AS_JSON
@click.pass_obj
def jobs(setup: Setup, job: str | None, as_json: bool) -> None:
    """List all jobs, or what happened in JOB."""
    from diagnose.batch.jobs import list_jobs, show_job

    journal = setup.journal()
    if job is None:
        show(list_jobs(setup.book(), journal, as_json, width()))
    elif not journal.has(job):
        _no_job(job)
    else:
        show(show_job(journal, job, as_json, width()))


@cli.command()
@click.argument("case", metavar="CASE.toml", required=False)
@AS_JSON
@click.option("--schema", type=click.Choice(["case", "answer"]), help="Print the JSON Schema of case file or answer.")
@click.pass_obj
def rank(setup: Setup, case: str | None, as_json: bool, schema: str | None) -> None:
    """Rank the causes of a case from a file."""
    from diagnose.batch.rank import rank_case, schema_text

    if schema:
        show([schema_text(schema)])
    elif case is None:
        raise click.UsageError("name a case file; knowledge list and knowledge show give the ids to write in it")
    else:
        show(rank_case(setup.book(), Path(case), as_json, width(), setup.places.instruments))


cli.add_command(report)
cli.add_command(tree)
cli.add_command(knowledge)
cli.add_command(machine)
cli.add_command(instrument)
cli.add_command(work)
cli.add_command(practice)
practice.add_command(progress)
practice.add_command(new_exercise)
practice.add_command(class_table)
cli.add_command(walk)
cli.add_command(desk)
cli.add_command(sync_command)
cli.add_command(store)


@cli.command("help", context_settings={"ignore_unknown_options": True})
@click.argument("words", nargs=-1)
@click.pass_context
def help_command(ctx: click.Context, words: tuple[str, ...]) -> None:
    """Help on a command, like --help."""
    parent = ctx.parent
    assert parent is not None
    command: click.Command = cli
    info = parent
    for word in words:
        found = command.get_command(info, word) if isinstance(command, click.Group) else None
        if found is None:
            raise click.UsageError(f"no command {word!r}; `diagnose help` lists them", ctx)
        command, info = found, click.Context(found, info, word, **_CONTEXT)  # type: ignore[arg-type]
    click.echo(command.get_help(info))


def main() -> NoReturn:
    """Run the command line; every failure is one sentence on stderr and an exit code."""
    sys.exit(_guarded(lambda: cli.main(prog_name="diagnose", standalone_mode=False)))


def _guarded(run: Callable[[], object]) -> int:
    try:
        code = run()
        sys.stdout.flush()
        return code if isinstance(code, int) else Exit.OK
    except click.exceptions.NoArgsIsHelpError as error:  # a group alone is a question, not a mistake
        assert error.ctx is not None
        click.echo(error.ctx.get_help())
        return Exit.OK
    except click.UsageError as error:
        return say(f"diagnose: {error.format_message()} (see diagnose --help)", Exit.USAGE)
    except (click.Abort, KeyboardInterrupt):
        return say("diagnose: stopped", Exit.PAUSED)
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return Exit.OK
    except Exception as error:
        from diagnose.view.trouble import trouble

        if "--debug" in sys.argv:
            traceback.print_exc()
        sentence, code = trouble(error)
        return say(sentence, code)


def _dialogue(setup: Setup, job: str | None, purpose: Literal["repair", "handover"] = "repair") -> None:
    from diagnose.dialogue import start

    journal = setup.journal()
    with setup.background(journal) as worker:
        named = found(journal, job, worker) if job else job
        if named is None and job:
            _no_job(job)
        book = setup.book()
        code = start(book, journal, setup.places, named, setup.plain, setup.crew(book), purpose, setup.person)
    if code:
        sys.exit(int(code))


def _no_job(job: str) -> NoReturn:
    fail(f"no job {job[:40]!r}; `diagnose jobs` lists them", Exit.NO_SUCH_JOB)
