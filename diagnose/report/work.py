"""The work: what proves it, parts, minutes, and the cautions that went with it."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.job import events as ev
from diagnose.model import Cause, Reading
from diagnose.report.document import Block, Facts, Items, Paragraph, Row, Table
from diagnose.report.dossier import Dossier
from diagnose.report.readings import judged, reading_text
from diagnose.report.words import FOUND, duration

__all__ = ["caution_blocks", "part_blocks", "proof_blocks", "time_blocks", "used_parts"]


def proof_blocks(dossier: Dossier) -> Iterator[Block]:
    """Readings after the last repair that show the complaint or the cause gone; that there are none is said."""
    texts, state, book = dossier.texts, dossier.state, dossier.book
    if not state.repairs:
        return
    entries = [book.causes.get(r.cause) for r in state.repairs if r.found != "sound"]
    complaints = [book.complaints.get(c) for c, _, _ in state.complaints]
    proving = {check for entry in (*entries, *complaints) if entry is not None for check in entry.prove_by}
    newest = {r.check: r for r in dossier.readings if r.stage == state.stage and r.stage}
    found = [reading for check, reading in newest.items() if check in proving]
    if found:
        yield Items(tuple(_proof(dossier, reading) for reading in found))
    elif state.stage:
        yield Paragraph(texts.say("No reading after the repair proves it."), "caution")
    gone = dict.fromkeys(c for c, stage, present in state.complaints if not present and c not in state.present)
    for complaint in gone:
        yield Paragraph(texts.say("Said to be gone after the repair: {complaint}.", complaint=dossier.title(complaint)))
    for complaint in state.present if state.stage else ():
        yield Paragraph(texts.say("Still complained of: {complaint}.", complaint=dossier.title(complaint)), "caution")


def _proof(dossier: Dossier, reading: Reading) -> str:
    _, word = judged(dossier, reading)
    return dossier.texts.say(
        "{check}: {reading}, {word}",
        check=dossier.title(reading.check),
        reading=reading_text(dossier, reading),
        word=word,
    )


def used_parts(dossier: Dossier) -> Iterator[tuple[str, Cause, str]]:
    """(part in general words, the cause it was for, what was found) of every repair that changed something."""
    for repair in dossier.state.repairs:
        cause = dossier.book.causes.get(repair.cause)
        if cause is not None and repair.found != "sound":
            for part in cause.parts:
                yield part, cause, repair.found


def part_blocks(dossier: Dossier) -> Iterator[Block]:
    """Parts of the repairs made, in general words."""
    texts = dossier.texts
    rows = [
        Row((dossier.known(part), dossier.known(cause.title), texts.say(FOUND[found])))
        for part, cause, found in used_parts(dossier)
    ]
    if rows:
        headers = (texts.say("Part"), texts.say("For"), texts.say("Found"))
        yield Table(texts.say("Parts of the repairs made, in general words"), headers, tuple(rows))
    elif dossier.state.stage:
        yield Paragraph(texts.say("The work needed no parts."))


def time_blocks(dossier: Dossier) -> Iterator[Block]:
    """Minutes on record, and the minutes the same work usually takes."""
    texts, book, state = dossier.texts, dossier.book, dossier.state
    pairs = []
    if dossier.visits:
        total = sum(visit.minutes for visit in dossier.visits)
        pairs.append((texts.say("From first to last record, breaks included"), duration(total, texts)))
    checks = sum(book.checks[r.check].minutes for r in dossier.readings)
    if checks:
        pairs.append((texts.say("Usual for the checks made"), duration(checks, texts)))
    repairs = sum(book.causes[r.cause].minutes for r in state.repairs if r.cause in book.causes)
    if repairs:
        pairs.append((texts.say("Usual for the repairs made"), duration(repairs, texts)))
    if pairs:
        yield Facts(tuple(pairs))
    if checks or repairs:
        yield Paragraph(texts.say("Usual times are without opening, making safe and travel."), "note")


def caution_blocks(dossier: Dossier) -> Iterator[Block]:
    """The cautions of all that was read and repaired, and before which of it each was shown."""
    texts, book = dossier.texts, dossier.book
    before: dict[str, dict[str, None]] = {}
    for record in dossier.records:
        match record.event:
            case ev.ReadingTaken(check) if check in book.checks:
                shown = book.checks[check].cautions
                target = check
            case ev.Repaired(cause) if cause in book.causes:
                shown = book.causes[cause].cautions
                target = cause
            case ev.Acknowledged(cautions, target):
                shown = cautions
            case _:
                continue
        for caution in shown:
            before.setdefault(caution, {})[target] = None
    rows = [
        Row((title, text, "; ".join(dossier.title(t) for t in before[caution])))
        for caution, (title, text) in _told(dossier, before).items()
    ]
    if rows:
        headers = (texts.say("Caution"), texts.say("What it asks"), texts.say("Went before"))
        yield Table(texts.say("Cautions shown before the steps they belong to"), headers, tuple(rows))


def _told(dossier: Dossier, wanted: dict[str, dict[str, None]]) -> dict[str, tuple[str, str]]:
    book = dossier.book
    return {
        name: (dossier.known(caution.title), " ".join(dossier.known(text) for text in caution.text))
        for name, caution in book.cautions.items()
        if name in wanted
    }
