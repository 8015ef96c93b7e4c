"""The leading causes over the course of a job: a line for each, told apart by letter, sign and dash before colour."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from diagnose.report.charts import CourseChart
from diagnose.report.shapes import SMALL, Form, Label, Mark, Path, Picture, Scale, Shape, set_text
from diagnose.view.drawn.measure import line_height

__all__ = ["LETTERS", "draw_course"]

LETTERS = "ABCDEF"
_FORMS: tuple[Form, ...] = ("circle", "square", "triangle", "diamond", "circle", "square")
_LEFT, _RIGHT, _TOP = 44.0, 22.0, 20.0
_HIGH = 150.0


def draw_course(chart: CourseChart, width: float) -> Picture:
    """The picture, so wide: the lines, then the key."""
    count = len(chart.courses[0].values) if chart.courses else 0
    right = width - _RIGHT
    across = Scale(0, max(count - 1, 1), _LEFT + 8, right - 12)
    most = max((v for course in chart.courses for v in course.values), default=0.0)
    up = Scale(0, next(top for top in (0.2, 0.5, 1.0) if most <= top + 1e-9), _TOP + _HIGH, _TOP)
    shapes: list[Shape] = [*_frame(chart, across, up, count, right)]
    for nth, course in enumerate(chart.courses):
        points = tuple((across.at(n), up.at(v)) for n, v in enumerate(course.values))
        shapes.append(Path(points, f"line{nth + 1}"))
        shapes += [Mark(x, y, _FORMS[nth], f"mark{nth + 1}", 3.6) for x, y in points]
    for nth, y in enumerate(_apart([up.at(c.values[-1]) for c in chart.courses])):
        shapes.append(Label(right, y + 4, LETTERS[nth], "strong", "start", SMALL))
    y = _TOP + _HIGH + 38
    for nth, course in enumerate(chart.courses):
        shapes.append(Path(((0, y + 7), (26, y + 7)), f"line{nth + 1}"))
        shapes.append(Mark(13, y + 7, _FORMS[nth], f"mark{nth + 1}", 3.6))
        lines = set_text(f"{LETTERS[nth]}  {course.label}", 34, y, width - 34, "small", SMALL)
        shapes += lines
        y += len(lines) * line_height(SMALL) + 2
    return Picture(width, y + 4, tuple(shapes))


def _frame(chart: CourseChart, across: Scale, up: Scale, count: int, right: float) -> Iterator[Shape]:
    for share in (0.0, up.high / 2, up.high):
        y = up.at(share)
        yield Path(((_LEFT, y), (right - 6, y)), "axis" if share == 0 else "grid")
        yield Label(_LEFT - 6, y + 4, f"{share * 100:.0f} %", "small", "end", SMALL)
    for n in range(count):
        yield Label(across.at(n), up.start + 15, str(n + 1), "small", "middle", SMALL)
    yield Label(across.start, up.start + 29, chart.across, "small", "start", SMALL)
    for n in chart.repairs:
        x = across.at(n - 0.5)
        yield Path(((x, up.end - 4), (x, up.start)), "limit")
        late = x > (across.start + across.end) / 2
        yield Label(x, up.end - 8, chart.repair, "small", "end" if late else "start", SMALL)


def _apart(places: list[float]) -> list[float]:
    """The same places from the top down, moved so that letters neither lie on one another nor leave the chart."""
    order = sorted(range(len(places)), key=lambda n: places[n])
    moved = list(places)
    for above, below in pairwise(order):
        moved[below] = max(moved[below], moved[above] + SMALL + 1)
    lowest = _TOP + _HIGH
    for n in reversed(order):
        moved[n] = min(moved[n], lowest)
        lowest = moved[n] - SMALL - 1
    return moved
