"""Technicians' cases as judges of the knowledge: what must come first in each, and whether every cause has its case."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from diagnose.job.assess import Assessment, assess
from diagnose.job.case import CaseError, case_of, case_state
from diagnose.model import Book, Place, Problem
from diagnose.model.lines import line_of

__all__ = ["TechnicianCase", "assessed", "case_problems", "read_cases", "uncovered"]

_EXPECTED = ("first", "first_two", "first_three", "why")


@dataclass(frozen=True)
class TechnicianCase:
    """A case with what must come first, and why.

    One of: `first` is the cause at the top; `first_two` share the first two rows; `first_three` are all among the first
    three rows.
    """

    name: str  # file and number
    place: Place
    data: dict[str, Any]
    first: str | None
    first_two: tuple[str, ...]
    first_three: tuple[str, ...]
    why: str


def read_cases(folder: Path) -> tuple[TechnicianCase, ...]:
    """Every `[[case]]` of every TOML file in the folder, in order. Raises CaseError."""
    cases = []
    for path in sorted(folder.glob("*.toml")):
        try:
            text = path.read_text("utf-8")
            entries = tomllib.loads(text).get("case", [])
        except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError) as error:
            raise CaseError([f"{path}: can't be read: {error}; mend the file"]) from None
        lines = line_of(text)
        for nth, raw in enumerate(entries):
            place = Place(f"{folder.name}/{path.name}", lines.get(("case", nth), 1))
            cases.append(_case(f"{path.stem}-{nth + 1}", place, raw))
    return tuple(cases)


def _case(name: str, place: Place, raw: dict[str, Any]) -> TechnicianCase:
    data = {key: value for key, value in raw.items() if key not in _EXPECTED}
    two, three = tuple(raw.get("first_two", ())), tuple(raw.get("first_three", ()))
    return TechnicianCase(name, place, data, raw.get("first"), two, three, raw.get("why", ""))


def assessed(book: Book, case: TechnicianCase) -> Assessment:
    """What the program makes of a case. Raises CaseError."""
    return assess(book, case_state(case_of(case.data, case.name), book))


def case_problems(book: Book, cases: Sequence[TechnicianCase]) -> Iterator[Problem]:
    """Cases that can't be read, whose readings no rule answers, or in which something else comes first."""
    for case in cases:
        try:
            told = assessed(book, case)
        except CaseError as error:
            yield Problem(case.place, f"case {case.name}: {error}", "mend the case")
            continue
        for unanswered in told.run.unanswered:
            yield Problem(case.place, f"case {case.name}: {unanswered.why}", "give the check bands or a rule")
        top = [row.id for row in told.rows[:3]]
        if not _as_wanted(case, top):
            wanted = case.first or " and ".join(case.first_two or case.first_three) or "nothing"
            yield Problem(
                case.place,
                f"case {case.name}: {wanted} should lead, but the first three are {', '.join(top)}",
                "mend the tables of the checks it reads, or give the case the reading that decides",
            )


def _as_wanted(case: TechnicianCase, top: Sequence[str]) -> bool:
    if case.first:
        return top[0] == case.first
    if case.first_two:
        return top[0] in case.first_two
    return bool(case.first_three) and set(case.first_three) <= set(top)


def uncovered(book: Book, cases: Sequence[TechnicianCase]) -> Iterator[Problem]:
    """Causes that no case puts first, and complaints no case is about."""
    first = {case.first for case in cases}
    for cause in book.causes:
        if cause not in first:
            yield Problem(book.places[cause], f"no case puts {cause} first", "write one, in a technician's words")
    said = {complaint for case in cases for complaint in case.data.get("complaints", ())}
    for complaint in book.complaints:
        if complaint not in said:
            yield Problem(book.places[complaint], f"no case is about {complaint}", "write one")
