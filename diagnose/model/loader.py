"""Read the knowledge folder into a book: strict, and with all problems at once."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from typing import Any
from weakref import WeakValueDictionary

import msgspec

from diagnose.model import entities as e
from diagnose.model import sheet as h
from diagnose.model import supporting as s
from diagnose.model.book import Book, Place, Scale
from diagnose.model.lines import line_of
from diagnose.model.problems import KnowledgeError, Problem
from diagnose.model.shop import marked

__all__ = ["load_book", "shipped_knowledge"]

# folder or file -> the tables it may hold
_ASSEMBLY: dict[str, type[msgspec.Struct]] = {"event": e.Event, "cause": e.Cause, "check": e.Check}
_KINDS: dict[str, dict[str, type[msgspec.Struct]]] = {
    "assemblies": _ASSEMBLY,
    "complaints": {"complaint": e.Complaint, **_ASSEMBLY},
    "handover": {"line": h.SheetLine, "adjust": h.Adjustment, "check": e.Check},
    "limits": {"limit": s.Limit},
    "machines": {"machine": s.MachineType},
    "instruments.toml": {"instrument": s.InstrumentKind},
    "sources.toml": {"source": s.Source},
    "cautions.toml": {"caution": s.Caution, "stop": s.StopCondition},
    "context.toml": {"question": s.ContextQuestion},
    "tell_apart.toml": {"tell_apart": s.TellApart},
    "access.toml": {"access": s.Effort, "state": s.Effort, "help": s.Effort, "visit": s.Effort},
    "parts.toml": {"stock": s.Stock},
}
_REFERENCES = ("of", "looks_at", "prove_by", "inseparable_from", "check", "adjust", "upsets")


def shipped_knowledge() -> Path:
    """The knowledge that came with the program: inside the wheel, or beside the package in a checkout."""
    package = Path(__file__).resolve().parent.parent
    inside = package / "_knowledge"
    return inside if inside.is_dir() else package.parent / "knowledge"


def load_book(*folders: Path) -> Book:
    """Read one or more knowledge folders, later ones adding to or replacing entries of earlier ones.

    The first is ours; entries of the others are a shop's own and are marked as such.
    Raises KnowledgeError with every problem found in reading.
    """
    folders = folders or (shipped_knowledge(),)
    content = _content(folders)
    found = _IN_USE.get(content) if content else None
    if found is not None:
        return found
    gathered = _Gathered()
    for nth, folder in enumerate(folders):
        gathered.folder(folder, shop=folder.name if nth else "")
    if gathered.problems:
        raise KnowledgeError(gathered.problems)
    book = gathered.book()
    if content and content == _content(folders):
        _IN_USE[content] = book
    return book


# A book is read-only: where one of the same content is in use, it serves again, with all that was worked out for it.
_IN_USE: WeakValueDictionary[str, Book] = WeakValueDictionary()


def _content(folders: Sequence[Path]) -> str:
    """The same for the same files in folders of the same names; "" where something can't be read."""
    digest = sha256()
    for folder in folders:
        if not folder.is_dir():
            return ""
        digest.update(f"folder {folder.name}\n".encode())
        for path in sorted(folder.rglob("*.toml")):
            try:
                told = path.read_bytes()
            except OSError:
                return ""
            digest.update(f"{path.relative_to(folder).as_posix()} {len(told)}\n".encode() + told)
    return digest.hexdigest()


@lru_cache(maxsize=256)
def _parsed(text: str) -> dict[str, Any]:
    """A file's tables, which nobody changes: a shop's folder is read again after every entry, ours stays as it is."""
    return tomllib.loads(text)


class _Gathered:
    def __init__(self) -> None:
        self.tables: dict[str, dict[str, Any]] = {}
        self.places: dict[str, Place] = {}
        self.assemblies: dict[str, str] = {}
        self.titled: dict[str, tuple[int, str]] = {}
        self.sections: dict[str, tuple[int, str]] = {}
        self.scales: dict[str, Scale] = {}
        self.problems: list[Problem] = []
        self.digest = sha256()
        self.shop = ""

    def folder(self, folder: Path, shop: str = "") -> None:
        self.shop = shop
        if not folder.is_dir():
            self._problem(Place(str(folder), 1), "no such folder", "name a folder of knowledge")
            return
        fresh: set[str] = set()
        for path in sorted(folder.rglob("*.toml")):
            relative = path.relative_to(folder)
            self.digest.update(relative.as_posix().encode())
            shown = f"{folder.name}/{relative.as_posix()}"
            try:
                text = path.read_text("utf-8")
                self.digest.update(text.encode())
                data = _parsed(text)
            except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError) as error:
                self._problem(Place(shown, _line_in(str(error))), f"can't be read: {error}", "mend the TOML")
                continue
            if relative.name == "words.toml":
                self._scales(shown, data)
                continue
            kinds = _KINDS.get(relative.parts[0] if len(relative.parts) > 1 else relative.name)
            if kinds is None:
                known = ", ".join(_KINDS)
                self._problem(Place(shown, 1), "file of no known kind", f"put it under one of {known}")
                continue
            self._file(shown, relative.stem, text, data, kinds, fresh)

    def _file(
        self,
        shown: str,
        stem: str,
        text: str,
        data: dict[str, Any],
        kinds: dict[str, type[msgspec.Struct]],
        fresh: set[str],
    ) -> None:
        lines = line_of(text)
        scoped = "check" in kinds and "complaint" not in kinds
        for key, value in data.items():
            ordered = self.titled if "complaint" in kinds else self.sections if "line" in kinds else None
            if key == "title" and ordered is not None and isinstance(value, str):
                ordered[stem] = (ordered.get(stem, (99, ""))[0], value)
            elif key == "order" and ordered is not None and isinstance(value, int):
                ordered[stem] = (value, ordered.get(stem, (99, stem))[1])
            elif key == "title" and scoped and isinstance(value, str):
                self.assemblies[stem] = value
            elif key not in kinds or not isinstance(value, list):
                self._problem(Place(shown, 1), f"unknown key {key!r}", f"use {', '.join(kinds)}")
        for kind, record in kinds.items():
            entries = data.get(kind, [])
            for nth, raw in enumerate(entries if isinstance(entries, list) else []):
                place = Place(shown, lines.get((kind, nth), 1))
                if not isinstance(raw, dict):
                    self._problem(place, f"{kind} is no table", f"write [[{kind}]]")
                    continue
                self._entry(place, kind, record, _scope(raw, stem) if scoped else raw, fresh)

    def _entry(
        self, place: Place, kind: str, record: type[msgspec.Struct], raw: dict[str, Any], fresh: set[str]
    ) -> None:
        try:
            entry: Any = msgspec.convert(raw, record)
        except (msgspec.ValidationError, TypeError) as error:
            name = raw.get("id", "?")
            self._problem(place, f"{kind} {name}: {error}", "see the table of fields in knowledge/README.md")
            return
        if kind in ("complaint", "event", "cause", "check"):
            name = entry.id
        else:
            name = f"{kind}:{entry.id}"
        if name in fresh:
            first = self.places[name]
            self._problem(place, f"{entry.id} stands twice", f"it is at {first} already: rename or delete one")
            return
        fresh.add(name)
        if self.shop:
            entry = marked(entry)
            place = Place(place.file, place.line, self.shop, name in self.places)
        for other in ("complaint", "event", "cause", "check"):
            if other != kind and kind in ("complaint", "event", "cause", "check"):
                self.tables.get(other, {}).pop(entry.id, None)
        self.tables.setdefault(kind, {})[entry.id] = entry
        self.places[name] = place

    def _scales(self, shown: str, data: dict[str, Any]) -> None:
        for name, raw in data.items():
            try:
                self.scales[name] = msgspec.convert(raw, Scale)
            except (msgspec.ValidationError, TypeError) as error:
                self._problem(Place(shown, 1), f"scale {name}: {error}", "give title, origin and words")

    def _problem(self, place: Place, what: str, remedy: str) -> None:
        self.problems.append(Problem(place, what, remedy))

    def book(self) -> Book:
        t = self.tables
        return Book(
            complaints=t.get("complaint", {}),
            events=t.get("event", {}),
            causes=t.get("cause", {}),
            checks=t.get("check", {}),
            limits=t.get("limit", {}),
            sources=t.get("source", {}),
            cautions=t.get("caution", {}),
            stops=t.get("stop", {}),
            machines=t.get("machine", {}),
            instruments=t.get("instrument", {}),
            context=t.get("question", {}),
            tell_apart=t.get("tell_apart", {}),
            access=t.get("access", {}),
            states=t.get("state", {}),
            help=t.get("help", {}),
            visits=t.get("visit", {}),
            stocks=t.get("stock", {}),
            scales=self.scales,
            lines=t.get("line", {}),
            adjustments=t.get("adjust", {}),
            assemblies=self.assemblies,
            titled=self.titled,
            sections=self.sections,
            places=self.places,
            fingerprint=self.digest.hexdigest()[:16],
        )


def _scope(raw: dict[str, Any], assembly: str) -> dict[str, Any]:
    """Names without a dot belong to the file's assembly: `pole_open` -> `contactor.pole_open`."""
    scoped = dict(raw)
    if isinstance(raw.get("id"), str):
        scoped["id"] = f"{assembly}.{raw['id']}"
    for key in _REFERENCES:
        value = raw.get(key)
        if isinstance(value, str):
            scoped[key] = _full(value, assembly)
        elif isinstance(value, list):
            scoped[key] = [_full(v, assembly) for v in value]
        elif isinstance(value, dict):
            scoped[key] = {_full(k, assembly): v for k, v in value.items()}
    if isinstance(raw.get("shows"), dict):
        scoped["shows"] = {k if k == "none" else _full(k, assembly): v for k, v in raw["shows"].items()}
    return scoped


def _full(name: Any, assembly: str) -> Any:
    return name if not isinstance(name, str) or "." in name else f"{assembly}.{name}"


def _line_in(message: str) -> int:
    words = iter(message.replace(",", " ").replace(")", " ").split())
    return next(_numbers_after("line", words), 1)


def _numbers_after(word: str, words: Iterator[str]) -> Iterator[int]:
    for each in words:
        if each == word:
            following = next(words, "")
            if following.isdigit():
                yield int(following)
