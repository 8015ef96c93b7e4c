"""Fields that hold records or tables of their own: basis, reading, shifts, outcomes, what a check shows."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import msgspec

from diagnose.model.fields import RECORDS, Field
from diagnose.writing.choosing import Choosing
from diagnose.writing.talk import Refused

__all__ = ["Nested", "without_none"]


@dataclass
class Nested(Choosing):
    """Asks for what stands inside a field."""

    @abstractmethod
    def record(self, record: type[msgspec.Struct], kept: dict[str, Any], keep: Callable[[], None]) -> None:
        """Ask for the fields of a record."""

    def nested(self, each: Field, needed: bool) -> Any:
        """The value of a field whose kind names a record or a table; KeyError for a kind not known here."""
        tables: dict[str, Callable[[bool], Any]] = {
            "table: id to reason": self._reasons,
            "table: id to outcome": self._outcomes,
            "table: row to outcomes by word of likelihood": self._rows,
        }
        if each.kind in tables:
            return tables[each.kind](needed)
        listed = each.kind.startswith("list of ")
        record = {name.casefold(): record for name, record in RECORDS.items()}[each.kind.removeprefix("list of ")]
        return self._records(record) if listed else self._one(record, needed)

    def _one(self, record: type[msgspec.Struct], needed: bool) -> dict[str, Any] | None:
        if not needed and not self.yes(False):
            return None
        return self._filled(record)

    def _records(self, record: type[msgspec.Struct]) -> list[dict[str, Any]] | None:
        found: list[dict[str, Any]] = []
        while True:
            self.talk.say("Another one?" if found else "Is there any?")
            if not self.yes(False):
                return found or None
            found.append(self._filled(record))

    def _filled(self, record: type[msgspec.Struct]) -> dict[str, Any]:
        kept: dict[str, Any] = {}
        self.record(record, kept, lambda: None)
        return without_none(kept)

    def _reasons(self, needed: bool) -> dict[str, str] | None:
        found: dict[str, str] = {}
        for name in self.references("node", needed) or []:
            self.talk.say(f"Why can no check part it from {name}?")
            found[name] = self.talk.until(_some_text)
        return found or None

    def _outcomes(self, needed: bool) -> dict[str, dict[str, Any]]:
        self.talk.say("Give each outcome a short id, like too_low; an empty line ends them.", role="dim")
        found: dict[str, dict[str, Any]] = {}

        def understood(text: str) -> str:
            good = any(outcome.get("good") for outcome in found.values())
            if not text and len(found) < 2:
                raise Refused("two at least are needed")
            if not text and not good:
                raise Refused("one must be what a healthy machine shows; give one more that is good")
            if text in found:
                raise Refused(f"{text} stands already; an empty line ends them")
            if text and not text.replace("_", "").isalnum():
                raise Refused(f"{text!r} is no id; letters, digits and low lines")
            return text

        while True:
            self.talk.head(f"outcome {len(found) + 1}, its id")
            name = self.talk.until(understood)
            if not name:
                return found
            found[name] = self._filled(RECORDS["Outcome"])

    def _rows(self, needed: bool) -> dict[str, dict[str, str]]:
        """What is seen when each thing looked at is so, and when none of them is."""
        looked = self.whole["looks_at"]
        return {row: self.row(self.whole["outcomes"], row) for row in (*looked, "none")} if looked else {}

    def row(self, outcomes: Mapping[str, Mapping[str, Any]], row: str) -> dict[str, str]:
        """What a check shows when one thing it looks at is so: outcomes, each with its word of likelihood."""
        self.talk.head("when none of these is so" if row == "none" else f"when this is so: {self._called(row)}")
        self.talk.say("Outcomes not named share what is left.", role="dim")
        titles = [str(outcome["title"]) for outcome in outcomes.values()]
        seen: dict[str, str] = {}
        while True:
            self.talk.say("What else is seen?" if seen else "What is seen?")
            outcome = self.one(tuple(outcomes), not seen, "the row is done", titles)
            if outcome is None:
                return seen
            self.talk.say("How often?")
            seen[outcome] = str(self.word("likelihood", True, ""))

    def _called(self, node: str) -> str:
        try:
            return f"{self.book.title(node)} ({node})"
        except KeyError:
            return node


def without_none(kept: dict[str, Any]) -> dict[str, Any]:
    """The answers without what was left out."""
    return {name: value for name, value in kept.items() if value is not None}


def _some_text(text: str) -> str:
    if not text:
        raise Refused("this one is needed")
    return text
