"""A job as it stands: what the fold over its events comes to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.job import events as ev
from diagnose.model import Machine, Reading

__all__ = ["Beside", "Hint", "JobState", "Presence", "Repair"]


@dataclass(frozen=True)
class Repair:
    """A repair that was made, in order, and what was found with the part in hand."""

    cause: str
    found: str


@dataclass(frozen=True)
class Presence:
    """Who a writer is, as far as they said, and where they are. Whoever says nothing is at the machine."""

    name: str = ""
    place: str = "machine"


@dataclass(frozen=True)
class Hint:
    """A hint from who follows: `taken` None while it is not answered."""

    writer: str
    seq: int
    given: ev.Hinted
    taken: bool | None = None


@dataclass(frozen=True)
class Beside:
    """An answer that another one to the same question outweighs: both are shown, the one at the machine counts."""

    told: ev.Record
    counts: ev.Record


@dataclass(frozen=True)
class JobState:
    """Everything known about a job. Built by `fold`, never changed."""

    machine: Machine | None = None
    allowed: frozenset[str] = frozenset({"operator", "technician"})
    keep_closed: frozenset[str] = frozenset()
    knowledge: str = ""
    purpose: str = "repair"
    plate_wanted: bool | None = None  # None: not asked yet
    plate_asked: frozenset[str] = frozenset()
    described: frozenset[str] = frozenset()  # of name, serial, site: what was asked
    safety_asked: bool = False
    stop: str | None = None
    complaints: tuple[tuple[str, int, bool], ...] = ()  # (id, stage, present), in order
    steps: frozenset[str] = frozenset()
    context: Mapping[str, str] = field(default_factory=dict)
    context_asked: frozenset[str] = frozenset()
    turned: ev.TurnedTo = field(default_factory=lambda: ev.TurnedTo("advice"))
    readings: tuple[Reading, ...] = ()
    instruments: Mapping[str, str] = field(default_factory=dict)  # check -> own instrument chosen for it
    skipped: Mapping[str, str] = field(default_factory=dict)  # check -> why, at this stage
    ruled_out: tuple[str, ...] = ()
    acknowledged: frozenset[str] = frozenset()  # checks and repairs whose cautions were acknowledged
    repairs: tuple[Repair, ...] = ()
    notes: tuple[str, ...] = ()
    line_notes: Mapping[str, tuple[str, ...]] = field(default_factory=dict)  # line of the sheet -> notes about it
    adjusted: tuple[tuple[int, ev.Adjusted], ...] = ()  # with the number of its event, in order
    left: Mapping[str, tuple[int, ev.LineLeft]] = field(default_factory=dict)  # lines left as they are, with the event
    stands: str = ""  # the machine, as the last work left it: a word of the states
    typed: frozenset[str] = frozenset()  # cautions whose word was typed since it was brought into that state
    presences: Mapping[str, Presence] = field(default_factory=dict)  # by writer
    call: ev.CallBegun | None = None  # the call that is on
    call_ended: ev.CallEnded | None = None  # how the last one ended
    types_told: Mapping[str, str] = field(default_factory=dict)  # question that tells types apart -> answer
    hints: tuple[Hint, ...] = ()
    waits: ev.HandedOn | None = None  # whom or what it waits for
    # Question -> the answer that counts; how it came about is no part of how the job stands.
    answered: Mapping[tuple[str, ...], ev.Record] = field(default_factory=dict, compare=False)
    beside: tuple[Beside, ...] = ()
    closed: ev.Closed | None = None
    answers: tuple[int, ...] = ()  # numbers of the events that answered a question, in order
    unread: tuple[str, ...] = ()  # readings this knowledge can't read, in words

    @property
    def stage(self) -> int:
        """How many repairs changed something: a part found sound leaves the machine as it was."""
        return sum(r.found != "sound" for r in self.repairs)

    @property
    def present(self) -> tuple[str, ...]:
        """The complaints that are there now, in the order they were said."""
        last = {name: present for name, _, present in self.complaints}
        return tuple(name for name, present in last.items() if present)

    @property
    def by_kitchen(self) -> bool:
        """Whether somebody of the kitchen is on the telephone: no tool, no cover, nothing live."""
        return self.call is not None and self.call.caller == "kitchen"

    @property
    def open_hint(self) -> Hint | None:
        """The oldest hint that is not answered."""
        return next((hint for hint in self.hints if hint.taken is None), None)

    def presence(self, writer: str) -> Presence:
        """Who a writer is, and where; at the desk while it writes down a call."""
        known = self.presences.get(writer)
        return known or Presence(place="machine")

    def readings_now(self) -> dict[str, Reading]:
        """The newest reading of each check since the last repair."""
        return {r.check: r for r in self.readings if r.stage == self.stage}

    def newest(self) -> dict[str, Reading]:
        """The newest reading of each check at any stage."""
        return {r.check: r for r in self.readings}
