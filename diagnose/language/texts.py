"""Texts of documents in the reader's language. English is what stands in the code; each other language is one file.

`catalogue/<lang>.po` is where a translation is written; the `.mo` beside it is what is read here. What has no
translation stays English.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from gettext import GNUTranslations, NullTranslations
from pathlib import Path
from typing import Final

__all__ = ["CATALOGUE", "ENGLISH", "KNOWLEDGE", "LanguageError", "Texts", "languages", "load_texts", "mark"]

CATALOGUE: Final = Path(__file__).resolve().parent / "catalogue"
KNOWLEDGE: Final = "knowledge"  # the context under which texts of the knowledge stand in a catalogue


class LanguageError(ValueError):
    """There is no catalogue of that language, or it can't be read; the message gives the remedy."""


def mark(text: str) -> str:
    """The text as it is: marked as one to be translated where it is shown."""
    return text


class Texts:
    """One language. Sentences carry named figures: `say("{count} checks", count=3)`."""

    def __init__(self, language: str, translations: NullTranslations) -> None:
        self.language = language
        self._translations = translations

    def say(self, text: str, **figures: object) -> str:
        """A text of our own, translated, with its figures put in. What is put in is never read as a text."""
        said = self._translations.gettext(text)
        return said.format(**figures) if figures else said

    def count(self, one: str, many: str, number: int, **figures: object) -> str:
        """A text whose words depend on a number, which it may name as `{number}`."""
        return self._translations.ngettext(one, many, number).format(number=number, **figures)

    def known(self, text: str) -> str:
        """A text of the knowledge."""
        return self._translations.pgettext(KNOWLEDGE, text) if text else text


ENGLISH: Final = Texts("en", NullTranslations())


def languages() -> Sequence[str]:
    """English, and every language there is a catalogue of."""
    return ("en", *sorted(path.stem for path in CATALOGUE.glob("*.mo")))


@cache
def load_texts(language: str) -> Texts:
    """The texts of a language. Raises LanguageError."""
    if language == "en":
        return ENGLISH
    if language not in languages():
        raise LanguageError(f"there are no texts in {language[:20]!r}; there are some in {', '.join(languages())}")
    path = CATALOGUE / f"{language}.mo"
    try:
        with path.open("rb") as file:
            return Texts(language, GNUTranslations(file))
    except (OSError, ValueError) as error:
        raise LanguageError(f"{path} can't be read ({error}); install the program again") from None
