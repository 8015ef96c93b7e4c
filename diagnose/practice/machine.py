"""An exercise on its way: the simulated machine, what was read and repaired, and what it took in minutes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from math import floor, log10
from typing import Literal

from diagnose.inference import Circumstances, Economy
from diagnose.job import events as ev
from diagnose.job.assess import Assessment, assess
from diagnose.job.circumstances import circumstances
from diagnose.job.crew import WHO
from diagnose.job.folding import after
from diagnose.job.state import JobState
from diagnose.model import Book, Cause, Check, Machine, fits
from diagnose.practice.exercise import Exercise
from diagnose.practice.port import World, machine_of, simulate
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, show_number

__all__ = ["Practice", "Shown", "answer_of"]

_DIGITS = 7  # of a reading, at most
_AT = "2000-01-01T00:00:00+00:00"  # records of an exercise carry no time of their own


@dataclass(frozen=True)
class Shown:
    """One piece of work: what was read, or what was found at a repair, and what it took."""

    what: Literal["check", "repair", "proof"]
    id: str
    minutes: float
    event: ev.ReadingTaken | ev.Repaired
    stage: int
    found: bool = False  # a repair: the part was faulty


@dataclass
class Practice:
    """A machine in hand. `records` are those a job would have, so that the tool can judge it."""

    book: Book
    world: World
    exercise: Exercise
    records: list[ev.Record] = field(default_factory=list)
    done: list[Shown] = field(default_factory=list)
    minutes: float = 0.0
    stands: str | None = None  # the machine's state where it was changed without work done in it

    def __post_init__(self) -> None:
        self.state = JobState()
        self.sim = simulate(self.world, self.book, self.exercise)
        self.machine: Machine = machine_of(self.book, self.exercise.machine, self.exercise.own)
        self._economy = Economy.of(self.book)
        plate = dict(self.machine.own)
        opened = ev.Opened(machine="practice", type=self.exercise.machine, own=plate, allowed=WHO)
        self._add(opened)
        for nth, complaint in enumerate(self._complaints()):
            self._add(ev.ComplaintSaid(complaint, together=nth > 0))
        self._add(ev.StepDone("complaints"))
        for question, answer in self.sim.context().items():
            if question in self.book.context and answer in self.book.context[question].answers:
                self._add(ev.ContextGiven(question, answer))

    def _complaints(self) -> list[str]:
        """The complaint of the exercise, then what else the kitchen says."""
        here = [
            c
            for c in self.sim.complaints()
            if c in self.book.complaints and fits(self.machine, self.book.complaints[c].fits)
        ]
        return list(dict.fromkeys((self.exercise.complaint, *here)))[:3]

    def judged(self) -> Assessment:
        """What the tool makes of all that was read."""
        return assess(self.book, self.state)

    @property
    def stage(self) -> int:
        """Repairs so far that changed something."""
        return sum(each.what == "repair" and each.found for each in self.done)

    @property
    def solved(self) -> bool:
        """Nothing is complained of any more, after a repair."""
        return self.stage > 0 and not self.state.present

    def now(self) -> Circumstances:
        """What is open, and the machine's state."""
        now = circumstances(self.book, self.state)
        return now if self.stands is None else replace(now, state=self.stands)

    def cost(self, entry: Check | Cause) -> float:
        """Minutes the work takes now, with covers still closed and the change of the machine's state."""
        now = self.now()
        covers = sum(self._economy.access[a] for a in set(entry.open) - now.open)
        return float(entry.minutes) + covers + self._economy.move(now.state, entry.state)

    def move_to(self, state: str) -> float:
        """Bring the machine into a state without doing anything there; the minutes it took."""
        minutes = self._economy.move(self.now().state, state)
        self.stands = state
        self.minutes += minutes
        return minutes

    def can_read(self, check: str) -> bool:
        """Whether there is anything to be read there on this machine."""
        entry = self.book.checks.get(check)
        return entry is not None and not entry.computed and fits(self.machine, entry.fits) and self.sim.can_read(check)

    def leave_unreadable(self) -> None:
        """Tell the records which checks can't be had here, so that the advice goes by the others."""
        skipped = self.state.skipped
        for name in self.book.checks:
            if name not in skipped and not self.can_read(name):
                self._add(ev.Skipped(name, "can't reach"))

    def read(self, check: str, what: Literal["check", "proof"] = "check") -> Shown:
        """Do a check and pay for it."""
        entry = self.book.checks[check]
        minutes = self.cost(entry)
        return self._did(Shown(what, check, minutes, answer_of(self.sim.read(check), entry), self.stage))

    def repair(self, cause: str) -> list[Shown]:
        """Do a repair; where the part was faulty, read what proves it, and hear what the kitchen says then."""
        entry = self.book.causes[cause]
        minutes, stage = self.cost(entry), self.stage
        faulty = self.sim.repair(cause)
        event = ev.Repaired(cause, "as expected" if faulty else "sound")
        shown = [self._did(Shown("repair", cause, minutes, event, stage, faulty))]
        if faulty:
            said = [c for c in self.state.complaints if c[2]]
            shown += [self.read(check, "proof") for check in self._proofs()]
            now = set(self.sim.complaints())
            for complaint in dict.fromkeys(name for name, _, _ in said):
                self._add(ev.ComplaintSaid(complaint, complaint in now))
            for fresh in [c for c in self._complaints() if c in now and c not in {s for s, _, _ in said}]:
                self._add(ev.ComplaintSaid(fresh))
        return shown

    def _proofs(self) -> Iterator[str]:
        """What proves the complaint gone, as far as it can be read."""
        for check in self.book.complaints[self.exercise.complaint].prove_by:
            if self.can_read(check):
                yield check

    def _did(self, shown: Shown) -> Shown:
        self._add(shown.event)
        self.done.append(shown)
        self.minutes += shown.minutes
        self.stands = None
        return shown

    def _add(self, event: ev.Event) -> None:
        record = ev.Record(number=len(self.records) + 1, at=_AT, writer="practice", event=event)
        self.records.append(record)
        self.state = after(self.state, record, self.book)  # nothing is ever withdrawn here


def answer_of(answer: object, check: Check) -> ev.ReadingTaken:
    """What the machine shows, as it is read off: in the check's unit, to the digits a display has."""
    values = getattr(answer, "values", {})
    spec = check.reading
    if spec is None or not values:
        return ev.ReadingTaken(check.id, outcome=getattr(answer, "outcome", None))
    texts = {place: _text(values[place], check) for place in spec.each or [""]}
    return ev.ReadingTaken(check.id, texts)


def _text(value: float, check: Check) -> str:
    spec = check.reading
    assert spec is not None
    shown = Quantity.of_si(value, spec.quantity, spec.unit)
    error = spread(check, shown)
    if spec.quantity != "temperature" and abs(shown.value) < error:
        return f"0 {spec.unit}"
    decimals = -floor(log10(error / 2.0))  # the last digit is a little finer than what it may be off: as displays are
    return f"{show_number(round(shown.value, decimals), _DIGITS)} {spec.unit}"
