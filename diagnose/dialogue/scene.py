"""What every part of the conversation can see: the job in hand, the book, where machines are kept."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from diagnose.dialogue.requests import Option
from diagnose.handover.sheet import Sheet, failing, sheet_of
from diagnose.job.assess import Assessment, Row
from diagnose.job.crew import Crew
from diagnose.job.history import History
from diagnose.job.instruments import OwnInstrument, fitting, in_use, usual
from diagnose.job.session import Session
from diagnose.job.state import JobState
from diagnose.model import Book, Check, Instrument
from diagnose.rules import Expected, expected
from diagnose.view.advice import choice_why

__all__ = ["Scene"]


@dataclass
class Scene:
    """One job in hand."""

    session: Session
    machines: Path
    crew: Crew = field(default_factory=Crew)  # of a job begun now
    own: Sequence[OwnInstrument] = ()  # the technician's instruments
    purpose: Literal["repair", "handover"] = "repair"  # of a job begun now
    person: str = ""  # the name of who works here, where they said it
    history: Callable[[str], History] = History  # of earlier jobs on the machine of that name
    _pasts: dict[str, History] = field(default_factory=dict, init=False, repr=False)

    @property
    def book(self) -> Book:
        return self.session.book

    @property
    def state(self) -> JobState:
        return self.session.state

    @property
    def past(self) -> History:
        """The history of this machine, read once; empty for a bare type, of which there is none."""
        machine = self.state.machine
        name = machine.name if machine is not None and machine.name != machine.type.id else ""
        if name not in self._pasts:
            self._pasts[name] = self.history(name) if name else History("")
        return self._pasts[name]

    @property
    def assessment(self) -> Assessment:
        return self.session.assessment

    @property
    def rows(self) -> Sequence[Row]:
        """The ranking; empty while nothing is complained of."""
        return self.assessment.rows if self.ranked else ()

    @property
    def sheet(self) -> Sheet:
        """The sheet of a handover as it stands."""
        return sheet_of(self.book, self.state)

    @property
    def on_sheet(self) -> bool:
        """Whether a handover is at its sheet now, and not looking for the cause of a failure."""
        return self.state.purpose == "handover" and self.state.machine is not None and not failing(self.sheet)

    def expected(self, check: str) -> Expected | None:
        """What a check should read on this machine, as far as it can be said now."""
        if self.on_sheet:
            assert self.state.machine is not None
            return expected(self.book, self.state.machine, self.state.readings, check, self.state.stage)
        return self.assessment.expected(check) if self.ranked else None

    @property
    def ranked(self) -> bool:
        """Whether there is anything to rank: a machine, and a complaint."""
        return self.state.machine is not None and bool(self.state.complaints)

    def options(self) -> Sequence[Option]:
        """What the advice would do next, the best first; beside a check only checks that save something too."""
        choices = self.assessment.options
        if choices and choices[0].what == "check":
            choices = (choices[0], *(c for c in choices[1:] if c.what == "check" and c.saves > 0))
        return [Option(c.what, c.id, choice_why(c, self.book), c.option.probability or 0.0) for c in choices]

    def fitting(self, check: Check) -> tuple[Instrument, ...]:
        """Instruments of one's own that can take this reading, as they are judged today."""
        if not self.own:
            return ()
        today = self.session.today
        return tuple(in_use(o, self.book.instruments, today) for o in fitting(check, self.own, self.book.instruments))

    def instrument(self, check: Check) -> Instrument | None:
        """The one of one's own a check is read with: the one chosen for it, else the usual; None for none of them."""
        if not self.own:
            return None
        chosen = self.state.instruments.get(check.id)
        if chosen is None:
            own = usual(check, self.own, self.book.instruments, self.session.today) if check.reading else None
            chosen = own.name if own else ""
        return next((i for i in self.fitting(check) if i.name == chosen), None)

    @property
    def conflicts(self) -> Sequence[str]:
        """Readings that can't well all be right, in sentences."""
        return self.assessment.conflicts
