"""`diagnose jobs`: the jobs in the journal, and what happened in one of them."""

from __future__ import annotations

import msgspec

from diagnose.batch.output import SCHEMA, to_json
from diagnose.job import Journal, JournalError, fold
from diagnose.model import Book
from diagnose.units import UnitError
from diagnose.view import table, words, wrap
from diagnose.view.together_words import WAITS_FOR

__all__ = ["list_jobs", "show_job"]


def list_jobs(book: Book, journal: Journal, as_json: bool, width: int) -> list[str]:
    """Every job, the one touched last first: name, machine, complaints, how it stands."""
    rows = []
    for entry in journal.jobs():
        try:
            state = fold(journal.records(entry.job), book)
        except (JournalError, UnitError):  # other jobs are as they were; the job itself says what it lacks
            rows.append((entry.job, entry.touched, words.UNREAD_HERE.casefold(), "-", "-"))
            continue
        machine = state.machine.name if state.machine else "-"
        complaints = "; ".join(dict.fromkeys(book.title(c) for c, _, _ in state.complaints if c in book.complaints))
        waits = f"waits for {WAITS_FOR[state.waits.to]}" if state.waits else "open"
        stands = state.closed.how if state.closed else waits
        rows.append((entry.job, entry.touched, stands, machine, complaints or "-"))
    keys = ("job", "touched", "stands", "machine", "complaints")
    if as_json:
        return [to_json({"schema": SCHEMA, "jobs": [dict(zip(keys, row, strict=True)) for row in rows]})]
    if not rows:
        return ["No jobs yet. `diagnose` begins one."]
    return [*table(keys, rows, width, indent="")]


def show_job(journal: Journal, job: str, as_json: bool, width: int) -> list[str]:
    """The events of a job in order."""
    records = journal.records(job)
    if as_json:
        return [to_json({"schema": SCHEMA, "job": job, "events": list(records)})]
    lines: list[str] = [job]
    for record in records:
        data = msgspec.to_builtins(record.event)
        kind = data.pop("kind", words.UNKNOWN_KIND)
        told = ", ".join(f"{key}: {value}" for key, value in data.items() if value not in (None, "", {}, [], ()))
        lines += wrap(f"{kind}  {told}", width, f"{record.number:3}  {record.at[:16]}  ", "     ")
    return lines
