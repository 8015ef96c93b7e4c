"""`diagnose knowledge new`: an entry of one's own, asked field by field."""

from __future__ import annotations

import contextlib
import io
import sys
from pathlib import Path

import click

from diagnose.cli.kit import Setup, fail, show, width
from diagnose.view.exits import Exit

__all__ = ["knowledge_new"]


@click.command("new")
@click.argument("kind", metavar="KIND", type=click.Choice(["assembly", "cause", "check", "complaint", "event"]))
@click.option("--into", metavar="DIR", help="Write into this folder of knowledge; else into your own.")
@click.pass_obj
def knowledge_new(setup: Setup, kind: str, into: str | None) -> None:
    """Write an entry of your own, asked field by field.

    KIND: assembly, cause, check, complaint or event. Each question says what
    is wanted, with an example. Ctrl-C keeps what was answered: the same
    command offers it again.
    """
    from diagnose.terminal.matcher import find
    from diagnose.writing.folder import CantWriteError
    from diagnose.writing.new import New
    from diagnose.writing.talk import EndOfInputError, Talk

    if isinstance(sys.stdin, io.TextIOWrapper):
        sys.stdin.reconfigure(errors="replace")  # what is no text is then refused as a sign no screen has
    home = setup.places
    new = New(
        kind,
        setup.folders(),
        Path(into) if into else home.knowledge,
        home.home / "drafts",
        Talk(_read, lambda lines: show(list(lines)), width()),
        lambda words, texts: [match.id for match in find(words, texts)],
    )
    try:
        written = new.run()
    except CantWriteError as error:
        fail(str(error), Exit.BAD_DATA)
    except (EndOfInputError, KeyboardInterrupt):
        print()
        written = False
    if not written:
        if (new.drafts / f"{kind}.json").exists():
            fail(f"kept as a draft; go on with: diagnose knowledge new {kind}", Exit.PAUSED)
        fail("stopped; nothing was written", Exit.PAUSED)


def _read(prompt: str) -> str | None:
    """A line as typed, echoed where it comes from a pipe; None at the end."""
    if sys.stdin.isatty():
        with contextlib.suppress(ImportError):
            import readline  # noqa: F401  # the arrow keys then work in input()
        try:
            return input(prompt)
        except EOFError:
            return None
    print(prompt, end="", flush=True)
    line = sys.stdin.readline()
    if not line:
        return None
    show([line.rstrip("\n")])
    return line
