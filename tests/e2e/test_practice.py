"""Practice as a whole process: from a pipe, killed and gone on with, and on a narrow terminal."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from diagnose.view.exits import Exit
from tests.e2e.test_pipe import environment, run
from tests.e2e.test_terminal import Terminal

ROOT = Path(__file__).resolve().parents[2]
BEGIN = ("practice", "--level", "1", "--complaint", "relief_valve_blows", "--seed", "5")


def test_killed_at_a_question_it_goes_on_there_and_ends_in_a_debrief(tmp_path: Path) -> None:
    child = subprocess.Popen(
        [sys.executable, "-m", "diagnose", *BEGIN],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        env=environment(tmp_path),
        cwd=ROOT,
    )
    assert child.stdin is not None
    assert child.stdout is not None
    child.stdin.write(b"n a note of mine\ne\n")
    child.stdin.flush()
    told = b""
    while b"What is wrong?" not in told:
        line = child.stdout.readline()
        assert line, told.decode()
        told += line
    child.kill()
    child.communicate()
    again = run(tmp_path, ["give up"], "practice", "resume")
    assert again.returncode == Exit.OK, again.stderr
    printed = again.stdout.decode()
    assert "Note: a note of mine" in printed
    assert printed.index("What is wrong?") < printed.index("Debrief") < printed.index("It was: ")
    assert b"\x1b" not in again.stdout
    assert run(tmp_path, [], "practice", "resume").returncode == Exit.NO_SUCH_JOB


def test_the_same_seed_tells_the_same_story_and_wrong_words_a_remedy(tmp_path: Path) -> None:
    once, twice = run(tmp_path, [], *BEGIN), run(tmp_path, [], *BEGIN)
    assert once.returncode == twice.returncode == Exit.PAUSED
    assert once.stdout.replace(b"exercise-1", b"exercise-2") == twice.stdout
    wrong = run(tmp_path, [], "practice", "--complaint", "zzqx")
    assert wrong.returncode == Exit.USAGE
    assert b"practice --list" in wrong.stderr


def test_ctrl_c_on_a_narrow_terminal_saves_and_every_line_fits(tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, 45, 20, *BEGIN)
    terminal.until("p pause")
    terminal.answer("h", r"debrief\.")
    terminal.answer("zzqx", r"list\.")
    terminal.child.send("\x03")
    assert terminal.end() == Exit.PAUSED
    assert b"practice resume exercise-1" in terminal.bytes.replace(b"\r\n", b" ")
