"""The journal keeps every event, in order, on disk, and lets nobody change one."""

from __future__ import annotations

import os
import sqlite3
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from diagnose.job import JobHeld, Journal, JournalError, hold, new_job_name
from diagnose.job.events import ComplaintSaid, MachineDescribed, NoteAdded, Opened, ReadingTaken

OPENED = Opened(machine="line 1", type="two_tank_electric_208")


def test_events_come_back_as_they_were(tmp_path: Path) -> None:
    events = [
        OPENED,
        ComplaintSaid("rinse_cold"),
        ReadingTaken("a.b", {"L1": "48.0 A"}, None, "clamp meter"),
        NoteAdded("quote ' and \x1b[2J and \u202e"),
    ]
    journal = Journal(tmp_path / "journal.sqlite3")
    for event in events:
        journal.append("job-1", event)
    again = Journal(tmp_path / "journal.sqlite3")
    assert [r.event for r in again.records("job-1")] == events
    assert [r.number for r in again.records("job-1")] == [1, 2, 3, 4]
    assert again.has("job-1")
    assert not again.has("job-2")


def test_nothing_can_be_changed_or_deleted(tmp_path: Path) -> None:
    Journal(tmp_path / "j").append("job-1", OPENED)
    database = sqlite3.connect(tmp_path / "j")
    for words in ("update event set body = '{}'", "delete from event"):
        with pytest.raises(sqlite3.IntegrityError, match="append-only"):
            database.execute(words)
    database.close()


def test_the_file_is_for_its_owner_only(tmp_path: Path) -> None:
    Journal(tmp_path / "deep" / "journal.sqlite3").append("job-1", OPENED)
    mode = stat.S_IMODE(os.stat(tmp_path / "deep" / "journal.sqlite3").st_mode)
    assert mode == 0o600


def test_a_file_that_is_no_journal_is_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "letter").write_text("Dear all, " * 1000)
    with pytest.raises(JournalError, match="can't be used as a journal"):
        Journal(tmp_path / "letter")


def test_an_event_from_elsewhere_is_a_sentence(tmp_path: Path) -> None:
    journal = Journal(tmp_path / "j")
    database = sqlite3.connect(tmp_path / "j")
    database.execute(
        "insert into event (job, number, writer, at, body) values ('job-1', 1, 'local', 't', '{\"kind\": \"Dance\"}')"
    )
    database.commit()
    database.close()
    with pytest.raises(JournalError, match="event 1 of job-1 can't be read"):
        journal.records("job-1")


def test_two_writers_never_take_one_number(tmp_path: Path) -> None:
    one, two = Journal(tmp_path / "j", "one"), Journal(tmp_path / "j", "two")
    for nth in range(20):
        (one if nth % 2 else two).append("job-1", NoteAdded(str(nth)))
    assert [r.event for r in one.records("job-1")] == [NoteAdded(str(n)) for n in range(20)]


def test_jobs_are_listed_newest_first(tmp_path: Path) -> None:
    times = iter(["2026-01-01T10:00:00+00:00", "2026-01-02T10:00:00+00:00", "2026-01-03T10:00:00+00:00"])
    journal = Journal(tmp_path / "j", clock=lambda: next(times))
    for job in ("job-1", "job-2", "job-1"):
        journal.append(job, OPENED)
    assert [(e.job, e.events) for e in journal.jobs()] == [("job-1", 2), ("job-2", 1)]


def test_a_written_event_outlives_a_killed_process(tmp_path: Path) -> None:
    code = (
        "import os, signal, sys\n"
        "from pathlib import Path\n"
        "from diagnose.job import Journal\n"
        "from diagnose.job.events import NoteAdded\n"
        "journal = Journal(Path(sys.argv[1]))\n"
        "journal.append('job-1', NoteAdded('before the kill'))\n"
        "os.kill(os.getpid(), signal.SIGKILL)\n"
    )
    done = subprocess.run([sys.executable, "-c", code, str(tmp_path / "j")], check=False)
    assert done.returncode == -9
    assert [r.event for r in Journal(tmp_path / "j").records("job-1")] == [NoteAdded("before the kill")]


def test_names_are_short_and_unused() -> None:
    asked: list[str] = []

    def taken(name: str) -> bool:
        asked.append(name)
        return len(asked) < 3

    assert new_job_name(taken) == asked[-1]
    assert len(asked) == 3


def test_the_second_holder_is_told_who_holds(tmp_path: Path) -> None:
    with hold(tmp_path, "job-1"):
        with pytest.raises(JobHeld, match=f"process {os.getpid()}"), hold(tmp_path, "job-1"):
            pass
        with hold(tmp_path, "job-2"):
            pass
    with hold(tmp_path, "job-1"):
        pass


def test_a_hold_dies_with_its_process(tmp_path: Path) -> None:
    code = (
        "import os, signal, sys\nfrom pathlib import Path\nfrom diagnose.job import hold\n"
        "with hold(Path(sys.argv[1]), 'job-1'):\n    os.kill(os.getpid(), signal.SIGKILL)\n"
    )
    subprocess.run([sys.executable, "-c", code, str(tmp_path)], check=False)
    with hold(tmp_path, "job-1"):
        pass


def test_the_jobs_of_a_machine_are_found_by_its_name_whatever_its_case(tmp_path: Path) -> None:
    times = iter(f"2026-01-{day:02}T10:00:00+00:00" for day in range(1, 30))
    journal = Journal(tmp_path / "j", clock=lambda: next(times))
    kind = "two_tank_electric_208"
    journal.append("job-3", Opened(machine="Küche 1", type=kind))
    journal.append("job-2", Opened(machine=kind, type=kind))
    journal.append("job-2", MachineDescribed("name", "KÜCHE 1"))
    journal.append("job-1", Opened(machine="küche 10", type=kind))
    journal.append("job-4", Opened(machine=kind, type=kind, site='said "Opened" in Küche 1'))
    journal.append("job-4", MachineDescribed("site", "Küche 1"))
    journal.append("job-4", NoteAdded('{"kind":"Opened","machine":"Küche 1","type":"x"}'))
    journal.append("job-3", NoteAdded("again"))
    assert [(e.job, e.events) for e in journal.of_machine(" KÜCHE 1")] == [("job-3", 2), ("job-2", 2)]
    assert journal.of_machine(kind) == ()  # a bare type is many machines
    assert journal.of_machine("") == ()
    assert Journal(tmp_path / "empty").of_machine("Küche 1") == ()


def test_what_is_no_json_hides_no_job(tmp_path: Path) -> None:
    journal = Journal(tmp_path / "j")
    database = sqlite3.connect(tmp_path / "j")
    for number, body in enumerate(('"Opened" but broken', '["Opened"]', '{"kind":"Opened"}', "\x00"), 1):
        row = ("job-9", number, "x", "2026-01-01T00:00:00+00:00", body)
        database.execute("insert into event (job, number, writer, at, body) values (?, ?, ?, ?, ?)", row)
    database.commit()
    database.close()
    journal.append("job-1", OPENED)
    assert [e.job for e in journal.of_machine("LINE 1")] == ["job-1"]
