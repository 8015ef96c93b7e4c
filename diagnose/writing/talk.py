"""Asking and telling by plain lines: what is typed comes from a person or from a pipe."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from diagnose.view.layout import Line, flow, wrap

__all__ = ["EndOfInputError", "Refused", "Talk", "Unclear", "number_in"]

T = TypeVar("T")


class EndOfInputError(Exception):
    """Nothing more is typed."""


class Refused(ValueError):
    """An answer that won't do; the message gives the remedy."""


class Unclear(Refused):
    """An answer that may mean several things; the message asks which."""


def number_in(text: str, most: int) -> int | None:
    """The number typed, where it is one from 1 to `most` in plain digits."""
    plain = text.isascii() and text.isdigit() and len(text) < 9
    return int(text) if plain and 1 <= int(text) <= most else None


@dataclass(frozen=True)
class Talk:
    """`read` gives a typed line, None at the end; `tell` prints lines; `width` is the screen's."""

    read: Callable[[str], str | None]
    tell: Callable[[Sequence[str]], None]
    width: int

    def say(self, text: str, indent: str = "  ", role: str = "") -> None:
        self.tell(wrap(text, self.width, indent, role=role))

    def head(self, text: str) -> None:
        """What comes next, behind an empty line."""
        self.tell([Line(), *wrap(text, self.width, role="heading")])

    def line(self, prompt: str = "> ") -> str:
        """What is typed, without blanks around it. Raises EndOfInputError."""
        typed = self.read(prompt)
        if typed is None:
            raise EndOfInputError
        return typed.strip()

    def until(self, understood: Callable[[str], T]) -> T:
        """Ask until the answer is understood; each refusal says why and what would do."""
        while True:
            try:
                return understood(self.line())
            except Refused as why:
                self.say(str(why) if isinstance(why, Unclear) else f"Not taken: {why}")

    def options(self, titles: Sequence[str], start: int = 1) -> None:
        """A numbered list, short ones side by side."""
        items = [f"{n} {title}" for n, title in enumerate(titles, start)]
        short = all(len(item) <= self.width // 2 - 4 for item in items)
        lines: list[Line] = []
        if short:
            lines = flow(items, self.width, "  ")
        else:
            for item in items:
                lines += wrap(item, self.width, "  ", "      ")
        self.tell(lines)
