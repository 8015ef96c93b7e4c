"""The live front: a terminal with line editing; colour where it is wanted, and a guard against a second press."""

from __future__ import annotations

import shutil
import sys
import time
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from diagnose.dialogue.front import Paused, tidy
from diagnose.dialogue.plain import fitting
from diagnose.view.layout import screen_width
from diagnose.view.theme import style_of
from diagnose.view.words import PROMPT

if TYPE_CHECKING:
    from prompt_toolkit import PromptSession
    from prompt_toolkit.input import Input
    from prompt_toolkit.key_binding import KeyBindings
    from prompt_toolkit.output import Output
    from rich.console import Console

__all__ = ["GUARD_SECONDS", "LiveFront"]

GUARD_SECONDS = 0.3  # a key pressed again sooner than this is a bounce or a shaking hand, not an answer


class LiveFront:
    """A person at a terminal. `guard` seconds after an answer, keys are thrown away; 0 switches that off.

    `console_input` and `console_output` replace the terminal in tests.
    """

    bars = True

    def __init__(
        self,
        colour: bool = True,
        guard: float = GUARD_SECONDS,
        console_input: Input | None = None,
        console_output: Output | None = None,
    ) -> None:
        self._colour = colour
        self._guard = guard
        self._io: dict[str, Any] = {"input": console_input, "output": console_output}
        self._charset = sys.stdout.encoding or "utf-8"
        self._session: PromptSession[str] | None = None
        self._console: Console | None = None
        self._deaf_until = 0.0

    @property
    def width(self) -> int:
        return screen_width(shutil.get_terminal_size().columns)

    def say(self, lines: Sequence[str]) -> None:
        width = self.width
        for line in lines:
            for piece in fitting(line, width, self._charset):
                self._print(piece, style_of(getattr(line, "role", "")))
        sys.stdout.flush()

    def ask(self, default: str = "", edit: str = "") -> str:
        # Loaded only now, so that the question is on the screen before the editor is.
        session = self._prompt_session()
        if self._guard:
            self._drop_typed_ahead(session)
        try:
            answer = session.prompt(PROMPT, default=edit or default)
        except (KeyboardInterrupt, EOFError):
            raise Paused from None
        self._deaf_until = time.monotonic() + self._guard
        return tidy(answer) or default

    def _print(self, text: str, style: str) -> None:
        if not (self._colour and style):
            sys.stdout.write(text + "\n")
            return
        if self._console is None:
            from rich.console import Console

            self._console = Console(highlight=False, markup=False, emoji=False, soft_wrap=True)
        self._console.print(text, style=style, markup=False, highlight=False, emoji=False, soft_wrap=True)

    def _prompt_session(self) -> PromptSession[str]:
        if self._session is None:
            from prompt_toolkit import PromptSession
            from prompt_toolkit.output import ColorDepth

            self._session = PromptSession(
                key_bindings=self._bindings(),
                mouse_support=False,
                enable_suspend=True,
                complete_while_typing=False,
                color_depth=None if self._colour else ColorDepth.DEPTH_1_BIT,
                **{name: each for name, each in self._io.items() if each is not None},
            )
        return self._session

    def _bindings(self) -> KeyBindings:
        """Swallow keys while the front is deaf: a press of the answer before must not answer this question."""
        from prompt_toolkit.filters import Condition
        from prompt_toolkit.key_binding import KeyBindings
        from prompt_toolkit.keys import Keys

        bindings = KeyBindings()
        deaf = Condition(lambda: time.monotonic() < self._deaf_until)

        def swallow(event: object) -> None:
            """Do nothing."""

        for key in (Keys.Any, Keys.ControlM, Keys.ControlJ):
            bindings.add(key, filter=deaf, eager=True)(swallow)
        return bindings

    def _drop_typed_ahead(self, session: PromptSession[str]) -> None:
        from prompt_toolkit.input.typeahead import clear_typeahead

        clear_typeahead(session.app.input)
        if self._io["input"] is None:
            _drain_terminal()


def _drain_terminal() -> None:
    """Forget what was typed before the question was on the screen."""
    try:
        import termios
    except ImportError:  # no such thing on this system; the deaf time still holds
        return
    try:
        termios.tcflush(sys.stdin.fileno(), termios.TCIFLUSH)
    except (OSError, ValueError, termios.error):
        return
