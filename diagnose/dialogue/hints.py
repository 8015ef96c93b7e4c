"""Between people: hints taken or left, what others wrote meanwhile, and who goes on."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.dialogue import requests as rq
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.model import fits
from diagnose.terminal.choosing import number_from
from diagnose.view import together_words as words
from diagnose.view.layout import Line, wrap
from diagnose.view.question import choices, heading
from diagnose.view.together import event_text, hint_text, who

__all__ = ["answer", "others_lines", "show", "waiting_lines", "ways"]

Between = rq.AskHint | rq.AskOn
_INSIDE = "  "  # before each further line of what others typed, so that none of it looks like a line of ours


def show(request: Between, scene: Scene, width: int) -> list[Line]:
    """The question as printed."""
    lines = heading(request.number, width)
    if isinstance(request, rq.AskOn):
        return lines + wrap(words.WHO_GOES_ON, width)
    hint = request.hint
    told = f"{words.HINT_FROM.format(who=who(scene.state, hint.writer))} {hint_text(hint.given, scene.book)}"
    lines += wrap(told, width, "", _INSIDE, "question")
    lines += wrap(words.HINT_NEVER, width, "  ", role="dim")
    return lines + choices(ways(request, scene), width)


def ways(request: rq.AskHint, scene: Scene) -> list[str]:
    """How a hint can be answered: taken first, left second."""
    if _possible(request, scene):
        return [words.HINT_TAKE, words.HINT_LEAVE]
    return [words.HINT_NOTED, words.HINT_NOT_SO]


def _possible(request: rq.AskHint, scene: Scene) -> bool:
    """Whether the hint names a check that can be made on this machine."""
    check, machine = scene.book.checks.get(request.hint.given.check), scene.state.machine
    return check is not None and not check.computed and machine is not None and fits(machine, check.fits)


def answer(request: Between, text: str, scene: Scene) -> Sequence[ev.Event]:
    """What was typed as an event. Raises Refused."""
    if isinstance(request, rq.AskOn):
        return [ev.HandedOn("technician", text)]
    return [ev.HintAnswered(request.hint.seq, request.hint.writer, number_from(text, 2) == 1)]


def others_lines(fresh: Sequence[ev.Record], scene: Scene, width: int) -> list[Line]:
    """What others wrote into the job meanwhile; a hint comes as a question of its own."""
    lines: list[Line] = []
    for record in fresh:
        if isinstance(record.event, ev.Hinted):
            told = words.HINT_CAME.format(who=who(scene.state, record.writer))
            lines += wrap(told, width, " ", _INSIDE, "good")
        elif not isinstance(record.event, ev.TurnedTo | ev.InstrumentChosen | ev.Acknowledged):
            lines += wrap(event_text(record, scene.state, scene.book), width, " ", _INSIDE, "good")
    return [Line(), *lines] if lines else []


def waiting_lines(scene: Scene, width: int) -> list[Line]:
    """Whom the job waits for, and how it goes on."""
    waits = scene.state.waits
    assert waits is not None
    whom = words.WAITS_FOR[waits.to] + (f": {waits.text}" if waits.text else "")
    job = scene.session.job
    told = wrap(words.WAITS.format(job=job, whom=whom), width, "", _INSIDE)
    return [*told, *wrap(words.GO_ON_WITH.format(job=job), width)]
