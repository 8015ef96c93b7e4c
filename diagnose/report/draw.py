"""Any chart as a picture."""

from __future__ import annotations

from diagnose.report.charts import BandChart, Chart, CourseChart
from diagnose.report.draw_bands import draw_bands
from diagnose.report.draw_course import draw_course
from diagnose.report.draw_trace import draw_trace
from diagnose.report.shapes import Picture

__all__ = ["draw"]


def draw(chart: Chart, width: float) -> Picture:
    """The chart, so wide; as high as it needs."""
    if isinstance(chart, BandChart):
        return draw_bands(chart, width)
    if isinstance(chart, CourseChart):
        return draw_course(chart, width)
    return draw_trace(chart, width)
