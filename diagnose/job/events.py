"""What can happen in a job: small records, appended and never changed."""

from __future__ import annotations

from typing import Literal

import msgspec

from diagnose.job.event_kind import Kind
from diagnose.job.together_events import (
    CallBegun,
    CallEnded,
    HandedOn,
    HintAnswered,
    Hinted,
    Present,
    TypeTold,
    Unknown,
)

__all__ = [
    "EVENT_TYPES",
    "Acknowledged",
    "Adjusted",
    "AnyEvent",
    "CallBegun",
    "CallEnded",
    "Closed",
    "ComplaintSaid",
    "ContextGiven",
    "Event",
    "HandedOn",
    "HintAnswered",
    "Hinted",
    "InstrumentChosen",
    "LineLeft",
    "MachineDescribed",
    "NoteAdded",
    "Opened",
    "PlateRead",
    "PlateWanted",
    "Present",
    "ReadingTaken",
    "Record",
    "Repaired",
    "RuledOut",
    "SafetyAnswered",
    "Skipped",
    "StepDone",
    "TurnedTo",
    "TypeTold",
    "Unknown",
    "Withdrawn",
]


class Opened(Kind, frozen=True, kw_only=True):
    """A job begins on a machine. `allowed` is who works here, `keep_closed` what must not be opened.

    A `handover` works through the sheet of this machine; a `repair` begins with a complaint.
    """

    machine: str
    type: str
    own: dict[str, str] = msgspec.field(default_factory=dict)
    serial: str = ""
    site: str = ""
    allowed: tuple[str, ...] = ("operator", "technician")
    keep_closed: tuple[str, ...] = ()
    knowledge: str = ""  # fingerprint of the knowledge
    purpose: Literal["repair", "handover"] = "repair"


class PlateWanted(Kind, frozen=True):
    """Whether this machine's own plate is read now, or the type's usual figures are used."""

    wanted: bool


class MachineDescribed(Kind, frozen=True):
    """A name, serial number or site in the user's words; empty: not given."""

    what: Literal["name", "serial", "site"]
    text: str = ""


class PlateRead(Kind, frozen=True):
    """A figure of the machine's own plate with its unit; None: not on the plate."""

    figure: str
    text: str | None = None


class SafetyAnswered(Kind, frozen=True):
    """The stop conditions were asked: `stop` is the one that holds, or None for none of them."""

    stop: str | None = None


class ComplaintSaid(Kind, frozen=True):
    """A complaint is there, or (after a repair) is gone."""

    complaint: str
    present: bool = True
    together: bool = False  # said in the same breath as the one before


class StepDone(Kind, frozen=True):
    """A part of the dialogue is finished, though more could have been said."""

    step: Literal["plate", "complaints", "context"]


class ContextGiven(Kind, frozen=True):
    """An answer to a context question; None: not known."""

    question: str
    answer: str | None = None


class TurnedTo(Kind, frozen=True):
    """What is being done now, so that resume comes back to the same place.

    On a sheet `line` is the line it is for: of an adjustment that is made, of a line that is left as it is.
    """

    what: Literal["advice", "check", "repair", "prove", "complaint", "end", "adjust", "leave", "hand on"]
    id: str = ""
    line: str = ""


class ReadingTaken(Kind, frozen=True):
    """A check was answered: `values` by place as text with unit, or the chosen `outcome`.

    Taken with an instrument of one's own, all that its uncertainty needs is kept here: its name, its kind,
    its accuracy as taken, and what was made of it in words.
    """

    check: str
    values: dict[str, str] = msgspec.field(default_factory=dict)
    outcome: str | None = None
    instrument: str | None = None
    of_kind: str = ""
    accuracy: str = ""  # like "2 °F" or "2 % and 0.1 ohm"
    taken_as: str = ""


class InstrumentChosen(Kind, frozen=True):
    """Which of one's own instruments a check is to be read with; empty: the usual kind, none of one's own."""

    check: str
    name: str = ""


class Skipped(Kind, frozen=True):
    """A check was not answered; or, on the telephone, a repair was not made."""

    check: str
    why: Literal["don't know", "can't reach", "not measured", "not now"]


class RuledOut(Kind, frozen=True):
    """The technician says that this cause or event is not so."""

    node: str


class Acknowledged(Kind, frozen=True):
    """A caution was read and its word typed, before check or repair `before`."""

    cautions: list[str]
    before: str


class Repaired(Kind, frozen=True):
    """A cause was repaired. `found`: what was seen when the part was in hand."""

    cause: str
    found: Literal["as expected", "sound", "can't tell"]


class NoteAdded(Kind, frozen=True):
    """A note in the technician's words; `about` is the line of the sheet it belongs to, if one."""

    text: str
    about: str = ""


class Adjusted(Kind, frozen=True):
    """Something was set on the way to a figure of the sheet: to what, by place, as text with unit.

    `found`: nothing was set yet; this is how it stood when it was read.
    """

    adjustment: str
    line: str
    settings: dict[str, str] = msgspec.field(default_factory=dict)
    found: bool = False


class LineLeft(Kind, frozen=True):
    """A line of the sheet is left as it is, and why; `text` in the technician's own words."""

    line: str
    why: Literal["not now", "waits for another trade", "no instrument here", "not at this site", "remark"]
    text: str = ""


class Withdrawn(Kind, frozen=True):
    """An earlier event of this job is taken back: the `number`-th of the writer `of` (empty: of this one)."""

    number: int
    of: str = ""


class Closed(Kind, frozen=True):
    """The job ends."""

    how: Literal[
        "repaired",
        "stopped for safety",
        "help called",
        "no fault",
        "given up",
        "handed over",
        "solved on the telephone",
    ]
    text: str = ""


Event = (
    Opened
    | PlateWanted
    | MachineDescribed
    | PlateRead
    | SafetyAnswered
    | ComplaintSaid
    | StepDone
    | ContextGiven
    | TurnedTo
    | ReadingTaken
    | InstrumentChosen
    | Skipped
    | RuledOut
    | Acknowledged
    | Repaired
    | NoteAdded
    | Adjusted
    | LineLeft
    | Present
    | CallBegun
    | TypeTold
    | CallEnded
    | Hinted
    | HintAnswered
    | HandedOn
    | Withdrawn
    | Closed
)
EVENT_TYPES: tuple[type, ...] = Event.__args__
AnyEvent = Event | Unknown


class Record(msgspec.Struct, frozen=True, kw_only=True):
    """An event in the journal, written at `at` (UTC, ISO 8601): the `number`-th of its job to come into this journal.

    Everywhere else it is known as the `seq`-th of its `writer`; where one alone writes, that is its number. `seen` is
    the newest event (`writer:seq`) of the job that the writer knew of.
    """

    number: int
    at: str
    writer: str
    event: AnyEvent
    seq: int = 0
    seen: str = ""

    @property
    def key(self) -> tuple[str, int]:
        """(writer, seq): the same on every computer."""
        return self.writer, self.seq or self.number
