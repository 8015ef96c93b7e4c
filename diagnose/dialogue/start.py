"""The way in from the command line: find the job, choose the front, begin."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from diagnose.dialogue.run import run_job
from diagnose.job.crew import Crew
from diagnose.job.folding import fold
from diagnose.job.instruments import InstrumentError, OwnInstrument, list_instruments
from diagnose.job.journal import Journal, JournalError
from diagnose.job.places import Places
from diagnose.model import Book
from diagnose.terminal.fronts import front_here
from diagnose.units import UnitError
from diagnose.view.exits import Exit
from diagnose.view.layout import wrap

__all__ = ["start"]


def start(
    book: Book,
    journal: Journal,
    places: Places,
    job: str | None = None,
    plain: bool = False,
    crew: Crew | None = None,
    purpose: Literal["repair", "handover"] = "repair",
    person: str = "",
) -> Exit:
    """Begin a job (None), go on with the open one touched last (""), or with the one named.

    `crew` is who works on a job begun now, `purpose` what it is for, `person` their name.
    Raises JobHeld and JournalError.
    """
    front = front_here(plain)
    if job == "":
        job = last_open(book, journal)
        if job is None:
            front.say(wrap("There is no open job. `diagnose` begins one; `diagnose jobs` lists all.", front.width))
            return Exit.NO_SUCH_JOB
    own: Sequence[OwnInstrument] = ()
    try:
        own = list_instruments(places.instruments)
    except InstrumentError as error:  # a job does not wait for a file: usual accuracies are taken
        front.say(wrap(f"{error}. Usual accuracies are taken until then.", front.width))
    who = crew or Crew()
    return run_job(
        book, journal, places.machines, front, job, places.holds, who, own=own, purpose=purpose, person=person
    )


def last_open(book: Book, journal: Journal) -> str | None:
    """The job touched last that is not closed, one's own before those of others; None when there is none."""
    mine = journal.written_here()
    entries = sorted(journal.jobs(), key=lambda entry: entry.job not in mine)
    return next((e.job for e in entries if _is_open(e.job, book, journal)), None)


def _is_open(job: str, book: Book, journal: Journal) -> bool:
    """One that can't be read here is none to go on with; named, it says what it lacks."""
    try:
        return fold(journal.records(job), book).closed is None
    except (JournalError, UnitError):
        return False
