"""One thread that reads the journal for all browsers: SQLite and the fold stay in it, and nobody waits for a lock."""

from __future__ import annotations

import asyncio
from collections import OrderedDict
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime
from pathlib import Path
from typing import TypeVar

from diagnose.desk.board_job import JobLook, JobPage
from diagnose.desk.board_leading import Lead, Leading
from diagnose.desk.open_jobs import OpenJob, OpenJobs
from diagnose.job.journal import Journal
from diagnose.model import Book

__all__ = ["Reader"]

_PAGES = 16  # jobs whose page is kept ready
T = TypeVar("T")


class Reader:
    """What the pages need from the journal. Each public coroutine runs in the one thread."""

    def __init__(self, book: Book, path: Path, cache: Path | None, clock: Callable[[], datetime] | None = None) -> None:
        self._book = book
        self._path = path
        self._cache = cache
        self.now = clock or (lambda: datetime.now(UTC))
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="desk")
        self._looks: OrderedDict[str, JobLook] = OrderedDict()
        self._rows_seen: tuple[OpenJob, ...] = ()

    async def open(self) -> None:
        """Open the journal. Raises JournalError."""
        await self._run(self._open)

    def _open(self) -> None:
        self._journal = Journal(self._path, writer=None)
        self._jobs = OpenJobs(self._journal, self._book)
        self._leading = Leading(self._book, self._cache)

    async def close(self) -> None:
        await self._run(self._journal.close)
        self._thread.shutdown(wait=False)

    async def changed(self) -> bool:
        """Whether anybody wrote into the journal since this was asked last."""
        return await self._run(lambda: self._journal.changed())

    async def rows(self) -> list[tuple[OpenJob, Lead | None]]:
        """The open jobs with what leads, as far as that is known already."""
        return await self._run(self._rows)

    def _rows(self) -> list[tuple[OpenJob, Lead | None]]:
        rows = self._rows_seen = self._jobs.rows()
        self._leading.forget_all_but(row.job for row in rows)
        return [(row, self._leading.known(row)) for row in rows]

    async def work_out_one(self) -> bool:
        """Work out what leads in one job of which it is not known; False where there is none."""
        return await self._run(self._one)

    def _one(self) -> bool:
        missing = self._leading.missing(self._rows_seen)
        if missing:
            self._leading.of(missing[0])
        return bool(missing)

    async def page(self, job: str) -> JobPage | None:
        """The page of a job, open or closed; None where there is none of that name."""
        return await self._run(self._page, job)

    def _page(self, job: str) -> JobPage | None:
        if not self._journal.has(job):
            return None
        look = self._looks.pop(job, None) or JobLook(self._book, self._journal, job)
        self._looks[job] = look
        while len(self._looks) > _PAGES:
            self._looks.popitem(last=False)
        return look.page(self.now())

    async def _run(self, call: Callable[..., T], *given: object) -> T:
        return await asyncio.get_running_loop().run_in_executor(self._thread, call, *given)
