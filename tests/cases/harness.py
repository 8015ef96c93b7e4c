"""Technicians' cases from the TOML files beside this one, read and assessed once."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from diagnose.job.assess import Assessment, assess
from diagnose.job.case import case_of, case_state
from diagnose.model import Book, load_book

__all__ = ["TechnicianCase", "all_cases", "assessment", "shipped"]

_EXPECTED = ("first", "first_two", "first_three", "why")


@dataclass(frozen=True)
class TechnicianCase:
    """A case with what must come first, and why."""

    name: str  # file and number
    data: dict[str, Any]
    first: str | None
    first_two: tuple[str, ...]
    first_three: tuple[str, ...]
    why: str


@cache
def shipped() -> Book:
    return load_book()


@cache
def all_cases() -> tuple[TechnicianCase, ...]:
    """Every case of every file, in order."""
    cases = []
    for path in sorted(Path(__file__).parent.glob("*.toml")):
        for nth, raw in enumerate(tomllib.loads(path.read_text("utf-8"))["case"], 1):
            data = {key: value for key, value in raw.items() if key not in _EXPECTED}
            cases.append(
                TechnicianCase(
                    f"{path.stem}-{nth}",
                    data,
                    raw.get("first"),
                    tuple(raw.get("first_two", ())),
                    tuple(raw.get("first_three", ())),
                    raw.get("why", ""),
                )
            )
    return tuple(cases)


@cache
def assessment(name: str) -> Assessment:
    """The assessment of the case of that name."""
    case = next(c for c in all_cases() if c.name == name)
    return assess(shipped(), case_state(case_of(case.data, case.name), shipped()))
