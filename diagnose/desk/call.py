"""A call: the desk asks aloud and types what it hears, until it is solved, stopped, or a visit is prepared."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import ExitStack
from functools import partial
from pathlib import Path

import msgspec

from diagnose.desk import call_requests as cr
from diagnose.desk import call_show
from diagnose.desk.call_answers import answered_in_call, left_out_in_call
from diagnose.desk.call_flow import wanted_in_call
from diagnose.desk.visit_sheet import visit_lines
from diagnose.desk.voice import Voice
from diagnose.dialogue import requests as rq
from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.run import say_other_knowledge, stays_closed
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.history import read_history
from diagnose.job.hold import hold
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.refusals import Refused
from diagnose.terminal.signals import signals_hang_up
from diagnose.view import call_words, words
from diagnose.view.exits import Exit
from diagnose.view.layout import Line, wrap

__all__ = ["Call", "take_call"]


class Call(Conversation):
    """A conversation on the telephone. Letters and answers are those of any job; what is asked is said aloud."""

    def __init__(self, scene: Scene, front: Front, person: str = "", language: str = "") -> None:
        super().__init__(scene, front)
        self._person = person
        self._language = language
        self._over = False

    @property
    def voice(self) -> Voice:
        call = self._scene.state.call
        return Voice(call.language if call is not None else self._language)

    def welcome(self) -> str:
        return call_words.WELCOME

    def wanted(self) -> rq.Wanted:
        return cr.CallOver(0) if self._over else wanted_in_call(self._scene)

    def ends(self, request: rq.Wanted) -> bool:
        if not isinstance(request, cr.CallOver | rq.Ended):
            return super().ends(request)
        self._say([Line(), *self._last_words()])
        return True

    def shown(self, request: rq.Wanted, resumed: bool) -> list[Line]:
        shown = call_show.show(request, self._scene, self.voice, self._front.width)
        return super().shown(request, resumed) if shown is None else shown

    def again(self, request: rq.Wanted) -> list[Line]:
        lines = call_show.again(request, self._scene, self.voice, self._front.width)
        return lines or super().again(request)

    def answered(self, request: rq.Wanted, text: str) -> Sequence[ev.Event]:
        events = answered_in_call(request, text, self._scene, self._person, self._language)
        return super().answered(request, text) if events is None else events

    def left_out(self, request: rq.Wanted, letter: str) -> Sequence[ev.Event]:
        events = left_out_in_call(request, letter, self._scene)
        return super().left_out(request, letter) if events is None else events

    def _do(self, events: Sequence[ev.Event]) -> None:
        kitchen = self._scene.state.by_kitchen
        for event in events:
            if kitchen and isinstance(event, ev.TurnedTo) and not self._fit(event):
                raise Refused(call_words.NOT_FOR_KITCHENS)
        tame = [_of_kitchen(event) if kitchen else event for event in events]
        super()._do(tame)
        self._over = self._over or any(isinstance(event, ev.CallEnded) for event in tame)

    def _fit(self, event: ev.TurnedTo) -> bool:
        """Whether a kitchen can be asked for what the desk turns to."""
        book = self._scene.book
        if event.what == "check" and event.id in book.checks:
            return bool(book.checks[event.id].aloud)
        return event.what != "repair" or event.id not in book.causes or bool(book.causes[event.id].aloud)

    def _last_words(self) -> list[Line]:
        """What is said at the end, and what whoever comes must know."""
        scene, width = self._scene, self._front.width
        ended = scene.state.call_ended
        lines: list[Line] = []
        if ended is not None and ended.how in ("visit", "stop") and scene.state.stop is None:
            lines += call_show.until_block(scene, self.voice, width) + self.voice.own("come", width)
        return [*lines, *visit_lines(scene, width)]


def _of_kitchen(event: ev.Event) -> ev.Event:
    """A machine that a kitchen tells of: nobody but an operator is there."""
    return msgspec.structs.replace(event, allowed=("operator",)) if isinstance(event, ev.Opened) else event


def take_call(
    book: Book,
    journal: Journal,
    machines: Path,
    front: Front,
    job: str | None = None,
    holds: Path | None = None,
    new_name: str | None = None,
    person: str = "",
    language: str = "",
) -> Exit:
    """Take a call, or go on with the call of `job`, until it is over or paused. Raises JobHeld and JournalError."""
    name = job or new_name or journal.new_name()
    with ExitStack() as stack:
        if holds is not None:
            stack.enter_context(hold(holds, name))
        stack.enter_context(signals_hang_up(front))
        scene = Scene(Session(book, journal, name), machines, history=partial(read_history, journal, book, but=name))
        try:
            if stays_closed(scene, front):
                return Exit.OK
            say_other_knowledge(scene, front)
            Call(scene, front, person, language).run()
        except Paused:
            told = f"{call_words.PAUSED}{name}" if scene.session.records else words.NOT_BEGUN
            front.say(wrap(told, front.width))
            return Exit.PAUSED
    return Exit.OK
