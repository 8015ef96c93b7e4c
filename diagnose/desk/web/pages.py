"""The pages as HTML. Every text goes in through the template's own escaping, cleaned before."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from functools import cached_property
from hashlib import sha256
from pathlib import Path
from typing import Any
from urllib.parse import quote, urlencode

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from diagnose.desk.board_filters import SORTS, Wanted, chosen, said_in, with_words
from diagnose.desk.board_job import JobPage
from diagnose.desk.board_leading import Lead
from diagnose.desk.open_jobs import OpenJob, minutes_since
from diagnose.report.document import cleaned
from diagnose.view import board_words as words

__all__ = ["STATIC", "Pages", "job_path", "tag_of"]

_HERE = Path(__file__).resolve().parent
# The files that pages name, with their kinds; nothing else is ever sent from the disk.
STATIC = {
    name: ((_HERE / "static" / name).read_bytes(), kind)
    for name, kind in {"desk.css": "text/css", "desk.js": "text/javascript"}.items()
}
_LONG = 400  # signs; a longer text is folded
_LONGEST_WORDS = 200  # signs of a filter


class Pages:
    """Renders every page and every part of one that is brought up to date."""

    @cached_property
    def _templates(self) -> Environment:
        templates = Environment(
            loader=FileSystemLoader(_HERE / "templates"),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )
        templates.globals["words"] = words
        templates.tests["long"] = lambda text: len(text) > _LONG
        templates.filters["begin"] = lambda text: f"{text[:120].rstrip()}..."
        return templates

    def _render(self, name: str, **given: Any) -> str:
        return self._templates.get_template(name).render(**given).rstrip("\n") + "\n"

    def login(self, told: str = "", to: str = "/") -> str:
        """The only page without a session."""
        return self._render("login.html.jinja", told=told, to=to)

    def message(self, title: str, told: str, inside: bool) -> str:
        """A page that only says something."""
        return self._render("message.html.jinja", title=title, told=told, inside=inside)

    def board(self, rows: Sequence[tuple[OpenJob, Lead | None]], said: str, sort: str, now: datetime) -> str:
        """The board, with only the rows that have the words said."""
        said, sort = " ".join(cleaned(said[:_LONGEST_WORDS]).split()), sort if sort in SORTS else SORTS[0]
        part = self.board_part(rows, said, sort, now)
        address = f"/part/board?{urlencode({'sort': sort})}"
        return self._render("board.html.jinja", part=part, address=address, tag=tag_of(part), said=said, sort=sort)

    def board_part(self, rows: Sequence[tuple[OpenJob, Lead | None]], said: str, sort: str, now: datetime) -> str:
        """The table alone, to be put in the place of the one before."""
        leads = {row.job: lead for row, lead in rows}
        found = chosen((row for row, _ in rows), Wanted(), sort if sort in SORTS else SORTS[0], now)
        shown = with_words(found, said, lambda row: leads[row.job])
        told = [_row(row, leads[row.job], now) for row in shown]
        return self._render("board_part.html.jinja", rows=told, count=len(found))

    def job(self, page: JobPage) -> str:
        """One job."""
        part, address = self.job_part(page), f"/part{job_path(page.job)}"
        return self._render("job.html.jinja", page=page, part=part, address=address, tag=tag_of(part))

    def job_part(self, page: JobPage) -> str:
        """The sections of a job, to be put in the place of those before."""
        sections = [(s, [(type(block).__name__, block) for block in s.blocks]) for s in page.sections]
        return self._render("job_part.html.jinja", page=page, sections=sections)


def _row(row: OpenJob, lead: Lead | None, now: datetime) -> dict[str, Any]:
    """What the table says of a job, every text cleaned."""
    waiting, percent, leads = row.waiting, "", words.PENDING if lead is None else lead.told
    if lead is not None and lead.kind in ("cause", "no fault", "unlisted"):
        percent, _, leads = lead.told.partition(" % ")
        percent += " %"
    elif lead is not None and lead.kind == "sheet":
        leads = words.SHEET.format(told=lead.told)
    times = [
        (time.isoformat() if time else "", words.age(minutes_since(time, now))) for time in (row.begun, row.touched)
    ]
    told = {
        "job": row.job,
        "purpose": words.PURPOSE["handover"] if row.purpose == "handover" else "",
        "where": row.where,
        "machine": "; ".join(text for text in (row.machine, row.type) if text and text != row.where),
        "complaint": row.trouble or row.complaint or ("-" if row.purpose == "handover" else words.NO_COMPLAINT),
        "percent": percent,
        "leads": leads,
        "unlisted": "yes" if lead is not None and lead.kind == "unlisted" else "",
        "waits": waiting.told,
        "said": said_in(row, lead)[:2000],
    }
    name = sha256(row.job.encode("utf-8", "replace")).hexdigest()[:12]
    made = {key: cleaned(text) for key, text in told.items()}
    return {
        **made,
        "id": f"row-{name}",
        "address": job_path(row.job),
        "why": waiting.why,
        "on": waiting.on,
        "times": times,
    }


def job_path(job: str) -> str:
    """Where the page of a job is, whatever signs are in its name."""
    return f"/job/{quote(job.encode('utf-8', 'replace'), safe='')}"


def tag_of(part: str) -> str:
    """Tells whether a part is another than the one before."""
    return sha256(part.encode("utf-8", "replace")).hexdigest()[:24]
