"""The plain front: lines appended and nothing else, not one escape byte; answers from standard input."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from typing import TextIO

from diagnose.terminal.front import Paused, tidy
from diagnose.view.encode import for_charset
from diagnose.view.layout import screen_width, text_width, wrap
from diagnose.view.words import PROMPT

__all__ = ["PlainFront", "fitting"]


class PlainFront:
    """Prints to `output`, reads lines from `input`; where input is no terminal, answers are printed too."""

    bars = False
    height = 1000

    def __init__(self, columns: int = 80, source: TextIO | None = None, output: TextIO | None = None) -> None:
        self.width = screen_width(columns)
        self._source = source or sys.stdin
        self._output = output or sys.stdout
        self._charset = getattr(self._output, "encoding", None) or "utf-8"
        self._echo = not self._source.isatty()
        self._gone = False
        self._waiting = False

    def say(self, lines: Sequence[str]) -> None:
        for line in lines:
            for piece in fitting(line, self.width, self._charset):
                self._write(piece + "\n")
        self._output.flush()

    def ask(self, default: str = "", edit: str = "", at_once: str = "", notice: Callable[[], str] | None = None) -> str:
        # Without the blank where the answer is printed by us: no line then ends in one.
        self._write(PROMPT.rstrip() if self._echo else PROMPT)
        self._output.flush()
        line = self._line()
        if not line:
            self._write("\n")
            raise Paused
        answer = tidy(line)
        if self._echo:
            self._write(f" {for_charset(answer, self._charset)}".rstrip() + "\n")
        return answer or default

    def hang_up(self) -> None:
        self._gone = True
        if self._waiting:
            raise Paused

    def _line(self) -> str:
        """One line of input; empty when there is no more."""
        self._waiting = True
        try:
            return "" if self._gone else self._source.readline()
        except (KeyboardInterrupt, Paused):
            return ""
        finally:
            self._waiting = False

    def _write(self, text: str) -> None:
        self._output.write(text)


def fitting(line: str, width: int, charset: str) -> list[str]:
    """The line in signs the terminal has; broken again if that made it too long."""
    text = for_charset(line, charset)
    if text == line or text_width(text) <= width:
        return [text]
    lead = text[: len(text) - len(text.lstrip(" "))]
    return [str(piece) for piece in wrap(text.lstrip(" "), width, lead)]
