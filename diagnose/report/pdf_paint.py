"""A drawn chart on a PDF page."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from diagnose.report.shapes import Label, Mark, Path, Picture, Rect, Shape

if TYPE_CHECKING:
    from fpdf import FPDF

__all__ = ["ACCENT", "BAD", "DOUBT", "GOOD", "INK", "LINE", "QUIET", "paint"]

Colour = tuple[int, int, int]

# The colours of the page's style sheet, light.
INK: Colour = (29, 35, 38)
QUIET: Colour = (74, 85, 90)
LINE: Colour = (196, 205, 206)
FILL: Colour = (241, 244, 243)
ACCENT: Colour = (15, 107, 98)
BAND: Colour = (191, 224, 214)
BEFORE: Colour = (138, 90, 0)
GOOD, BAD, DOUBT = ACCENT, (154, 45, 31), (122, 86, 0)
_PAPER: Colour = (255, 255, 255)

_FILLS = {"track": FILL, "band": BAND, "before": _PAPER, "after": ACCENT}
_MARKS = {"mark1": ACCENT, "mark2": BEFORE, "mark3": QUIET, "mark4": INK}
# Colour, width in units, dash and gap.
_LINES: dict[str, tuple[Colour, float, float, float]] = {
    "limit": (ACCENT, 1.5, 0, 0),
    "grid": (LINE, 1, 0, 0),
    "axis": (QUIET, 1, 0, 0),
    "line1": (ACCENT, 2, 0, 0),
    "line2": (BEFORE, 2, 7, 3),
    "line3": (QUIET, 2, 2, 3),
    "line4": (INK, 1.3, 9, 4),
}


def paint(paper: FPDF, picture: Picture, left: float, top: float, scale: float, letters: Callable[[str], str]) -> None:
    """Draw the picture with its corner at (left, top) mm, `scale` mm a unit."""
    for shape in picture.shapes:
        _shape(paper, shape, left, top, scale, letters)
    paper.set_dash_pattern()


def _shape(paper: FPDF, shape: Shape, left: float, top: float, scale: float, letters: Callable[[str], str]) -> None:
    match shape:
        case Rect(x, y, width, height, kind):
            paper.set_fill_color(*_FILLS[kind])
            paper.rect(left + x * scale, top + y * scale, width * scale, height * scale, style="F")
        case Path(points, kind):
            colour, wide, dash, gap = _LINES[kind]
            paper.set_draw_color(*colour)
            paper.set_line_width(wide * scale)
            paper.set_dash_pattern(dash * scale, gap * scale)
            paper.polyline([(left + x * scale, top + y * scale) for x, y in points])
        case Mark():
            _mark(paper, shape, left + shape.x * scale, top + shape.y * scale, scale)
        case Label(x, y, text, kind, anchor, size):
            paper.set_font("Helvetica", "B" if kind == "strong" else "", size * scale * 72 / 25.4)
            paper.set_text_color(*(QUIET if kind == "small" else INK))
            said = letters(text)
            back = {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * paper.get_string_width(said)
            paper.text(left + x * scale - back, top + y * scale, said)


def _mark(paper: FPDF, mark: Mark, x: float, y: float, scale: float) -> None:
    paper.set_dash_pattern()
    ring = mark.kind == "before"
    paper.set_draw_color(*(BEFORE if ring else _PAPER))
    paper.set_line_width((2 if ring else 0.6) * scale)
    paper.set_fill_color(*(_FILLS.get(mark.kind) or _MARKS[mark.kind]))
    r = mark.size * scale
    if mark.form == "circle":
        paper.circle(x, y, r, style="DF")
        return
    corners = {
        "square": ((-1, -1), (1, -1), (1, 1), (-1, 1)),
        "diamond": ((0, -1.3), (1.3, 0), (0, 1.3), (-1.3, 0)),
        "triangle": ((0, -1.2), (1.2, 1), (-1.2, 1)),
    }[mark.form]
    paper.polygon([(x + dx * r, y + dy * r) for dx, dy in corners], style="DF")
