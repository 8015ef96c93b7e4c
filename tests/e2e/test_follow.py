"""Two programs on one job: one works, one follows; what is typed stays while something arrives, and hints go across."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.view import desk_words
from diagnose.view.exits import Exit
from tests.home import furnish
from tests.pseudo_terminal import ROOT, Terminal

JOB = "job-1001"
TYPE = "two_tank_electric_208"


@pytest.fixture
def journal(tmp_path: Path) -> Journal:
    """A job begun by somebody at the machine."""
    furnish(tmp_path / "home")
    made = Journal(tmp_path / "home" / "journal.sqlite3", "tech-1")
    for event in (
        ev.Opened(machine=TYPE, type=TYPE),
        ev.PlateWanted(False),
        ev.MachineDescribed("site", "Pier Canteen, invented"),
        ev.SafetyAnswered(),
        ev.ComplaintSaid("rinse_cold"),
        ev.StepDone("complaints"),
    ):
        made.append(JOB, event)
    return made


def test_what_happens_there_appears_above_the_line_that_is_typed(journal: Journal, tmp_path: Path) -> None:
    desk = Terminal(tmp_path / "home", 80, 40, "desk", "follow", JOB, DIAGNOSE_NAME="Desk North")
    desk.take("Asked there now, question 7")
    desk.child.send("n half a sen")
    journal.append(JOB, ev.ContextGiven("since", "today, suddenly"))
    desk.take("Since when\\?")
    desk.take("Asked there now, question 8")
    desk.child.send("tence\r")
    desk.take(desk_words.SENT[:12])
    sent = [record.event for record in journal.records(JOB) if isinstance(record.event, ev.Hinted)]
    assert sent == [ev.Hinted(text="half a sentence")]
    journal.append(JOB, ev.Closed("given up"))
    desk.take(desk_words.NOW_CLOSED)
    assert desk.end() == Exit.OK


def test_a_burst_comes_whole_and_in_order_on_a_narrow_screen(journal: Journal, tmp_path: Path) -> None:
    desk = Terminal(tmp_path / "home", 45, 24, "desk", "follow", JOB)
    desk.take("Asked there now")
    for nth in range(40):
        journal.append(JOB, ev.NoteAdded(f"note {nth:02} \x1b[2J of many"))
    journal.append(JOB, ev.Closed("given up"))
    desk.end()
    text = desk.bytes.decode()
    places = [text.index(f"note {nth:02}") for nth in range(40)]
    assert places == sorted(places)
    assert "\x1b[2J" not in text.split("Asked there now", 1)[1]


def test_a_pipe_gets_every_event_once_as_json_while_it_happens(journal: Journal, tmp_path: Path) -> None:
    words = [sys.executable, "-m", "diagnose", "desk", "follow", JOB, "--json"]
    own = {"DIAGNOSE_HOME": str(tmp_path / "home"), "PYTHONPATH": str(ROOT), "PATH": ""}
    with subprocess.Popen(words, env=own, stdout=subprocess.PIPE, text=True, cwd=ROOT) as desk:
        assert desk.stdout is not None
        first = [json.loads(desk.stdout.readline()) for _ in range(7)]
        assert [each["what"] for each in first] == ["event"] * 6 + ["standing"]
        journal.append(JOB, ev.ContextGiven("since", "today, suddenly"))
        told = json.loads(desk.stdout.readline())
        assert told["event"]["kind"] == "ContextGiven"
        journal.append(JOB, ev.Closed("given up"))
        rest = [json.loads(line) for line in desk.stdout]
        assert rest[-1]["closed"] == "given up"
        assert desk.wait() == Exit.OK
