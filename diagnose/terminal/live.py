"""The live front: a terminal with line editing; colour where it is wanted, and a guard against a second press."""

from __future__ import annotations

import shutil
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import TYPE_CHECKING

from diagnose.terminal.front import Paused, tidy
from diagnose.terminal.plain import fitting
from diagnose.view.layout import screen_width
from diagnose.view.theme import style_of
from diagnose.view.words import PROMPT

if TYPE_CHECKING:
    from prompt_toolkit import PromptSession
    from prompt_toolkit.input import Input
    from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
    from prompt_toolkit.output import Output
    from rich.console import Console

__all__ = ["GUARD_SECONDS", "LiveFront"]

REFRESH_SECONDS = 1.0  # how often a notice is asked for
GUARD_SECONDS = 0.3  # a key pressed again sooner than this is a bounce or a shaking hand, not an answer


class LiveFront:
    """A person at a terminal. `guard` seconds after an answer, keys are thrown away; 0 switches that off.

    `console_input`, `console_output` and `clock` are replaced in tests.
    """

    bars = True

    def __init__(
        self,
        colour: bool = True,
        guard: float = GUARD_SECONDS,
        console_input: Input | None = None,
        console_output: Output | None = None,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self._colour = colour
        self._guard = guard
        self._input = console_input
        self._output = console_output
        self._clock = clock
        self._offered = ""
        self._at_once = ""
        self._charset = sys.stdout.encoding or "utf-8"
        self._session: PromptSession[str] | None = None
        self._console: Console | None = None
        self._deaf_until = 0.0
        self._gone = False

    @property
    def width(self) -> int:
        return screen_width(shutil.get_terminal_size().columns)

    @property
    def height(self) -> int:
        return shutil.get_terminal_size().lines

    def say(self, lines: Sequence[str]) -> None:
        width = self.width
        for line in lines:
            for piece in fitting(line, width, self._charset):
                self._print(piece, style_of(getattr(line, "role", "")))
        sys.stdout.flush()

    def ask(self, default: str = "", edit: str = "", at_once: str = "", notice: Callable[[], str] | None = None) -> str:
        # Loaded only now, so that the question is on the screen before the editor is.
        session = self._prompt_session()
        session.rprompt = notice
        session.refresh_interval = REFRESH_SECONDS if notice is not None else 0.0
        self._at_once = at_once
        if self._guard:
            self._drop_typed_ahead(session)
        self._offered = edit
        try:
            answer = session.prompt(PROMPT, default=edit, pre_run=self._leave_if_gone)
        except (KeyboardInterrupt, EOFError):
            raise Paused from None
        self._deaf_until = self._clock() + self._guard
        return tidy(answer) or default

    @contextmanager
    def printing_above(self) -> Iterator[None]:
        """While the block runs, lines may be said from another thread: they appear above the line being typed."""
        from prompt_toolkit.patch_stdout import patch_stdout

        with patch_stdout(raw=True):
            yield

    def hang_up(self) -> None:
        self._gone = True
        app = self._session.app if self._session else None
        if app is not None and app.is_running and app.loop is not None:
            # Never from the handler itself: the editor's own loop would swallow the exception.
            app.loop.call_soon_threadsafe(self._leave_if_gone)

    def _leave_if_gone(self) -> None:
        app = self._session.app if self._session else None
        if self._gone and app is not None and app.is_running and app.future is not None and not app.future.done():
            app.exit(exception=Paused())

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
                reserve_space_for_menu=0,  # the prompt is one row, whatever the height of the screen
                color_depth=None if self._colour else ColorDepth.DEPTH_1_BIT,
                input=self._input,
                output=self._output or _quiet_output(),
            )
        return self._session

    def _bindings(self) -> KeyBindings:
        """Swallow keys while the front is deaf: a press of the answer before must not answer this question."""
        from prompt_toolkit.filters import Condition
        from prompt_toolkit.key_binding import KeyBindings
        from prompt_toolkit.keys import Keys

        bindings = KeyBindings()
        deaf = Condition(lambda: self._clock() < self._deaf_until)

        def swallow(event: object) -> None:
            """Do nothing."""

        for key in (Keys.Any, Keys.ControlM, Keys.ControlJ):
            bindings.add(key, filter=deaf)(swallow)
        bindings.add(Keys.Any, filter=~deaf & Condition(self._untouched))(self._type_over)
        bindings.add(Keys.Any, filter=~deaf & Condition(self._empty))(self._answer_at_once)
        return bindings

    def _empty(self) -> bool:
        """Whether nothing is typed yet where one sign may be the whole answer."""
        return bool(self._at_once) and not self._prompt_session().default_buffer.text

    def _answer_at_once(self, event: KeyPressEvent) -> None:
        """Take the sign typed, and with it the answer where it is one by itself."""
        event.current_buffer.insert_text(event.data)
        if event.data and event.data in self._at_once:
            event.current_buffer.validate_and_handle()

    def _type_over(self, event: KeyPressEvent) -> None:
        """Put what is typed in the place of what was offered; arrows and the erasing key mend it instead."""
        self._offered = ""
        event.current_buffer.reset()
        event.current_buffer.insert_text(event.data)

    def _untouched(self) -> bool:
        """Whether the refused text stands there as it was offered: the next sign typed takes its place."""
        buffer = self._prompt_session().default_buffer
        return bool(self._offered) and buffer.text == self._offered and buffer.cursor_position == len(buffer.text)

    def _drop_typed_ahead(self, session: PromptSession[str]) -> None:
        from prompt_toolkit.input.typeahead import clear_typeahead

        clear_typeahead(session.app.input)
        if self._input is None:
            _drain_terminal()


def _quiet_output() -> Output:
    """The terminal, without asking it where its cursor is: some never answer, and the wait eats keys."""
    from prompt_toolkit.output.defaults import create_output
    from prompt_toolkit.output.vt100 import Vt100_Output

    output = create_output()
    if isinstance(output, Vt100_Output):
        output.enable_cpr = False
    return output


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
