"""A look at one job from the board: its summary, and whatever two people say differently."""

from __future__ import annotations

from diagnose.desk.open_jobs import waiting_of
from diagnose.inference import TooWideError
from diagnose.job.journal import Journal, JournalError
from diagnose.job.session import Session
from diagnose.model import Book
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.letters import letter_in
from diagnose.units import UnitError
from diagnose.view import board_words as words
from diagnose.view.layout import Line, wrap
from diagnose.view.question import keys
from diagnose.view.summary import summary_block
from diagnose.view.together import beside_block

__all__ = ["look_at", "look_lines"]


def look_lines(book: Book, journal: Journal, job: str, width: int) -> list[Line]:
    """The job as a summary. A job that can't be read says why."""
    session = Session(book, journal, job)
    try:
        state = session.state
        rows = session.assessment.rows if state.machine is not None and state.complaints else ()
    except (JournalError, UnitError, TooWideError) as error:
        return wrap(f"{job}: {error}", width, role="refused")
    lines = summary_block(state, book, job, rows, width)
    waits = wrap(waiting_of(state, session.records, book).told, width, f"  {words.HEADERS['waits']}: ", "    ")
    return [*lines, *(waits if state.closed is None else []), *beside_block(state, book, width)]


def look_at(book: Book, journal: Journal, front: Front, job: str) -> None:
    """Show the job until Enter. Raises Paused."""
    try:
        lines = look_lines(book, journal, job, front.width)
    except JournalError as error:
        lines = wrap(str(error), front.width, role="refused")
    front.say([Line(), *lines, *keys(words.TO_BOARD, front.width)])
    letter = letter_in(front.ask(), free=True)
    if letter is not None and letter.letter == "p":
        raise Paused
