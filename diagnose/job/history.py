"""A machine's history: its jobs, what was read and repaired in them, and its baseline, the newest finished handover."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from functools import cached_property

from diagnose.job import events as ev
from diagnose.job.folding import fold, standing
from diagnose.job.journal import Journal, JournalError
from diagnose.job.state import JobState
from diagnose.model import Book, Reading
from diagnose.rules.instruments import with_instruments
from diagnose.units import UnitError

__all__ = ["History", "Mended", "PastJob", "PastReading", "Repeated", "history_of", "read_history"]


@dataclass(frozen=True)
class PastReading:
    """A reading of an earlier job: `reading` has its values as typed and in SI, its stage and its instrument."""

    job: str
    at: datetime
    reading: Reading
    mended: bool = False  # a repair that bears on it was made later in its job: it is so no more

    @property
    def check(self) -> str:
        return self.reading.check

    @property
    def day(self) -> date:
        return self.at.date()


@dataclass(frozen=True)
class Mended:
    """A cause that was found as expected and repaired."""

    cause: str
    day: date


@dataclass(frozen=True)
class PastJob:
    """One job on the machine. `how` it was closed and when it `ended`: None while it is open."""

    job: str
    begun: date
    ended: datetime | None
    purpose: str
    complaints: tuple[str, ...]
    mended: tuple[Mended, ...]
    how: str | None
    readings: tuple[PastReading, ...]  # in the order taken

    def last(self) -> dict[str, PastReading]:
        """The last reading of each check."""
        return {each.check: each for each in self.readings}

    def first_and_last(self) -> tuple[PastReading, ...]:
        """The first and the last reading of each check, in the order taken."""
        first = {each.check: each for each in reversed(self.readings)}
        ends = {id(each) for each in (*first.values(), *self.last().values())}
        return tuple(each for each in self.readings if id(each) in ends)


@dataclass(frozen=True)
class Repeated:
    """A cause that was repaired in more than one job: the first time on `since`."""

    cause: str
    times: int
    since: date


@dataclass(frozen=True)
class History:
    """All that is known of a machine from earlier jobs, the oldest first; `unread` tells what could not be read."""

    machine: str
    jobs: tuple[PastJob, ...] = ()
    unread: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.jobs or self.unread)

    @cached_property
    def baseline(self) -> PastJob | None:
        """The handover finished last; None where there was none."""
        done = [j for j in self.jobs if j.purpose == "handover" and j.how == "handed over" and j.ended is not None]
        return max(done, key=lambda j: (j.ended, j.job), default=None)

    @cached_property
    def since_baseline(self) -> tuple[PastJob, ...]:
        """The jobs begun after the baseline; without one, all."""
        if self.baseline is None:
            return self.jobs
        return self.jobs[self.jobs.index(self.baseline) + 1 :]

    @cached_property
    def over_time(self) -> Mapping[str, tuple[PastReading, ...]]:
        """Of each check the first and the last reading of every job, by time."""
        found: dict[str, list[PastReading]] = {}
        for each in (r for job in self.jobs for r in job.first_and_last()):
            found.setdefault(each.check, []).append(each)
        return {check: tuple(sorted(readings, key=lambda r: r.at)) for check, readings in found.items()}

    def as_left(self, check: str) -> tuple[PastReading, ...]:
        """How each job left a check, from the baseline on: its last reading, unless a repair came that bears on it.

        A fault that came and was mended within one job is so no drift.
        """
        start = self.baseline.last().get(check) if self.baseline else None
        later = [job.last().get(check) for job in self.since_baseline]
        found = [each for each in later if each is not None and not each.mended]
        return tuple(sorted([*([start] if start else []), *found], key=lambda r: r.at))

    def compared(self, check: str) -> PastReading | None:
        """What a reading now is held against: the baseline's, else the newest that still stands, else the newest."""
        if self.baseline is not None and check in self.baseline.last():
            return self.baseline.last()[check]
        known = self.over_time.get(check, ())
        return next((r for r in reversed(known) if not r.mended), known[-1] if known else None)

    @cached_property
    def repeated(self) -> tuple[Repeated, ...]:
        """Causes repaired in more than one job, the most frequent first."""
        days: dict[str, list[date]] = {}
        for job in self.jobs:
            for cause, day in {m.cause: m.day for m in reversed(job.mended)}.items():
                days.setdefault(cause, []).append(day)
        found = [Repeated(cause, len(each), min(each)) for cause, each in days.items() if len(each) > 1]
        return tuple(sorted(found, key=lambda r: (-r.times, r.since, r.cause)))


def read_history(journal: Journal, book: Book, name: str, but: str = "") -> History:
    """The history of a saved machine from the journal, without the job `but`; what can't be read is told in it."""
    told: list[str] = []
    found: list[tuple[str, Sequence[ev.Record]]] = []
    try:
        for entry in journal.of_machine(name):
            if entry.job == but:
                continue
            try:
                found.append((entry.job, journal.records(entry.job)))
            except JournalError as error:
                told.append(str(error))
    except JournalError as error:
        told.append(str(error))
    history = history_of(name, found, book)
    return History(name, history.jobs, (*told, *history.unread))


def history_of(name: str, jobs: Iterable[tuple[str, Sequence[ev.Record]]], book: Book) -> History:
    """The history that these jobs, the oldest first, tell of the machine of that name, whatever its case."""
    past: list[PastJob] = []
    unread: list[str] = []
    for job, records in jobs:
        try:
            state = fold(records, book)
            if not _on(state, name):
                continue
            past.append(_past_job(job, records, state, book))
        except (UnitError, JournalError) as error:
            unread.append(f"{job}: {error}")
            continue
        unread += [f"{job}: {told}" for told in dict.fromkeys(state.unread)]
    return History(name, tuple(past), tuple(unread))


def _on(state: JobState, name: str) -> bool:
    """Whether the job stands on this machine; the choice may have been taken back, or the name given anew."""
    machine = state.machine
    named = machine is not None and machine.name != machine.type.id
    return machine is not None and named and machine.name.strip().casefold() == name.strip().casefold()


def _past_job(job: str, records: Sequence[ev.Record], state: JobState, book: Book) -> PastJob:
    counted = standing(records)
    times = {r.number: _moment(r) for r in counted}
    closed = [times[r.number] for r in counted if isinstance(r.event, ev.Closed)]
    mended = [
        Mended(r.event.cause, times[r.number].date())
        for r in counted
        if isinstance(r.event, ev.Repaired) and r.event.found == "as expected"
    ]
    changed = [r.cause for r in state.repairs if r.found != "sound"]
    readings = [
        PastReading(job, times[int(r.id)], r, any(_bears(book, cause, r.check) for cause in changed[r.stage :]))
        for r in with_instruments(book, state.readings)
    ]
    return PastJob(
        job=job,
        begun=min(times.values()).date(),
        ended=closed[-1] if closed else None,
        purpose=state.purpose,
        complaints=tuple(dict.fromkeys(c for c, _, _ in state.complaints)),
        mended=tuple(mended),
        how=state.closed.how if state.closed else None,
        readings=tuple(readings),
    )


def _moment(record: ev.Record) -> datetime:
    try:
        at = datetime.fromisoformat(record.at)
    except ValueError:
        raise JournalError(f"the time of event {record.number} can't be read: {record.at[:30]!r}") from None
    return at if at.tzinfo else at.replace(tzinfo=UTC)


def _bears(book: Book, cause: str, check: str) -> bool:
    """Whether repairing the cause may change what the check reads; a cause that is not known may change anything."""
    if cause not in book.causes or check in book.causes[cause].prove_by:
        return True
    seen: set[str] = set()
    left = [*book.checks[check].looks_at]
    while left:
        node = left.pop()
        if node not in seen:
            seen.add(node)
            left += book.children(node)
    return cause in seen
