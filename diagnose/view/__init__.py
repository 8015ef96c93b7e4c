"""Floor 7: what is shown, as plain lines wrapped by us, with light styling on top; no input here."""

from diagnose.view.encode import clean, for_charset
from diagnose.view.layout import Line, number_word, percent, table, wrap

__all__ = ["Line", "clean", "for_charset", "number_word", "percent", "table", "wrap"]
