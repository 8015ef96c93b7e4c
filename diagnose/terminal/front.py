"""The port between the conversation and a person: say lines, ask for one line."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Protocol

from diagnose.view.encode import clean

__all__ = ["LONGEST_ANSWER", "Front", "Paused", "tidy"]

LONGEST_ANSWER = 2000  # signs; more is a slip of the paste buffer


class Paused(Exception):
    """The person wants to stop here, or went away: Ctrl-C, Ctrl-D, end of input, hang-up."""


class Front(Protocol):
    """What a front can do. All fronts print the same text."""

    @property
    def width(self) -> int:
        """Columns to wrap at, now."""
        ...

    @property
    def height(self) -> int:
        """Rows that are seen at once, now; very many where nothing scrolls away."""
        ...

    @property
    def bars(self) -> bool:
        """Whether bars may be drawn after the percent."""
        ...

    def say(self, lines: Sequence[str]) -> None:
        """Print lines that are wrapped already."""
        ...

    def ask(self, default: str = "", edit: str = "", at_once: str = "", notice: Callable[[], str] | None = None) -> str:
        """One line of answer. Enter alone gives `default`; `edit` is offered for mending where that can be done.

        A sign of `at_once` typed on an empty line is the answer without Enter, and `notice` is asked again and again
        for a few words to show beside the line, both only where the front can do that. Raises Paused.
        """
        ...

    def hang_up(self) -> None:
        """The person is gone, says a signal: stop waiting, or raise Paused at the next question.

        Called from a signal handler, so that it may come at any moment: an answer that is being
        written is written to its end.
        """
        ...


def tidy(text: str) -> str:
    """An answer as it is used: no control signs, no broken signs, blanks trimmed, not endless."""
    whole = text[:LONGEST_ANSWER].encode("utf-8", "replace").decode("utf-8")
    return clean(whole).strip()
