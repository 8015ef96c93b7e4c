"""Read knowledge once: the finished book is kept under a name made of its files' content, and read back from there."""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Iterator, Sequence
from hashlib import sha256
from pathlib import Path

import msgspec

from diagnose.model.book import Book
from diagnose.model.loader import load_book

__all__ = ["cached_book"]

KEPT = 4  # books kept: ours with and without a shop's folder, and a version or two
# What a kept book depends on besides the files.
_READERS = ("book.py", "entities.py", "loader.py", "record.py", "sheet.py", "shop.py", "supporting.py")


def cached_book(folders: Sequence[Path], keep_in: Path) -> Book:
    """The book of these folders, as `load_book` would read it; kept in the folder `keep_in` for the next time.

    The name of what is kept changes with any byte of the knowledge or of the reader. What can't be read back, or can't
    be kept, does no harm. Raises KnowledgeError.
    """
    kept = keep_in / f"{_key(folders)}.book"
    with contextlib.suppress(OSError, msgspec.DecodeError, ValueError):
        return _read(kept)
    book = load_book(*folders)
    with contextlib.suppress(OSError, TypeError):
        _keep(kept, book)
    return book


def _key(folders: Sequence[Path]) -> str:
    digest = sha256()
    for folder in folders:
        digest.update(f"folder {folder.name}\n".encode())
        for path in sorted(folder.rglob("*.toml")):
            digest.update(_told(path.relative_to(folder).as_posix(), path))
    for name in _READERS:
        digest.update(_told(name, Path(__file__).with_name(name)))
    return digest.hexdigest()[:32]


def _told(name: str, path: Path) -> bytes:
    try:
        content = path.read_bytes()
    except OSError:  # the loader's to report
        return f"{name} unread\n".encode()
    return f"{name} {len(content)}\n".encode() + content


def _read(kept: Path) -> Book:
    content = kept.read_bytes()
    seal, body = content[:32], content[32:]
    if sha256(body).digest() != seal:
        raise ValueError("half written, or changed")
    return msgspec.msgpack.decode(body, type=Book)


def _keep(kept: Path, book: Book) -> None:
    body = msgspec.msgpack.encode(book)
    kept.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(dir=kept.parent, suffix=".part")
    with os.fdopen(handle, "wb") as file:
        file.write(sha256(body).digest() + body)
    os.replace(name, kept)
    for old in _oldest(kept.parent):
        old.unlink(missing_ok=True)


def _oldest(folder: Path) -> Iterator[Path]:
    books = sorted(folder.glob("*.book"), key=lambda p: p.stat().st_mtime, reverse=True)
    yield from books[KEPT:]
