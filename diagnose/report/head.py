"""The head of a report: how the job stands, the machine, the visits, and what was complained of."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.handover.sheet import sheet_of
from diagnose.job.crew import WHO as CREW
from diagnose.report.document import Block, Facts, Items, Paragraph
from diagnose.report.dossier import Dossier, Visit
from diagnose.report.words import CLOSED, WHO, duration

__all__ = ["complaint_blocks", "head_blocks", "standing_text", "subtitle"]


def subtitle(dossier: Dossier) -> str:
    """Which job, and of which days."""
    texts, days = dossier.texts, [visit.day.isoformat() for visit in dossier.visits]
    if not days:
        return dossier.job
    if len(days) == 1:
        return f"{dossier.job}, {days[0]}"
    return texts.say("{job}, {first} to {last}", job=dossier.job, first=days[0], last=days[-1])


def head_blocks(dossier: Dossier) -> Iterator[Block]:
    """How it stands, in a sentence; then the machine, the place, the days and the crew."""
    texts = dossier.texts
    yield Paragraph(standing_text(dossier), "lead")
    yield from _stopped(dossier)
    yield Facts(tuple((label, text) for label, text in _facts(dossier) if text))
    if not dossier.closed and dossier.state.machine is None:
        yield Paragraph(texts.say("The machine is not known yet, so there is nothing more to report."))


def standing_text(dossier: Dossier) -> str:
    """An open job says so plainly; a closed one how it ended."""
    texts, state = dossier.texts, dossier.state
    if state.closed is None:
        return texts.say("This job is still open. What follows is how it stands now.")
    how = texts.say(CLOSED[state.closed.how])
    gone = dict.fromkeys(c for c, _, _ in state.complaints if c not in state.present)
    if state.closed.how == "repaired" and gone and not state.present:
        titles = "; ".join(dossier.title(c) for c in gone)
        return texts.say("Closed: {how}. Gone: {complaints}.", how=how, complaints=titles)
    if state.closed.how == "handed over" and state.machine is not None:
        remarks = len(sheet_of(dossier.book, state).remarks)
        if not remarks:
            return texts.say("Handed over without a remark.")
        return texts.count("Handed over with {number} remark.", "Handed over with {number} remarks.", remarks)
    return texts.say("Closed: {how}.", how=how)


def _stopped(dossier: Dossier) -> Iterator[Block]:
    stop = dossier.book.stops.get(dossier.state.stop or "")
    if stop is not None:
        told = " ".join(dossier.known(text) for text in (stop.ask, *stop.instruction))
        yield Paragraph(dossier.texts.say("Stopped for a danger: {told}", told=told), "caution")


def _facts(dossier: Dossier) -> Iterator[tuple[str, str]]:
    texts, machine = dossier.texts, dossier.state.machine
    if machine is not None:
        own = machine.name if machine.name != machine.type.id else ""
        yield texts.say("Machine"), own
        yield (texts.say("Type") if own else texts.say("Machine")), dossier.known(machine.type.title)
        yield texts.say("Serial number"), machine.serial
        yield texts.say("Site"), machine.site
    visits = dossier.visits
    label = texts.count("Visit", "Visits", len(visits))
    yield label, "; ".join(_visit(visit) for visit in visits)
    if len(visits) > 1:
        yield texts.say("Time on record"), duration(sum(v.minutes for v in visits), texts)
    crew = [who for who in CREW if who in dossier.state.allowed]
    if len(crew) > 1:
        crew.remove("operator")
    yield texts.say("Who worked"), ", ".join(texts.say(WHO[who]) for who in crew)


def _visit(visit: Visit) -> str:
    first, last = f"{visit.first:%H:%M}", f"{visit.last:%H:%M}"
    return f"{visit.day.isoformat()}, {first}" if first == last else f"{visit.day.isoformat()}, {first}–{last}"


def complaint_blocks(dossier: Dossier) -> Iterator[Block]:
    """What was complained of, as told, and what was said of the job as a whole."""
    texts, state, book = dossier.texts, dossier.state, dossier.book
    said = dict.fromkeys(c for c, _, _ in state.complaints)
    if said:
        yield Items(tuple(_complaint(dossier, each) for each in said))
    answers = [(book.context[q].ask, a) for q, a in state.context.items() if q in book.context]
    if answers:
        yield Facts(tuple((dossier.known(ask), dossier.known(answer)) for ask, answer in answers))
    elif said and state.context_asked:
        yield Paragraph(texts.say("Nothing was known of when and how it began."))


def _complaint(dossier: Dossier, complaint: str) -> str:
    texts, state = dossier.texts, dossier.state
    title = dossier.title(complaint)
    if complaint not in state.present:
        return texts.say("{complaint} (gone)", complaint=title)
    if state.stage:
        return texts.say("{complaint} (still there)", complaint=title)
    return texts.say("{complaint} (as told)", complaint=title)
