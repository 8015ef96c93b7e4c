"""The service report: one job from the complaint to its end, for the customer and for whoever comes next."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.report import evidence, head, people, readings, rest, work
from diagnose.report.document import Block, Document, Heading, Paragraph, Signatures
from diagnose.report.dossier import Dossier
from diagnose.report.words import renderer_words

__all__ = ["service_report"]


def service_report(dossier: Dossier) -> Document:
    """The whole report. A part that has nothing to say is left out."""
    texts = dossier.texts
    course = [*evidence.course_blocks(dossier)]  # first: its last point is also how the job stands
    blocks = [*head.head_blocks(dossier)]
    for title, part in (
        (texts.say("Complaint"), head.complaint_blocks(dossier)),
        (texts.say("Findings"), readings.finding_blocks(dossier)),
        (texts.say("Readings against what is wanted"), readings.band_blocks(dossier)),
        (texts.say("Temperature at the plate"), readings.trace_blocks(dossier)),
        (texts.say("Causes and repairs"), evidence.cause_blocks(dossier)),
        (texts.say("Proof"), work.proof_blocks(dossier)),
        (texts.say("Parts and time"), [*work.part_blocks(dossier), *work.time_blocks(dossier)]),
        (texts.say("Cautions that went with the work"), work.caution_blocks(dossier)),
        (texts.say("Advice to the kitchen"), rest.advice_blocks(dossier)),
        (texts.say("Not checked, and assumed"), rest.unchecked_blocks(dossier)),
        (texts.say("How the causes ranked"), course),
        (texts.say("Notes"), rest.note_blocks(dossier)),
        (texts.say("Who worked on it"), people.people_blocks(dossier)),
        (texts.say("How it ended"), rest.closing_blocks(dossier)),
    ):
        blocks += _part(title, [*part])
    blocks += _ending(dossier)
    made = dossier.records[-1].at if dossier.records else ""
    subtitle = head.subtitle(dossier)
    return Document(texts.say("Service report"), subtitle, tuple(blocks), texts.language, made, renderer_words(texts))


def _part(title: str, blocks: list[Block]) -> list[Block]:
    return [Heading(title), *blocks] if blocks else []


def _ending(dossier: Dossier) -> Iterator[Block]:
    texts = dossier.texts
    yield Signatures((texts.say("Technician"), texts.say("Customer")), texts.say("Date"))
    yield from small_print(dossier)


def small_print(dossier: Dossier) -> Iterator[Block]:
    """What holds of every document."""
    texts = dossier.texts
    yield Paragraph(
        texts.say(
            "Percentages are degrees of belief, from judgement and from the readings, not counts of past repairs. "
            "The data plate of the machine, local codes and licensed practice go before anything said here."
        ),
        "note",
    )
    if texts.language != "en":
        yield Paragraph(
            texts.say("This translation still needs a check by a native speaker of the trade."),
            "note",
        )
