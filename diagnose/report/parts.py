"""The parts list: parts of repairs made, or for an open job the likely ones with the probability of their cause."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.report.document import Block, Document, Facts, Heading, Paragraph, Row, Table
from diagnose.report.dossier import Dossier
from diagnose.report.evidence import likely
from diagnose.report.head import head_blocks, subtitle
from diagnose.report.service import small_print
from diagnose.report.words import renderer_words
from diagnose.report.work import part_blocks
from diagnose.view import percent

__all__ = ["likely_parts", "parts_list"]

_MOST = 8  # causes named


def parts_list(dossier: Dossier) -> Document:
    """What was fitted, and while the job is open what may be needed."""
    texts = dossier.texts
    blocks: list[Block] = [block for block in head_blocks(dossier) if isinstance(block, Paragraph | Facts)]
    used = [*part_blocks(dossier)]
    if used:
        blocks += [Heading(texts.say("Parts used")), *used]
    if not dossier.closed:
        blocks += [Heading(texts.say("Parts that may be needed")), *_may_be_needed(dossier)]
    elif not used:
        blocks.append(Paragraph(texts.say("No repair was made, so no parts were used.")))
    blocks += [
        Paragraph(
            texts.say("Parts are named in general words; what must match is taken from the machine itself."), "note"
        ),
        *small_print(dossier),
    ]
    made = dossier.records[-1].at if dossier.records else ""
    return Document(
        texts.say("Parts list"), subtitle(dossier), tuple(blocks), texts.language, made, renderer_words(texts)
    )


def likely_parts(dossier: Dossier) -> list[tuple[str, float, tuple[str, ...]]]:
    """(cause, its probability, its parts) of the leading causes that need a part."""
    rows = [row for row in likely(dossier, 3 * _MOST) if row.id in dossier.book.causes]
    found = [(row.id, row.probability, tuple(dossier.book.causes[row.id].parts)) for row in rows]
    return [each for each in found if each[2]][:_MOST]


def _may_be_needed(dossier: Dossier) -> Iterator[Block]:
    texts, rows = dossier.texts, []
    for cause, probability, parts in likely_parts(dossier):
        for part in parts:
            rows.append(Row((dossier.known(part), percent(probability).strip(), dossier.title(cause))))
    if rows:
        headers = (texts.say("Part"), texts.say("Probability"), texts.say("If this is the cause"))
        yield Table(texts.say("By the probability of their cause, as the job stands"), headers, tuple(rows))
    else:
        yield Paragraph(texts.say("No cause that needs a part is likely enough to name one."))
