"""What the letters for leaving a question out come to, question by question."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.dialogue import requests as rq
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.terminal.refusals import Refused
from diagnose.view import words

__all__ = ["left_out"]


def left_out(request: rq.Wanted, letter: str, scene: Scene) -> Sequence[ev.Event]:
    """What it means to leave a question out. Raises Refused where it can't be left out."""
    line = _line_of(request, scene)
    if line:
        return [ev.TurnedTo("leave", line=line)]
    is_check = isinstance(request, rq.AskCaution) and request.before in scene.book.checks
    match request:
        case rq.AskCheck(_, check):
            return [ev.Skipped(check, "don't know" if letter == "?" else "can't reach")]
        case rq.AskCaution(_, before):
            return [ev.Skipped(before, "can't reach") if is_check else ev.TurnedTo("advice")]
        case rq.AskContext(_, question):
            return [ev.ContextGiven(question)]
        case rq.AskFigure(_, figure):
            return [ev.PlateRead(figure)]
        case rq.Describe(_, "serial" | "site" as what):
            return [ev.MachineDescribed(what)]
        case rq.AskRepair() | rq.AskGone() | rq.AskEnd() | rq.AskFound() | rq.AskSet() | rq.AskLeave():
            return [ev.TurnedTo("advice")]
        case rq.AskHint(_, hint):
            return [ev.HintAnswered(hint.seq, hint.writer, False)]
        case rq.AskOn():
            return [ev.TurnedTo("advice")]
        case rq.OfferPlate():
            return [ev.PlateWanted(False)]
        case rq.AskComplaint(_, said) if said:
            return [ev.StepDone("complaints")]
        case rq.AskSafety():
            raise Refused(words.BE_SURE)
        case rq.AskMachine():
            raise Refused(words.MACHINE_HINT)
        case rq.AskComplaint():
            raise Refused(words.COMPLAINT_NEEDED)
    raise Refused(words.GO_NO_SKIP)


def _line_of(request: rq.Wanted, scene: Scene) -> str:
    """The line of the sheet a question belongs to: such a line is left with a reason. Empty: no line's."""
    if isinstance(request, rq.AskFailed | rq.AskWho):
        return request.line
    if not isinstance(request, rq.AskCheck | rq.AskCaution) or not scene.on_sheet:
        return ""
    line = scene.sheet.of_check(request.check if isinstance(request, rq.AskCheck) else request.before)
    return line.id if line is not None else ""
