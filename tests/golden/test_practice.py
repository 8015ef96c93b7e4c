"""Practice transcripts say exactly what is printed; `--accept` writes them anew on purpose."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest

from diagnose.model import Book, load_book
from diagnose.practice.files import read_exercise
from diagnose.practice.kept import Kept
from diagnose.practice.port import simulator_here
from diagnose.practice.start import begin, go_on
from diagnose.terminal import ScriptedFront
from diagnose.view.layout import text_width
from tests.replay import CLOCK, header_of, parts_of

ROOT = Path(__file__).resolve().parents[2]
TRANSCRIPTS = sorted((ROOT / "transcripts_demo").glob("practice_*.txt"))


def replay(text: str, book: Book, folder: Path) -> str:
    """The transcript with its answers given again: an exercise from a file, and going on with it."""
    printed = header_of(text)
    world = simulator_here()
    kept = Kept(folder / "practice.sqlite3", clock=lambda: CLOCK)
    try:
        parts = list(parts_of(text))
        for nth, (command, answers) in enumerate(parts, 1):
            # Of an exercise that is gone on with, the empty answer at the end was the end of input.
            front = ScriptedFront(answers[:-1] if nth < len(parts) else answers)
            words = shlex.split(command.removeprefix("$ "))
            if words[-1] == "resume":
                go_on(book, world, kept, front, kept.open()[0])
            else:
                begin(book, world, kept, front, read_exercise(ROOT / words[words.index("--file") + 1], book, world))
            printed += [command, *front.printed]
    finally:
        kept.close()
    return "\n".join(printed) + "\n"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def test_there_are_two() -> None:
    assert len(TRANSCRIPTS) >= 2


@pytest.mark.parametrize("path", TRANSCRIPTS, ids=lambda p: p.stem)
def test_the_whole_text_is_what_is_printed(
    path: Path, book: Book, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    written = path.read_text("utf-8")
    printed = replay(written, book, tmp_path)
    if request.config.getoption("--accept"):
        path.write_text(printed, "utf-8")
    else:
        assert printed == written
    assert "Debrief" in printed
    assert "invented" in " ".join(header_of(printed))
    assert all(text_width(line) <= 80 for line in printed.splitlines())
