"""A machine's history as a record with stable keys, for other programs."""

from __future__ import annotations

from datetime import date
from typing import Any

from diagnose.job.changes import Change, changes_of
from diagnose.job.history import History, PastJob, PastReading
from diagnose.job.trend import Trend
from diagnose.model import Book

__all__ = ["history_record"]


def history_record(history: History, book: Book) -> dict[str, Any]:
    """Baseline, jobs, readings over time, changes and drifts, repeated causes, and what could not be read.

    Values are in SI (temperatures in kelvin) beside what was typed; slopes in SI units a year.
    """
    base = history.baseline
    return {
        "baseline": {"job": base.job, "date": _day(base), "checks": len(base.last())} if base else None,
        "jobs": [_job(job) for job in history.jobs],
        "readings": [_reading(r) for readings in history.over_time.values() for r in readings],
        "changes": [_change(change) for change in changes_of(history, book)],
        "repeated": [{"cause": r.cause, "times": r.times, "since": r.since} for r in history.repeated],
        "unread": list(history.unread),
    }


def _day(job: PastJob) -> date | None:
    return job.ended.date() if job.ended else None


def _job(job: PastJob) -> dict[str, Any]:
    return {
        "job": job.job,
        "begun": job.begun,
        "ended": _day(job),
        "purpose": job.purpose,
        "complaints": list(job.complaints),
        "repaired": [{"cause": m.cause, "date": m.day} for m in job.mended],
        "closed": job.how,
    }


def _reading(past: PastReading) -> dict[str, Any]:
    values = [{"place": p, "typed": q.exact, "si": q.si} for p, q in past.reading.values.items()]
    return {
        "check": past.check,
        "date": past.day,
        "job": past.job,
        "stage": past.reading.stage,
        "values": values,
        "outcome": past.reading.outcome,
        "instrument": past.reading.instrument,
        "before_repair": past.mended,
    }


def _change(change: Change) -> dict[str, Any]:
    was, now = (
        {
            "job": r.job,
            "date": r.day,
            "typed": r.reading.values[change.place].exact,
            "si": r.reading.values[change.place].si,
        }
        for r in (change.was, change.now)
    )
    return {
        "check": change.check,
        "place": change.place,
        "was": was,
        "now": now,
        "drift": _trend(change.trend) if change.trend else None,
    }


def _trend(trend: Trend) -> dict[str, Any]:
    return {
        "readings": trend.n,
        "p": trend.p,
        "slope_si_a_year": trend.slope,
        "slope_low": trend.low,
        "slope_high": trend.high,
    }
