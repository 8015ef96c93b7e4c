"""One question for each field, by the kind of value it takes; what the schema gains is asked without a change here."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import msgspec

from diagnose.model import Book
from diagnose.model.bands import band_text_problem
from diagnose.model.fields import RECORDS, Field, fields_of
from diagnose.model.lint.texts import TITLE_REMEDY, is_title, text_problems
from diagnose.model.shop import unmarked
from diagnose.units import DIMENSIONS, UnitError, find_unit, parse_quantity, units_of
from diagnose.writing.nested import Nested
from diagnose.writing.talk import Refused

__all__ = ["Questions"]

_LONGEST_EXAMPLE = 160


@dataclass
class Questions(Nested):
    """Asks for the fields of an entry. An answer of None stands for a field that is left out."""

    def record(self, record: type[msgspec.Struct], kept: dict[str, Any], keep: Callable[[], None]) -> None:
        """Ask for every field not in `kept` yet, putting it there; `keep` is called after each."""
        fields = fields_of(record)
        for nth, each in enumerate(fields, 1):
            if each.name not in kept and not self.needless(each, kept):
                of = f"{nth} of {len(fields)}: " if kept is self.whole else ""
                kept[each.name] = self.ask(record, each, kept, of)
                keep()

    def needless(self, each: Field, kept: Mapping[str, Any]) -> bool:
        """Whether a field belongs only to another answer than was given ("with `published` only")."""
        if each.left_out.startswith("with `"):
            return each.left_out.split("`")[1] not in [v for v in kept.values() if isinstance(v, str)]
        return each.kind == "band end" and not self.whole.get("reading")

    def ask(self, record: type[msgspec.Struct], each: Field, kept: Mapping[str, Any], of: str = "") -> Any:
        """One field: what is wanted, an example, and the question until its answer will do."""
        self.talk.head(f"{of}{each.name.replace('_', ' ')}")
        means = each.means.replace("`", "") or each.kind
        self.talk.say(f"{means[:1].upper()}{means[1:]}.".replace("..", "."))
        example = _example(self.book, record, each.name, self.assembly)
        if example and not each.choices:
            self.talk.say(f"Example: {example}", role="dim")
        return self._by_kind(each, kept, each.needed or each.left_out.startswith("with "))

    def _by_kind(self, each: Field, kept: Mapping[str, Any], needed: bool) -> Any:
        kind, empty = each.kind, "may be empty" in each.kind
        if each.choices and each.many:
            return self.several(each.choices, needed)
        if each.choices:
            return self.one(each.choices, needed, each.left_out)
        if kind.startswith("list of text"):
            answers = self._answers(each, kept)
            return self.several(answers, needed) if answers else self.lines(needed and not empty, empty)
        if kind.startswith("list of cautions"):
            titles = [f"{name}: {caution.hazard}" for name, caution in self.book.cautions.items()]
            return self.several(tuple(self.book.cautions), needed and not empty, titles, empty)
        if kind.startswith("word of "):
            return self.word(kind.removeprefix("word of "), needed, each.left_out)
        if kind.startswith("id in "):
            return self.known(kind, needed)
        plain: dict[str, Callable[[], Any]] = {
            "id": self.new_id,
            "text": lambda: self._line(needed, each.left_out, _title if each.name == "title" else _text),
            "number": lambda: self._line(needed, each.left_out, _number),
            "whole number": lambda: self._line(needed, each.left_out, _whole_number),
            "true or false": lambda: self.yes(bool(each.default)),
            "list of events and causes": lambda: self.references("node", needed),
            "list of checks": lambda: self.references("check", needed),
            "traits": self.traits,
            "quantity": lambda: self.one(tuple(DIMENSIONS), needed, each.left_out),
            "unit": lambda: self._line(needed, each.left_out, lambda text: _unit(text, kept)),
            "figure": lambda: self._line(needed, each.left_out, lambda text: _figure(text, kept)),
            "band end": lambda: self._line(needed, each.left_out, self._band),
        }
        if kind in plain:
            return plain[kind]()
        if kind.startswith("table: ") or kind.removeprefix("list of ") in {name.casefold() for name in RECORDS}:
            return self.nested(each, needed)
        return self._line(needed, each.left_out, _literal)

    def _answers(self, each: Field, kept: Mapping[str, Any]) -> tuple[str, ...]:
        """The closed set a list of text must come from: the answers of a question of the context."""
        question = self.book.context.get(str(kept.get("when")))
        return tuple(question.answers) if question and "word for word" in each.means else ()

    def title(self, wanted: str) -> str:
        """A title, asked outside an entry."""
        self.talk.say(wanted)
        return str(self._line(True, "", _title))

    def lines(self, needed: bool, empty: bool = False) -> list[str] | None:
        """Several texts, each on a line of its own; an empty line ends them."""
        self.talk.say("One a line; an empty line ends.", role="dim")
        found: list[str] = []

        def understood(text: str) -> str:
            if not text and needed and not found:
                raise Refused("at least one is needed")
            return _text(text) if text else ""

        while text := self.talk.until(understood):
            found.append(text)
        return found or ([] if empty else None)

    def _line(self, needed: bool, left_out: str, read: Callable[[str], Any]) -> Any:
        def understood(text: str) -> Any:
            if text:
                return read(text)
            if needed:
                raise Refused("this one is needed")
            return None

        self.hint(needed, left_out)
        return self.talk.until(understood)

    def _band(self, text: str) -> str:
        problem = band_text_problem(text, self.book, str(self.whole["reading"]["quantity"]))
        if problem:
            raise Refused(f"{problem}; write a figure, limit.ID.low or .high, or plate.NAME * factor")
        return text


def _example(book: Book, record: type[msgspec.Struct], name: str, assembly: str | None) -> str:
    """How an entry that exists fills a field, best one of the same file; empty where none does."""
    tables: tuple[Mapping[str, Any], ...] = (book.complaints, book.events, book.causes, book.checks)
    entries = [entry for table in tables for entry in table.values() if type(entry) is record]
    near = [e for e in entries if assembly and str(getattr(e, "id", "")).startswith(f"{assembly}.")]
    values = (getattr(entry, name) for entry in (*near, *entries))
    first = next((v for v in values if v and isinstance(v, str | float | list)), "")
    if name == "id":
        first = str(first).rpartition(".")[2]
    if isinstance(first, list):
        first = "; ".join(str(each) for each in first[:2] if isinstance(each, str))
    text = unmarked(f"{first:g}" if isinstance(first, float) else str(first))
    return text if len(text) <= _LONGEST_EXAMPLE else text[:_LONGEST_EXAMPLE].rpartition(" ")[0] + " ..."


def _text(text: str) -> str:
    for what, remedy in text_problems(text):
        raise Refused(f"the text {what}; {remedy}")
    return text


def _title(text: str) -> str:
    if not is_title(text):
        raise Refused(f"that is no title; {TITLE_REMEDY}")
    return _text(text)


def _number(text: str) -> int | float:
    try:
        value = float(text.replace(",", "."))
    except ValueError:
        raise Refused(f"{text[:40]!r} is no number; write digits, like 12") from None
    if not 0 < value <= 1e6:
        raise Refused(f"{text} can't be; write a number over 0")
    return int(value) if value == int(value) else value


def _whole_number(text: str) -> int:
    value = _number(text)
    if not isinstance(value, int):
        raise Refused(f"{text} is not whole; write digits only, like 2")
    return value


def _unit(text: str, kept: Mapping[str, Any]) -> str:
    quantity = str(kept.get("quantity", ""))
    if find_unit(text, quantity) is None:
        raise Refused(f"{text!r} is no unit of {quantity}; use {', '.join(u.symbol for u in units_of(quantity)[:8])}")
    return text


def _figure(text: str, kept: Mapping[str, Any]) -> str:
    try:
        parse_quantity(text, str(kept.get("quantity", "")), str(kept.get("unit") or "") or None)
    except UnitError as error:
        raise Refused(str(error)) from None
    return text


def _literal(text: str) -> Any:
    """A value of a kind not foreseen here, as TOML writes it."""
    try:
        return tomllib.loads(f"value = {text}")["value"]
    except (tomllib.TOMLDecodeError, KeyError, RecursionError) as error:
        raise Refused(f"{error}; write the value as TOML does, text in quotes") from None
