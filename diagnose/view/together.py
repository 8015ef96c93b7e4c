"""What people say to one another in a job, as lines: hints, hand-overs, answers that were given twice."""

from __future__ import annotations

from diagnose.job import events as ev
from diagnose.job.state import Beside, Hint, JobState
from diagnose.model import Book
from diagnose.view import together_words as words
from diagnose.view.history import answer_text
from diagnose.view.layout import Line, wrap

__all__ = ["beside_block", "beside_sentences", "event_text", "hint_text", "who"]


def who(state: JobState, writer: str) -> str:
    """Who a writer is, by name where it was said."""
    presence = state.presence(writer)
    tag, dash, _ = writer.partition("-")
    unnamed = words.DESK if presence.place == "desk" else words.TECHNICIAN
    return presence.name or (f"{unnamed} ({tag})" if dash else unnamed)


def hint_text(hint: ev.Hinted, book: Book) -> str:
    """What a hint says, in one line: the check by its title, then the words."""
    title = book.title(hint.check) if hint.check in book.checks else words.HINT_UNKNOWN.format(id=hint.check)
    told = [words.HINT_CHECK.format(title=title)] if hint.check else []
    return ". ".join([*told, hint.text] if hint.text else told)


def event_text(record: ev.Record, state: JobState, book: Book) -> str:
    """What happened, in words, for one who looks on."""
    event = record.event
    name = who(state, record.writer)
    match event:
        case ev.Present(_, place):
            return (words.HERE_NOW if place == "machine" else words.AT_DESK).format(who=name)
        case ev.CallBegun(caller, caller_name):
            return words.CALL_BEGUN.format(who=caller_name or words.CALLERS[caller])
        case ev.CallEnded(how, text):
            return f"{words.CALL_ENDED[how]} {text}".strip()
        case ev.Hinted():
            return words.HINT_TOLD.format(told=hint_text(event, book))
        case ev.HintAnswered(number, of, taken):
            told = _hint(state.hints, of, number)
            said = hint_text(told.given, book) if told else "?"
            return (words.HINT_TAKEN if taken else words.HINT_LEFT).format(told=said)
        case ev.HandedOn(to, text):
            return words.HANDED_ON.format(whom=words.WAITS_FOR[to], text=text).strip()
        case ev.NoteAdded(text):
            return f"{words.NOTE_FROM.format(who=name)}{text}"
        case ev.Unknown(kind):
            return words.UNKNOWN.format(name=kind)
    return answer_text(event, book)


def _hint(hints: tuple[Hint, ...], writer: str, seq: int) -> Hint | None:
    return next((hint for hint in hints if (hint.writer, hint.seq) == (writer, seq)), None)


def beside_block(state: JobState, book: Book, width: int) -> list[Line]:
    """Answers that two people gave to the same question: both, and which of them counts."""
    if not state.beside:
        return []
    lines = [Line(words.BESIDE, "heading")]
    for sentence in beside_sentences(state, book):
        lines += wrap(sentence, width, "  - ", "    ")
    return lines


def beside_sentences(state: JobState, book: Book) -> list[str]:
    """A sentence for each question that two people answered differently."""
    return [_beside(each, state, book) for each in state.beside]


def _beside(each: Beside, state: JobState, book: Book) -> str:
    told = words.TOLD_TOO.format(who=who(state, each.told.writer), told=answer_text(each.told.event, book))
    here = [state.presence(r.writer).place for r in (each.told, each.counts)]
    counts = words.AT_MACHINE_COUNTS if here == ["desk", "machine"] else words.NEWER_COUNTS
    value = answer_text(each.counts.event, book).rpartition(": ")[2]
    return f"{told}. {counts.format(counts=value)}."
