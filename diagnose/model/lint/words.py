"""Every word of frequency, likelihood and shift must be on its scale."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.problems import Problem

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Words that stand for no number, and numbers that are no likelihood."""
    for name, complaint in book.complaints.items():
        yield from _word(book, name, "frequency", complaint.unlisted)
    for name, cause in book.causes.items():
        yield from _word(book, name, "frequency", cause.how_often)
        for shift in cause.shifts:
            yield from _word(book, name, "shift", shift.by)
    for name, each in book.checks.items():
        for row in each.shows.values():
            for word in row.values():
                if isinstance(word, str):
                    yield from _word(book, name, "likelihood", word)
                elif not 0 < word <= 1:
                    yield Problem(
                        book.places[name], f"{name}: {word} is no likelihood", "give a number over 0, at most 1"
                    )


def _word(book: Book, name: str, scale: str, word: str) -> Iterator[Problem]:
    if word not in book.scales[scale].words:
        words = ", ".join(book.scales[scale].words)
        yield Problem(book.places[name], f"{name}: {word!r} is not on the {scale} scale", f"use {words}")
