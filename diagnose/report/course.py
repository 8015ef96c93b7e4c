"""The course of a job: what was believed after each answer, by folding its records as far as that answer.

An assessment takes a fifth of a second on a large complaint, so that a long job is told at some of its answers:
always the first and the last, and those on either side of a repair.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from diagnose.inference import TooWideError
from diagnose.job import events as ev
from diagnose.job import fold
from diagnose.job.assess import Assessment, assess
from diagnose.model import Book

__all__ = ["MOST_POINTS", "Point", "points_of"]

MOST_POINTS = 12


@dataclass(frozen=True)
class Point:
    """What was believed when the first `upto` records were known, the last of them `event`."""

    upto: int
    event: ev.AnyEvent
    assessment: Assessment

    @property
    def repair(self) -> bool:
        return isinstance(self.event, ev.Repaired)


def points_of(records: Sequence[ev.Record], book: Book, most: int = MOST_POINTS) -> tuple[Point, ...]:
    """The points of a job's standing records, in order; empty before a complaint was said.

    Of a handover only what was asked while a failure was looked into: the rest of its sheet bears on no cause.
    """
    begun, over = _looked_into(records)
    found = []
    for upto in (n for n in chosen(records[:over], most) if n >= begun):
        state = fold(records[:upto], book)
        if state.machine is None or not state.complaints:
            continue
        try:
            found.append(Point(upto, records[upto - 1].event, assess(book, state)))
        except TooWideError:
            continue
    return tuple(found)


def _looked_into(records: Sequence[ev.Record]) -> tuple[int, int]:
    """From how many records on, and up to how many, a complaint was there; of a job that is no handover: all."""
    handover = any(isinstance(r.event, ev.Opened) and r.event.purpose == "handover" for r in records)
    said = [n for n, r in enumerate(records, 1) if isinstance(r.event, ev.ComplaintSaid)]
    if not handover or not said:
        return 0, len(records)
    last = records[said[-1] - 1].event
    return said[0], said[-1] if isinstance(last, ev.ComplaintSaid) and not last.present else len(records)


def chosen(records: Sequence[ev.Record], most: int) -> list[int]:
    """How many records are known at each point: before the first reading, and after readings and repairs."""
    telling = [n for n, r in enumerate(records, 1) if isinstance(r.event, ev.ReadingTaken | ev.RuledOut | ev.Repaired)]
    begun = [n for n, r in enumerate(records, 1) if isinstance(r.event, ev.ComplaintSaid | ev.ContextGiven)]
    first = [n for n in begun if not telling or n < telling[0]][-1:]
    again = [n for n in begun if telling and n > telling[0] and _stands(records[n - 1].event)]
    every = sorted({*first, *telling, *again})
    repairs = {place for place, n in enumerate(every) if isinstance(records[n - 1].event, ev.Repaired)}
    kept = {0, len(every) - 1, *repairs, *(place - 1 for place in repairs if place)}
    rest = [place for place in range(len(every)) if place not in kept]
    room = max(0, most - len(kept))
    if len(rest) > room:
        rest = [rest[int(n * len(rest) / room)] for n in range(room)]
    return [every[place] for place in sorted({*kept, *rest}) if 0 <= place < len(every)]


def _stands(event: ev.AnyEvent) -> bool:
    return isinstance(event, ev.ComplaintSaid) and event.present
