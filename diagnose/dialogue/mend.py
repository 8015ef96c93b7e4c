"""What to do next, repairs, whether the complaint is gone, and the end of a job."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from diagnose.dialogue import requests as rq
from diagnose.dialogue.measure import cautions_due, flags, option_text, shown_just_now
from diagnose.dialogue.scene import Scene
from diagnose.handover.sheet import failing
from diagnose.job import events as ev
from diagnose.terminal.choosing import number_from
from diagnose.terminal.refusals import Refused
from diagnose.view import sheet_words, together_words, words
from diagnose.view.layout import Line, wrap
from diagnose.view.question import choices, heading, repair_block

__all__ = ["answer", "show"]

Mend = rq.Decide | rq.AskRepair | rq.AskGone | rq.AskClose | rq.AskEnd
# In the order of words.FOUND and words.END_WAYS.
_FOUND: tuple[Literal["as expected", "sound", "can't tell"], ...] = ("as expected", "sound", "can't tell")
_ENDS: tuple[Literal["help called", "given up"], ...] = ("help called", "given up")


def show(request: Mend, scene: Scene, width: int, resumed: bool = False) -> list[Line]:
    """The question as printed."""
    match request:
        case rq.Decide(number, options):
            lines = heading(number, width) + wrap(words.NEXT if options else words.NO_ADVICE, width)
            lines += choices([option_text(option, scene) for option in options], width)
            return lines + wrap(words.DECIDE_HINT, width, "  ", role="dim")
        case rq.AskRepair(number, name):
            cause = scene.book.causes[name]
            brief = shown_just_now(cause, scene, resumed)
            due = cautions_due(cause, scene, width, resumed)
            lines = repair_block(cause, number, flags(scene, cause.cautions), width, brief, due)
            lines += wrap(words.WHAT_FOUND_NO_FAULT if cause.no_fault else words.WHAT_FOUND, width)
            found = words.FOUND_NO_FAULT if cause.no_fault else words.FOUND
            return lines + choices(list(found.values()), width)
        case rq.AskGone(number, complaint):
            lines = heading(number, width) + wrap(f"{words.GONE} {scene.book.title(complaint)}", width)
            return lines + choices([words.GONE_YES, words.GONE_NO], width)
        case rq.AskClose(number, how):
            lines = heading(number, width) + wrap(words.ALL_GONE, width)
            return lines + choices([f"close the job: {words.CLOSED[how]}", words.MORE_WRONG], width)
        case rq.AskEnd(number):
            lines = heading(number, width) + wrap(words.END, width)
            ways = [
                *([sheet_words.BACK_TO_SHEET] if _lines_in_doubt(scene) else []),
                *(text for _, text in words.END_WAYS),
            ]
            return lines + choices([*ways, words.END_BACK, together_words.HAND_ON], width)


def answer(request: Mend, text: str, scene: Scene) -> Sequence[ev.Event]:
    """What the answer means. Raises Refused."""
    match request:
        case rq.Decide(options=()):
            raise Refused(f"{words.NO_ADVICE} {words.DECIDE_HINT}")
        case rq.Decide(_, options):
            return [_decided(options[number_from(text, len(options), words.DECIDE_HINT) - 1])]
        case rq.AskRepair(_, name):
            return [ev.Repaired(name, _FOUND[number_from(text, len(_FOUND)) - 1])]
        case rq.AskGone(_, complaint):
            if text == "?":
                return [ev.TurnedTo("advice")]
            return [ev.ComplaintSaid(complaint, number_from(text, 2) == 2)]
        case rq.AskClose(_, how):
            if number_from(text, 2) == 1:
                return [ev.Closed(how)]
            return [ev.TurnedTo("complaint")]
        case rq.AskEnd():
            doubt = _lines_in_doubt(scene)
            chosen = number_from(text, len(_ENDS) + 2 + bool(doubt)) - bool(doubt)
            if not chosen:
                return doubt
            if chosen <= len(_ENDS):
                return [ev.Closed(_ENDS[chosen - 1])]
            return [ev.TurnedTo("advice" if chosen == len(_ENDS) + 1 else "hand on")]


def _lines_in_doubt(scene: Scene) -> list[ev.Event]:
    """On a handover: the lines whose cause is being looked for are left, as far as it was not found."""
    if scene.state.purpose != "handover" or scene.state.machine is None:
        return []
    looked_for = failing(scene.sheet)
    lines = [line for line in scene.sheet.lines if line.comes_to in looked_for and line.verdict != "pass"]
    return [ev.LineLeft(line.id, "remark", sheet_words.NOT_FOUND) for line in lines]


def _decided(option: rq.Option) -> ev.Event:
    return ev.TurnedTo("end") if option.what == "help" else ev.TurnedTo(option.what, option.id)
