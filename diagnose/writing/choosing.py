"""Questions whose answers come from a closed set, or name entries that exist: by number, by id, by words."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from diagnose.model import TRAITS, Book
from diagnose.view.traits import TRAIT_WORDS
from diagnose.writing.talk import Refused, Talk, Unclear, number_in

__all__ = ["Choosing", "Finder"]

Finder = Callable[[str, Mapping[str, Sequence[str]]], Sequence[str]]  # words, texts by id -> ids, the best first

_NAME = re.compile(r"[a-z][a-z0-9_]*")
_FULL = re.compile(r"[a-z][a-z0-9_]*\.[a-z][a-z0-9_]*")


@dataclass
class Choosing:
    """What all questions need: the knowledge, the talk, the file the entry goes to, and a search by words."""

    book: Book
    talk: Talk
    find: Finder
    assembly: str | None = None  # the file's name; None for a complaint, whose id has no dot
    whole: dict[str, Any] = field(default_factory=dict)  # what was answered of the entry so far

    def hint(self, needed: bool, left_out: str = "") -> None:
        if not needed:
            self.talk.say(f"Enter alone: {left_out.replace('`', '') or 'left out'}.", role="dim")

    def one(self, values: Sequence[str], needed: bool, left_out: str = "", titles: Sequence[str] = ()) -> str | None:
        """One of a closed set, by number or word."""
        self.talk.options(titles or values)
        self.hint(needed, left_out)

        def understood(text: str) -> str | None:
            if not text and not needed:
                return None
            return _pick(text, values)

        return self.talk.until(understood)

    def several(self, values: Sequence[str], needed: bool, titles: Sequence[str] = (), empty: bool = False) -> Any:
        """Some of a closed set, in the order typed."""
        self.talk.options(titles or values)
        self.talk.say("Numbers or words, commas between." + ("" if needed else " Enter alone: none."), role="dim")

        def understood(text: str) -> Any:
            if not text and not needed:
                return [] if empty else None
            parts = re.split(r"[\s,;]+", text) if re.fullmatch(r"[\d\s,;]+", text) else re.split(r"\s*[,;]\s*", text)
            return list(dict.fromkeys(_pick(part, values) for part in parts if part or not text))

        return self.talk.until(understood)

    def word(self, scale: str, needed: bool, left_out: str) -> str | None:
        """A word of a scale, each with what it stands for."""
        words = self.book.scales[scale].words
        factor = scale == "shift"
        titles = [f"{w} ({f'{n:g} times' if factor else f'{n * 100:.3g} %'})" for w, n in words.items()]
        return self.one(tuple(words), needed, left_out, titles)

    def yes(self, default: bool) -> bool | None:
        """Yes or no; None where Enter leaves the default."""
        self.talk.say(f"y or n. Enter alone: {'yes' if default else 'no'}.", role="dim")

        def understood(text: str) -> bool | None:
            if not text:
                return None
            if text.casefold() in ("y", "yes", "true", "n", "no", "false"):
                return text.casefold() in ("y", "yes", "true")
            raise Refused(f"{text!r} is neither yes nor no; type y or n")

        return self.talk.until(understood)

    def known(self, kind: str, needed: bool) -> str | None:
        """The id of a source or of a question of the context."""
        if "context" in kind:
            ids = tuple(self.book.context)
            return self.one(ids, needed, "", [f"{name}: {self.book.context[name].ask}" for name in ids])
        if "sources" in kind:
            texts = {name: [source.title, source.publisher] for name, source in self.book.sources.items()}
            return self._named(texts, needed, "its id, or words of its title")
        self.hint(needed)
        return self.talk.until(lambda text: text or None)

    def traits(self) -> dict[str, list[str | int | bool]] | None:
        """The machines an entry belongs to."""
        every = [(trait, value) for trait, values in TRAITS.items() for value in values]
        names = [f"{trait} {str(value).lower()}" for trait, value in every]
        titles = [TRAIT_WORDS.get(each, name) for each, name in zip(every, names, strict=True)]
        chosen = self.several(names, False, titles)
        if not chosen:
            return None
        found: dict[str, list[str | int | bool]] = {}
        for name in chosen:
            trait, value = every[names.index(name)]
            found.setdefault(trait, []).append(value)
        return found

    def new_id(self) -> str:
        """An id nothing else has; in an assembly's file without the assembly's name."""

        def understood(text: str) -> str:
            self.name_like(text)
            full = f"{self.assembly}.{text}" if self.assembly else text
            if any(
                full in table for table in (self.book.complaints, self.book.events, self.book.causes, self.book.checks)
            ):
                raise Refused(f"{full} stands already ({self.book.title(full)}); choose another")
            return text

        return self.talk.until(understood)

    def name_like(self, text: str) -> str:
        """The text where it may be an id. Raises Refused."""
        if not _NAME.fullmatch(text):
            raise Refused(f"{text[:40]!r} is no id; small letters, digits and low lines, like jets_worn")
        return text

    def named(self, texts: Mapping[str, Sequence[str]], wanted: str) -> str:
        """One entry that exists, by id or words."""
        return str(self._named(texts, True, wanted))

    def texts(self, kind: str) -> dict[str, list[str]]:
        """What entries of a kind (node, check, parent) are found by."""
        b = self.book
        tables: dict[str, tuple[Mapping[str, Any], ...]] = {
            "node": (b.events, b.causes),
            "check": (b.checks,),
            "parent": (b.events, b.complaints),
        }
        return {name: [entry.title] for table in tables[kind] for name, entry in table.items()}

    def references(self, kind: str, needed: bool) -> list[str] | None:
        """Ids of entries, one a line, by id or by words; an empty line ends them."""
        self.talk.say("One a line, by id or in words; an empty line ends.", role="dim")
        found: list[str] = []
        while True:
            each = self._named(self.texts(kind), needed and not found, "an id, or words of its title", hinted=False)
            if each is None:
                return found or None
            if each in found:
                self.talk.say("That one stands already.")
            else:
                found.append(each)

    def _named(self, texts: Mapping[str, Sequence[str]], needed: bool, wanted: str, hinted: bool = True) -> str | None:
        offered: list[str] = []
        strange: list[str] = []  # an id typed that nothing has yet

        def understood(text: str) -> str | None:
            if not text:
                if needed:
                    raise Refused(f"one is needed: {wanted}")
                return None
            full = f"{self.assembly}.{text}" if self.assembly and f"{self.assembly}.{text}" in texts else text
            if full in texts:
                return full
            if nth := number_in(text, len(offered)):
                return offered[nth - 1]
            if _FULL.fullmatch(text):
                if text in strange:
                    return text
                strange.append(text)
                raise Unclear(f"Nothing is called {text} yet. Type it once more to write it later, or another.")
            offered[:] = list(self.find(text, texts))[:5]
            if not offered:
                raise Refused(f"nothing is found by {text[:40]!r}; say {wanted}")
            self.talk.options([f"{texts[name][0]} ({name})" for name in offered])
            raise Unclear("Which of these? Its number, or other words.")

        if hinted:
            self.hint(needed)
        name = self.talk.until(understood)
        if name is not None and name in texts:
            self.talk.say(f"= {texts[name][0]} ({name})", role="dim")
        return name


def _pick(text: str, values: Sequence[str]) -> str:
    if nth := number_in(text, len(values)):
        return values[nth - 1]
    exact = [v for v in values if v.casefold() == text.casefold()]
    near = exact or [v for v in values if text and v.casefold().startswith(text.casefold())]
    if len(near) == 1:
        return near[0]
    raise Refused(f"{text[:40]!r} is none of them; type a number from 1 to {len(values)}")
