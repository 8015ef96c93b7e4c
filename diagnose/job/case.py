"""A case from a file: a machine, what is complained of, what was read; ranked without a dialogue."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from datetime import date
from difflib import get_close_matches
from pathlib import Path
from typing import Any

import msgspec

from diagnose.job import events as ev
from diagnose.job.crew import WHO, crew_of
from diagnose.job.folding import fold
from diagnose.job.instruments import (
    InstrumentError,
    OwnInstrument,
    check_instrument,
    day_of,
    in_use,
    read_with,
    usual,
)
from diagnose.job.machines import MachineError, check_plate
from diagnose.job.state import JobState
from diagnose.model import Book, Machine, fits
from diagnose.model.answers import parse_answer
from diagnose.units import UnitError

__all__ = ["Case", "CaseError", "case_of", "case_state", "read_case"]


class Case(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The case file: TOML with these keys."""

    machine: str  # id of a machine type
    plate: dict[str, str] = {}  # figures read from the plate, with units
    complaints: list[str]
    context: dict[str, str] = {}
    readings: dict[str, str] = {}  # check id -> what was read or the outcome's id
    ruled_out: list[str] = []
    who: list[str] = []  # who works; empty: a technician
    keep_closed: list[str] = []  # what must not be opened
    instruments: list[OwnInstrument] = []  # the technician's own, as `diagnose instrument add` takes them
    date: str = ""  # of the readings, year-month-day; empty: today
    tells: str = ""  # the case in a sentence, for people


class CaseError(ValueError):
    """The case can't be used; `problems` holds every sentence at once."""

    def __init__(self, problems: list[str]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(problems))


def read_case(path: Path) -> Case:
    """Read a case file strictly. Raises CaseError with the remedy."""
    try:
        data = tomllib.loads(path.read_text("utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError) as error:
        raise CaseError([f"{path}: can't be read: {error}; mend the file"]) from None
    return case_of(data, str(path))


def case_of(data: dict[str, Any], name: str) -> Case:
    """A case from parsed TOML. Raises CaseError."""
    try:
        return msgspec.convert(data, Case)
    except (msgspec.ValidationError, TypeError) as error:
        known = ", ".join(Case.__struct_fields__)
        raise CaseError([f"{name}: {error}; a case has the keys {known}"]) from None


def case_state(case: Case, book: Book, own: Sequence[OwnInstrument] = ()) -> JobState:
    """The state of a job in which all that the case tells has happened. Raises CaseError.

    `own` are instruments to read with where the case names none.
    """
    problems = list(_problems(case, book))
    if problems:
        raise CaseError(problems)
    kept = [check_instrument(o, book.instruments) for o in case.instruments] or list(own)
    today = day_of(case.date) if case.date else date.today()
    events: list[ev.Event] = [
        ev.Opened(
            machine=case.machine,
            type=case.machine,
            own={name: check_plate(name, text) for name, text in case.plate.items()},
            allowed=crew_of(case.who).who,
            keep_closed=tuple(case.keep_closed),
        ),
        ev.SafetyAnswered(),
        *(ev.ComplaintSaid(c) for c in case.complaints),
        *(ev.ContextGiven(q, a) for q, a in case.context.items()),
        *(_reading(book, check, text, kept, today) for check, text in case.readings.items()),
        *(ev.RuledOut(node) for node in case.ruled_out),
    ]
    records = (ev.Record(number=n, at="", writer="case", event=e) for n, e in enumerate(events, 1))
    return fold(records, book)


def _reading(book: Book, name: str, text: str, own: Sequence[OwnInstrument], today: date) -> ev.ReadingTaken:
    check = book.checks[name]
    values, outcome = parse_answer(check, text)
    taken = ev.ReadingTaken(name, {place: q.exact for place, q in values.items()}, outcome)
    chosen = usual(check, own, book.instruments, today) if check.reading else None
    return read_with(taken, in_use(chosen, book.instruments, today) if chosen else None)


def _problems(case: Case, book: Book) -> Iterator[str]:
    if case.machine not in book.machines:
        yield _unknown("machine", case.machine, book.machines)
    for name, text in case.plate.items():
        try:
            check_plate(name, text)
        except MachineError as error:
            yield f"plate: {error}"
    for instrument in case.instruments:
        try:
            check_instrument(instrument, book.instruments)
        except InstrumentError as error:
            yield f"instrument {instrument.name[:40]}: {error}"
    if case.date:
        try:
            day_of(case.date)
        except InstrumentError as error:
            yield f"date: {error}"
    machine = Machine("", book.machines[case.machine], case.plate) if case.machine in book.machines else None
    if not case.complaints:
        yield f"complaints: none given; give one or more of {', '.join(book.complaints)}"
    for name in case.complaints:
        if name not in book.complaints:
            yield _unknown("complaint", name, book.complaints)
        elif case.machine in book.machines and not fits(
            Machine("", book.machines[case.machine]), book.complaints[name].fits
        ):
            yield f"complaint {name} does not arise on {case.machine}: {book.title(name)} is for other machines"
    for question, answer in case.context.items():
        if question not in book.context:
            yield _unknown("context", question, book.context)
        elif answer not in book.context[question].answers:
            yield f"context {question}: {answer[:40]!r} is no answer; use {', '.join(book.context[question].answers)}"
    yield from (_unknown("who", name, WHO) for name in case.who if name not in WHO)
    yield from (_unknown("keep_closed", name, book.access) for name in case.keep_closed if name not in book.access)
    nodes = {**book.causes, **book.events}
    yield from (_unknown("ruled_out", name, nodes) for name in case.ruled_out if name not in nodes)
    for name, text in case.readings.items():
        yield from _reading_problems(book, machine, name, text)


def _reading_problems(book: Book, machine: Machine | None, name: str, text: str) -> Iterator[str]:
    check = book.checks.get(name)
    if check is None:
        yield _unknown("reading", name, book.checks)
    elif check.computed:
        yield f"reading {name}: is computed from other readings; give those"
    elif machine and not fits(machine, check.fits):
        yield f"reading {name}: does not belong to this type of machine; leave it out"
    else:
        try:
            parse_answer(check, text)
        except UnitError as error:
            ids = "" if check.reading else f" or one of {', '.join(check.outcomes)}"
            yield f"reading {name}: {error}{ids}"


def _unknown(kind: str, name: str, known: Any) -> str:
    close = get_close_matches(name, list(known), 1)
    hint = f"did you mean {close[0]}?" if close else "`diagnose knowledge list` shows what is known"
    return f"{kind}: {name[:60]!r} is not known; {hint}"
