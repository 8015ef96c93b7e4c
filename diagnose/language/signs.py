"""Signs that must not reach a screen or a page: control, format and broken characters."""

from __future__ import annotations

import unicodedata

__all__ = ["clean"]

_UNSEEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})


def clean(text: str) -> str:
    """The text without control, format and broken characters; each becomes a blank.

    What a person or a file says can then neither move the cursor nor hide words.

    >>> clean("a\\x1b[2Jb")
    'a [2Jb'
    """
    if text.isascii() and text.isprintable():
        return text
    return "".join(" " if unicodedata.category(c) in _UNSEEN else c for c in text)
