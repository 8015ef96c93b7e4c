"""Play a printed dialogue again: its answers go in, the whole text must come out."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Literal

from diagnose.dialogue import run_job
from diagnose.job.journal import Journal
from diagnose.model import Book
from diagnose.terminal import ScriptedFront, answers_in

__all__ = ["COMMAND", "JOB", "header_of", "parts_of", "replay"]

COMMAND = "$ diagnose"
JOB = "job-1001"
CLOCK = "2026-03-02T08:00:00+00:00"


def header_of(transcript: str) -> list[str]:
    """The lines at the top that tell what is shown and that its site is invented."""
    lines = []
    for line in transcript.splitlines():
        if not line.startswith("#"):
            break
        lines.append(line)
    return lines


def parts_of(transcript: str) -> Iterator[tuple[str, list[str]]]:
    """Each command line in the transcript with the answers typed after it."""
    command, body = "", []
    for line in transcript.splitlines():
        if line.startswith(COMMAND):
            if command:
                yield command, answers_in("\n".join(body))
            command, body = line, []
        else:
            body.append(line)
    if command:
        yield command, answers_in("\n".join(body))


def replay(transcript: str, book: Book, folder: Path, columns: int = 80) -> str:
    """What the program prints for the answers of a transcript, as a transcript again."""
    printed = header_of(transcript)
    journal = Journal(folder / "journal.sqlite3", clock=lambda: CLOCK)
    try:
        for command, answers in parts_of(transcript):
            # An empty answer at the very end is the end of input, printed as a bare prompt.
            given = answers[:-1] if answers and not answers[-1] else answers
            front = ScriptedFront(given, columns)
            resumed = JOB if "resume" in command else None
            purpose: Literal["repair", "handover"] = "handover" if "handover" in command else "repair"
            run_job(book, journal, folder / "machines", front, resumed, new_name=JOB, purpose=purpose)
            printed += [command, *front.printed]
    finally:
        journal.close()
    return "\n".join(printed) + "\n"
