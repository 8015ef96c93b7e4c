"""What a chart holds: figures and words, no coordinates. Each kind is drawn by a module of its own."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["BandChart", "BandRow", "Chart", "Course", "CourseChart", "TraceChart"]


@dataclass(frozen=True)
class BandRow:
    """One reading against its band, all figures in one unit; either end of the band may be open."""

    label: str
    wanted: str  # the band in words: "15 to 25 psi"
    low: float | None
    high: float | None
    before: tuple[float, ...]
    after: tuple[float, ...]
    before_text: str
    after_text: str


@dataclass(frozen=True)
class BandChart:
    """Readings before and after the repair, each against what is wanted here."""

    title: str
    description: str
    rows: tuple[BandRow, ...]
    before: str  # the words of the key
    after: str
    wanted: str


@dataclass(frozen=True)
class Course:
    """How probable one cause was at each point, as shares of one."""

    label: str
    values: tuple[float, ...]


@dataclass(frozen=True)
class CourseChart:
    """The leading causes over the course of a job; `repairs` are the points right after a repair, from 0."""

    title: str
    description: str
    courses: tuple[Course, ...]
    repairs: tuple[int, ...]
    repair: str  # the word beside a repair
    across: str  # what the points are


@dataclass(frozen=True)
class TraceChart:
    """A temperature, step by step, with levels that matter: (value, its figure, what it means)."""

    title: str
    description: str
    values: tuple[float, ...]
    unit: str
    levels: tuple[tuple[float, str, str], ...]
    across: str  # what the steps are


Chart = BandChart | CourseChart | TraceChart
