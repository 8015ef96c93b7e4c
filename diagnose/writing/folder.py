"""A shop's own folder: an entry is added at the end of its file, or put in the place of one written before."""

from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from diagnose.model.lines import line_of
from diagnose.writing.toml import toml_entry, toml_value

__all__ = ["CantWriteError", "add_entry", "has_entry", "new_file", "replace_entry"]

_STRINGS = re.compile(r'"""(?s:.*?)"""|\'\'\'(?s:.*?)\'\'\'|"(?:[^"\\\n]|\\.)*"|\'[^\'\n]*\'')


class CantWriteError(ValueError):
    """A file can't be written, or not without losing what stands in it; the message gives the remedy."""


def new_file(path: Path, title: str) -> None:
    """A file of an assembly with its title alone. Raises CantWriteError where there is one."""
    if path.exists():
        raise CantWriteError(f"{path} is there already; write causes and checks into it")
    _write(path, f"title = {toml_value(title)}\n")


def add_entry(path: Path, kind: str, entry: Mapping[str, Any], title: str = "") -> None:
    """Add an entry at the end of a file; what stands in it stays as it is. A new file begins with `title`."""
    before = _text(path) if path.exists() else (f"title = {toml_value(title)}\n" if title else "")
    text = (before.rstrip("\n") + "\n\n" if before.strip() else "") + toml_entry(kind, entry)
    known = _parsed(before, path)
    after = _parsed(text, path)
    if after != {**known, kind: [*known.get(kind, []), dict(entry)]}:
        raise CantWriteError(f"{path}: an entry can't be added at the end of it; mend its last lines")
    _write(path, text)


def has_entry(path: Path, kind: str, name: str) -> bool:
    """Whether a file has an entry of that id as written in it."""
    return path.exists() and any(each.get("id") == name for each in _parsed(_text(path), path).get(kind, []))


def replace_entry(path: Path, kind: str, entry: Mapping[str, Any]) -> None:
    """Put an entry in the place of the one with its id; all other lines stay as they are.

    Raises CantWriteError where that would lose remarks written into the entry.
    """
    text = _text(path)
    known = _parsed(text, path)
    nth = next(n for n, each in enumerate(known[kind]) if each.get("id") == entry["id"])
    lines = text.splitlines(keepends=True)
    start = line_of(text)[kind, nth] - 1
    end = next((n for n in range(start + 1, len(lines)) if lines[n].startswith("[[")), len(lines))
    while end > start + 1 and (not lines[end - 1].strip() or lines[end - 1].lstrip().startswith("#")):
        end -= 1
    if "#" in _STRINGS.sub("", "".join(lines[start:end])):
        raise CantWriteError(f"{path}: {entry['id']} has remarks in it that would be lost; change it by hand")
    fresh = "".join([*lines[:start], toml_entry(kind, entry), *lines[end:]])
    wanted = [dict(entry) if n == nth else each for n, each in enumerate(known[kind])]
    if _parsed(fresh, path) != {**known, kind: wanted}:
        raise CantWriteError(f"{path}: {entry['id']} can't be put in place of the old one; change it by hand")
    _write(path, fresh)


def _text(path: Path) -> str:
    try:
        return path.read_text("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise CantWriteError(f"{path} can't be read ({error}); mend or move it") from None


def _parsed(text: str, path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise CantWriteError(f"{path} is no TOML ({error}); mend it") from None


def _write(path: Path, text: str) -> None:
    fresh = path.with_name(f"{path.name}.new")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with open(fresh, "w", encoding="utf-8", newline="") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        fresh.replace(path)
    except OSError as error:
        raise CantWriteError(f"{path} can't be written: {error.strerror}; name another folder with --into") from None


def _quoted(title: str) -> str:
    from diagnose.writing.toml import toml_value

    return toml_value(title)
