"""What the commands share: the group that offers near words, what a command may open, printing."""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from difflib import get_close_matches
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

import click

if TYPE_CHECKING:
    from diagnose.dialogue.scene import Scene
    from diagnose.fleet.worker import Worker
    from diagnose.job.crew import Crew
    from diagnose.job.journal import Journal
    from diagnose.job.places import Places
    from diagnose.job.settings import Settings
    from diagnose.model import Book, Machine

__all__ = ["AS_JSON", "Group", "Setup", "aside", "fail", "found", "machine_named", "say", "show", "width"]

SOON = 5.0  # seconds to wait for a job that another computer may have sent
AS_JSON = click.option("--json", "as_json", is_flag=True, help="For machines: one JSON document.")


class Group(click.Group):
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


class Setup:
    """What every command may need, opened only when it asks."""

    def __init__(
        self,
        knowledge: tuple[str, ...],
        journal: str | None,
        plain: bool,
        debug: bool,
        who: tuple[str, ...] = (),
        keep_closed: tuple[str, ...] = (),
        ours_only: bool = False,
    ) -> None:
        self.ours_only = ours_only
        self.extra = tuple(Path(k) for k in knowledge)
        self.journal_path = Path(journal) if journal else None
        self.plain = plain
        self.debug = debug
        self.who = who
        self.keep_closed = keep_closed

    @property
    def places(self) -> Places:
        from diagnose.job.places import own_places

        return own_places()

    def settings(self) -> Settings:
        """What the user set. Raises SettingsError."""
        from diagnose.job.settings import read_settings

        return read_settings(self.places.config)

    @cached_property
    def settings_or_none(self) -> Settings:
        """What the user set, where no job must wait for a file: one that can't be used is said, and left aside."""
        from diagnose.job.settings import Settings, SettingsError

        try:
            return self.settings()
        except SettingsError as error:
            aside(f"diagnose: {error}\n")
            return Settings()

    @property
    def person(self) -> str:
        """The name of who works here, as they say it: `DIAGNOSE_NAME`, or what they set."""
        return (os.environ.get("DIAGNOSE_NAME", "").strip() or self.settings_or_none.name)[:60]

    def folders(self) -> tuple[Path, ...]:
        """Where knowledge is read: ours, the shop's own where there is one, then those named on the command line."""
        from diagnose.model import shipped_knowledge

        own = self.places.knowledge
        return (shipped_knowledge(), *([own] if own.is_dir() and not self.ours_only else []), *self.extra)

    def book(self) -> Book:
        from diagnose.model import KnowledgeError
        from diagnose.model.cache import cached_book

        folders = self.folders()
        try:
            return cached_book(folders, self.places.cache)
        except KnowledgeError as error:
            if self.places.knowledge not in folders:
                raise
            hint = "Mend it, or go on without your shop's folder: diagnose --ours-only"
            raise KnowledgeError(error.problems, hint) from None

    def crew(self, book: Book) -> Crew:
        """Who works, as said on the command line."""
        from diagnose.job.crew import WHO, crew_of

        for name in self.who:
            if name not in WHO:
                raise click.UsageError(f"nobody here is called {name!r}; say one of {', '.join(WHO)}")
        for access in self.keep_closed:
            if access not in book.access:
                raise click.UsageError(f"nothing here is called {access!r}; say one of {', '.join(book.access)}")
        return crew_of(self.who, self.keep_closed)

    def journal(self) -> Journal:
        from diagnose.job.journal import Journal

        return Journal(self.journal_path or self.places.journal, writer=None)

    def looking_on(self, book: Book, job: str, worker: Worker | None) -> Callable[[], Scene]:
        """Opens the job for one who follows it: on a journal of its own, what is written there goes out at once."""

        def opened() -> Scene:
            from diagnose.dialogue.scene import Scene as OwnScene
            from diagnose.job.session import Session

            own = self.journal()
            if worker is not None:
                own.hear(worker.wake)
            return OwnScene(Session(book, own, job), self.places.machines)

        return opened

    @contextmanager
    def background(self, journal: Journal) -> Iterator[Worker | None]:
        """Meanwhile send to the store of the fleet and fetch from it, where one is set; no job waits for it."""
        address = self.settings_or_none.store
        if not address:
            yield None
            return
        from diagnose.fleet.worker import start

        worker = start(journal.path, address)
        journal.hear(worker.wake)
        try:
            yield worker
        finally:
            worker.stop(1.0)
            _tell_left(worker, journal.path)


def _tell_left(worker: Worker, journal: Path) -> None:
    """Say what did not reach the store, and that the clocks differ where they do, once a job is left."""
    from diagnose.fleet.exchange import Exchange
    from diagnose.fleet.sync import SKEW
    from diagnose.job.journal import JournalError
    from diagnose.view import fleet_words as words

    if worker.status.state == "refused":
        aside(f"diagnose: {worker.status.sentence}\n")
    for line in words.ahead(worker.ahead, SKEW):
        aside(f"{line}\n")
    try:
        exchange = Exchange(journal)
        unsent = exchange.unsent()
        exchange.close()
    except JournalError:  # said by whoever needed it
        return
    if unsent and not worker.only_reads:
        aside(words.UNSENT.format(events=words.events(unsent)) + "\n")


def found(journal: Journal, job: str, worker: Worker | None) -> str | None:
    """The job of this name; one that is not here may come from the store, if it comes soon."""
    from time import monotonic

    from diagnose.view import fleet_words as words

    name = journal.find(job)
    if name or worker is None:
        return name
    aside(words.ASKING.format(job=job[:40]) + "\n")
    until = monotonic() + SOON
    while not (name := journal.find(job)) and monotonic() < until and not worker.looked.wait(0.05):
        pass
    return name or journal.find(job)


def machine_named(setup: Setup, book: Book, name: str) -> Machine:
    """A saved machine, or a type by its id. Raises MachineError."""
    from diagnose.job.machines import MachineError, list_machines, load_machine
    from diagnose.model import Machine as OwnMachine

    saved = [m.name for m in list_machines(setup.places.machines)]
    if name in book.machines and name not in saved:
        return OwnMachine(name, book.machines[name])
    near = get_close_matches(name, [*saved, *book.machines], 1)
    if near and name.casefold() not in (m.casefold() for m in saved):
        raise MachineError(f"no machine {name[:40]!r} is saved and no type is called so; did you mean {near[0]}?")
    return load_machine(setup.places.machines, name).machine(book)


def width() -> int:
    from diagnose.view.layout import screen_width

    return screen_width(shutil.get_terminal_size().columns)


def show(lines: list[str]) -> None:
    from diagnose.view.encode import clean, for_charset

    charset = sys.stdout.encoding or "ascii"
    for line in lines:
        for part in line.split("\n"):
            print(for_charset(clean(part), charset))


def fail(sentence: str, code: int) -> NoReturn:
    say(f"diagnose: {sentence}", code)
    sys.exit(code)


def say(sentence: str, code: int) -> int:
    aside(sentence + "\n")
    return code


def aside(text: str) -> None:
    """Print beside the answer, on stderr, in what its charset can show."""
    from diagnose.view.encode import clean, for_charset

    lines = "\n".join(for_charset(clean(part), sys.stderr.encoding or "ascii") for part in text.split("\n"))
    print(lines, end="", file=sys.stderr, flush=True)
