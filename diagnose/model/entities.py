"""What the knowledge is made of: frozen records, read strictly from TOML."""

from __future__ import annotations

from typing import Literal

import msgspec

__all__ = [
    "Basis",
    "Cause",
    "Caution",
    "Check",
    "Complaint",
    "ContextQuestion",
    "Effort",
    "Event",
    "InstrumentKind",
    "Limit",
    "MachineType",
    "Outcome",
    "ReadingSpec",
    "Shift",
    "Source",
    "StopCondition",
]

Access = Literal[
    "none", "front panel", "control box", "booster cover", "pump guard", "drive guard", "vent duct", "tank drained"
]
State = Literal["running", "idle hot", "isolated", "cold and drained"]
Who = Literal["operator", "technician", "licensed electrician", "licensed gas fitter", "licensed plumber"]
Traits = dict[str, list[str | int | bool]]


class _Record(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    pass


class Basis(_Record, frozen=True, kw_only=True):
    """Where a statement or figure stands."""

    kind: Literal["published", "common practice", "memory", "judgement", "learnt"]
    source: str | None = None  # id in sources.toml, with kind "published"
    where: str | None = None  # section, table, page
    note: str | None = None


class Source(_Record, frozen=True, kw_only=True):
    """A published document."""

    id: str
    title: str
    publisher: str
    year: int | None = None  # None: the copy seen does not say
    address: str | None = None
    seen: Literal["text", "secondary", "memory"]


class Caution(_Record, frozen=True, kw_only=True):
    """What to do before a hazardous step. With a `word`, it must be typed before the step is shown."""

    id: str
    hazard: str
    title: str
    text: list[str]
    word: str | None = None
    basis: Basis


class StopCondition(_Record, frozen=True, kw_only=True):
    """A danger asked for before any diagnosis, with its one instruction."""

    id: str
    ask: str
    instruction: list[str]
    basis: Basis


class Limit(_Record, frozen=True, kw_only=True):
    """A figure of good order: a band from `low` to `high`, either may be open.

    Each end is a list of the same figure in one or two units ("180 F", "82 C"): a reading is
    compared in its own unit, as codes round each separately.
    """

    id: str
    title: str
    quantity: str
    low: list[str] = []
    high: list[str] = []
    plate_low: str | None = None  # plate figure that governs this end where the plate gives it
    plate_high: str | None = None
    fits: Traits = {}
    basis: Basis


class ContextQuestion(_Record, frozen=True, kw_only=True):
    """Something asked about the job as a whole; its answers shift priors."""

    id: str
    ask: str
    answers: list[str]


class Shift(_Record, frozen=True, kw_only=True):
    """When the answer to context question `when` is one of `among`, the cause is more or less frequent."""

    when: str
    among: list[str]
    by: str  # a word of the shift scale
    basis: Basis | None = None


class Complaint(_Record, frozen=True, kw_only=True):
    """What the kitchen says: a top event."""

    id: str
    title: str
    kitchen: list[str]  # words a kitchen uses
    of: list[str]  # events and causes that can bring it about
    unlisted: str = "uncommon"  # frequency word of "something not listed here"
    prove_by: list[str]  # checks that show the complaint is gone
    advice: list[str] = []  # what to tell the kitchen afterwards
    fits: Traits = {}  # machines on which it can be complained of at all
    basis: Basis


class Event(_Record, frozen=True, kw_only=True):
    """Something that is so inside the machine: a gate."""

    id: str
    title: str
    gate: Literal["any", "all", "at_least"]
    k: int | None = None
    of: list[str]
    fits: Traits = {}
    basis: Basis


class Cause(_Record, frozen=True, kw_only=True):
    """What can be repaired (or shown to be no fault): a basic event."""

    id: str
    title: str
    shows: str
    why: str
    told_apart: str
    how_often: str
    shifts: list[Shift] = []
    repair: list[str]
    minutes: float
    parts: list[str]
    open: list[Access]
    state: State
    who: Who
    cautions: list[str]
    prove_by: list[str]
    no_fault: bool = False  # works as designed, or lies with operation, not the machine
    inseparable_from: dict[str, str] = {}  # sibling id -> why no check can tell the two apart
    fits: Traits = {}
    basis: Basis


class ReadingSpec(_Record, frozen=True, kw_only=True):
    """What a measuring check reads: a quantity, asked once or for `each` of several places."""

    quantity: str
    unit: str  # the unit meant when none is typed, e.g. "°F"
    each: list[str] = []
    least: str | None = None  # refuse below
    most: str | None = None  # refuse above
    example: str | None = None


class Outcome(_Record, frozen=True, kw_only=True):
    """One answer to a check. Measured outcomes may carry a band; others are chosen."""

    title: str
    good: bool = False  # what a healthy machine shows
    low: str | None = None  # band from: a quantity, `limit.<id>.low|high`, or `plate.<name>`
    high: str | None = None


class Check(_Record, frozen=True, kw_only=True):
    """Something to look at or measure."""

    id: str
    title: str
    ask: str
    steps: list[str]
    mistakes: list[str] = []
    aloud: str | None = None  # words for the telephone; None: never by telephone
    reading: ReadingSpec | None = None  # None: an outcome is chosen
    computed: bool = False  # never asked; a rule answers it from other readings
    instrument: str
    minutes: float
    open: list[Access]
    state: State
    who: Who
    cautions: list[str]
    looks_at: list[str]  # in this order: the first that is true decides
    outcomes: dict[str, Outcome]
    shows: dict[str, dict[str, str | float]]  # per id of looks_at, and "none": outcome -> likelihood
    fits: Traits = {}
    basis: Basis


class Effort(_Record, frozen=True, kw_only=True):
    """Minutes to open an access, to bring the machine into a state (and `back` out of it), or to get help."""

    id: str
    title: str
    minutes: float
    back: float = 0.0
    basis: Basis


class InstrumentKind(_Record, frozen=True, kw_only=True):
    """A kind of instrument for one quantity, and how far it may be off: absolute, as a share, or both."""

    id: str
    title: str
    quantity: str
    words: list[str] = []  # any of these in a check's instrument names it; none: when nothing else fits
    absolute: str = ""
    share: float = 0.0
    basis: Basis


class MachineType(_Record, frozen=True, kw_only=True):
    """A type of machine: its traits and its plate."""

    id: str
    title: str
    traits: dict[str, str | int | bool]
    plate: dict[str, str]  # name -> quantity as text
    basis: Basis
