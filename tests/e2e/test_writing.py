"""An entry written at a terminal: Ctrl-C and a killed process lose nothing, and the page fits the screen."""

from __future__ import annotations

import json
import signal
from pathlib import Path

import pexpect
import pytest

from diagnose.view.exits import Exit
from tests.e2e.test_terminal import Terminal

FIRST = (
    ("rinse_arms", "1 of"),
    ("jets_painted", "2 of"),
    ("Jets were painted over", "3 of"),
    ("Paint on two.", "4 of"),
)


def begin(home: Path, columns: int = 45) -> Terminal:
    terminal = Terminal(home, columns, 40, "knowledge", "new", "cause")
    terminal.until("part of the machine")
    for answer, then in FIRST:
        terminal.answer(answer, then)
    return terminal


def interrupt(terminal: Terminal) -> int:
    """Press Ctrl-C as a person does: again where nothing happens, since one just before the line is read waits."""
    for _ in range(20):
        terminal.child.sendintr()
        if terminal.child.expect([pexpect.EOF, pexpect.TIMEOUT], timeout=2) == 0:
            break
    return terminal.end()


@pytest.mark.parametrize("end", ["ctrl-c", "kill"])
def test_nothing_is_lost(tmp_path: Path, end: str) -> None:
    home = tmp_path / "home"
    terminal = begin(home)
    if end == "kill":
        terminal.child.kill(signal.SIGKILL)
        terminal.end()
    else:
        assert interrupt(terminal) == Exit.PAUSED
    draft = json.loads((home / "drafts" / "cause.json").read_text("utf-8"))
    assert draft["kept"] == {"id": "jets_painted", "title": "Jets were painted over", "shows": "Paint on two."}
    again = Terminal(home, 45, 40, "knowledge", "new", "cause")
    again.until("was begun")
    again.answer("1", "4 of")
    assert "Jets were painted over" in again.text
    assert "1 of 19" not in again.text
    again.child.sendeof()
    assert again.end() == Exit.PAUSED
    assert not (home / "knowledge").exists()


def test_words_are_whole_at_thirty_columns(tmp_path: Path) -> None:
    terminal = begin(tmp_path / "home", 30)
    interrupt(terminal)
    assert "How it comes about, and what to mend so that it does not return." in terminal.text
