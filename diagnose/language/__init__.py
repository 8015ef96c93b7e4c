"""Floor 0: texts in another language, from one catalogue per language."""

from diagnose.language.texts import ENGLISH, LanguageError, Texts, languages, load_texts, mark

__all__ = ["ENGLISH", "LanguageError", "Texts", "languages", "load_texts", "mark"]
