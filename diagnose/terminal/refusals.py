"""What a question raises instead of taking an answer: that it won't do, or that something is only to be shown."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.view.layout import Line

__all__ = ["Refused", "Told"]


class Refused(Exception):
    """What was typed is no answer here. The message is a clear sentence; `kept` is what may be mended."""

    def __init__(self, message: str, kept: str = "") -> None:
        super().__init__(message)
        self.kept = kept


class Told(Exception):
    """What was typed asked to see something, and changes nothing; the question stands."""

    def __init__(self, lines: Sequence[Line]) -> None:
        super().__init__("\n".join(lines))
        self.lines = lines
