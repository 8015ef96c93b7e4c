"""`diagnose knowledge new`: an entry asked field by field, shown, written, and looked over with all the rest."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Any

import msgspec

from diagnose.model import Book, KnowledgeError, Problem, load_book
from diagnose.model.fields import RECORDS, fields_of
from diagnose.model.lint import lint
from diagnose.writing.attach import attach
from diagnose.writing.choosing import Finder
from diagnose.writing.draft import Draft
from diagnose.writing.folder import add_entry, new_file
from diagnose.writing.nested import without_none
from diagnose.writing.questions import Questions
from diagnose.writing.talk import EndOfInputError, Refused, Talk, number_in
from diagnose.writing.toml import toml_entry

__all__ = ["KINDS", "New"]

KINDS = ("assembly", "cause", "check", "complaint", "event")
_FOLLOWS = {"looks_at": "shows", "outcomes": "shows", "reading": "outcomes"}  # asked again when the first changes


@dataclass
class New:
    """One run of the command. `folders` is all knowledge that is read, `into` the folder written to."""

    kind: str
    folders: Sequence[Path]
    into: Path
    drafts: Path
    talk: Talk
    find: Finder

    def run(self) -> bool:
        """Ask and write. False where it was left as a draft."""
        book = self._book()
        if self.kind == "assembly":
            return self._assembly(book)
        draft = self._draft()
        talk = replace(self.talk, read=_kept_reader(draft, self.talk.read))
        asked = Questions(book, talk, self.find, whole=draft.kept)
        self.talk.say("Every answer is kept at once. Ctrl-C stops; the same command goes on there.", "", "dim")
        if not draft.into:
            draft.into = self._file(asked)
            draft.settle()
        scoped = self.kind != "complaint"
        asked.assembly = draft.into if scoped else None
        record = RECORDS[self.kind.capitalize()]
        asked.record(record, draft.kept, draft.settle)
        if not self._looked_over(asked, record, draft):
            return False
        entry = without_none(draft.kept)
        name = f"{draft.into}.{entry['id']}" if scoped else str(entry["id"])
        path = self.into / ("assemblies" if scoped else "complaints") / f"{draft.into}.toml"
        add_entry(path, self.kind, entry, book.assemblies.get(draft.into, "") if scoped else "")
        draft.drop()
        said = [f"{name} is written to {path}."]
        asked.book = self._book()
        asked.talk = self.talk
        if self.kind in ("cause", "event"):
            try:
                attach(asked, name, self.kind, self.into, said)
            except (EndOfInputError, KeyboardInterrupt):
                said.append("It was not named anywhere else.")
        self.talk.tell([""])
        for sentence in said:
            self.talk.say(sentence, "")
        self._missing(name)
        return True

    def _book(self) -> Book:
        return load_book(*self._folders())

    def _folders(self) -> list[Path]:
        there = [each.resolve() for each in self.folders]
        return [*self.folders, *([self.into] if self.into.is_dir() and self.into.resolve() not in there else [])]

    def _draft(self) -> Draft:
        draft = Draft.load(self.drafts / f"{self.kind}.json")
        if draft.begun:
            title = draft.kept.get("title") or draft.kept.get("id") or "no title yet"
            self.talk.say(f"A {self.kind} was begun and not written: {title}, {len(draft.kept)} fields.", "")
            self.talk.options(["go on with it", "begin anew, and forget it"])
            if self.talk.until(_one_or_two) == 2:
                draft.drop()
        return draft

    def _file(self, asked: Questions) -> str:
        """The assembly (or area of complaints) the entry belongs to."""
        book = asked.book
        if self.kind == "complaint":
            areas = {
                p.file.rpartition("/")[2].removesuffix(".toml") for n, p in book.places.items() if n in book.complaints
            }
            stems = sorted(areas, key=lambda stem: book.titled.get(stem, (99, stem)))
            asked.talk.head("Which area does it belong to?")
            return str(asked.one(stems, True, "", [book.titled.get(stem, (0, stem))[1] for stem in stems]))
        asked.talk.head("Which part of the machine is it about?")
        asked.talk.say("Its id or words; diagnose knowledge new assembly makes another.")
        return asked.named({stem: [title] for stem, title in book.assemblies.items()}, "an assembly's id, or words")

    def _assembly(self, book: Book) -> bool:
        asked = Questions(book, self.talk, self.find)
        self.talk.head("1 of 2: id")
        self.talk.say("The file's name, and the first part of the ids in it. Example: rinse_arms")

        def fresh(text: str) -> str:
            if text in book.assemblies:
                raise Refused(f"{text} stands already ({book.assemblies[text]}); write causes and checks into it")
            return asked.name_like(text)

        name = self.talk.until(fresh)
        self.talk.head("2 of 2: title")
        title = asked.title("One part of the machine. Example: Rinse arms and jets")
        path = self.into / "assemblies" / f"{name}.toml"
        new_file(path, title)
        self.talk.tell([""])
        self.talk.say(f"{path} is written. Now: diagnose knowledge new cause", "")
        return True

    def _looked_over(self, asked: Questions, record: type[msgspec.Struct], draft: Draft) -> bool:
        """Show the entry; fields are changed by number until it is written or left."""
        fields = fields_of(record)
        while True:
            asked.talk.tell([""])
            for line in toml_entry(self.kind, without_none(draft.kept)).splitlines():
                asked.talk.say(line, line[: len(line) - len(line.lstrip())])
            asked.talk.tell([""])
            wrong = _wrong(record, without_none(draft.kept))
            if wrong:
                asked.talk.say(f"Not whole yet: {wrong}")
            asked.talk.options([each.name.replace("_", " ") for each in fields])
            asked.talk.say(
                "A number changes that field" + (". " if wrong else ", Enter writes it. ") + "q: leave it for now."
            )
            chosen = asked.talk.until(partial(_change, most=len(fields), wrong=bool(wrong)))
            if chosen == "q":
                draft.settle()
                return False
            if chosen == "":
                return True
            each = fields[int(chosen) - 1]
            draft.kept[each.name] = asked.ask(record, each, {k: v for k, v in draft.kept.items() if k != each.name})
            follows = _FOLLOWS.get(each.name)
            while follows:
                draft.kept.pop(follows, None)
                follows = _FOLLOWS.get(follows)
            for other in fields:
                if other.name in draft.kept and asked.needless(other, draft.kept):
                    del draft.kept[other.name]
            asked.record(record, draft.kept, draft.settle)
            draft.settle()

    def _missing(self, name: str) -> None:
        """What the lint says of all knowledge together, the shop's entries first of all."""
        try:
            problems: Sequence[Problem] = lint(self._book())
        except KnowledgeError as error:
            problems = error.problems
        mine = [p for p in problems if name in p.what or p.place.shop]
        if not problems:
            self.talk.say("Nothing is missing: the lint is clean.", "", "good")
        if mine:
            self.talk.say("Still missing:", "")
            for problem in mine:
                self.talk.say(str(problem), "  - ")
        if len(problems) > len(mine):
            self.talk.say(f"{len(problems) - len(mine)} problems elsewhere may hide more: diagnose knowledge lint", "")


def _kept_reader(draft: Draft, read: Callable[[str], str | None]) -> Callable[[str], str | None]:
    """Lines typed before are given again first; every new one is on disk before it is understood."""
    again = list(draft.typed)

    def line(prompt: str) -> str | None:
        if again:
            return again.pop(0)
        typed = read(prompt)
        if typed is not None:
            draft.typed.append(typed)
            draft.save()
        return typed

    return line


def _one_or_two(text: str) -> int:
    if text not in ("", "1", "2"):
        raise Refused("type 1 or 2; Enter alone goes on with it")
    return 2 if text == "2" else 1


def _change(text: str, most: int, wrong: bool) -> str:
    if text.casefold() == "q" or (not text and not wrong):
        return text.casefold()
    if number_in(text, most):
        return text
    raise Refused(f"type a number from 1 to {most}, q" + ("" if wrong else ", or Enter alone"))


def _wrong(record: type[msgspec.Struct], entry: dict[str, Any]) -> str:
    try:
        msgspec.convert(entry, record)
    except msgspec.ValidationError as error:
        return str(error)
    return ""
