"""Which cautions must be acknowledged before a check, a repair or an adjustment is shown."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from diagnose.dialogue import requests as rq
from diagnose.job.state import JobState
from diagnose.model import Adjustment, Book, Cause, Check
from diagnose.view.words import LICENCE_WORDS

__all__ = ["caution_before", "work_named"]


def work_named(book: Book, name: str) -> Check | Cause | Adjustment:
    """The check, repair or adjustment of this id. KeyError when there is none."""
    return book.checks.get(name) or book.causes.get(name) or book.adjustments[name]


def caution_before(
    book: Book, state: JobState, number: int, before: str, options: tuple[rq.Option, ...] = ()
) -> rq.AskCaution | None:
    """The cautions to be acknowledged first; None when their words were typed, or none is to be.

    On a sheet line follows line in the same state of the machine: there a word is typed once, until that state changes.
    """
    entry = work_named(book, before)
    if before in state.acknowledged:
        return None
    licence = "" if entry.who in state.allowed or entry.who == "operator" else entry.who
    typed = state.typed if state.purpose == "handover" and entry.state == state.stands else frozenset[str]()
    due = [name for name in entry.cautions if name not in typed]
    words = tuple(dict.fromkeys((*_words(book, due), *([LICENCE_WORDS[licence]] if licence else []))))
    return rq.AskCaution(number, before, tuple(entry.cautions), words, licence, options) if words else None


def _words(book: Book, cautions: Sequence[str]) -> Iterator[str]:
    for name in cautions:
        caution = book.cautions.get(name)
        if caution is not None and caution.word:
            yield caution.word
