"""Everything a document is told from: the records that count, the fold, the assessment, and the words to say it in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, tzinfo
from functools import cached_property

from diagnose.inference import TooWideError
from diagnose.job import events as ev
from diagnose.job import fold
from diagnose.job.assess import Assessment, assess
from diagnose.job.folding import standing
from diagnose.job.state import JobState
from diagnose.language import ENGLISH, Texts
from diagnose.model import Book, Finding, Reading
from diagnose.model.shop import MARK, unmarked
from diagnose.report.course import Point, points_of
from diagnose.report.measures import Measures
from diagnose.rules import Expected, expected, findings

__all__ = ["Dossier", "Visit"]

# What says nothing about the machine, nor about what can be done next.
_NO_BEARING = (ev.Acknowledged, ev.InstrumentChosen, ev.NoteAdded, ev.TurnedTo, ev.Closed)


@dataclass(frozen=True)
class Visit:
    """A day on which something was recorded, from its first to its last record."""

    day: date
    first: datetime
    last: datetime

    @property
    def minutes(self) -> float:
        return (self.last - self.first).total_seconds() / 60


class Dossier:
    """One job as documents see it. `zone` is where its times are told; None: that of this computer."""

    def __init__(
        self,
        book: Book,
        job: str,
        records: Sequence[ev.Record],
        texts: Texts = ENGLISH,
        measures: Measures | None = None,
        zone: tzinfo | None = None,
    ) -> None:
        self.book = book
        self.job = job
        self.records = standing(records)
        self.texts = texts
        self.measures = measures or Measures()
        self.zone = zone

    @cached_property
    def state(self) -> JobState:
        return fold(self.records, self.book)

    @cached_property
    def assessment(self) -> Assessment | None:
        """What follows from the job as it stands; None before a machine and a complaint are known.

        Of a handover: as it stood when the last failure was over.
        """
        if self.state.purpose == "handover" and not self.state.present:
            return self.points[-1].assessment if self.points else None
        points: tuple[Point, ...] = self.__dict__.get("points", ())
        if points and all(isinstance(r.event, _NO_BEARING) for r in self.records[points[-1].upto :]):
            return points[-1].assessment
        return self._assess(self.state)

    def _assess(self, state: JobState) -> Assessment | None:
        if state.machine is None or not state.complaints:
            return None
        try:
            return assess(self.book, state)
        except TooWideError:
            return None

    @cached_property
    def points(self) -> tuple[Point, ...]:
        """The course of the job, at a dozen points."""
        return points_of(self.records, self.book)

    def before_repair(self, nth: int) -> Assessment | None:
        """What was known just before the n-th repair, from 0."""
        repaired = [n for n, r in enumerate(self.records) if isinstance(r.event, ev.Repaired)]
        upto = repaired[nth]
        found = next((p.assessment for p in reversed(self.points) if p.upto <= upto), None)
        return found or self._assess(fold(self.records[:upto], self.book))

    @cached_property
    def visits(self) -> tuple[Visit, ...]:
        """The days on which something was recorded."""
        times = [t.astimezone(self.zone) for t in map(_time, (r.at for r in self.records)) if t is not None]
        days: dict[date, list[datetime]] = {}
        for time in sorted(times):
            days.setdefault(time.date(), []).append(time)
        return tuple(Visit(day, times[0], times[-1]) for day, times in days.items())

    @property
    def closed(self) -> bool:
        return self.state.closed is not None

    @property
    def readings(self) -> tuple[Reading, ...]:
        """The readings this knowledge has a check for."""
        return tuple(r for r in self.state.readings if r.check in self.book.checks)

    @cached_property
    def findings(self) -> dict[str, Finding]:
        """By the reading that counts for it."""
        machine = self.state.machine
        run = findings(self.book, machine, self.state.readings).findings if machine is not None else ()
        return {reading: finding for finding in run for reading in finding.counts}

    def expected(self, check: str) -> Expected | None:
        """What a check should read on this machine, with all readings as they are."""
        state = self.state
        return expected(self.book, state.machine, state.readings, check, state.stage) if state.machine else None

    def events(self, kind: type[ev.Event]) -> tuple[ev.Record, ...]:
        return tuple(r for r in self.records if isinstance(r.event, kind))

    def known(self, text: str) -> str:
        """A text of the knowledge in the reader's language and units."""
        bare = unmarked(text)
        return self.measures.text(self.texts.known(bare)) + (MARK if bare != text else "")

    def title(self, node: str) -> str:
        """The title of an entry; what this knowledge lacks is named by its id."""
        try:
            return self.known(self.book.title(node))
        except KeyError:
            return node


def _time(at: str) -> datetime | None:
    try:
        time = datetime.fromisoformat(at)
    except ValueError:
        return None
    return time if time.tzinfo is not None else None
