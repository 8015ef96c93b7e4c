"""The rest of a report: advice to the kitchen, what was not checked or only assumed, notes, and how the job ended."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.job import events as ev
from diagnose.model import PLATE_FIGURES
from diagnose.report.document import Block, Facts, Items, Paragraph, Row, Table
from diagnose.report.dossier import Dossier
from diagnose.report.words import CLOSED, SKIPPED
from diagnose.view import percent

__all__ = ["advice_blocks", "assumed_blocks", "closing_blocks", "note_blocks", "unchecked_blocks"]


def advice_blocks(dossier: Dossier) -> Iterator[Block]:
    """What the kitchen is told afterwards, of each complaint."""
    book = dossier.book
    said = dict.fromkeys(c for c, _, _ in dossier.state.complaints if c in book.complaints)
    advice = dict.fromkeys(text for complaint in said for text in book.complaints[complaint].advice)
    if advice:
        yield Items(tuple(dossier.known(text) for text in advice))


def unchecked_blocks(dossier: Dossier) -> Iterator[Block]:
    """Checks that were asked for and not answered, with why; figures of the plate that were assumed."""
    texts = dossier.texts
    read = {r.check for r in dossier.readings}
    skipped = {e.check: e.why for r in dossier.events(ev.Skipped) if isinstance(e := r.event, ev.Skipped)}
    rows = [Row((dossier.title(check), texts.say(SKIPPED[why]))) for check, why in skipped.items() if check not in read]
    if rows:
        headers = (texts.say("Check"), texts.say("Why not"))
        yield Table(texts.say("Asked for and not answered"), headers, tuple(rows))
    yield from assumed_blocks(dossier)


def assumed_blocks(dossier: Dossier) -> Iterator[Block]:
    """Plate figures that were taken from the type."""
    texts, machine = dossier.texts, dossier.state.machine
    if machine is None:
        return
    figures = []
    for name in machine.type.plate:
        quantity = machine.plate(name) if machine.assumed(name) else None
        if quantity is not None:
            figures.append(f"{dossier.known(PLATE_FIGURES[name].ask)} {dossier.measures.values({'': quantity})}")
    if figures:
        yield Paragraph(
            texts.count(
                "{number} figure of the data plate was not read from this machine; the usual one of its type was used:",
                "{number} figures of the data plate were not read from this machine; the usual ones of its type were "
                "used:",
                len(figures),
            )
        )
        yield Paragraph(f"{' · '.join(figures)}.", "note")


def note_blocks(dossier: Dossier) -> Iterator[Block]:
    """Notes in the technician's own words."""
    if dossier.state.notes:
        yield Items(dossier.state.notes)


def closing_blocks(dossier: Dossier) -> Iterator[Block]:
    """How the job was closed, and what still leads where a complaint is left."""
    texts, state = dossier.texts, dossier.state
    if state.closed is None:
        return
    pairs = [(texts.say("Closed"), texts.say(CLOSED[state.closed.how]))]
    if state.closed.text:
        pairs.append((texts.say("In the technician's words"), state.closed.text))
    first = dossier.assessment.rows[0] if state.present and dossier.assessment is not None else None
    if first is not None:
        title = dossier.title(first.id) if first.id in dossier.book.causes else texts.say("something not listed here")
        pairs.append((texts.say("Most probable at the end"), f"{title}, {percent(first.probability).strip()}"))
    yield Facts(tuple(pairs))
