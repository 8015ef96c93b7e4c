"""Floor 8: the command line. Arguments in, one room called; rooms are imported when their command runs."""

from __future__ import annotations

import os
import shutil
import sys
import traceback
from collections.abc import Callable
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

import click

from diagnose import __version__

if TYPE_CHECKING:
    from diagnose.job.places import Places
    from diagnose.model import Book

__all__ = ["cli", "main"]

OK, FAILURE, USAGE, PAUSED, BAD_DATA, NO_SUCH_JOB, HELD, INTERNAL = range(8)  # as view.exits.Exit says

_EXITS = """
\b
Exit codes: 0 done, 1 the answer is no, 2 wrong words, 3 paused and saved,
4 a file can't be used, 5 no such job, 6 job held elsewhere, 7 fault inside.
"""


class _Group(click.Group):
    """Commands in the order written, and a near word offered for a wrong one."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(self.commands)

    def resolve_command(self, ctx: click.Context, args: list[str]) -> Any:
        try:
            return super().resolve_command(ctx, args)
        except click.UsageError:
            close = get_close_matches(args[0], list(self.commands), 1)
            hint = f"did you mean {close[0]}?" if close else f"commands are {', '.join(self.commands)}"
            raise click.UsageError(f"no command {args[0]!r}; {hint}", ctx) from None


class _Setup:
    """What every command may need, opened only when it asks."""

    def __init__(self, knowledge: tuple[str, ...], journal: str | None, plain: bool, debug: bool) -> None:
        self.extra = tuple(Path(k) for k in knowledge)
        self.journal_path = Path(journal) if journal else None
        self.plain = plain
        self.debug = debug

    @property
    def places(self) -> Places:
        from diagnose.job.places import own_places

        return own_places()

    def book(self) -> Book:
        from diagnose.model import load_book, shipped_knowledge

        return load_book(shipped_knowledge(), *self.extra)

    def journal(self) -> Any:
        from diagnose.job.journal import Journal

        return Journal(self.journal_path or self.places.journal)


_CONTEXT = {"help_option_names": ["-h", "--help"], "max_content_width": 79, "terminal_width": 79}


@click.group(cls=_Group, invoke_without_command=True, context_settings=_CONTEXT, epilog=_EXITS)
@click.option("--plain", is_flag=True, help="Numbered lines only: no colour, nothing redrawn.")
@click.option("--knowledge", multiple=True, metavar="DIR", help="Add a folder of knowledge to ours; may be repeated.")
@click.option("--journal", metavar="FILE", help="Keep jobs in this file instead of your own journal.")
@click.option("--debug", is_flag=True, help="Show a traceback when something inside fails.")
@click.version_option(__version__, "--version", message="diagnose %(version)s")
@click.pass_context
def cli(ctx: click.Context, plain: bool, knowledge: tuple[str, ...], journal: str | None, debug: bool) -> None:
    """Find why a conveyor warewasher misbehaves, repair it, and prove the repair.

    \b
    diagnose                       begin a job, step by step
    diagnose resume                go on with the job touched last
    diagnose rank case.toml        rank the causes of a case from a file
    diagnose knowledge list causes see what is known

    Data plate, local codes and licensed practice go before anything said here.
    """
    ctx.obj = _Setup(knowledge, journal, plain, debug)
    if ctx.invoked_subcommand is None:
        _dialogue(ctx.obj, None)


@cli.command()
@click.argument("job", required=False)
@click.pass_obj
def resume(setup: _Setup, job: str | None) -> None:
    """Go on with JOB, or with the open job touched last."""
    _dialogue(setup, job or "")


@cli.command()
@click.argument("job", required=False)
@click.option("--json", "as_json", is_flag=True, help="For machines: one JSON document.")
@click.pass_obj
def jobs(setup: _Setup, job: str | None, as_json: bool) -> None:
    """List all jobs, or what happened in JOB."""
    from diagnose.batch import list_jobs, show_job

    journal = setup.journal()
    if job is None:
        _print(list_jobs(setup.book(), journal, as_json, _width()))
    elif not journal.has(job):
        _fail(f"no job {job[:40]!r}; `diagnose jobs` lists them", NO_SUCH_JOB)
    else:
        _print(show_job(journal, job, as_json, _width()))


@cli.command()
@click.argument("case", metavar="CASE.toml", required=False)
@click.option("--json", "as_json", is_flag=True, help="For machines: one JSON document.")
@click.option("--schema", type=click.Choice(["case", "answer"]), help="Print the JSON Schema of case file or answer.")
@click.pass_obj
def rank(setup: _Setup, case: str | None, as_json: bool, schema: str | None) -> None:
    """Rank the causes of a case from a file."""
    from diagnose.batch.rank import rank_case, schema_text

    if schema:
        _print([schema_text(schema)])
    elif case is None:
        raise click.UsageError("name a case file; knowledge list and knowledge show give the ids to write in it")
    else:
        _print(rank_case(setup.book(), Path(case), as_json, _width()))


@cli.group(cls=_Group)
def knowledge() -> None:
    """See, check and count what the program knows."""


_AS_JSON = click.option("--json", "as_json", is_flag=True, help="For machines: one JSON document.")
_LISTED = ["complaints", "events", "causes", "checks", "machines", "limits", "sources", "cautions", "words"]


@knowledge.command("list")
@click.argument("kind", type=click.Choice(_LISTED))
@_AS_JSON
@click.pass_obj
def knowledge_list(setup: _Setup, kind: str, as_json: bool) -> None:
    """List all entries of a kind, with their titles."""
    from diagnose.batch import list_entries

    _print(list_entries(setup.book(), kind, as_json, _width()))


@knowledge.command("show")
@click.argument("id")
@_AS_JSON
@click.pass_obj
def knowledge_show(setup: _Setup, id: str, as_json: bool) -> None:
    """Show all that an entry says."""
    from diagnose.batch import show_entry

    book = setup.book()
    lines = show_entry(book, id, as_json, _width())
    if lines is None:
        known = [*book.complaints, *book.events, *book.causes, *book.checks, *book.machines, *book.limits]
        close = get_close_matches(id, known, 1)
        _fail(f"no entry {id[:60]!r}" + (f"; did you mean {close[0]}?" if close else ""), FAILURE)
    _print(lines)


@knowledge.command("lint")
@click.argument("folder", metavar="DIR", required=False)
@_AS_JSON
@click.pass_obj
def knowledge_lint(setup: _Setup, folder: str | None, as_json: bool) -> None:
    """Check the knowledge; with DIR, ours with that folder added to it."""
    from diagnose.batch import lint_knowledge
    from diagnose.model import KnowledgeError, load_book, shipped_knowledge

    book: Any
    try:
        book = load_book(shipped_knowledge(), *setup.extra, *([Path(folder)] if folder else []))
    except KnowledgeError as error:
        book = error
    lines, clean = lint_knowledge(book, as_json, _width())
    _print(lines)
    if not clean:
        sys.exit(FAILURE)


@knowledge.command("stats")
@_AS_JSON
@click.pass_obj
def knowledge_stats(setup: _Setup, as_json: bool) -> None:
    """Count what is known, and where it stands."""
    from diagnose.batch import show_stats

    _print(show_stats(setup.book(), as_json))


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
    sys.exit(_guarded(lambda: cli.main(standalone_mode=False)))


def _guarded(run: Callable[[], object]) -> int:
    from diagnose.job.trouble import trouble

    try:
        code = run()
        sys.stdout.flush()
        return code if isinstance(code, int) else OK
    except click.UsageError as error:
        return _say(f"diagnose: {error.format_message()} (see diagnose --help)", USAGE)
    except (click.Abort, KeyboardInterrupt):
        return _say("diagnose: stopped", PAUSED)
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return OK
    except Exception as error:
        if "--debug" in sys.argv:
            traceback.print_exc()
        sentence, code = trouble(error)
        return _say(sentence, code)


def _dialogue(setup: _Setup, job: str | None) -> None:
    from diagnose.dialogue import start

    code = start(setup.book(), setup.journal(), setup.places, job=job, plain=setup.plain)
    if code:
        sys.exit(int(code))


def _width() -> int:
    from diagnose.view.layout import screen_width

    return screen_width(shutil.get_terminal_size().columns)


def _print(lines: list[str]) -> None:
    from diagnose.view.encode import clean, for_charset

    charset = sys.stdout.encoding or "ascii"
    for line in lines:
        for part in line.split("\n"):
            print(for_charset(clean(part), charset))


def _fail(sentence: str, code: int) -> NoReturn:
    _say(f"diagnose: {sentence}", code)
    sys.exit(code)


def _say(sentence: str, code: int) -> int:
    print(sentence.encode("ascii", "replace").decode("ascii"), file=sys.stderr)
    return code
