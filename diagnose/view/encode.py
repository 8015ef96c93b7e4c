"""Make any text fit a terminal that knows few characters, and keep control characters off the screen."""

from __future__ import annotations

import unicodedata

from diagnose.language.signs import clean

__all__ = ["clean", "for_charset"]

# What each sign becomes where the terminal's character set lacks it.
_INSTEAD = {
    "°": "",  # "180 °F" -> "180 F"
    "Ω": "ohm",
    "µ": "u",
    "≥": ">=",
    "≤": "<=",
    "≈": "about ",
    "≠": "not ",
    "±": "+/-",
    "×": "x",
    "÷": "/",
    "·": "*",
    "√": "sqrt ",
    "Δ": "change of ",
    "²": "2",
    "³": "3",
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "→": "->",
    "←": "<-",
    "–": "-",
    "—": "-",
    "−": "-",
    "‘": "'",
    "’": "'",
    "“": '"',
    "”": '"',
    "…": "...",
    "•": "-",
    "\u00a0": " ",
    "\u202f": " ",
}


def for_charset(text: str, charset: str) -> str:
    """The text with every sign that `charset` lacks written in signs it has.

    >>> for_charset("180 °F ≥ 82 °C – 5 Ω", "ascii")
    '180 F >= 82 C - 5 ohm'
    >>> for_charset("180 °F ≥ 82 °C", "cp437")
    '180 °F ≥ 82 °C'
    """
    if text.isascii() or _fits(text, charset):
        return text
    return "".join(c if _fits(c, charset) else _instead(c, charset) for c in text)


def _fits(text: str, charset: str) -> bool:
    try:
        return text.encode(charset).decode(charset) == text
    except (UnicodeError, LookupError):
        return False


def _instead(sign: str, charset: str) -> str:
    if sign in _INSTEAD:
        return _INSTEAD[sign]
    plain = "".join(c for c in unicodedata.normalize("NFKD", sign) if c.isascii() and c.isprintable())
    return plain or "?"
