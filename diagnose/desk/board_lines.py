"""The board on the terminal: two lines a job where there is room, a record each on a narrow screen."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from diagnose.desk.board_leading import Lead
from diagnose.desk.open_jobs import OpenJob, minutes_since
from diagnose.view import board_words as words
from diagnose.view.layout import RECORDS_BELOW, Line, table, text_width, wrap
from diagnose.view.question import keys

__all__ = ["Place", "board_lines", "head_line", "help_lines", "keys_lines"]

_INDENT = " " * 5
_AGE = 6  # columns of a length of time
_JOB = (8, 24)  # columns of the name of a job, at least and at most
_WAITS = 24  # columns of whom it waits for, where there is room
_WHERE = 18  # columns of where it is, before whom it waits for gets more
_SAID = 24  # columns of what is complained of, at least, where what leads takes the rest of the line
_CUT = "..."


@dataclass(frozen=True)
class Place:
    """Which part of the open jobs is shown: from the `first`-th, of `count` that fit, of `all` that are open."""

    first: int
    count: int
    all: int
    sort: str = "touched"
    words: str = ""


def head_line(place: Place, shown: int, width: int) -> list[Line]:
    """`Open jobs, 1-9 of 41 (200 open), touched longest ago first`."""
    last = place.first + shown - 1
    if place.count == 0:
        return wrap(words.NO_JOBS if not place.all else words.NONE_FIT, width)
    told = words.SHOWN if shown > 1 else words.SHOWN_ONE
    parts = [f"{words.TITLE} {told.format(first=place.first, last=last, count=place.count)}"]
    if place.words:
        parts.append(words.WITH_WORDS.format(words=_fit(place.words, 40)))
    if place.count < place.all:
        parts.append(words.OF_ALL.format(count=place.all))
    return wrap("; ".join([*parts, words.SORTED[place.sort]]), width, role="heading")


def board_lines(rows: Sequence[tuple[OpenJob, Lead]], now: datetime, width: int, first: int = 1) -> list[Line]:
    """The rows, numbered from `first`."""
    if width < RECORDS_BELOW:
        return _records(rows, now, width, first)
    if not rows:
        return []
    rooms = _rooms([row.job for row, _ in rows], width)
    lines = [Line(_in_columns(("", *words.HEADERS.values()), rooms), "dim")]
    for number, (row, lead) in enumerate(rows, first):
        ages = [words.age(minutes_since(time, now)) for time in (row.begun, row.touched)]
        told = _in_columns((str(number), *ages, row.job, row.where, row.waiting.told), rooms)
        lines.append(Line(told, "caution" if row.waiting.why == "danger" else ""))
        lines += wrap(_second(row, lead, width), width, _INDENT, role="dim" if row.trouble else "")
    return lines


def _rooms(jobs: Sequence[str], width: int) -> tuple[int, ...]:
    """Columns of begun, touched, job, where, and whom it waits for."""
    least, most = _JOB
    job = min(max(least, *(text_width(name) for name in jobs)), most)
    rest = width - len(_INDENT) - 2 * _AGE - job - 6
    waits = min(_WAITS, max(rest // 2, rest - _WHERE))
    return _AGE, _AGE, job, rest - waits, waits


def _in_columns(cells: Sequence[str], rooms: Sequence[int]) -> str:
    """A line of cells: the number, the two ages close together, and the others apart."""
    begun, touched, job, where, waits = (_pad(c, r) for c, r in zip(cells[1:], rooms, strict=True))
    return f"{cells[0]:>3}  {begun} {touched} {job}  {where}  {waits}".rstrip()


def _second(row: OpenJob, lead: Lead, width: int) -> str:
    """What is complained of and what leads; why, where the job can't be read."""
    if row.trouble:
        return row.trouble
    room = width - len(_INDENT)
    if lead.kind == "none":
        return _fit(_said(row), room)
    return f"{_fit(_said(row), max(_SAID, room - 2 - text_width(lead.told)))}: {lead.told}"


def _said(row: OpenJob) -> str:
    """What is complained of; of a handover that it is one."""
    handover = row.purpose == "handover"
    return row.complaint or (words.PURPOSE["handover"] if handover else words.NO_COMPLAINT)


def _records(rows: Sequence[tuple[OpenJob, Lead]], now: datetime, width: int, first: int) -> list[Line]:
    """Every row as a record, `what: text` line by line; what is not known is left out."""
    names = words.RECORD
    headers = ("", names["site"], names["machine"], "", names["leads"], names["waits"])
    cells = []
    for number, (row, lead) in enumerate(rows, first):
        ages = [words.age(minutes_since(time, now)) for time in (row.begun, row.touched)]
        head = f"{number}  {row.job}; {words.HEADERS['begun']} {ages[0]}, {words.HEADERS['touched']} {ages[1]}"
        leads = lead.told if lead.kind != "none" else ""
        cells.append((head, row.site, row.machine or row.type, row.trouble or _said(row), leads, row.waiting.told))
    return table(headers, cells, width, indent="")


def keys_lines(width: int) -> list[Line]:
    """What can be typed."""
    return keys(words.KEYS, width)


def help_lines(width: int) -> list[Line]:
    """All that can be typed, and what it does."""
    lines: list[Line] = []
    for sign, meaning in words.LETTERS:
        lines += wrap(meaning, width, f"  {sign:<6} ")
    return lines


def _pad(text: str, room: int) -> str:
    told = _fit(text, room)
    return told + " " * (room - text_width(told))


def _fit(text: str, room: int) -> str:
    """The text, its end left out where it is wider than the room."""
    if text_width(text) <= room:
        return text
    kept = ""
    for sign in text:
        if text_width(kept + sign) > room - len(_CUT):
            break
        kept += sign
    return kept.rstrip() + _CUT
