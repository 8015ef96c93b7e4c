"""A document as one HTML file that asks for nothing: no script, no request, its style and charts inside."""

from __future__ import annotations

from base64 import b64encode
from hashlib import sha256
from pathlib import Path

from diagnose.report.document import Document
from diagnose.report.draw import draw
from diagnose.report.to_svg import to_svg

__all__ = ["TEMPLATES", "to_html"]

TEMPLATES = Path(__file__).resolve().parent / "templates"
_LONGEST = 16  # letters; a longer word in a table may be broken anywhere
_WIDE, _NARROW = 640.0, 300.0  # of a chart, for a page and for a telephone


def to_html(document: Document) -> str:
    """The whole file. Every text goes in through the template's own escaping."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined
    from markupsafe import Markup

    def drawn(chart: object, nth: int) -> list[tuple[str, Markup]]:
        """The chart at both widths; the style shows the one that fits."""
        return [
            (kind, Markup(to_svg(draw(chart, width), chart.title, chart.description, f"chart{nth}-{kind}")))  # type: ignore[arg-type,attr-defined]
            for kind, width in (("wide", _WIDE), ("narrow", _NARROW))
        ]

    style = (TEMPLATES / "report.css").read_text("utf-8").strip()
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.tests["endless"] = _endless
    template = environment.get_template("report.html.jinja")
    blocks = [(type(block).__name__, block) for block in document.blocks]
    page = template.render(
        document=document,
        blocks=blocks,
        style=Markup(f"\n{style}\n"),
        digest=b64encode(sha256(f"\n{style}\n".encode()).digest()).decode(),
        drawn=drawn,
    )
    return page.rstrip("\n") + "\n"


def _endless(text: str) -> bool:
    return any(len(word) > _LONGEST for word in text.split())
