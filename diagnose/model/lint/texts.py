"""Texts fit a narrow screen and print on any."""

from __future__ import annotations

from collections.abc import Iterator
from unicodedata import category

from diagnose.model.book import Book
from diagnose.model.entities import Cause, Check, Complaint, Event
from diagnose.model.problems import Problem

__all__ = ["LONGEST_WORD", "check"]

LONGEST_WORD = 41  # a 45-column screen less the indent of a step
_LONGEST_TITLE = 100
_PLAIN = set("°Ωµ±·×÷–—‘’“”½¼¾²³é≥≤")


def check(book: Book) -> Iterator[Problem]:
    """Words wider than a narrow screen, titles that are sentences, characters that not every screen has."""
    entries: dict[str, Complaint | Event | Cause | Check]
    entries = {**book.complaints, **book.events, **book.causes, **book.checks}
    for name, entry in entries.items():
        place = book.places[name]
        if len(entry.title) > _LONGEST_TITLE or entry.title.rstrip().endswith("."):
            yield Problem(place, f"{name}: the title is no title", f"at most {_LONGEST_TITLE} characters, no full stop")
        for field, text in _texts(entry):
            if not text.strip():
                yield Problem(place, f"{name}: {field} is empty", "write it, or drop the key")
            for word in text.split():
                if len(word) > LONGEST_WORD:
                    yield Problem(place, f"{name}: {field} has a word of {len(word)} letters", "use shorter words")
            strange = {c for c in text if (not c.isascii() and c not in _PLAIN) or category(c).startswith("C")}
            if strange:
                yield Problem(place, f"{name}: {field} has {sorted(strange)}", "use plain characters")


def _texts(entry: object) -> Iterator[tuple[str, str]]:
    for field in getattr(entry, "__struct_fields__", ()):
        value = getattr(entry, field)
        if field in ("id", "fits", "of", "looks_at", "shows", "prove_by"):
            continue
        if isinstance(value, str):
            yield field, value
        elif isinstance(value, list):
            yield from ((field, each) for each in value if isinstance(each, str))
        elif field == "outcomes":
            yield from ((f"outcome {key}", each.title) for key, each in value.items())
