"""The board for other programs: one JSON document with a schema number and stable keys."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from diagnose.batch.output import SCHEMA, to_json
from diagnose.desk.board_leading import Lead
from diagnose.desk.open_jobs import OpenJob, minutes_since

__all__ = ["board_json"]


def board_json(rows: Sequence[tuple[OpenJob, Lead]], now: datetime) -> str:
    """`{"schema": 1, "jobs": [...]}`; a job that can't be read has its `trouble` in words, else that is empty."""
    return to_json({"schema": SCHEMA, "jobs": [_job(row, lead, now) for row, lead in rows]})


def _job(row: OpenJob, lead: Lead, now: datetime) -> dict[str, Any]:
    waiting = row.waiting
    return {
        "job": row.job,
        "purpose": row.purpose,
        "begun": _time(row.begun),
        "touched": _time(row.touched),
        "age_minutes": _minutes(row.begun, now),
        "idle_minutes": _minutes(row.touched, now),
        "site": row.site,
        "machine": row.machine,
        "type": row.type,
        "complaints": [{"id": name, "title": title} for name, title in row.complaints],
        "leading": _lead(lead),
        "waiting": {"on": waiting.on, "why": waiting.why, "who": waiting.who, "text": waiting.text},
        "trouble": row.trouble,
    }


def _lead(lead: Lead) -> dict[str, Any] | None:
    if lead.kind not in ("cause", "no fault", "unlisted"):
        return None
    return {"id": lead.id, "title": lead.title, "probability": lead.probability, "kind": lead.kind}


def _time(time: datetime | None) -> str | None:
    return time.isoformat() if time is not None else None


def _minutes(time: datetime | None, now: datetime) -> float | None:
    minutes = minutes_since(time, now)
    return round(minutes, 1) if minutes is not None else None
