"""Which of the open jobs are shown, and in which order."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from diagnose.desk.board_leading import Lead
from diagnose.desk.open_jobs import OpenJob, minutes_since
from diagnose.view import board_words as words

__all__ = ["SORTS", "Wanted", "age_minutes", "chosen", "said_in", "with_words"]

SORTS = tuple(words.SORTED)
_AGE = re.compile(r"\s*(\d{1,5}(?:[.,]\d{1,2})?)\s*(m|min|minutes?|h|hours?|d|days?|w|weeks?)\s*", re.IGNORECASE)
_MINUTES = {"m": 1.0, "h": 60.0, "d": 1440.0, "w": 10080.0}
_NEVER = datetime.max.replace(tzinfo=UTC)


@dataclass(frozen=True)
class Wanted:
    """What is asked for; what is empty asks for nothing. `older`: not touched for so many minutes."""

    site: str = ""
    complaint: str = ""  # its id
    waiting: str = ""  # whom it waits for, or why: one of open_jobs.WAITS
    older: float | None = None

    def fits(self, row: OpenJob, now: datetime) -> bool:
        """Whether a row is among those asked for."""
        if self.site and self.site.casefold() not in row.site.casefold():
            return False
        if self.complaint and self.complaint not in [name for name, _ in row.complaints]:
            return False
        if self.waiting and self.waiting not in (row.waiting.on, row.waiting.why):
            return False
        idle = minutes_since(row.touched, now)
        return self.older is None or (idle is not None and idle >= self.older)


def chosen(rows: Iterable[OpenJob], wanted: Wanted, sort: str, now: datetime) -> list[OpenJob]:
    """The rows asked for, in the order asked for; of those that are alike the one touched longest ago comes first."""
    return sorted((row for row in rows if wanted.fits(row, now)), key=_ORDERS[sort])


def _touched(row: OpenJob) -> tuple[datetime, str]:
    return row.touched or _NEVER, row.job


_ORDERS: dict[str, Callable[[OpenJob], tuple[object, ...]]] = {
    "touched": _touched,
    "age": lambda row: (row.begun or _NEVER, row.job),
    "site": lambda row: (not row.site, row.site.casefold(), *_touched(row)),
    "waiting": lambda row: (row.waiting.on, row.waiting.told.casefold(), *_touched(row)),
}


def said_in(row: OpenJob, lead: Lead | None) -> str:
    """All the words of a row, to look for some of them."""
    told = (row.job, row.purpose, row.site, row.machine, row.type, row.complaint, row.waiting.told, row.trouble)
    return " ".join((*told, lead.told if lead is not None else "")).casefold()


def with_words(rows: Sequence[OpenJob], text: str, lead_of: Callable[[OpenJob], Lead | None]) -> list[OpenJob]:
    """The rows in which every one of the words stands, wherever."""
    wanted = text.casefold().split()
    return [row for row in rows if all(word in said_in(row, lead_of(row)) for word in wanted)]


def age_minutes(text: str) -> float | None:
    """A length of time as one says it; None where it is none.

    >>> age_minutes("2h"), age_minutes("30 min"), age_minutes("1.5 days"), age_minutes("soon")
    (120.0, 30.0, 2160.0, None)
    """
    found = _AGE.fullmatch(text)
    return float(found[1].replace(",", ".")) * _MINUTES[found[2][0].lower()] if found else None
