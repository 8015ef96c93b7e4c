"""The book: everything known, looked up by id."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.model.entities import Cause, Check, Complaint, Event
from diagnose.model.sheet import Adjustment, SheetLine
from diagnose.model.supporting import (
    Caution,
    ContextQuestion,
    Effort,
    InstrumentKind,
    Limit,
    MachineType,
    Source,
    Stock,
    StopCondition,
    TellApart,
)

__all__ = ["Book", "Place", "Scale"]


@dataclass(frozen=True)
class Place:
    """Where an entry stands: for error messages, and whether it is a shop's own (`shop`: its folder's name)."""

    file: str
    line: int
    shop: str = ""
    replaces: bool = False  # an entry of ours, or of a folder named before

    def __str__(self) -> str:
        return f"{self.file}:{self.line}"


@dataclass(frozen=True)
class Scale:
    """A scale of words, each standing for one number."""

    title: str
    origin: str
    words: Mapping[str, float]
    sources: tuple[str, ...] = ()  # ids in sources.toml its numbers come from

    def number(self, word: str | float) -> float:
        """The number of a word; a number stands for itself. KeyError for an unknown word."""
        return float(self.words[word]) if isinstance(word, str) else float(word)


@dataclass(frozen=True)
class Book:
    """All knowledge, read-only. Ids are unique over complaints, events, causes and checks together."""

    complaints: Mapping[str, Complaint] = field(default_factory=dict)
    events: Mapping[str, Event] = field(default_factory=dict)
    causes: Mapping[str, Cause] = field(default_factory=dict)
    checks: Mapping[str, Check] = field(default_factory=dict)
    limits: Mapping[str, Limit] = field(default_factory=dict)
    sources: Mapping[str, Source] = field(default_factory=dict)
    cautions: Mapping[str, Caution] = field(default_factory=dict)
    stops: Mapping[str, StopCondition] = field(default_factory=dict)
    machines: Mapping[str, MachineType] = field(default_factory=dict)
    instruments: Mapping[str, InstrumentKind] = field(default_factory=dict)
    context: Mapping[str, ContextQuestion] = field(default_factory=dict)
    tell_apart: Mapping[str, TellApart] = field(default_factory=dict)  # questions for the type of machine
    access: Mapping[str, Effort] = field(default_factory=dict)
    states: Mapping[str, Effort] = field(default_factory=dict)
    help: Mapping[str, Effort] = field(default_factory=dict)
    visits: Mapping[str, Effort] = field(default_factory=dict)  # what a visit and the telephone are counted with
    stocks: Mapping[str, Stock] = field(default_factory=dict)  # where parts are kept
    lines: Mapping[str, SheetLine] = field(default_factory=dict)  # of the handover's sheet, as written
    adjustments: Mapping[str, Adjustment] = field(default_factory=dict)
    scales: Mapping[str, Scale] = field(default_factory=dict)  # likelihood, frequency, shift, unlisted
    assemblies: Mapping[str, str] = field(default_factory=dict)  # assembly -> title
    titled: Mapping[str, tuple[int, str]] = field(default_factory=dict)  # file of complaints -> its place, its title
    sections: Mapping[str, tuple[int, str]] = field(default_factory=dict)  # of the sheet -> its place, its title
    places: Mapping[str, Place] = field(default_factory=dict)  # id -> where it stands
    fingerprint: str = ""  # the same for the same knowledge files

    def likelihood(self, word: str | float) -> float:
        return self.scales["likelihood"].number(word)

    def frequency(self, word: str | float) -> float:
        return self.scales["frequency"].number(word)

    def shift(self, word: str | float) -> float:
        return self.scales["shift"].number(word)

    @property
    def unlisted_share(self) -> float:
        """How often something not listed brings an event about, as a share of its causes; 0 where nothing says so."""
        return self.scales["unlisted"].number("beside the causes of an event") if "unlisted" in self.scales else 0.0

    def children(self, node: str) -> tuple[str, ...]:
        """What a complaint or event is made of; empty for a cause."""
        if node in self.complaints:
            return tuple(self.complaints[node].of)
        if node in self.events:
            return tuple(self.events[node].of)
        return ()

    def areas(self) -> list[tuple[str, list[str]]]:
        """The complaints by area, in the order in which areas are shown: (title, ids)."""
        found: dict[tuple[int, str], list[str]] = {}
        for name in self.complaints:
            stem = self.places[name].file.rsplit("/", 1)[-1].removesuffix(".toml") if name in self.places else ""
            found.setdefault(self.titled.get(stem, (99, stem.replace("_", " ").capitalize())), []).append(name)
        return [(title, names) for (_, title), names in sorted(found.items())]

    def title(self, node: str) -> str:
        """The title of any complaint, event, cause or check. KeyError for an unknown id."""
        for table in (self.complaints, self.events, self.causes, self.checks):
            if node in table:
                return str(table[node].title)
        raise KeyError(node)
