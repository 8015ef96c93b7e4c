"""Technicians' cases from the TOML files beside this one, read and assessed once."""

from __future__ import annotations

from functools import cache, lru_cache
from pathlib import Path

from diagnose.batch.cases import TechnicianCase, assessed, read_cases
from diagnose.job.assess import Assessment
from diagnose.model import Book, load_book

__all__ = ["TechnicianCase", "all_cases", "assessment", "shipped"]


@cache
def shipped() -> Book:
    return load_book()


@cache
def all_cases() -> tuple[TechnicianCase, ...]:
    """Every case of every file, in order."""
    return read_cases(Path(__file__).parent)


@lru_cache(maxsize=4)  # the tests of a case come one after the other; more would only fill the memory
def assessment(name: str) -> Assessment:
    """The assessment of the case of that name."""
    return assessed(shipped(), _by_name()[name])


@cache
def _by_name() -> dict[str, TechnicianCase]:
    return {case.name: case for case in all_cases()}
