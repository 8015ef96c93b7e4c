"""The scripted front: answers from a list, the printed text kept; for transcripts and tests."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from diagnose.terminal.front import Paused, tidy
from diagnose.view.layout import screen_width
from diagnose.view.words import PROMPT

__all__ = ["ScriptedFront", "answers_in"]


class ScriptedFront:
    """Plays `answers` in order and keeps all that was printed; when they are used up, the input has ended."""

    bars = False
    height = 1000

    def __init__(self, answers: Iterable[str], columns: int = 80) -> None:
        self.width = screen_width(columns)
        self._answers = iter(answers)
        self.printed: list[str] = []

    def say(self, lines: Sequence[str]) -> None:
        self.printed += [str(line) for line in lines]

    def ask(self, default: str = "", edit: str = "", at_once: str = "", notice: Callable[[], str] | None = None) -> str:
        answer = next(self._answers, None)
        if answer is None:
            self.printed.append(PROMPT.rstrip())
            raise Paused
        answer = tidy(answer)
        self.printed.append((PROMPT + answer).rstrip())
        return answer or default

    def hang_up(self) -> None:
        self._answers = iter(())

    @property
    def text(self) -> str:
        """All that was printed, as one text."""
        return "\n".join(self.printed) + "\n"


def answers_in(transcript: str) -> list[str]:
    """The answers in a printed dialogue: what stands after the prompt sign at the start of a line."""
    mark = PROMPT.rstrip()
    return [line[len(mark) :].strip() for line in transcript.splitlines() if line == mark or line.startswith(PROMPT)]
