"""A temperature second by second, with the levels it is held against."""

from __future__ import annotations

from diagnose.report.charts import TraceChart
from diagnose.report.shapes import SMALL, Label, Mark, Path, Picture, Scale, Shape, set_text
from diagnose.units import show_number
from diagnose.view.drawn.measure import line_height

__all__ = ["draw_trace"]

_LEFT, _RIGHT, _TOP, _HIGH = 50.0, 50.0, 8.0, 170.0


def draw_trace(chart: TraceChart, width: float) -> Picture:
    """The picture, so wide."""
    figures = [*chart.values, *(level for level, _, _ in chart.levels)]
    pad = max((max(figures) - min(figures)) * 0.08, 1.0)
    up = Scale(min(figures) - pad, max(figures) + pad, _TOP + _HIGH, _TOP)
    across = Scale(1, max(len(chart.values), 2), _LEFT + 10, width - _RIGHT - 10)
    right = width - _RIGHT
    shapes: list[Shape] = [Path(((_LEFT, up.start), (right, up.start)), "axis")]
    for tick in up.ticks():
        shapes.append(Path(((_LEFT, up.at(tick)), (right, up.at(tick))), "grid"))
        text = f"{show_number(tick)} {chart.unit}"
        shapes.append(Label(_LEFT - 6, up.at(tick) + 4, text, "small", "end", SMALL))
    for level, figure, _ in chart.levels:
        shapes.append(Path(((_LEFT, up.at(level)), (right, up.at(level))), "limit"))
        shapes.append(Label(right + 5, up.at(level) + 4, figure, "strong", "start", SMALL))
    points = tuple((across.at(n), up.at(v)) for n, v in enumerate(chart.values, 1))
    shapes.append(Path(points, "line1"))
    shapes += [Mark(x, y, "circle", "mark1", 3.6) for x, y in points]
    shapes += [
        Label(x, up.start + 15, str(n), "small", "middle", SMALL)
        for n, (x, _) in enumerate(points, 1)
        if width > 400 or n % 2
    ]
    shapes.append(Label(across.start, up.start + 29, chart.across, "small", "start", SMALL))
    y = up.start + 36
    for _, _, said in chart.levels:
        shapes.append(Path(((0, y + 7), (26, y + 7)), "limit"))
        lines = set_text(said, 34, y, width - 34, "small", SMALL)
        shapes += lines
        y += len(lines) * line_height(SMALL) + 2
    return Picture(width, y + 4, tuple(shapes))
