"""`diagnose knowledge`: list, show and lint what is known."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import msgspec

from diagnose.batch.cases import case_problems, read_cases, uncovered
from diagnose.batch.output import SCHEMA, to_json
from diagnose.model import Book, KnowledgeError, Place
from diagnose.model.lint import lint
from diagnose.view import Line, table, wrap

__all__ = ["KINDS", "lint_knowledge", "list_entries", "show_entry"]

KINDS = (
    *("complaints", "events", "causes", "checks", "machines"),
    *("lines", "adjustments", "limits", "instruments", "sources", "cautions", "words"),
)
_KEYS = {"adjustments": "adjust"}  # where the tables of a kind are called otherwise


def list_entries(book: Book, kind: str, as_json: bool, width: int) -> list[str]:
    """One line per entry of a kind (of KINDS): id and title; words print their scales."""
    if kind == "words":
        return _words(book, as_json, width)
    entries: Mapping[str, Any] = getattr(book, kind)
    rows = [(name, _title(book, entry)) for name, entry in sorted(entries.items())]
    if as_json:
        return [to_json({"schema": SCHEMA, kind: [{"id": name, "title": title} for name, title in rows]})]
    return [*table(("id", "title"), rows, width, indent="")]


def _title(book: Book, entry: Any) -> str:
    """Of an entry; a line of the sheet may have that of its check."""
    return str(entry.title or book.title(entry.check))


def _words(book: Book, as_json: bool, width: int) -> list[str]:
    if as_json:
        return [
            to_json({"schema": SCHEMA, "words": {n: s.words for n, s in book.scales.items()}, "scales": book.scales})
        ]
    lines: list[str] = []
    for name, scale in book.scales.items():
        lines += [*wrap(f"{name}: {scale.title}", width), *wrap(scale.origin, width, "  ")]
        named = [book.sources[s] for s in scale.sources if s in book.sources]
        lines += [
            line for s in named for line in wrap(f"{s.title} ({s.publisher}, {s.year or 'no year'})", width, "  - ")
        ]
        lines += [f"  {number:8.4g}  {word}" for word, number in scale.words.items()]
        lines.append("")
    return lines[:-1]


def find_entry(book: Book, name: str) -> tuple[str, Any] | None:
    """(kind, entry) of an id of any kind, or None."""
    for kind in KINDS[:-1]:
        entries: Mapping[str, Any] = getattr(book, kind)
        if name in entries:
            return kind, entries[name]
    return None


def show_entry(book: Book, name: str, as_json: bool, width: int) -> list[str] | None:
    """Everything an entry says; None when there is no such id."""
    found = find_entry(book, name)
    if found is None:
        return None
    kind, entry = found
    if as_json:
        return [to_json({"schema": SCHEMA, "kind": kind, "entry": entry})]
    data = msgspec.to_builtins(entry)
    place = book.places.get(name) or book.places.get(f"{_KEYS.get(kind, kind[:-1])}:{name}")
    lines: list[str] = [*wrap(f"{kind[:-1]} {name}", width), *wrap(f"at {place}{_whose(place)}", width, "  ")]
    for key, value in data.items():
        if key != "id" and value not in (None, [], {}, ""):
            lines += _field(key.replace("_", " "), value, width, "")
    return lines


def _whose(place: Place | None) -> str:
    if place is None or not place.shop:
        return ""
    return f": from your shop's folder {place.shop}{', in place of the entry of ours' if place.replaces else ''}"


def _field(key: str, value: Any, width: int, indent: str) -> list[Line]:
    if isinstance(value, dict):
        lines = wrap(f"{key}:", width, indent)
        for inner, each in value.items():
            if each not in (None, [], {}, False):
                lines += _field(str(inner), each, width, indent + "  ")
        return lines
    if isinstance(value, list):
        lines = wrap(f"{key}:", width, indent)
        for nth, each in enumerate(value, 1):
            if isinstance(each, dict):
                lines += _field(f"{nth}", each, width, indent + "  ")
            else:
                lines += wrap(str(each), width, f"{indent}  {nth}. " if len(value) > 1 else f"{indent}  ")
        return lines
    return wrap(f"{key}: {value}", width, indent, indent + "  ")


def lint_knowledge(
    book: Book | KnowledgeError, as_json: bool, width: int, cases: Path | None = None
) -> tuple[list[str], bool]:
    """The problems as lines (or JSON), and whether there are none; with the folder `cases`, judged by those too.

    Raises CaseError.
    """
    problems = list(book.problems if isinstance(book, KnowledgeError) else lint(book))
    if cases is not None and isinstance(book, Book):
        told = read_cases(cases)
        problems += [*case_problems(book, told), *uncovered(book, told)]
    if as_json:
        rows = [{"file": p.place.file, "line": p.place.line, "what": p.what, "remedy": p.remedy} for p in problems]
        return [to_json({"schema": SCHEMA, "problems": rows})], not problems
    if not problems:
        return ["No problems."], True
    lines: list[str] = [str(line) for p in problems for line in wrap(str(p), width, "", "    ")]
    count = f"{len(problems)} problem{'s' if len(problems) != 1 else ''}."
    return [*lines, count], False
