"""What a rule sees: the book, the machine, the readings of one stage, and the findings so far."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from diagnose.model import PLATE_FIGURES, Book, Check, Finding, Machine, Reading, fits
from diagnose.rules.instruments import told_instruments, with_instruments
from diagnose.units import Quantity

__all__ = ["Expected", "Facts", "Silent", "gather"]


@dataclass(frozen=True)
class Silent:
    """Why a rule says nothing although a reading of its own lies before it."""

    why: str


@dataclass(frozen=True)
class Expected:
    """What a check should read on this machine: lines for the prompt, the figures, and how they were worked out."""

    lines: tuple[str, ...]
    low: Quantity | None = None
    high: Quantity | None = None
    assumptions: tuple[str, ...] = ()
    basis: str = ""
    working: tuple[str, ...] = ()  # the whole calculation, each figure with where it comes from


@dataclass(frozen=True)
class Facts:
    """All a rule may look at, standing at one stage (after so many repairs)."""

    book: Book
    machine: Machine
    stage: int = 0
    newest: Mapping[tuple[int, str], Reading] = field(default_factory=dict)  # (stage, check) -> reading
    spent: frozenset[str] = frozenset()  # ids of readings counted already
    found: Mapping[tuple[int, str], Finding] = field(default_factory=dict)

    def check(self, check: str) -> Check | None:
        """The check, if the book has it and it belongs to this machine."""
        entry = self.book.checks.get(check)
        return entry if entry is not None and fits(self.machine, entry.fits) else None

    def fresh(self, check: str) -> Reading | None:
        """The measured reading of a check at this stage, if nothing has counted it yet."""
        reading = self.now(check)
        return None if reading is None or reading.id in self.spent or self.check(check) is None else reading

    def now(self, check: str) -> Reading | None:
        """The measured reading of a check at this stage, counted or not."""
        reading = self.newest.get((self.stage, check))
        return reading if reading is not None and reading.values else None

    def known(self, check: str) -> Reading | None:
        """The measured reading of a check at this stage or, failing that, at the latest one before."""
        for stage in range(self.stage, -1, -1):
            reading = self.newest.get((stage, check))
            if reading is not None and reading.values:
                return reading
        return None

    def chosen(self, check: str) -> str | None:
        """The outcome chosen for a check at this stage or, failing that, at the latest one before."""
        for stage in range(self.stage, -1, -1):
            reading = self.newest.get((stage, check))
            if reading is not None and reading.outcome is not None:
                return reading.outcome
        return None

    def finding(self, check: str) -> Finding | None:
        """What was found of a check at this stage."""
        return self.found.get((self.stage, check))

    def plate(self, name: str) -> Quantity | None:
        return self.machine.plate(name)

    def assumed(self, *names: str) -> tuple[str, ...]:
        """One line naming the plate figures used here that are the type's and not this plate's."""
        taken = [PLATE_FIGURES[n].ask for n in names if self.plate(n) is not None and self.machine.assumed(n)]
        if not taken:
            return ()
        named = "; ".join(f"{t[0].lower()}{t[1:]}" for t in taken)
        return (f"Type's figure, not read from this plate: {named}. The data plate governs.",)

    def conclude(
        self,
        check: str,
        weights: Mapping[str, float],
        rule: str,
        counts: Sequence[Reading],
        consults: Sequence[Reading | None] = (),
        working: Sequence[str] = (),
        says: str = "",
    ) -> Finding | Silent:
        """A finding over the outcomes the check has, heaviest first; Silent if none of them has weight."""
        entry = self.check(check)
        known = {} if entry is None else {o: w for o, w in weights.items() if o in entry.outcomes and w > 0}
        total = sum(known.values())
        if total <= 0:
            return Silent(f"{check} has no outcome for what was read")
        ordered = sorted(known, key=lambda o: -round(known[o] / total, 9))
        return Finding(
            check=check,
            weights={o: known[o] / total for o in ordered},
            rule=rule,
            counts=tuple(r.id for r in counts),
            consults=tuple(dict.fromkeys(r.id for r in consults if r is not None)),
            working=(*working, *told_instruments((*counts, *consults), working)),
            says=says,
            stage=self.stage,
        )


def gather(book: Book, machine: Machine, readings: Sequence[Reading], stage: int | None = None) -> Facts:
    """Facts from readings in the order taken: the newest of a check at each stage wins.

    Stands at `stage`, or at the last stage that has a reading.
    """
    newest = {(r.stage, r.check): r for r in with_instruments(book, readings)}
    last = max((r.stage for r in readings), default=0)
    return Facts(book, machine, last if stage is None else stage, newest)
