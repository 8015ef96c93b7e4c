"""A new entry is named where it belongs: in an event or complaint, in a check that looks at it.

An entry of ours is never touched: a copy of it with the addition goes into the shop's folder, where it replaces ours.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import msgspec

from diagnose.model import Book
from diagnose.model.fields import fields_of
from diagnose.model.shop import unmarked
from diagnose.writing.folder import add_entry, has_entry, replace_entry
from diagnose.writing.questions import Questions

__all__ = ["attach", "copy_of"]


def attach(asked: Questions, new: str, kind: str, into: Path, said: list[str]) -> None:
    """Offer to name a new cause or event where it belongs; what was written is added to `said`, as sentences."""
    talk = asked.talk
    talk.head("Where it belongs")
    talk.say("Which events or complaints does it bring about? A copy of each goes into your folder in place of ours.")
    for parent in asked.references("parent", False) or []:
        if parent in asked.texts("parent"):
            entry = copy_of(asked.book, parent)
            entry["of"] = [*entry["of"], new]
            said.append(_put(asked.book, parent, entry, into))
    if kind == "cause":
        talk.head("Checks that show it")
        talk.say("Which checks of those there are read otherwise when it is so? Your copy of each then looks at it.")
        for check in asked.references("check", False) or []:
            if check in asked.book.checks:
                said.append(_put(asked.book, check, _looking(asked, check, new), into))


def _looking(asked: Questions, check: str, new: str) -> dict[str, Any]:
    """The check with the new cause among what it looks at, and a row for it."""
    entry = copy_of(asked.book, check)
    looks = entry["looks_at"]
    asked.talk.head(asked.book.title(check))
    asked.talk.say("The first that is so decides what is seen. Before which of these does the new one stand?")
    titles = [asked.book.title(each) if each in asked.texts("node") else each for each in looks]
    before = asked.one(tuple(looks), False, "after all of them", titles)
    place = looks.index(before) if before is not None else len(looks)
    entry["looks_at"] = [*looks[:place], new, *looks[place:]]
    entry["shows"] = {**entry["shows"], new: asked.row(entry["outcomes"], new)}
    return entry


def copy_of(book: Book, name: str) -> dict[str, Any]:
    """An entry as it would be written, without what it leaves out anyway."""
    entry: Any = next(t[name] for t in (book.complaints, book.events, book.causes, book.checks) if name in t)
    left_out = {each.name: each.default for each in fields_of(type(entry))}
    data: dict[str, Any] = msgspec.to_builtins(entry)
    told = {k: _plain(v) for k, v in data.items() if v is not None and v != left_out.get(k, msgspec.NODEFAULT)}
    return {k: unmarked(v) if k in ("title", "ask") else v for k, v in told.items()}


def _plain(value: Any) -> Any:
    """Without what is null, which TOML has no word for, and without what is false or empty inside."""
    if isinstance(value, dict):
        return {k: _plain(v) for k, v in value.items() if v is not None and v is not False and v != []}
    return [_plain(each) for each in value] if isinstance(value, list) else value


def _put(book: Book, name: str, entry: dict[str, Any], into: Path) -> str:
    """Write an entry under the file's name it has with us; returns what to say of it."""
    kind = next(k for k in ("complaint", "event", "check") if name in getattr(book, f"{k}s"))
    folder, _, file = book.places[name].file.rpartition("/")
    path = into / folder.rpartition("/")[2] / file
    scoped = folder.endswith("assemblies")
    written = {**entry, "id": name.rpartition(".")[2] if scoped else name}
    if has_entry(path, kind, written["id"]):
        replace_entry(path, kind, written)
    else:
        add_entry(path, kind, written, book.assemblies.get(path.stem, "") if scoped else "")
    return f"{name} in {path} names it now, in place of ours."
