"""Wrap text at a given width, and set tables that turn into records on a narrow screen."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence

__all__ = [
    "RECORDS_BELOW",
    "Line",
    "flow",
    "labelled",
    "number_word",
    "percent",
    "screen_width",
    "table",
    "text_width",
    "wrap",
]

WIDEST = 80  # longer lines are hard to read and to quote
NARROWEST = 20
RECORDS_BELOW = 60  # columns; a table is set as records on a narrower screen

_HELD = "\u00a0"
# A number and its unit stay on one line: "180 °F", "24 %", "3 minutes".
_NUMBER_UNIT = re.compile(r"(?<=\d) (?=(?:%|°|[A-Za-zΩ]{1,3}\b|minutes?\b))")
_SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


class Line(str):
    """One line of text as printed, with the role that decides its colour where there is any."""

    __slots__ = ("role",)
    role: str

    def __new__(cls, text: str = "", role: str = "") -> Line:
        line = super().__new__(cls, text)
        line.role = role
        return line


def screen_width(columns: int) -> int:
    """The width to wrap at on a screen of so many columns."""
    return max(NARROWEST, min(columns, WIDEST))


def text_width(text: str) -> int:
    """Columns the text takes on a terminal: wide characters take two, combining ones none."""
    if text.isascii():
        return len(text)
    return sum(_columns(c) for c in text)


def _columns(sign: str) -> int:
    if unicodedata.combining(sign):
        return 0
    return 2 if unicodedata.east_asian_width(sign) in "WF" else 1


def wrap(text: str, width: int, first: str = "", rest: str | None = None, role: str = "") -> list[Line]:
    """Break text at blanks into lines of at most `width` columns; no word is lost.

    `first` stands before the first line and `rest` (as many blanks, when not given) before the
    others. A word longer than a line is cut.

    >>> wrap("Clamp each line while it heats.", 20, "1. ")
    ['1. Clamp each line', '   while it heats.']
    """
    hang = " " * text_width(first) if rest is None else rest
    lines: list[Line] = []
    lead, current = first, ""
    for word in _words(text, max(4, width - max(text_width(first), text_width(hang)))):
        joined = f"{current} {word}" if current else word
        if current and text_width(lead) + text_width(joined) > width:
            lines.append(_line(lead, current, role))
            lead, current = hang, word
        else:
            current = joined
    lines.append(_line(lead, current, role))
    return lines


def _line(lead: str, text: str, role: str) -> Line:
    return Line((lead + text).replace(_HELD, " ").rstrip(), role)


def _words(text: str, room: int) -> Iterable[str]:
    for word in _NUMBER_UNIT.sub(_HELD, text.replace(_HELD, " ")).split(" "):
        parts = word.split(_HELD) if text_width(word) > room else [word]
        for part in parts:
            while text_width(part) > room:
                cut = _fitting(part, room)
                yield part[:cut]
                part = part[cut:]
            if part:
                yield part


def _fitting(word: str, room: int) -> int:
    used = 0
    for place, sign in enumerate(word):
        used += _columns(sign)
        if used > room:
            return max(place, 1)
    return len(word)


def table(headers: Sequence[str], rows: Sequence[Sequence[str]], width: int, indent: str = "  ") -> list[Line]:
    """Rows under headers where they fit; else one record per row, `header: value` line by line.

    The last column wraps; the others are as wide as their widest cell.
    """
    widths = [max(text_width(r[i]) for r in [headers, *rows]) for i in range(len(headers) - 1)]
    room = width - text_width(indent) - sum(widths) - 2 * len(widths)
    if width < RECORDS_BELOW or room < 20:
        return _records(headers, rows, width, indent)
    lines = _row(headers, widths, width, indent, "dim")
    for row in rows:
        lines += _row(row, widths, width, indent, "")
    return lines


def _row(cells: Sequence[str], widths: Sequence[int], width: int, indent: str, role: str) -> list[Line]:
    padded = (cell + " " * (w - text_width(cell)) for cell, w in zip(cells, widths, strict=False))
    return wrap(cells[-1], width, indent + "".join(f"{cell}  " for cell in padded), role=role)


def _records(headers: Sequence[str], rows: Sequence[Sequence[str]], width: int, indent: str) -> list[Line]:
    lines: list[Line] = []
    for nth, row in enumerate(rows):
        if nth:
            lines.append(Line())
        for header, cell in zip(headers, row, strict=True):
            if cell:
                lines += wrap(f"{header}: {cell}" if header else cell, width, indent, indent + "  ")
    return lines


def percent(share: float) -> str:
    """A share of one as percent, always five columns wide so that the signs line up.

    >>> percent(0.24), percent(0.001), percent(0.999), percent(1.0)
    (' 24 %', ' <1 %', '>99 %', '>99 %')
    """
    if share < 0.005:
        return " <1 %"
    if share >= 0.995:
        return ">99 %"
    return f"{share * 100:3.0f} %"


def number_word(count: int) -> str:
    """Small numbers as words, for running text.

    >>> number_word(11), number_word(30)
    ('eleven', '30')
    """
    return _SMALL[count] if 0 <= count < len(_SMALL) else str(count)


def flow(items: Iterable[str], width: int, indent: str = "  ", gap: str = "   ", role: str = "") -> list[Line]:
    """Short items side by side, as many on a line as fit; an item is broken only when it alone is too long.

    >>> flow(["? don't know", "b back", "p pause"], 24)
    ["  ? don't know   b back", '  p pause']
    """
    lines: list[Line] = []
    current = ""
    for item in items:
        joined = f"{current}{gap}{item}" if current else item
        if current and text_width(indent) + text_width(joined) > width:
            lines += _packed(current, width, indent, role)
            current = item
        else:
            current = joined
    return lines + _packed(current, width, indent, role) if current else lines


def _packed(text: str, width: int, indent: str, role: str) -> list[Line]:
    if text_width(indent) + text_width(text) <= width:
        return [Line(indent + text, role)]
    return wrap(text, width, indent, role=role)


def labelled(label: str, text: str) -> str:
    """`label: text`; a label that is a question keeps its own sign.

    >>> labelled("Rinse pressure", "20 psi"), labelled("Is it whole?", "yes")
    ('Rinse pressure: 20 psi', 'Is it whole? yes')
    """
    return f"{label} {text}" if label.endswith("?") else f"{label}: {text}"
