"""What is known of a job: complaints and answers, readings with what they mean, what was left out, mended and noted."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.dialogue.scene import Scene
from diagnose.handover.sheet import Line
from diagnose.report import Dossier
from diagnose.report.document import Block, Heading, Items, Paragraph
from diagnose.report.head import complaint_blocks
from diagnose.report.readings import finding_table
from diagnose.view import board_words as words
from diagnose.view import words as all_words
from diagnose.view.layout import labelled
from diagnose.view.summary import reading_text

__all__ = ["known_blocks"]


def known_blocks(scene: Scene) -> Iterator[Block]:
    """In the order in which it was told."""
    state, book = scene.state, scene.book
    dossier = Dossier(book, scene.session.job, scene.session.records)
    yield from complaint_blocks(dossier)
    yield from finding_table(dossier)
    for unread in state.unread:
        yield Paragraph(f"{all_words.UNUSED}{unread}", "note")
    if scene.on_sheet:
        yield from _listed(words.FAILS, [_told(line, scene) for line in scene.sheet.lines if line.verdict == "fail"])
    skipped = [labelled(dossier.title(check), why) for check, why in state.skipped.items()]
    yield from _listed(words.NOT_ANSWERED, skipped)
    yield from _listed(words.RULED_OUT, [dossier.title(node) for node in state.ruled_out])
    repairs = [f"{dossier.title(each.cause)}: {all_words.FOUND[each.found]}" for each in state.repairs]
    yield from _listed(words.REPAIRS, repairs)
    yield from _listed(words.NOTES, list(state.notes))


def _listed(title: str, texts: list[str]) -> Iterator[Block]:
    if texts:
        yield Heading(title, 3)
        yield Items(tuple(texts))


def _told(line: Line, scene: Scene) -> str:
    """A line of the sheet with what was read."""
    return labelled(line.title, reading_text(line.reading, scene.book)) if line.reading is not None else line.title
