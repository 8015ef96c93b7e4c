"""Readings against their bands: a line for each, the band laid on it, before as a ring and after as a disc."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.report.charts import BandChart, BandRow
from diagnose.report.shapes import SMALL, TEXT, Anchor, Label, Mark, Path, Picture, Rect, Scale, Shape, set_text
from diagnose.view.drawn.measure import broken, line_height, wide

__all__ = ["draw_bands"]

_EDGE = 8.0  # free on either side, so that a mark at the end stays inside
_TRACK = 12.0  # height of a band
_BETWEEN = 16.0


def draw_bands(chart: BandChart, width: float) -> Picture:
    """The picture, so wide."""
    y = 0.0
    shapes: list[Shape] = []
    for row in chart.rows:
        drawn, y = _row(row, chart, width, y)
        shapes += drawn
        y += _BETWEEN
    return Picture(width, y - _BETWEEN + 4 if chart.rows else 1.0, tuple(shapes))


def _row(row: BandRow, chart: BandChart, width: float, y: float) -> tuple[list[Shape], float]:
    shapes: list[Shape] = []
    wanted = f"{chart.wanted} {row.wanted}"
    room = width - wide(wanted, SMALL) - 12
    beside = room > width / 3
    shapes += set_text(row.label, 0, y, room if beside else width, "strong", TEXT)
    lines = len(shapes)
    if beside:
        shapes.append(Label(width, y + TEXT, wanted, "small", "end", SMALL))
    y += lines * line_height(TEXT)
    if not beside:
        below = set_text(wanted, 0, y, width, "small", SMALL)
        shapes += below
        y += len(below) * line_height(SMALL)
    told, y = _told(row, chart, width, y)
    return [*shapes, *told, *_track(row, width, y + 3)], y + _TRACK + 8


def _told(row: BandRow, chart: BandChart, width: float, y: float) -> tuple[list[Shape], float]:
    """The readings in figures, each behind its mark; on one line where there is room."""
    shapes: list[Shape] = []
    x = 0.0
    for kind, word, text in (("before", chart.before, row.before_text), ("after", chart.after, row.after_text)):
        if not text:
            continue
        said = f"{word} {text}"
        if x and x + 14 + wide(said, SMALL) > width:
            x, y = 0.0, y + line_height(SMALL)
        shapes.append(Mark(x + 5, y + 9, "circle", kind, 3.8))
        lines = broken(said, width - x - 14, SMALL)
        anchor: Anchor = "start"
        for nth, line in enumerate(lines):
            y += line_height(SMALL) if nth else 0.0
            shapes.append(Label(x + 14, y + 12.5, line, "small", anchor, SMALL))
        x += 14 + wide(said, SMALL) + 14
    return shapes, y + line_height(SMALL) + 6


def _track(row: BandRow, width: float, y: float) -> Iterator[Shape]:
    ends = [e for e in (row.low, row.high) if e is not None]
    figures = [*row.before, *row.after, *ends]
    spread = (max(figures) - min(figures)) or abs(figures[0]) * 0.1 or 1.0
    scale = Scale(min(figures) - 0.15 * spread, max(figures) + 0.15 * spread, _EDGE, width - _EDGE)
    left = scale.start if row.low is None else scale.at(row.low)
    right = scale.end if row.high is None else scale.at(row.high)
    middle = y + _TRACK / 2
    yield Rect(0, y, width, _TRACK, "track")
    if right - left > 1.5:
        yield Rect(left, y, right - left, _TRACK, "band")
    for end, x in ((row.low, left), (row.high, right)):
        if end is not None:
            yield Path(((x, y - 3), (x, y + _TRACK + 3)), "limit")
    for kind, values in (("before", row.before), ("after", row.after)):
        for value in values:
            yield Mark(scale.at(value), middle, "circle", kind)
