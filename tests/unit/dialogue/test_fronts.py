"""The fronts print the same text; the live one is driven with real keys through a pipe."""

from __future__ import annotations

import contextlib
import io
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.scene import Scene
from diagnose.job.session import Session
from diagnose.model import Book
from diagnose.terminal.front import Paused, tidy
from diagnose.terminal.fronts import wants_colour, wants_plain
from diagnose.terminal.live import LiveFront
from diagnose.terminal.plain import PlainFront
from diagnose.terminal.scripted import ScriptedFront, answers_in
from diagnose.view.layout import Line
from tests.small_job import STORY, MemoryJournal, small_book, talk


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("knowledge"))


@pytest.fixture
def pipe() -> Iterator[Any]:
    with create_pipe_input() as made:
        yield made


def live(pipe: Any, guard: float = 0.0, clock: Callable[[], float] = lambda: 0.0) -> LiveFront:
    return LiveFront(False, guard, pipe, DummyOutput(), clock)


def play_plain(book: Book, answers: str, folder: Path, charset: str = "utf-8", columns: int = 80) -> bytes:
    raw = io.BytesIO()
    output = io.TextIOWrapper(raw, charset, newline="\n")
    session = Session(book, MemoryJournal(), "job-1")
    front = PlainFront(columns, io.StringIO(answers), output)
    with contextlib.suppress(Paused):
        Conversation(Scene(session, folder / "m"), front).run()
    output.flush()
    return raw.getvalue()


def test_plain_and_scripted_print_the_same_text(book: Book, tmp_path: Path) -> None:
    _, scripted = talk(book, STORY, tmp_path)
    assert play_plain(book, "\n".join(STORY) + "\n", tmp_path).decode() == scripted.text


def test_what_was_printed_holds_its_answers(book: Book, tmp_path: Path) -> None:
    _, scripted = talk(book, STORY, tmp_path)
    assert answers_in(scripted.text) == list(STORY)


def test_live_prints_the_same_lines_but_for_the_bars(
    book: Book, tmp_path: Path, pipe: Any, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "79")  # bars are drawn from 80 columns only
    _, scripted = talk(book, STORY, tmp_path, 79)
    pipe.send_text("".join(answer + "\r" for answer in STORY))
    Conversation(Scene(Session(book, MemoryJournal(), "job-1"), tmp_path / "m"), live(pipe)).run()
    said = [line for line in scripted.printed if not line.startswith(">")]
    assert capsys.readouterr().out.splitlines() == said


@pytest.mark.parametrize("charset", ["ascii", "cp437", "cp1252", "utf-8"])
@pytest.mark.parametrize("columns", [30, 45, 80, 132])
def test_plain_text_is_free_of_escapes_in_every_character_set(
    book: Book, tmp_path: Path, charset: str, columns: int
) -> None:
    printed = play_plain(book, "\n".join(STORY) + "\n", tmp_path, charset, columns)
    text = printed.decode(charset)
    assert all(len(line) <= min(columns, 80) for line in text.splitlines())
    assert all(sign >= " " or sign == "\n" for sign in text)
    assert "Closed: repaired and proved" in " ".join(text.split())


def test_end_of_input_pauses(book: Book, tmp_path: Path) -> None:
    front = PlainFront(80, io.StringIO("1\n"), io.StringIO())
    assert front.ask() == "1"
    with pytest.raises(Paused):
        front.ask()


@pytest.mark.parametrize("key", ["\x03", "\x04"], ids=["Ctrl-C", "Ctrl-D"])
def test_keys_that_leave_pause_and_never_mean_yes(pipe: Any, key: str) -> None:
    pipe.send_text(key)
    with pytest.raises(Paused):
        live(pipe).ask(default="1")


def test_enter_alone_takes_the_default(pipe: Any) -> None:
    pipe.send_text("\r")
    assert live(pipe).ask(default="172 °F") == "172 °F"


def test_what_was_refused_is_kept_and_typed_over(pipe: Any) -> None:
    front = live(pipe)
    pipe.send_text("48 48 83\r")
    assert front.ask(edit="48 48") == "48 48 83"
    pipe.send_text(" 83\r")
    assert front.ask(edit="48 48") == "83"


def test_what_was_refused_can_be_mended(pipe: Any) -> None:
    front = live(pipe)
    pipe.send_text("\x7f5\r")  # the erasing key, then a digit
    assert front.ask(edit="2000") == "2005"
    pipe.send_text("\x1b[D\x1b[D\x7f\r")  # two to the left, erase
    assert front.ask(edit="2000") == "200"


def test_a_second_press_is_no_answer(pipe: Any) -> None:
    now = [100.0]
    front = live(pipe, 0.3, lambda: now[0])
    pipe.send_text("1\r")
    assert front.ask() == "1"
    # The hand shakes: digit and Enter once more, well within the guard; then the person goes away.
    now[0] += 0.2
    pipe.send_text("1\r")
    pipe.send_text("\x04")
    with pytest.raises(Paused):
        front.ask(default="x")


def test_after_the_guard_a_press_counts(pipe: Any) -> None:
    now = [100.0]
    front = live(pipe, 0.3, lambda: now[0])
    pipe.send_text("1\r")
    assert front.ask() == "1"
    now[0] += 0.4
    pipe.send_text("1\r")
    assert front.ask() == "1"


@pytest.mark.parametrize(
    ("raw", "kept"),
    [(" 172 \n", "172"), ("a\x1b[31mb", "a [31mb"), ("\ud800x", "?x"), ("x" * 5000, "x" * 2000), ("a\tb\0c", "a b c")],
)
def test_answers_are_tidied(raw: str, kept: str) -> None:
    assert tidy(raw) == kept


def test_markup_in_what_people_say_is_printed_as_it_is(capsys: pytest.CaptureFixture[str]) -> None:
    LiveFront(True, 0.0).say([Line("gasket [b]cut[/b] [/x] :smile:", "heading"), Line("[red]", "")])
    printed = capsys.readouterr().out
    assert "gasket [b]cut[/b] [/x] :smile:" in printed
    assert "[red]" in printed


class _Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("environment", "plain"),
    [
        ({"TERM": "xterm"}, False),
        ({"TERM": "dumb"}, True),
        ({"TERM": ""}, True),
        ({"TERM": "xterm", "ACCESSIBLE": "1"}, True),
        ({"TERM": "xterm", "ACCESSIBLE": "0"}, False),
    ],
)
def test_the_environment_chooses_the_front(
    monkeypatch: pytest.MonkeyPatch, environment: dict[str, str], plain: bool
) -> None:
    for name in ("TERM", "ACCESSIBLE"):
        monkeypatch.delenv(name, raising=False)
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys, "stdin", _Terminal())
    monkeypatch.setattr(sys, "stdout", _Terminal())
    assert wants_plain() is plain


def test_output_that_is_no_terminal_is_plain(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stdin", _Terminal())
    monkeypatch.setattr(sys, "stdout", io.StringIO())
    assert wants_plain()


def test_no_color_is_honoured(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    assert not wants_colour()
    monkeypatch.delenv("NO_COLOR")
    assert wants_colour()


def test_the_scripted_front_ends_where_its_answers_end() -> None:
    front = ScriptedFront(["a"])
    assert front.ask() == "a"
    with pytest.raises(Paused):
        front.ask()
    assert front.text == "> a\n>\n"
