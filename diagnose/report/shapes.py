"""A drawn chart: plain shapes with a kind each, which every format then draws in its own way.

Lengths are in units of a picture as wide as it was asked for; y grows downwards.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from diagnose.view.drawn.measure import broken, line_height

__all__ = ["SMALL", "TEXT", "Anchor", "Form", "Label", "Mark", "Path", "Picture", "Rect", "Scale", "Shape", "set_text"]

TEXT, SMALL = 12.0, 10.5  # sizes of letters

Form = Literal["circle", "square", "diamond", "triangle"]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True)
class Rect:
    x: float
    y: float
    width: float
    height: float
    kind: str


@dataclass(frozen=True)
class Path:
    """A line through points."""

    points: tuple[tuple[float, float], ...]
    kind: str


@dataclass(frozen=True)
class Mark:
    """A small sign with its middle at a point."""

    x: float
    y: float
    form: Form
    kind: str
    size: float = 4.5  # from the middle to the edge


@dataclass(frozen=True)
class Label:
    """A line of text, its foot at y."""

    x: float
    y: float
    text: str
    kind: str = "text"
    anchor: Anchor = "start"
    size: float = TEXT


Shape = Rect | Path | Mark | Label


@dataclass(frozen=True)
class Picture:
    width: float
    height: float
    shapes: tuple[Shape, ...]


@dataclass(frozen=True)
class Scale:
    """From figures to places on a line."""

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        share = (value - self.low) / (self.high - self.low)
        return self.start + min(1.0, max(0.0, share)) * (self.end - self.start)

    def ticks(self, most: int = 5) -> list[float]:
        """Round figures inside the scale, at most so many.

        >>> Scale(141.0, 172.0, 0, 1).ticks()
        [145.0, 150.0, 155.0, 160.0, 165.0, 170.0]
        """
        rough = (self.high - self.low) / most
        power = 10.0 ** math.floor(math.log10(rough))
        step = min((m * power for m in (1, 2, 5, 10)), key=lambda s: abs(s - rough))
        first = math.ceil(self.low / step - 1e-9)
        return [n * step for n in range(first, math.floor(self.high / step + 1e-9) + 1)]


def set_text(text: str, x: float, y: float, room: float, kind: str = "text", size: float = TEXT) -> Sequence[Label]:
    """Text in lines that fit the room, the first with its top at y."""
    high = line_height(size)
    return [Label(x, y + n * high + size, line, kind, "start", size) for n, line in enumerate(broken(text, room, size))]
