"""Who worked on a job, where there were several: who was at the machine, calls, hand-overs, what was answered twice."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.job import events as ev
from diagnose.language import mark
from diagnose.report.document import Block, Row, Table
from diagnose.report.dossier import Dossier
from diagnose.view.history import answer_text

__all__ = ["people_blocks"]

_CALLERS = {"kitchen": mark("somebody of the kitchen"), "technician": mark("a technician")}
_ENDS = {
    "solved": mark("The call ended: solved on the telephone."),
    "stop": mark("The call ended: the machine must not be used."),
    "visit": mark("The call ended: somebody must come."),
    "goes on": mark("The call ended: the technician goes on."),
}
_WAITS = {
    "technician": mark("Waits for a technician."),
    "desk": mark("Waits for the desk."),
    "parts": mark("Waits for parts."),
    "another trade": mark("Waits for another trade."),
    "kitchen": mark("Waits for the kitchen."),
}


def people_blocks(dossier: Dossier) -> Iterator[Block]:
    """Nothing where one person worked alone."""
    texts = dossier.texts
    told = [(record, _told(record, dossier)) for record in dossier.records]
    rows = tuple(Row((record.at[:16].replace("T", " "), text)) for record, text in told if text)
    if rows:
        yield Table(texts.say("People and calls"), (texts.say("When (UTC)"), texts.say("What")), rows)
    twice = tuple(
        Row((answer_text(each.told.event, dossier.book), answer_text(each.counts.event, dossier.book)))
        for each in dossier.state.beside
    )
    if twice:
        headers = (texts.say("Told by one"), texts.say("By another; this one counts"))
        yield Table(texts.say("Answered by two people"), headers, twice)


def _told(record: ev.Record, dossier: Dossier) -> str:
    texts, event = dossier.texts, record.event
    match event:
        case ev.Present(name, "machine"):
            return texts.say("At the machine: {who}.", who=name or record.writer)
        case ev.Present(name, _):
            return texts.say("At the desk: {who}.", who=name or record.writer)
        case ev.CallBegun(caller, name):
            return texts.say("On the telephone: {who}.", who=name or texts.say(_CALLERS[caller]))
        case ev.CallEnded(how, text):
            return f"{texts.say(_ENDS[how])} {text}".strip()
        case ev.HandedOn(to, text):
            return f"{texts.say(_WAITS[to])} {text}".strip()
    return ""
