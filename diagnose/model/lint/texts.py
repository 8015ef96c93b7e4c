"""Texts fit a narrow screen and print on any."""

from __future__ import annotations

from collections.abc import Iterator
from unicodedata import category

from diagnose.model.book import Book
from diagnose.model.entities import Cause, Check, Complaint, Event
from diagnose.model.problems import Problem
from diagnose.model.sheet import Adjustment

__all__ = ["LONGEST_WORD", "TITLE_REMEDY", "check", "is_title", "text_problems"]

LONGEST_WORD = 41  # a 45-column screen less the indent of a step
_LONGEST_TITLE = 100
TITLE_REMEDY = f"at most {_LONGEST_TITLE} characters, no full stop"
_PLAIN = set("°Ωµ±·×÷–—‘’“”½¼¾²³é≥≤")


def check(book: Book) -> Iterator[Problem]:
    """Words wider than a narrow screen, titles that are sentences, characters that not every screen has."""
    entries: dict[str, Complaint | Event | Cause | Check | Adjustment]
    entries = {**book.complaints, **book.events, **book.causes, **book.checks}
    entries |= {f"adjust:{name}": entry for name, entry in book.adjustments.items()}
    for name, entry in entries.items():
        place = book.places[name]
        if not is_title(entry.title):
            yield Problem(place, f"{name}: the title is no title", TITLE_REMEDY)
        for field, text in _texts(entry):
            for what, remedy in text_problems(text):
                yield Problem(place, f"{name}: {field} {what}", remedy)


def is_title(text: str) -> bool:
    """Whether a text may stand as a title."""
    return len(text) <= _LONGEST_TITLE and not text.rstrip().endswith(".")


def text_problems(text: str) -> Iterator[tuple[str, str]]:
    """What is wrong with a text, each with the remedy."""
    if not text.strip():
        yield "is empty", "write it, or drop the key"
    for word in text.split():
        if len(word) > LONGEST_WORD:
            yield f"has a word of {len(word)} letters", "use shorter words"
    strange = {c for c in text if (not c.isascii() and c not in _PLAIN) or category(c).startswith("C")}
    if strange:
        yield f"has {sorted(strange)}", "use plain characters"


def _texts(entry: object) -> Iterator[tuple[str, str]]:
    for field in getattr(entry, "__struct_fields__", ()):
        value = getattr(entry, field)
        if field in ("id", "fits", "of", "looks_at", "shows", "prove_by", "upsets"):
            continue
        if isinstance(value, str):
            yield field, value
        elif isinstance(value, list):
            yield from ((field, each) for each in value if isinstance(each, str))
        elif field == "outcomes":
            yield from ((f"outcome {key}", each.title) for key, each in value.items())
