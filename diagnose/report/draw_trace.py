"""A temperature second by second, with the levels it is held against."""

from __future__ import annotations

from diagnose.report.charts import TraceChart
from diagnose.report.shapes import SMALL, Label, Mark, Path, Picture, Scale, Shape
from diagnose.units import show_number

__all__ = ["draw_trace"]

_LEFT, _TOP, _HIGH = 50.0, 8.0, 170.0


def draw_trace(chart: TraceChart, width: float) -> Picture:
    """The picture, so wide."""
    figures = [*chart.values, *(level for level, _ in chart.levels)]
    pad = max((max(figures) - min(figures)) * 0.08, 1.0)
    up = Scale(min(figures) - pad, max(figures) + pad, _TOP + _HIGH, _TOP)
    across = Scale(1, max(len(chart.values), 2), _LEFT + 10, width - 12)
    shapes: list[Shape] = [Path(((_LEFT, up.start), (width, up.start)), "axis")]
    for tick in up.ticks():
        shapes.append(Path(((_LEFT, up.at(tick)), (width, up.at(tick))), "grid"))
        text = f"{show_number(tick)} {chart.unit}"
        shapes.append(Label(_LEFT - 6, up.at(tick) + 4, text, "small", "end", SMALL))
    for level, said in chart.levels:
        shapes.append(Path(((_LEFT, up.at(level)), (width, up.at(level))), "limit"))
        shapes.append(Label(width - 2, up.at(level) - 3, said, "small", "end", SMALL))
    points = tuple((across.at(n), up.at(v)) for n, v in enumerate(chart.values, 1))
    shapes.append(Path(points, "line1"))
    shapes += [Mark(x, y, "circle", "mark1", 3.6) for x, y in points]
    shapes += [
        Label(x, up.start + 15, str(n), "small", "middle", SMALL)
        for n, (x, _) in enumerate(points, 1)
        if width > 400 or n % 2
    ]
    shapes.append(Label(across.start, up.start + 29, chart.across, "small", "start", SMALL))
    return Picture(width, up.start + 34, tuple(shapes))
