"""What leads in a job: worked out once for its events and this knowledge, and kept for the next time.

A ranking takes a tenth of a second and more, so that a board of two hundred jobs would take half a minute each time.
"""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Iterable
from hashlib import sha256
from pathlib import Path

import msgspec

from diagnose import __version__
from diagnose.desk.open_jobs import OpenJob
from diagnose.handover.sheet import failing, sheet_of
from diagnose.job.assess import assess
from diagnose.model import Book
from diagnose.view import board_words as words
from diagnose.view.layout import percent
from diagnose.view.sheet import counts_text

__all__ = ["Lead", "Leading"]

KEPT = 2000  # jobs of which it is kept
_THINKING = ("rules", "inference", "handover", "job")  # rooms that what leads depends on, besides the knowledge
_SUFFIX = ".lead"


class Lead(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """What leads: a `cause`, `no fault`, what is `unlisted`; or how far a `sheet` is; or `none`, or `failed`."""

    kind: str
    id: str = ""
    title: str = ""
    probability: float = 0.0

    @property
    def told(self) -> str:
        """In words: the percent first, as in a ranking."""
        if self.kind == "none":
            return words.NO_LEAD
        if self.kind == "failed":
            return words.NOT_WORKED_OUT
        return self.title if self.kind == "sheet" else f"{percent(self.probability).strip()} {self.title}"


class _Kept(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A file of the cache: what leads, and for which events of which job under which knowledge."""

    key: str
    lead: Lead


class Leading:
    """What leads in each job. `folder` is where it is kept between runs; None: only while this runs."""

    def __init__(self, book: Book, folder: Path | None = None) -> None:
        self._book = book
        self._folder = folder
        self._here: dict[str, tuple[str, Lead]] = {}
        self._under = f"{book.fingerprint}:{__version__}:{_thinking()}"

    def known(self, row: OpenJob) -> Lead | None:
        """What leads, where that is known already; None where it must be worked out."""
        if row.trouble:
            return Lead("none")
        key = self._key(row)
        here = self._here.get(row.job)
        if here is not None and here[0] == key:
            return here[1]
        lead = self._read(row, key)
        if lead is not None:
            self._here[row.job] = (key, lead)
        return lead

    def of(self, row: OpenJob) -> Lead:
        """What leads; worked out and kept where it was not known."""
        lead = self.known(row)
        if lead is None:
            lead = _worked_out(row, self._book)
            self._here[row.job] = (self._key(row), lead)
            if lead.kind != "failed":
                self._keep(row, lead)
        return lead

    def missing(self, rows: Iterable[OpenJob]) -> list[OpenJob]:
        """The rows of which it must be worked out."""
        return [row for row in rows if self.known(row) is None]

    def forget_all_but(self, jobs: Iterable[str]) -> None:
        """Leave out what this run knows of jobs that are not open any more."""
        open_now = set(jobs)
        self._here = {job: kept for job, kept in self._here.items() if job in open_now}

    def _key(self, row: OpenJob) -> str:
        return sha256(f"{row.job}\n{row.key}\n{self._under}".encode("utf-8", "replace")).hexdigest()

    def _path(self, row: OpenJob) -> Path | None:
        name = sha256(row.job.encode("utf-8", "replace")).hexdigest()[:24]
        return self._folder / f"{name}{_SUFFIX}" if self._folder is not None else None

    def _read(self, row: OpenJob, key: str) -> Lead | None:
        """What was kept for this state of the job; None where nothing was, or it can't be read."""
        path = self._path(row)
        if path is None:
            return None
        with contextlib.suppress(OSError, msgspec.MsgspecError, ValueError):
            kept = msgspec.json.decode(path.read_bytes(), type=_Kept)
            return kept.lead if kept.key == key and 0.0 <= kept.lead.probability <= 1.0 else None
        return None

    def _keep(self, row: OpenJob, lead: Lead) -> None:
        path = self._path(row)
        if path is None:
            return
        with contextlib.suppress(OSError):  # what can't be kept is worked out again
            path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            handle, name = tempfile.mkstemp(dir=path.parent, suffix=".part")
            with os.fdopen(handle, "wb") as file:
                file.write(msgspec.json.encode(_Kept(self._key(row), lead)))
            os.replace(name, path)
            _drop_oldest(path.parent)


def _worked_out(row: OpenJob, book: Book) -> Lead:
    """What leads in this job. A job of which it can't be worked out says so, and the others stand."""
    state = row.state
    try:
        if state.machine is None:
            return Lead("none")
        if state.purpose == "handover":
            sheet = sheet_of(book, state)
            if not failing(sheet):
                return Lead("sheet", title=counts_text(sheet))
        if not state.complaints:
            return Lead("none")
        rows = assess(book, state).rows
    except Exception:
        return Lead("failed")
    return Lead(rows[0].kind, rows[0].id, rows[0].title, rows[0].probability) if rows else Lead("none")


def _thinking() -> str:
    """Changes when the program that works it out does: size and time of the files of its rooms."""
    house = Path(__file__).resolve().parents[1]
    digest = sha256()
    for room in _THINKING:
        for path in sorted((house / room).rglob("*.py")):
            told = path.stat()
            digest.update(f"{path.name} {told.st_size} {told.st_mtime_ns}\n".encode())
    return digest.hexdigest()[:16]


def _drop_oldest(folder: Path) -> None:
    files = [(path.stat().st_mtime, path) for path in folder.glob(f"*{_SUFFIX}")]
    if len(files) > KEPT:
        for _, path in sorted(files)[: len(files) - KEPT]:
            path.unlink(missing_ok=True)
