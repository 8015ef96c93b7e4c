"""How wide text is in a picture, taken from above, so that it fits whichever plain font the reader has."""

from __future__ import annotations

import re

__all__ = ["SMALL", "TEXT", "TITLE", "broken", "line_height", "wide"]

TITLE, TEXT, SMALL = 17.0, 12.5, 11.0  # sizes
# Advance of each sign as a share of the size, rounded up, in the bold face of the widest of the usual fonts.
_ADVANCE = (
    (0.40, " '.,:;/\\|ijl·’IJ"),
    (0.50, "!()[]tfr-"),
    (0.61, '"*?zcs_`°–'),
    (0.70, "Lvxyak$0123456789EFTeéo"),
    (0.78, "hnu{}SYbdgpqBCPZAKRVX"),
    (0.88, "UGDHNOQΩ&"),
    (1.00, "wM#+<=>^~×"),
)
_OF = {sign: share for share, signs in _ADVANCE for sign in signs}
_WIDEST = 1.12
_PLAIN = 0.92  # plain against bold
_HELD = re.compile(r"(?<=\d) (?=%|°|minutes?\b)")  # a number keeps its unit on its line


def wide(text: str, size: float, bold: bool = False) -> float:
    """The most a line of text takes at a size."""
    return sum(_OF.get(sign, _WIDEST) for sign in text) * size * (1.0 if bold else _PLAIN)


def line_height(size: float) -> float:
    return round(size * 1.3, 2)


def broken(text: str, room: float, size: float, bold: bool = False) -> list[str]:
    """Text in lines that fit the room; a word too long for a line is cut.

    >>> broken("Booster contactor", 90, 12.5)
    ['Booster', 'contactor']
    """

    def over(line: str) -> bool:
        return wide(line, size, bold) > room

    lines: list[str] = []
    current = ""
    for word in _HELD.sub("\u00a0", " ".join(text.split())).split(" "):
        while over(word):
            cut = max(n for n in range(1, len(word)) if n == 1 or not over(word[:n]))
            lines += [current, word[:cut]] if current else [word[:cut]]
            current, word = "", word[cut:]
        joined = f"{current} {word}" if current else word
        if current and over(joined):
            lines.append(current)
            current = word
        else:
            current = joined
    return [*lines, current] if current else lines
