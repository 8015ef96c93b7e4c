"""What has changed on a machine: readings further apart than their instruments may be off, and those that drift."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.job.history import History, PastReading
from diagnose.job.trend import Trend, trend
from diagnose.model import Book, Check, Reading
from diagnose.rules.instruments import instrument_of

__all__ = ["Change", "changes_of", "differs"]


@dataclass(frozen=True)
class Change:
    """One place of a check that reads otherwise than it did: `was` first, `now` last.

    `trend` (in SI units a year) is there where the readings between them drift and do not merely differ.
    """

    check: str
    place: str
    was: PastReading
    now: PastReading
    trend: Trend | None = None


def changes_of(history: History, book: Book) -> tuple[Change, ...]:
    """Every place that has changed since the baseline (without one: since the first job), those that drift first.

    A drift must be likely by its trend, and go from first to last by more than the instruments may be off; what
    changed without a likely trend, or in too few readings for one, is told as a change alone.
    """
    found = []
    for name in history.over_time:
        left = history.as_left(name)
        for place in left[0].reading.values if len(left) > 1 else ():
            change = _change(book.checks[name], place, left)
            if change is not None:
                found.append(change)
    return tuple(sorted(found, key=lambda c: c.trend is None))


def _change(check: Check, place: str, left: tuple[PastReading, ...]) -> Change | None:
    was, now = left[0], left[-1]
    if not _beyond(check, place, was.reading, now.reading):
        return None
    went = now.reading.values[place].si - was.reading.values[place].si
    found = trend((each.day, each.reading.values[place].si) for each in left)
    drifts = found is not None and found.likely and found.slope * went > 0
    return Change(check.id, place, was, now, found if drifts else None)


def differs(check: Check, was: Reading, now: Reading) -> bool:
    """Whether two readings differ by more than both instruments together may be off; another outcome always does."""
    if not was.values or not now.values:
        return was.outcome != now.outcome
    return any(_beyond(check, place, was, now) for place in was.values if place in now.values)


def _beyond(check: Check, place: str, was: Reading, now: Reading) -> bool:
    """Both may be off by their whole accuracy, one up and one down: only what is more than that is a difference."""
    apart = abs(was.values[place].si - now.values[place].si)
    return apart > _error(check, place, was) + _error(check, place, now) + 1e-9


def _error(check: Check, place: str, reading: Reading) -> float:
    """How far the reading may be off, in SI."""
    value = reading.values[place]
    return instrument_of(check, reading).accuracy(value) * value.unit.factor
