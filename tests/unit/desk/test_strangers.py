"""What another computer may write, with knowledge of its own: nothing of it brings any room down."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.batch.jobs import list_jobs, show_job
from diagnose.desk.board_leading import Leading
from diagnose.desk.feed import Feed
from diagnose.desk.open_jobs import OpenJobs
from diagnose.desk.stream import stream
from diagnose.desk.visit_sheet import visit_lines
from diagnose.dialogue import run_job
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book
from diagnose.report import Dossier
from diagnose.report.service import service_report
from diagnose.terminal import ScriptedFront
from tests.small_job import STORY, small_book

CLOCK = "2026-03-02T08:00:00+00:00"
JOB = "job-1001"
STRANGE: tuple[ev.Event, ...] = (
    ev.ComplaintSaid("no_such"),
    ev.ContextGiven("no_such", "perhaps"),
    ev.ContextGiven("age", "perhaps"),
    ev.PlateRead("no_such", "7 V"),
    ev.PlateRead("volts", "rubbish"),
    ev.SafetyAnswered("no_such"),
    ev.TurnedTo("check", "no.such"),
    ev.TurnedTo("repair", "no.such"),
    ev.TurnedTo("adjust", "no.such", "no.line"),
    ev.TurnedTo("leave", line="no.line"),
    ev.TurnedTo("prove", "no.such"),
    ev.TurnedTo("hand on"),
    ev.ReadingTaken("no.such", {"": "7 V"}),
    ev.ReadingTaken("box.volts", {"": "rubbish"}),
    ev.ReadingTaken("box.volts", {"L9": "7 V"}),
    ev.ReadingTaken("box.volts", {"": "7 V"}, accuracy="rubbish"),
    ev.ReadingTaken("box.where", outcome="no_such"),
    ev.InstrumentChosen("no.such", "x"),
    ev.Skipped("no.such", "not now"),
    ev.RuledOut("no.such"),
    ev.RuledOut("steam_out"),
    ev.Acknowledged(["no_such"], "no.such"),
    ev.Repaired("no.such", "as expected"),
    ev.Repaired("no.such", "sound"),
    ev.NoteAdded("x", "no.line"),
    ev.Adjusted("no.such", "no.line", {"turns": "rubbish"}),
    ev.LineLeft("no.line", "remark", "x"),
    ev.Present("x", "machine", ("nobody",), ("no_such",)),
    ev.CallBegun("kitchen", "x", "no language"),
    ev.TypeTold("no_such", "x"),
    ev.CallEnded("visit"),
    ev.Hinted("no.such", "x"),
    ev.Hinted(),
    ev.HintAnswered(99, "nobody", True),
    ev.HandedOn("parts"),
    ev.Withdrawn(99, "nobody"),
    ev.Withdrawn(1, "tech-1"),
    ev.Opened(machine="m", type="no_such"),
    ev.Closed("given up", "x"),
)


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("small"))


def test_every_kind_is_among_them() -> None:
    told = {type(event) for event in STRANGE}
    assert set(ev.EVENT_TYPES) - told <= {ev.MachineDescribed, ev.PlateWanted, ev.StepDone}


@pytest.mark.parametrize("event", STRANGE, ids=lambda e: f"{type(e).__name__}-{STRANGE.index(e)}")
def test_no_room_comes_down(event: ev.Event, book: Book, tmp_path: Path) -> None:
    journal = Journal(tmp_path / "j", "tech-1", lambda: CLOCK)
    run_job(book, journal, tmp_path, ScriptedFront(STORY[:9]), new_name=JOB)
    Journal(tmp_path / "j", "other-1", lambda: CLOCK).append(JOB, event)
    scene = Scene(Session(book, Journal(tmp_path / "j", "desk-1", lambda: CLOCK), JOB), tmp_path)
    rows = OpenJobs(journal, book).rows()
    assert len(rows) == (not isinstance(event, ev.Closed))
    assert len([Leading(book).of(row) for row in rows]) == len(rows)
    assert list_jobs(book, journal, False, 80)
    assert show_job(journal, JOB, False, 80)
    if isinstance(
        event, ev.Opened
    ):  # the one thing that nothing can be told of: a sentence says which knowledge it takes
        with pytest.raises(ValueError, match="use the knowledge it was opened with"):
            run_job(book, journal, tmp_path, ScriptedFront(["p"]), JOB)
        return
    assert list(Feed(scene).catch_up(80))
    assert list(stream(scene, once=True))
    visit_lines(scene, 80)
    service_report(Dossier(book, JOB, journal.records(JOB)))
    run_job(book, journal, tmp_path, ScriptedFront(["i", "r", "t", "u", "", "1", "s", "p"]), JOB)
