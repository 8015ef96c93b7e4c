"""Run one job with one person: begin or go on, talk, and say how to come back."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import ExitStack, suppress
from functools import partial
from pathlib import Path
from typing import Literal

from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.crew import Crew
from diagnose.job.folding import standing
from diagnose.job.history import read_history
from diagnose.job.hold import hold
from diagnose.job.instruments import OwnInstrument
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.signals import signals_hang_up
from diagnose.view import words
from diagnose.view.exits import Exit
from diagnose.view.layout import wrap
from diagnose.view.question import choices

__all__ = ["run_job", "say_other_knowledge", "stays_closed"]


def run_job(
    book: Book,
    journal: Journal,
    machines: Path,
    front: Front,
    job: str | None = None,
    holds: Path | None = None,
    crew: Crew | None = None,
    new_name: str | None = None,
    own: Sequence[OwnInstrument] = (),
    purpose: Literal["repair", "handover"] = "repair",
    person: str = "",
) -> Exit:
    """Begin a job, or go on with `job`, until it is closed or paused. Raises JobHeld and JournalError.

    Every answer is on disk before the next question; nothing is written before the first answer.
    `new_name` names a new job where a name made up here won't do; `own` are the technician's instruments, `purpose` is
    that of a job begun now, `person` the name of who works here.
    """
    if job is not None and not journal.has(job):
        front.say(wrap(f"There is no job {job}. `diagnose jobs` lists them.", front.width))
        return Exit.NO_SUCH_JOB
    name = job or new_name or journal.new_name()
    with ExitStack() as stack:
        if holds is not None:
            stack.enter_context(hold(holds, name))
        stack.enter_context(signals_hang_up(front))
        past = partial(read_history, journal, book, but=name)
        scene = Scene(Session(book, journal, name), machines, crew or Crew(), own, purpose, person, past)
        try:
            if stays_closed(scene, front):
                return Exit.OK
            say_other_knowledge(scene, front)
            _arrive(scene)
            Conversation(scene, front).run()
        except Paused:
            _say_paused(scene, front)
            return Exit.PAUSED
        return Exit.OK if scene.state.waits is None else Exit.PAUSED


def stays_closed(scene: Scene, front: Front) -> bool:
    """A closed job that is resumed can be opened again, on purpose only."""
    closed = scene.state.closed
    if closed is None:
        return False
    front.say(wrap(f"Job {scene.session.job} is closed: {words.CLOSED[closed.how]}.", front.width))
    front.say(choices(["leave it closed", "open it again"], front.width))
    if front.ask().rstrip(".") != "2":
        return True
    # The stop that closed it must be answered anew.
    for record in reversed(standing(scene.session.records)):
        stop = isinstance(record.event, ev.SafetyAnswered) and record.event.stop is not None
        if stop or isinstance(record.event, ev.Closed):
            scene.session.do(scene.session.withdrawal(record.number))
    return False


def _arrive(scene: Scene) -> None:
    """Say who is at the machine now, where that is not plain: after a call, after others, or while a job waits."""
    state, writer = scene.state, scene.session.writer
    known = state.presences.get(writer)
    others = any(record.writer != writer for record in scene.session.records)
    moved = state.waits is not None or state.call is not None or (known is not None and known.place == "desk")
    if moved or ((others or scene.person) and scene.session.records and (known is None or known.name != scene.person)):
        scene.session.do(ev.Present(scene.person, "machine", scene.crew.who, scene.crew.keep_closed))


def say_other_knowledge(scene: Scene, front: Front) -> None:
    """A job begun with other knowledge goes on with this one; what no longer fits is named, not dropped in silence."""
    begun = scene.state.knowledge
    if begun and begun != scene.book.fingerprint:
        front.say(wrap(words.OTHER_KNOWLEDGE, front.width))
    for unread in scene.state.unread:
        front.say(wrap(unread, front.width, "  - ", "    "))


def _say_paused(scene: Scene, front: Front) -> None:
    text = f"{words.PAUSED}{scene.session.job}" if scene.session.records else words.NOT_BEGUN
    with suppress(OSError, ValueError):  # the terminal may be gone; all is on disk
        front.say(wrap(text, front.width))
