"""Play a printed dialogue again: its answers go in, the whole text must come out."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Literal

from diagnose.desk.call import take_call
from diagnose.desk.follow import follow
from diagnose.dialogue import run_job
from diagnose.dialogue.scene import Scene
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book
from diagnose.terminal import ScriptedFront, answers_in

__all__ = ["CALL", "CLOCK", "COMMAND", "DESK", "FOLLOW", "JOB", "desk_of", "header_of", "parts_of", "replay", "run"]

COMMAND = "$ diagnose"
CALL = f"{COMMAND} desk call"
FOLLOW = f"{COMMAND} desk follow"
DESK = "Desk North"
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


def run(command: str, front: ScriptedFront, book: Book, journal: Journal, folder: Path) -> None:
    """What the command line of a transcript runs: a job, or what a desk on another journal does with the same job."""
    machines, known = folder / "machines", JOB if journal.has(JOB) else None
    if command.startswith(CALL):
        desk = desk_of(journal)
        take_call(book, desk, machines, front, known, new_name=JOB, person=DESK)
        desk.close()
    elif command.startswith(FOLLOW):
        opened = [desk_of(journal)]
        follow(lambda: desk_scene(book, opened, machines), front, DESK, once="--once" in command)
        for each in opened:
            each.close()
    else:
        purpose: Literal["repair", "handover"] = "handover" if "handover" in command else "repair"
        resumed = JOB if "resume" in command else None
        run_job(book, journal, machines, front, resumed, new_name=JOB, purpose=purpose)


def desk_of(journal: Journal) -> Journal:
    """The desk's own journal on the same file."""
    return Journal(journal.path, "desk-north", lambda: CLOCK)


def desk_scene(book: Book, opened: list[Journal], machines: Path) -> Scene:
    """The job as the desk has it, on a journal of its own that is closed with the others."""
    opened.append(Journal(opened[0].path, "desk-north", lambda: CLOCK))
    return Scene(Session(book, opened[-1], JOB), machines)


def replay(transcript: str, book: Book, folder: Path, columns: int = 80) -> str:
    """What the program prints for the answers of a transcript, as a transcript again."""
    printed = header_of(transcript)
    journal = Journal(folder / "journal.sqlite3", clock=lambda: CLOCK)
    try:
        for command, answers in parts_of(transcript):
            # An empty answer at the very end is the end of input, printed as a bare prompt.
            given = answers[:-1] if answers and not answers[-1] else answers
            front = ScriptedFront(given, columns)
            run(command, front, book, journal, folder)
            printed += [command, *front.printed]
    finally:
        journal.close()
    return "\n".join(printed) + "\n"
