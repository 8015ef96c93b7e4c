"""Shifts by context name answers that the question offers."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.problems import Problem

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Answers in a shift that nobody can give."""
    for name, cause in book.causes.items():
        for shift in cause.shifts:
            answers = book.context[shift.when].answers
            for each in shift.among:
                if each not in answers:
                    yield Problem(
                        book.places[name], f"{name}: {shift.when} has no answer {each!r}", f"use {', '.join(answers)}"
                    )
