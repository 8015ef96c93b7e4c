"""The course of a job, question by question: when, who said it, and what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import tzinfo

from diagnose.desk.open_jobs import time_of
from diagnose.job import events as ev
from diagnose.job.folding import standing
from diagnose.job.state import JobState
from diagnose.model import Book
from diagnose.report.document import Block, Paragraph, Row, Table
from diagnose.view import board_words as words
from diagnose.view import sheet_words
from diagnose.view import words as all_words
from diagnose.view.together import event_text

__all__ = ["course_blocks", "said_by", "told_time"]


def course_blocks(records: Sequence[ev.Record], state: JobState, book: Book, zone: tzinfo | None) -> Iterator[Block]:
    """Every event that stands; what was taken back is counted."""
    kept = standing(records)
    questions = {number: nth for nth, number in enumerate(state.answers, 1)}
    several = len({record.writer for record in kept}) > 1
    rows = tuple(
        Row(
            (
                str(questions.get(record.number, "")),
                told_time(record.at, zone),
                said_by(state, record.writer, several),
                _what(record, state, book),
            )
        )
        for record in kept
    )
    if rows:
        newest = time_of(kept[-1].at)
        name = (newest.astimezone(zone).tzname() if newest is not None else None) or words.UNTIMED
        yield Table(words.COURSE_CAPTION.format(zone=name), words.COURSE_HEADERS, rows)
    back = sum(isinstance(record.event, ev.Withdrawn) for record in records)
    if back:
        yield Paragraph(words.TAKEN_BACK.format(count=back), "note")


def told_time(at: str, zone: tzinfo | None) -> str:
    """A time of the journal by the clock on this wall; as it stands where it is none."""
    time = time_of(at)
    return f"{time.astimezone(zone):%Y-%m-%d %H:%M}" if time is not None else at[:20]


def said_by(state: JobState, writer: str, several: bool = True) -> str:
    """Who a writer is and where; one of `several` without a name is told apart by the writer's own sign."""
    presence = state.presence(writer)
    place = words.PLACES[presence.place]
    if presence.name:
        return f"{presence.name}, {place}"
    return f"{place} ({writer.partition('-')[0]})" if several else place


def _what(record: ev.Record, state: JobState, book: Book) -> str:
    event = record.event
    match event:
        case ev.Acknowledged(cautions, before):
            titles = ", ".join(book.cautions[c].title if c in book.cautions else c for c in cautions)
            return words.CARE_TAKEN.format(cautions=titles, before=_title(book, before))
        case ev.InstrumentChosen(check, name):
            return words.METER.format(name=name or words.USUAL, check=_title(book, check))
        case ev.Adjusted(adjustment, _, settings, found):
            how = ", ".join(f"{place} {text}".strip() for place, text in settings.items())
            what = book.adjustments[adjustment].title if adjustment in book.adjustments else adjustment
            return (words.FOUND_AT if found else words.SET_TO).format(what=what, how=how)
        case ev.LineLeft(line, why, text):
            told = words.LEFT_LINE.format(why=sheet_words.LEFT[why], line=_line(book, line))
            return f"{told}. {text}" if text else told
        case ev.Closed(how, text):
            return f"{words.CLOSED.format(how=all_words.CLOSED[how])} {text}".strip()
    return event_text(record, state, book)


def _title(book: Book, name: str) -> str:
    try:
        return book.title(name)
    except KeyError:
        return book.adjustments[name].title if name in book.adjustments else name


def _line(book: Book, line: str) -> str:
    entry = book.lines.get(line)
    if entry is None:
        return line
    return entry.title or _title(book, entry.check)
