"""A job as a summary, and the line that says where and what it is."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.job.state import JobState
from diagnose.model import Book, Reading
from diagnose.model.answers import show_values
from diagnose.view import words
from diagnose.view.layout import Line, labelled, number_word, percent, wrap
from diagnose.view.ranking import RankRow

__all__ = ["assumed_block", "job_head", "reading_text", "summary_block"]


def job_head(state: JobState, book: Book, job: str, width: int) -> list[Line]:
    """Which machine, where, and what is complained of."""
    machine = state.machine
    if machine is None:
        return wrap(f"Job {job}", width, role="heading")
    name = f"{machine.name}: " if machine.name != machine.type.id else ""
    lines = wrap(f"Job {job}. {name}{machine.type.title}", width, "", "  " if name else "", "heading")
    for label, text in (("Site", machine.site), ("Serial number", machine.serial)):
        if text:
            lines += wrap(f"{label}: {text}", width, "", "  ")
    titles = [book.title(c) for c in state.present if c in book.complaints]
    if titles:
        lines += wrap(f"Complaint: {'; '.join(titles)}", width)
    return lines


def reading_text(reading: Reading, book: Book) -> str:
    """A reading as it was given."""
    check = book.checks[reading.check]
    if reading.outcome is not None:
        return check.outcomes[reading.outcome].title
    shown = show_values(reading.values)
    return f"{shown} with {reading.instrument}" if reading.instrument else shown


def summary_block(
    state: JobState, book: Book, job: str, rows: Sequence[RankRow], width: int, advice: bool = False
) -> list[Line]:
    """What was complained of, read, skipped, repaired, and how it stands; `advice` for the kitchen at the end."""
    lines = job_head(state, book, job, width)
    said = dict.fromkeys(c for c, _, _ in state.complaints if c in book.complaints)
    for complaint in said:
        stands = "still there" if complaint in state.present else "gone"
        lines += wrap(f"{book.title(complaint)}: {stands if state.stage else 'as told'}", width, "  ")
    lines += _context(state, book, width)
    lines += _readings(state, book, width)
    for check, why in state.skipped.items():
        if check in book.checks:
            lines += wrap(labelled(book.title(check), f"not answered ({why})"), width, "  ")
    for node in state.ruled_out:
        lines += wrap(f"Ruled out: {_title(book, node)}", width, "  ")
    for repair in state.repairs:
        lines += wrap(f"{_title(book, repair.cause)}: {words.FOUND[repair.found]}", width, "  Repair: ", "    ")
    for note in state.notes:
        lines += wrap(note, width, "  Note: ", "    ")
    lines += _standing(state, rows, width)
    if advice:
        lines += _advice(said, book, width)
    return lines


def _context(state: JobState, book: Book, width: int) -> list[Line]:
    lines: list[Line] = []
    for name, answer in state.context.items():
        if name in book.context:
            lines += wrap(f"{book.context[name].ask} {answer}", width, "  ")
    return lines


def _readings(state: JobState, book: Book, width: int) -> list[Line]:
    lines: list[Line] = []
    for stage in sorted({r.stage for r in state.readings}):
        repairs = f"{number_word(stage)} {'repair' if stage == 1 else 'repairs'}"
        lines += wrap(f"Readings after {repairs}:" if stage else "Readings:", width)
        for reading in state.readings:
            if reading.stage == stage and reading.check in book.checks:
                text = labelled(book.title(reading.check), reading_text(reading, book))
                lines += wrap(text, width, "  - ", "    ")
    return lines


def _standing(state: JobState, rows: Sequence[RankRow], width: int) -> list[Line]:
    first = [f"{r.title} {percent(r.probability).strip()}" for r in rows[:3] if r.probability >= 0.01]
    probable = wrap(f"Most probable now: {'; '.join(first)}", width, "  ") if first else []
    if state.closed is not None:
        text = f"Closed: {words.CLOSED[state.closed.how]}"
        return probable + wrap(f"{text}. {state.closed.text}" if state.closed.text else text, width, role="heading")
    return probable


def _advice(said: dict[str, None], book: Book, width: int) -> list[Line]:
    texts = dict.fromkeys(text for c in said for text in book.complaints[c].advice)
    if not texts:
        return []
    return [Line("Tell the kitchen:"), *(line for text in texts for line in wrap(text, width, "  - ", "    "))]


def assumed_block(state: JobState, width: int) -> list[Line]:
    """Which plate figures are the type's and not read from this machine's plate."""
    machine = state.machine
    if machine is None:
        return []
    count = sum(machine.assumed(name) for name in machine.type.plate)
    if not count:
        return []
    return wrap(f"{count} plate figures are assumed: usual ones of the type, not read from this plate.", width, "  ")


def _title(book: Book, node: str) -> str:
    try:
        return book.title(node)
    except KeyError:
        return node
