"""The single letters that mean the same at every question, and their words."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.view.words import LETTERS

__all__ = ["Letter", "letter_in"]

_ALSO = {"q": "p", "quit": "p", "exit": "p", "undo": "u", "?": "?", "!": "!"}
_WORDS = {**{word: letter for letter, word, _ in LETTERS if word}, **_ALSO}
_ALONE = {letter for letter, _, _ in LETTERS}
_WITH_MORE = frozenset("wftcgxunaml")  # letters that may be followed by more


@dataclass(frozen=True)
class Letter:
    """A letter, and what followed it."""

    letter: str
    more: str = ""


def letter_in(text: str, free: bool = False) -> Letter | None:
    """The letter typed, or None when the text is an answer. Where the answer is `free` text, letters stand alone.

    >>> letter_in("w 2"), letter_in("Back"), letter_in("172 F")
    (Letter(letter='w', more='2'), Letter(letter='b', more=''), None)
    """
    whole = text.casefold()
    if whole in _ALONE:
        return Letter(whole)
    if whole in _WORDS:
        return Letter(_WORDS[whole])
    first, _, more = text.partition(" ")
    if not free and more and len(first) == 1 and first.casefold() in _WITH_MORE:
        return Letter(first.casefold(), more.strip())
    return None
