"""The board on a real pseudo-terminal: one keystroke follows a job, and a change leaves alone what is typed."""

from __future__ import annotations

from pathlib import Path

from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.view import board_words as words
from diagnose.view import desk_words
from tests.pseudo_terminal import Terminal

COLUMNS = 45
KIND = "two_tank_electric_208"


def test_a_digit_follows_at_once_and_a_change_is_told_beside_what_is_typed(tmp_path: Path) -> None:
    journal = Journal(tmp_path / "journal.sqlite3", None)
    for job, site in (("job-1001", "Pier Canteen, invented"), ("job-1002", "Quay Street, invented")):
        journal.append(job, ev.Opened(machine=KIND, type=KIND, site=site))
        journal.append(job, ev.SafetyAnswered())
        journal.append(job, ev.ComplaintSaid("rinse_cold"))
    terminal = Terminal(tmp_path, COLUMNS, 24, "desk", "board")
    terminal.until("1-2 of 2")
    terminal.child.send("can")
    terminal.take("can")
    journal.append("job-1002", ev.NoteAdded("the lid was open"))
    terminal.take(words.CHANGED)
    line = terminal.screen.display[terminal.screen.cursor.y].rstrip()
    assert line.startswith("> can ")
    assert line.endswith(words.CHANGED)
    terminal.child.send("teen\r")
    terminal.until('1 of 1; with "canteen"')
    terminal.child.send("1")  # without Enter
    terminal.take(desk_words.FOLLOWING[:20])
    terminal.take("job-1001")
    terminal.child.send("p\r")
    terminal.until('1 of 1; with "canteen"')
    terminal.child.send("p\r")
    assert terminal.end() == 0
    assert max(len(line) for line in terminal.lines) <= COLUMNS
    journal.close()
