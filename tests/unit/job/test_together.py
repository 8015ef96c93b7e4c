"""Several people on one job: everybody's facts stay, and the one at the machine counts."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.job import events as ev
from diagnose.job.assess import assess
from diagnose.job.folding import fold
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.job.state import JobState, Presence
from diagnose.model import Book, load_book

OPENED = ev.Opened(machine="two_tank_electric_208", type="two_tank_electric_208")


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def told(book: Book, *events: tuple[str, ev.Event]) -> JobState:
    """The state after events, each by its writer."""
    counts: dict[str, int] = {}
    records = []
    for number, (writer, event) in enumerate(events, 1):
        counts[writer] = counts.get(writer, 0) + 1
        at = "2026-03-02T08:00:00+00:00"
        records.append(ev.Record(number=number, at=at, writer=writer, event=event, seq=counts[writer]))
    return fold(records, book)


def gauge(book: Book) -> str:
    return next(c.id for c in book.checks.values() if c.aloud and c.reading and c.reading.quantity == "pressure")


@pytest.mark.parametrize("machine_first", [True, False])
def test_the_reading_at_the_machine_counts_and_both_are_shown(book: Book, machine_first: bool) -> None:
    check = gauge(book)
    there = ("tech", ev.ReadingTaken(check, {"": "20 psi"}))
    by_phone = ("desk", ev.ReadingTaken(check, {"": "12 psi"}))
    both = [there, by_phone] if machine_first else [by_phone, there]
    state = told(book, ("tech", OPENED), ("desk", ev.Present("Desk", "desk")), *both)
    assert str(state.readings_now()[check].values[""]) == "20 psi"
    assert [(b.told.event, b.counts.event) for b in state.beside] == [(by_phone[1], there[1])]


def test_what_two_say_alike_is_no_contradiction(book: Book) -> None:
    said = ev.ComplaintSaid("rinse_cold")
    state = told(book, ("tech", OPENED), ("desk", ev.Present("Desk", "desk")), ("desk", said), ("tech", said))
    assert state.beside == ()


def test_a_second_technician_goes_on_and_looks_for_danger_anew(book: Book) -> None:
    events = [
        ("one", OPENED),
        ("one", ev.SafetyAnswered()),
        ("one", ev.ComplaintSaid("rinse_cold")),
        ("one", ev.Skipped("a.b", "can't reach")),
        ("one", ev.HandedOn("technician", "the other shift")),
    ]
    waiting = told(book, *events)
    assert waiting.waits is not None
    state = told(book, *events, ("two", ev.Present("B", "machine", ("operator", "technician"))))
    assert state.waits is None
    assert not state.safety_asked
    assert state.skipped == {}
    assert state.present == ("rinse_cold",)
    assert state.presence("two") == Presence("B", "machine")


def test_a_hint_answers_nothing_and_a_taken_one_leads_there(book: Book) -> None:
    hint = ("desk", ev.Hinted(gauge(book), "look at the gauge first"))
    before = told(book, ("tech", OPENED), hint)
    assert before.open_hint is not None
    assert len(before.answers) == 1
    taken = told(book, ("tech", OPENED), hint, ("tech", ev.HintAnswered(1, "desk", True)))
    assert taken.open_hint is None
    assert (taken.turned.what, taken.turned.id) == ("check", gauge(book))
    left = told(book, ("tech", OPENED), hint, ("tech", ev.HintAnswered(1, "desk", False)))
    assert left.turned.what == "advice"


def test_a_call_limits_what_is_asked_and_a_visit_lifts_that(book: Book) -> None:
    call = ("desk", ev.CallBegun("kitchen", "Chef"))
    opened = ("desk", ev.Opened(machine="m", type="two_tank_electric_208", allowed=("operator",)))
    on = told(book, call, ("desk", ev.SafetyAnswered()), opened)
    assert on.allowed == {"operator"}
    assert on.call == call[1]
    end = ("desk", ev.CallEnded("visit", "rinse stays cold"))
    come = ("tech", ev.Present("A", "machine", ("operator", "technician")))
    there = told(book, call, ("desk", ev.SafetyAnswered()), opened, end, come)
    assert there.allowed == {"operator", "technician"}
    assert (there.call, there.waits, there.safety_asked) == (None, None, False)


def test_an_event_is_taken_back_by_its_writer_and_number_there(book: Book) -> None:
    state = told(
        book,
        ("desk", ev.Present("Desk", "desk")),
        ("tech", OPENED),
        ("tech", ev.ComplaintSaid("rinse_cold")),
        ("tech", ev.ComplaintSaid("racks_jam")),
        ("two", ev.Withdrawn(2, "tech")),
    )
    assert [c for c, _, _ in state.complaints] == ["racks_jam"]


def test_unknown_kinds_are_kept_and_said(book: Book, tmp_path: Path) -> None:
    journal = Journal(tmp_path / "j")
    journal.append("job-1", OPENED)
    row = ("job-1", 2, "newer", "2026-03-02T08:00:00+00:00", '{"kind": "Sung", "song": 3}', 1)
    journal._db.execute("insert into event (job, number, writer, at, body, seq) values (?, ?, ?, ?, ?, ?)", row)
    state = fold(journal.records("job-1"), book)
    assert state.unread == ("event 2: this program knows no Sung",)
    (body,) = journal._db.execute("select body from event where number = 2").fetchone()
    assert body == row[4]


def test_a_session_takes_in_what_another_wrote(book: Book, tmp_path: Path) -> None:
    mine, other = Journal(tmp_path / "j", "tech"), Journal(tmp_path / "j", "desk")
    session = Session(book, mine, "job-1")
    session.do(OPENED)
    assert session.refresh() == ()
    other.append("job-1", ev.Hinted(text="listen to the pump"))
    assert [r.event for r in session.refresh()] == [ev.Hinted(text="listen to the pump")]
    assert session.state.open_hint is not None
    assert session.refresh() == ()
    assert [r.seen for r in mine.records("job-1")] == ["", "tech:1"]
    assert [r.key for r in mine.records("job-1")] == [("tech", 1), ("desk", 1)]


def test_what_the_store_does_not_know_yet_stands_last(tmp_path: Path) -> None:
    journal, other = Journal(tmp_path / "j", "tech"), Journal(tmp_path / "j", "desk")
    for text in ("one", "two"):
        journal.append("job-1", ev.NoteAdded(text))
    other.append("job-1", ev.NoteAdded("from the desk"))
    journal._db.execute("insert into sent values ('job-1', 1, 5), ('job-1', 3, 6)")
    assert [r.event.text for r in journal.records("job-1") if isinstance(r.event, ev.NoteAdded)] == [
        "one",
        "from the desk",
        "two",
    ]


def test_a_journal_writes_under_a_name_of_its_own_and_jobs_are_found_by_their_number(tmp_path: Path) -> None:
    one, again, other = (Journal(tmp_path / name, writer=None) for name in ("a", "a", "b"))
    assert one.writer == again.writer != other.writer
    name = one.new_name()
    assert name.endswith(f"-{one.tag}")
    one.append(name, ev.NoteAdded("x"))
    assert one.find(name) == name
    assert one.find(name.split("-")[1]) == name
    assert one.find("") is None
    assert one.find("no such") is None


def test_a_journal_of_old_is_read_as_it_was(tmp_path: Path) -> None:
    import sqlite3

    database = sqlite3.connect(tmp_path / "j")
    database.execute(
        "create table event (job text not null, number integer not null, writer text not null, at text not null, "
        "body text not null, primary key (job, number))"
    )
    for number in (1, 2):
        row = ("job-1", number, "local", "2026-03-02T08:00:00+00:00", '{"kind":"NoteAdded","text":"old"}')
        database.execute("insert into event values (?, ?, ?, ?, ?)", row)
    database.commit()
    database.close()
    journal = Journal(tmp_path / "j")
    journal.append("job-1", ev.NoteAdded("new"))
    assert [r.key for r in journal.records("job-1")] == [("local", 1), ("local", 2), ("local", 3)]


def test_a_repair_of_a_cause_that_is_not_known_here_is_said_and_counts_as_one_not_listed(book: Book) -> None:
    story = [("one", OPENED), ("one", ev.SafetyAnswered()), ("one", ev.ComplaintSaid("rinse_cold"))]
    state = told(book, *story, ("one", ev.Repaired("shop.own_part", "as expected")))
    assert state.unread == ("shop.own_part: this knowledge has no such cause",)
    rows = assess(book, state).rows
    before = {row.id: row.probability for row in assess(book, told(book, *story)).rows}
    assert state.stage == 1
    assert sum(row.probability for row in rows) > 0
    assert {row.id for row in rows} == set(before)
