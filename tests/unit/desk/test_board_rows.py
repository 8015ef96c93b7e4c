"""The rows of the board: what is open, whom it waits for, what leads and is kept, which are shown in which order."""

from __future__ import annotations

import sqlite3
from datetime import timedelta
from pathlib import Path

import pytest

from diagnose.desk import board_leading
from diagnose.desk.board_filters import SORTS, Wanted, age_minutes, chosen, with_words
from diagnose.desk.board_leading import Lead, Leading
from diagnose.desk.open_jobs import WAITS, OpenJob, OpenJobs
from diagnose.job import events as ev
from diagnose.job.assess import SOMETHING_ELSE
from diagnose.job.journal import Journal
from diagnose.model import Book, load_book
from tests.desk_jobs import NOW, fill, opened, write
from tests.small_job import small_book


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("small"))


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return fill(tmp_path / "journal.sqlite3")


def rows_of(path: Path, book: Book) -> dict[str, OpenJob]:
    return {row.job: row for row in OpenJobs(Journal(path, "desk-1"), book).rows()}


def test_open_jobs_are_rows_and_closed_ones_are_none(path: Path, book: Book) -> None:
    rows = rows_of(path, book)
    assert list(rows) == [
        "job-1001",
        "job-1009",
        "job-1008",
        "job-1006",
        "job-1005",
        "job-1004",
        "job-1003",
        "job-1002",
    ]
    first = rows["job-1001"]
    assert (first.site, first.machine, first.complaints) == (
        "Quay Street, invented",
        "Pier",
        (("steam_out", "Steam comes out"),),
    )
    assert first.begun == NOW - timedelta(hours=30)
    assert first.touched == NOW - timedelta(hours=30) + timedelta(minutes=8)


def test_whom_each_waits_for(path: Path, book: Book) -> None:
    told = {job: (row.waiting.on, row.waiting.why, row.waiting.told) for job, row in rows_of(path, book).items()}
    assert told == {
        "job-1001": ("technician", "at work", "technician at work"),
        "job-1002": ("technician", "at work", "technician at work: Ann"),
        "job-1003": ("parts", "handed on", "parts: fuse on order"),
        "job-1004": ("desk", "call", "on the telephone: Maria"),
        "job-1005": ("technician", "hint", "technician: a hint waits"),
        "job-1006": ("technician", "danger", "stopped for danger: Smell of gas?"),
        "job-1008": ("technician", "at work", "technician at work"),
        "job-1009": ("desk", "unread", "can't be read"),
    }


def test_a_job_that_cant_be_read_is_a_row_that_says_so(path: Path, book: Book) -> None:
    database = sqlite3.connect(path)
    insert = "insert into event (job, number, writer, at, body) values (?, 1, 'w', ?, ?)"
    database.execute(insert, ("job-2001", "no time", "no json"))
    database.execute(insert, ("job-2002", NOW.isoformat(), '{"kind":"Closed","how":"sung"}'))
    database.execute(insert, ("job-2003", NOW.isoformat(), b"\xff\xfe"))
    database.commit()
    database.close()
    rows = rows_of(path, book)
    assert "no such type" in rows["job-1009"].trouble
    assert "can't be read" in rows["job-2001"].trouble
    assert rows["job-2001"].touched is None
    assert rows["job-2003"].trouble
    assert rows["job-1002"].trouble == ""


@pytest.mark.parametrize("back", [ev.Withdrawn(3), ev.Withdrawn(3, "tech-1")])
def test_a_closing_taken_back_by_anybody_opens_the_job_again(tmp_path: Path, book: Book, back: ev.Withdrawn) -> None:
    path, writer = tmp_path / "j", "desk-9" if back.of else "tech-1"
    write(path, "job-1", (opened(), ev.SafetyAnswered(), ev.Closed("given up")), 5)
    assert rows_of(path, book) == {}
    write(path, "job-1", (back,), 4, writer)
    assert list(rows_of(path, book)) == ["job-1"]
    write(path, "job-1", (ev.Withdrawn(1 if back.of else 4),), 3, writer)
    assert rows_of(path, book) == {}


def test_only_what_changed_is_folded_again(path: Path, book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    journal = Journal(path, "desk-1")
    jobs = OpenJobs(journal, book)
    before = {row.job: row for row in jobs.rows()}
    write(path, "job-1002", (ev.NoteAdded("seen"),))
    after = {row.job: row for row in jobs.rows()}
    assert [job for job in after if after[job] is not before[job]] == ["job-1002"]
    assert after["job-1002"].touched == NOW


def test_the_same_events_in_another_order_are_folded_again(path: Path, book: Book) -> None:
    journal = Journal(path, "desk-1")
    before = {row.job: row.key for row in OpenJobs(journal, book).rows()}
    database = sqlite3.connect(path)
    database.execute("insert into sent (job, number, position) values ('job-1001', 9, 1)")  # now before all others
    database.commit()
    database.close()
    after = {row.job: row.key for row in OpenJobs(journal, book).rows()}
    assert [job for job in after if after[job] != before[job]] == ["job-1001"]


def test_what_leads_is_what_the_ranking_says(path: Path, book: Book) -> None:
    rows, leading = rows_of(path, book), Leading(book)
    lead = leading.of(rows["job-1001"])
    assert (lead.kind, lead.id) == ("cause", "box.fuse")
    assert lead.probability > 0.9
    assert lead.told == f"{lead.probability * 100:.0f} % The fuse is blown" or lead.told.startswith(">99 %")
    assert leading.of(rows["job-1006"]).kind == "none"
    assert leading.of(rows["job-1009"]).kind == "none"


def test_something_not_listed_is_said_where_it_leads(tmp_path: Path, book: Book) -> None:
    away = (ev.RuledOut("box.fuse"), ev.RuledOut("box.normal"))
    write(tmp_path / "j", "job-1", (opened(), ev.SafetyAnswered(), ev.ComplaintSaid("steam_out"), *away))
    lead = Leading(book).of(rows_of(tmp_path / "j", book)["job-1"])
    assert (lead.kind, lead.title) == ("unlisted", SOMETHING_ELSE)


def test_how_far_a_handover_is_stands_in_the_place_of_what_leads(tmp_path: Path) -> None:
    whole, kind = load_book(), "two_tank_electric_208"
    begun = ev.Opened(machine="east", type=kind, site="Pier Canteen, invented", purpose="handover")
    write(tmp_path / "j", "job-1", (begun, ev.SafetyAnswered()))
    row = rows_of(tmp_path / "j", whole)["job-1"]
    lead = Leading(whole).of(row)
    assert (row.purpose, lead.kind) == ("handover", "sheet")
    assert " to do" in lead.told


class TestKept:
    def test_what_leads_is_worked_out_once(
        self, path: Path, book: Book, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        first = {job: Leading(book, tmp_path / "c").of(row) for job, row in rows_of(path, book).items()}

        def never(*_: object) -> Lead:
            raise AssertionError("worked out again")

        monkeypatch.setattr(board_leading, "_worked_out", never)
        leading = Leading(book, tmp_path / "c")
        assert leading.missing(rows_of(path, book).values()) == []
        assert {job: leading.of(row) for job, row in rows_of(path, book).items()} == first

    def test_a_new_event_or_another_knowledge_is_worked_out_anew(self, path: Path, book: Book, tmp_path: Path) -> None:
        row = rows_of(path, book)["job-1001"]
        Leading(book, tmp_path / "c").of(row)
        assert Leading(load_book(), tmp_path / "c").known(row) is None
        write(path, "job-1001", (ev.RuledOut("box.fuse"),))
        changed = rows_of(path, book)["job-1001"]
        leading = Leading(book, tmp_path / "c")
        assert leading.known(changed) is None
        assert leading.of(changed).id != "box.fuse"

    @pytest.mark.parametrize("damage", [b"", b"{", b'{"key":1}', b"\xff" * 50, b'{"key":"x","lead":{"kind":"cause"}}'])
    def test_a_damaged_file_is_made_again(self, path: Path, book: Book, tmp_path: Path, damage: bytes) -> None:
        row = rows_of(path, book)["job-1001"]
        lead = Leading(book, tmp_path / "c").of(row)
        (file,) = (tmp_path / "c").iterdir()
        whole = file.read_bytes()
        file.write_bytes(damage)
        assert Leading(book, tmp_path / "c").of(row) == lead
        assert file.read_bytes() == whole

    def test_a_folder_that_cant_be_written_does_no_harm(self, path: Path, book: Book, tmp_path: Path) -> None:
        (tmp_path / "c").write_text("a file, not a folder")
        assert Leading(book, tmp_path / "c").of(rows_of(path, book)["job-1001"]).id == "box.fuse"

    def test_the_oldest_go(self, path: Path, book: Book, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(board_leading, "KEPT", 3)
        leading = Leading(book, tmp_path / "c")
        for row in rows_of(path, book).values():
            leading.of(row)
        assert len(list((tmp_path / "c").iterdir())) == 3


@pytest.mark.parametrize(
    ("wanted", "found"),
    [
        (Wanted(site="mill"), ["1002"]),
        (Wanted(complaint="steam_out"), ["1001", "1008", "1005", "1004", "1003", "1002"]),
        (Wanted(complaint="rinse_cold"), []),
        (Wanted(waiting="parts"), ["1003"]),
        (Wanted(waiting="call"), ["1004"]),
        (Wanted(waiting="hint"), ["1005"]),
        (Wanted(waiting="danger"), ["1006"]),
        (Wanted(waiting="desk"), ["1009", "1004"]),
        (Wanted(older=7.5 * 60), ["1001", "1009", "1008"]),
        (Wanted(site="quay", waiting="technician", older=60.0), ["1001", "1008", "1006", "1005"]),
    ],
)
def test_filters(path: Path, book: Book, wanted: Wanted, found: list[str]) -> None:
    rows = rows_of(path, book).values()
    assert [row.job[4:] for row in chosen(rows, wanted, "touched", NOW)] == found


@pytest.mark.parametrize(
    ("sort", "first", "last"),
    [("touched", "1001", "1002"), ("age", "1001", "1002"), ("site", "1002", "1009"), ("waiting", "1009", "1008")],
)
def test_orders(path: Path, book: Book, sort: str, first: str, last: str) -> None:
    jobs = [row.job[4:] for row in chosen(rows_of(path, book).values(), Wanted(), sort, NOW)]
    assert (jobs[0], len(jobs)) == (first, 8)
    assert sort in SORTS
    if sort != "waiting":
        assert jobs[-1] == last


def test_words_are_looked_for_wherever_they_stand(path: Path, book: Book) -> None:
    rows, leading = list(rows_of(path, book).values()), Leading(book)
    assert [row.job for row in with_words(rows, "MARIA steam", leading.of)] == ["job-1004"]
    assert [row.job for row in with_words(rows, "on order", leading.of)] == ["job-1003"]
    assert {row.job for row in with_words(rows, "fuse blown", leading.of)} >= {"job-1001"}
    assert with_words(rows, "nowhere", leading.of) == []
    assert with_words(rows, "", leading.of) == rows


def test_lengths_of_time() -> None:
    assert [age_minutes(t) for t in ("45m", "2h", "1.5d", "2 weeks")] == [45.0, 120.0, 2160.0, 20160.0]
    assert [age_minutes(t) for t in ("", "h", "-2h", "2 fortnights", "999999h", "2h3")] == [None] * 6


def test_every_kind_of_waiting_can_be_asked_for() -> None:
    from diagnose.cli.desk_board import board

    choices = next(p.type.choices for p in board.params if p.name == "waiting")  # type: ignore[attr-defined]
    assert tuple(choices) == WAITS
    sorts = next(p.type.choices for p in board.params if p.name == "sort")  # type: ignore[attr-defined]
    assert tuple(sorts) == SORTS
