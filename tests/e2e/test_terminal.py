"""The live front on a real pseudo-terminal, read back from an emulated screen of several sizes."""

from __future__ import annotations

import signal
from pathlib import Path

import pytest

from diagnose.terminal.live import GUARD_SECONDS
from diagnose.view.exits import Exit
from tests.pseudo_terminal import Terminal

ROOT = Path(__file__).resolve().parents[2]
ANSWERS = (
    "two_tank_electric_208",
    "1",
    "Pier Canteen",
    "0",
    "water not hot at the end",
    "",
    "",
    "1",
    "",
    "",
    "",
    "c rinse pressure while flowing",
    "20",
    "h",
    "t",
    "i",
)


def play(terminal: Terminal) -> int:
    terminal.until("Question 1")
    number = 1
    for answer in ANSWERS:
        if answer.isalpha() and len(answer) == 1:
            terminal.child.send(answer + "\r")
            terminal.until({"h": "anything", "t": r"\[\+", "i": "assumed"}[answer])
        else:
            number += 1
            terminal.answer(answer, f"Question {number}")
    terminal.child.send("p\r")
    return terminal.end()


@pytest.mark.parametrize(("columns", "rows"), [(80, 24), (30, 20)])
def test_no_word_is_lost_on_the_screen(tmp_path: Path, columns: int, rows: int) -> None:
    live = Terminal(tmp_path / "live", columns, rows)
    assert play(live) == Exit.PAUSED
    plain = Terminal(tmp_path / "plain", columns, rows, "--plain")
    assert play(plain) == Exit.PAUSED
    job = next(word.rstrip(".") for word in live.text.split() if word.startswith("job-"))
    other = next(word.rstrip(".") for word in plain.text.split() if word.startswith("job-"))
    # Bars are the live front's only extra.
    # So is a lone = sign, which a sum in the working holds in both.
    words, others = ([w for w in t.split() if w.strip("=")] for t in (live.text, plain.text.replace(other, job)))
    assert words == others
    assert b"\x1b" not in plain.bytes


def test_the_prompt_is_one_row_and_resizing_leaves_no_copies(tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, 80, 24)
    terminal.until("Question 1")
    for columns in (60, 45, 70, 50, 80):
        terminal.child.setwinsize(24, columns)
        terminal.screen.resize(24, columns)
    terminal.answer("two_tank_electric_208", "Question 2")
    assert sum(line.startswith(">") for line in terminal.lines) == 2


@pytest.mark.parametrize("key", ["\x03", "\x04"], ids=["Ctrl-C", "Ctrl-D"])
def test_leaving_keys_say_how_to_come_back(tmp_path: Path, key: str) -> None:
    terminal = Terminal(tmp_path, 80, 24)
    terminal.until("Question 1")
    terminal.answer("two_tank_electric_208", "Question 2")
    terminal.child.send(key)
    assert terminal.end() == Exit.PAUSED
    assert "Paused, saved. Resume with: diagnose resume job-" in terminal.text


@pytest.mark.parametrize("name", ["SIGHUP", "SIGTERM", "SIGINT"])
def test_a_closed_window_pauses(tmp_path: Path, name: str) -> None:
    terminal = Terminal(tmp_path, 80, 24)
    terminal.until("Question 1")
    terminal.answer("two_tank_electric_208", "Question 2")
    terminal.child.kill(getattr(signal, name))
    assert terminal.end() == Exit.PAUSED
    again = Terminal(tmp_path, 80, 24, "resume")
    again.until("Question 2")
    again.child.close(force=True)


def test_colour_only_where_it_is_wanted(tmp_path: Path) -> None:
    coloured = Terminal(tmp_path, 80, 24)
    coloured.until("Question 1")
    coloured.child.close(force=True)
    assert b"\x1b[1m" in coloured.bytes
    bare = Terminal(tmp_path, 80, 24, NO_COLOR="1")
    bare.until("Question 1")
    bare.child.close(force=True)
    assert b"\x1b[1m" not in bare.bytes
    for more in ({"TERM": "dumb"}, {"ACCESSIBLE": "1"}):
        plain = Terminal(tmp_path, 80, 24, **more)
        plain.until("Question 1")
        plain.child.close(force=True)
        assert b"\x1b" not in plain.bytes


def test_a_second_press_within_the_guard_is_no_answer(tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, 80, 24, DIAGNOSE_GUARD=str(GUARD_SECONDS * 30))
    terminal.until("Question 1")
    terminal.child.send("6\r")
    terminal.until("Question 2")
    terminal.child.send("1\r")  # the shaking hand; the guard is long here so that a slow computer does not matter
    terminal.child.send("\x04")
    assert terminal.end() == Exit.PAUSED
    assert "Question 3" not in terminal.text
