"""What the desk says aloud: one sentence after the other, in the caller's language where there is a catalogue of it."""

from __future__ import annotations

from collections.abc import Iterable

from diagnose.language import ENGLISH, LanguageError, Texts, load_texts
from diagnose.view import call_words
from diagnose.view.layout import Line, wrap

__all__ = ["Voice"]


class Voice:
    """Says things in one language; in another than English the English stands below, for the desk."""

    def __init__(self, language: str = "") -> None:
        try:
            self._texts: Texts = load_texts(language) if language else ENGLISH
        except LanguageError:  # the job was begun where there was a catalogue
            self._texts = ENGLISH

    def known(self, sentences: Iterable[str], width: int) -> list[Line]:
        """Sentences of the knowledge."""
        return self._lines([(text, self._texts.known(text)) for text in sentences], width)

    def own(self, name: str, width: int) -> list[Line]:
        """One of our own sentences, by its name."""
        text = call_words.ALOUD[name]
        return self._lines([(text, self._texts.say(text))], width)

    def _lines(self, pairs: list[tuple[str, str]], width: int) -> list[Line]:
        lines: list[Line] = []
        hang = " " * len(call_words.SAY)
        for _, said in pairs:
            lines += wrap(said, width, hang if lines else call_words.SAY, hang, role="question")
        if any(text != said for text, said in pairs):
            for text, _ in pairs:
                lines += wrap(text, width, hang, role="dim")
        return lines
