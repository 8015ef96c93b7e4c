"""A journal with a few invented open jobs on the small book, told by a clock that is set by hand."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from pathlib import Path

from diagnose.job import events as ev
from diagnose.job.journal import Journal
from tests.report_job import OPEN

__all__ = ["NOW", "Clock", "fill", "opened", "write"]

NOW = datetime(2026, 3, 4, 12, 0, tzinfo=UTC)


class Clock:
    """The time in a journal, set by hand."""

    def __init__(self) -> None:
        self.at = NOW

    def __call__(self) -> str:
        return self.at.isoformat(timespec="seconds")


def opened(site: str = "Quay Street, invented", machine: str = "Pier", purpose: str = "repair") -> ev.Opened:
    return ev.Opened(machine=machine, type="plain", site=site, own={"volts": "208 V"}, purpose=purpose)  # type: ignore[arg-type]


def write(path: Path, job: str, events: Iterable[ev.Event], hours: float = 0.0, writer: str | None = "tech-1") -> None:
    """Write a job so many hours ago, a minute from event to event; None: as the journal's own writer."""
    clock = Clock()
    clock.at = NOW - timedelta(hours=hours)
    journal = Journal(path, writer, clock)
    for event in events:
        journal.append(job, event)
        clock.at += timedelta(minutes=1)
    journal.close()


def fill(path: Path) -> Path:
    """One job of every kind that a board can show; two that are closed, one of them opened again."""
    steam = (ev.SafetyAnswered(), ev.ComplaintSaid("steam_out"), ev.StepDone("complaints"))
    write(path, "job-1001", OPEN, 30)
    write(path, "job-1002", (opened("Mill Lane, invented"), ev.Present("Ann"), *steam), 2)
    write(path, "job-1003", (opened("Town Hall, invented"), *steam, ev.HandedOn("parts", "fuse on order")), 3)
    write(path, "job-1004", (opened(), *steam, ev.CallBegun("kitchen", "Maria")), 4)
    write(path, "job-1005", (opened(), *steam, ev.Hinted("box.where", "look behind it")), 5)
    write(path, "job-1006", (opened(), ev.SafetyAnswered("gas")), 6)
    write(path, "job-1007", (opened(), *steam, ev.Closed("given up")), 7)
    write(path, "job-1008", (opened(), *steam, ev.Closed("given up"), ev.Withdrawn(5)), 8)
    write(path, "job-1009", (ev.Opened(machine="x", type="no such type"),), 9)
    return path
