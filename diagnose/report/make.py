"""From a job to a document in the format asked for, on the screen or in a file."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from pathlib import Path

from diagnose.report.document import Document
from diagnose.report.dossier import Dossier
from diagnose.report.parts import parts_list
from diagnose.report.service import service_report
from diagnose.report.sheet import handover_sheet

__all__ = ["DOCUMENTS", "FORMATS", "ReportError", "may_write", "render", "schema_text", "write"]

# A further document is a module that builds one, and its line here.
DOCUMENTS: Mapping[str, Callable[[Dossier], Document]] = {
    "service": service_report,
    "handover": handover_sheet,
    "parts": parts_list,
}
FORMATS = ("terminal", "md", "html", "pdf", "json")


class ReportError(ValueError):
    """A document can't be made or written; the message gives the remedy."""


def render(dossier: Dossier, what: str, form: str, width: int = 80) -> str | bytes:
    """A document of DOCUMENTS in one of FORMATS, or the "office" copy, which is JSON. Raises ReportError."""
    if what == "office":
        from diagnose.report.office import office_json

        return office_json(dossier) + "\n"
    if form == "pdf":
        return _pdf()(DOCUMENTS[what](dossier))
    document = DOCUMENTS[what](dossier)
    if form == "terminal":
        from diagnose.report.to_lines import to_lines

        return "\n".join(to_lines(document, width)) + "\n"
    if form == "md":
        from diagnose.report.to_markdown import to_markdown

        return to_markdown(document)
    if form == "html":
        from diagnose.report.to_html import to_html

        return to_html(document)
    from diagnose.report.to_json import document_json

    return document_json(document) + "\n"


def _pdf() -> Callable[[Document], bytes]:
    """The renderer, where its library is installed."""
    try:
        from diagnose.report.to_pdf import to_pdf
    except ModuleNotFoundError as error:
        if (error.name or "").partition(".")[0] != "fpdf":
            raise
        raise ReportError(
            "PDF needs the library fpdf2, which is not installed here; install it (pip install fpdf2), "
            "or print the HTML: --format html"
        ) from None
    return to_pdf


def schema_text() -> str:
    """JSON Schema of the office copy."""
    from diagnose.report.office import office_schema

    return office_schema()


def may_write(file: Path, force: bool) -> None:
    """Refuse a file that is there already, before any work is done for it. Raises ReportError."""
    if file.exists() and not force:
        raise ReportError(f"{file} is there already; name another file, or --force to write over it")


def write(made: str | bytes, file: Path, force: bool = False) -> str:
    """Write a file whole or not at all; returns what to say of it. Raises ReportError."""
    may_write(file, force)
    fresh = file.with_name(f"{file.name}.new")
    try:
        with open(fresh, "wb") as out:
            out.write(made.encode() if isinstance(made, str) else made)
            out.flush()
            os.fsync(out.fileno())
        fresh.replace(file)
    except OSError as error:
        raise ReportError(f"{file} can't be written: {error.strerror}; name another file with --out") from None
    return f"Written to {file}."
