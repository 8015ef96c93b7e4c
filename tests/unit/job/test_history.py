"""A machine's history: what its jobs add up to, what has changed, what drifts, and what can't be read."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path

import pytest

from diagnose.job import events as ev
from diagnose.job.changes import changes_of, differs
from diagnose.job.history import History, history_of, read_history
from diagnose.job.journal import Journal
from diagnose.model import Book, Reading
from diagnose.units import parse_quantity
from tests.small_job import small_book

OPENED = ev.Opened(machine="Bay 2", type="plain")
HANDED = ev.Closed("handed over")
HANDOVER = ev.Opened(machine="Bay 2", type="plain", purpose="handover")


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("knowledge"))


def psi(value: float, **instrument: str) -> ev.ReadingTaken:
    return ev.ReadingTaken("arm.pressure", {"": f"{value} psi"}, **instrument)


def job(day: str, *events: ev.Event) -> tuple[str, list[ev.Record]]:
    at = f"{day}T08:00:00+00:00"
    return f"job-{day}", [ev.Record(number=n, at=at, writer="w", event=e) for n, e in enumerate(events, 1)]


def past(book: Book, *jobs: tuple[str, Sequence[ev.Record]], name: str = "bay 2") -> History:
    return history_of(name, jobs, book)


def falling(*values: float, begin: int = 2020) -> list[tuple[str, list[ev.Record]]]:
    return [job(f"{begin + n}-03-02", OPENED, psi(value)) for n, value in enumerate(values)]


def test_a_job_tells_its_dates_complaints_repairs_and_end(book: Book) -> None:
    ended = (
        "x",
        [*job("2026-03-02", OPENED, ev.ComplaintSaid("no_rinse"), ev.Repaired("arm.cracked", "as expected"))[1]],
    )
    ended[1].append(ev.Record(number=4, at="2026-03-04T09:00:00+00:00", writer="w", event=ev.Closed("repaired")))
    (found,) = past(book, ended).jobs
    assert (found.begun, found.ended and found.ended.date()) == (date(2026, 3, 2), date(2026, 3, 4))
    assert (found.complaints, found.how, found.purpose) == (("no_rinse",), "repaired", "repair")
    assert [(m.cause, m.day) for m in found.mended] == [("arm.cracked", date(2026, 3, 2))]


def test_only_what_was_found_as_expected_counts_as_its_cause(book: Book) -> None:
    doubtful = [ev.Repaired("arm.cracked", "sound"), ev.Repaired("arm.choked", "can't tell")]
    (found,) = past(book, job("2026-03-02", OPENED, *doubtful)).jobs
    assert found.mended == ()


def test_a_reading_keeps_value_job_stage_and_instrument(book: Book) -> None:
    own = psi(21.0, instrument="red", of_kind="test gauge", accuracy="0.5 psi")
    first, last = (psi(12.0), own)
    history = past(book, job("2026-03-02", OPENED, first, psi(13), ev.Repaired("arm.cracked", "as expected"), last))
    one, two = history.over_time["arm.pressure"]
    assert (one.reading.value.exact, one.reading.stage, one.mended) == ("12.0 psi", 0, True)
    assert (two.reading.value.si, two.reading.stage, two.mended) == (pytest.approx(21 * 6894.757, rel=1e-6), 1, False)
    assert two.reading.accuracy is not None
    assert (two.reading.instrument, two.reading.accuracy.text) == ("red", "0.5 psi")
    assert one.reading.accuracy is None or not one.reading.accuracy.name


def test_the_baseline_is_the_newest_finished_handover_with_its_last_readings(book: Book) -> None:
    jobs = [
        job("2025-01-01", HANDOVER, psi(19), HANDED),
        job("2026-01-01", HANDOVER, psi(30), ev.Adjusted("regulator", "arm"), psi(21), HANDED),
        job("2026-02-01", HANDOVER, psi(25)),  # not finished
        job("2026-03-01", HANDOVER, psi(26), HANDED, ev.Withdrawn(3)),  # opened again
        job("2026-04-01", OPENED, psi(20), HANDED),  # no handover
    ]
    history = past(book, *jobs)
    assert history.baseline is not None
    assert history.baseline.job == "job-2026-01-01"
    assert str(history.baseline.last()["arm.pressure"].reading.value) == "21 psi"
    assert len(history.since_baseline) == 3
    assert past(book, *jobs[2:]).baseline is None


def test_withdrawn_answers_and_machines_do_not_count(book: Book) -> None:
    undone = job("2026-03-02", OPENED, psi(12), psi(20), ev.Withdrawn(3))
    other = job("2026-03-03", OPENED, ev.Withdrawn(1), ev.Opened(machine="Bay 3", type="plain"), psi(1))
    history = past(book, undone, other)
    assert [j.job for j in history.jobs] == ["job-2026-03-02"]
    assert [str(r.reading.value) for r in history.over_time["arm.pressure"]] == ["12 psi"]


def test_a_name_given_late_counts_and_a_bare_type_has_no_history(book: Book) -> None:
    bare = ev.Opened(machine="plain", type="plain")
    late = job("2026-03-02", bare, ev.PlateWanted(True), ev.MachineDescribed("name", "BAY 2"), psi(21))
    assert [j.job for j in past(book, late, job("2026-03-03", bare, psi(3))).jobs] == ["job-2026-03-02"]
    assert not past(book, job("2026-03-03", bare, psi(3)), name="plain")


def test_what_this_knowledge_cannot_read_is_told(book: Book) -> None:
    strange = [
        ev.ReadingTaken("old.check", {"": "3 V"}),
        ev.ComplaintSaid("old"),
        ev.Repaired("old.part", "as expected"),
    ]
    history = past(
        book,
        job("2026-03-01", ev.Opened(machine="Bay 2", type="gone")),
        job("2026-03-02", OPENED, *strange, psi(20)),
        ("job-x", [ev.Record(number=1, at="once", writer="w", event=OPENED)]),
    )
    told = "\n".join(history.unread)
    assert [j.job for j in history.jobs] == ["job-2026-03-02"]
    for part in ("machine type 'gone'", "old.check", "old: this", "old.part: this", "job-x: the time of event 1"):
        assert part in told
    assert len(history.unread) == 5


def test_a_broken_record_hides_its_own_job_only(book: Book, tmp_path: Path) -> None:
    journal = Journal(tmp_path / "j", clock=lambda: "2026-03-02T08:00:00+00:00")
    for name in ("job-1", "job-2", "job-3"):
        journal.append(name, OPENED)
    row = ("job-1", 2, "local", "t", '{"kind": "Dance"}')
    journal._db.execute("insert into event (job, number, writer, at, body) values (?, ?, ?, ?, ?)", row)
    history = read_history(journal, book, "BAY 2", but="job-3")
    assert [j.job for j in history.jobs] == ["job-2"]
    assert len(history.unread) == 1
    assert "event 2 of job-1 can't be read" in history.unread[0]


def test_a_cause_repaired_in_several_jobs_came_back(book: Book) -> None:
    mended = ev.Repaired("arm.cracked", "as expected")
    jobs = [job(f"2026-0{n}-02", OPENED, mended, *([mended] if n == 1 else [])) for n in (1, 2, 3)]
    other = job("2026-04-02", OPENED, ev.Repaired("arm.choked", "as expected"))
    (found,) = past(book, *jobs, other).repeated
    assert (found.cause, found.times, found.since) == ("arm.cracked", 3, date(2026, 1, 2))


def test_a_fall_beyond_chance_and_instruments_drifts(book: Book) -> None:
    (change,) = changes_of(past(book, *falling(21, 19, 17, 15, 12)), book)
    assert change.trend is not None
    psi_a_year = change.trend.slope / parse_quantity("1 psi", "pressure").si
    assert psi_a_year == pytest.approx(-2, abs=0.3)
    assert (str(change.was.reading.value), str(change.now.reading.value)) == ("21 psi", "12 psi")


@pytest.mark.parametrize(
    ("values", "changed"),
    [
        ((21, 20.5, 20, 19.5, 19), False),  # a likely trend, but less than two gauges of 2 psi may be off
        ((21, 14, 20, 13, 21), False),  # up and down
        ((21, 12, 19, 11, 12), True),  # otherwise than at first, but no likely trend
        ((21, 18, 15, 12), True),  # the rarest order of four is not rare enough
        ((21, 12), True),
        ((21, 17), False),  # 4 psi apart: each may be 2 psi off
        ((21,), False),
    ],
)
def test_noise_is_no_drift(book: Book, values: tuple[float, ...], changed: bool) -> None:
    found = changes_of(past(book, *falling(*values)), book)
    assert [c.trend for c in found] == ([None] if changed else [])


def test_a_finer_instrument_sees_a_smaller_change(book: Book) -> None:
    fine = [
        job(f"{year}-01-01", OPENED, psi(value, instrument="red", of_kind="test gauge", accuracy="0.5 psi"))
        for year, value in ((2020, 21.0), (2021, 19.8))
    ]
    assert len(changes_of(past(book, *fine), book)) == 1


def test_a_fault_mended_in_its_job_is_no_change_and_one_left_is(book: Book) -> None:
    """Repairing the arm bears on its pressure; the fuse does not."""
    start = job("2026-01-01", HANDOVER, psi(21), HANDED)
    mended = job("2026-02-01", OPENED, psi(8), ev.Repaired("arm.cracked", "as expected"))
    left = job("2026-03-01", OPENED, psi(8), ev.Repaired("box.fuse", "as expected"))
    assert changes_of(past(book, start, mended), book) == ()
    assert len(changes_of(past(book, start, left), book)) == 1


def test_a_drift_begins_anew_with_the_handover(book: Book) -> None:
    old = falling(40, 35, 30, 25, begin=2010)
    assert changes_of(past(book, *old, job("2019-01-01", HANDOVER, psi(21), HANDED), *falling(20, 21)), book) == ()


def test_compared_with_the_baseline_else_the_newest_that_stands(book: Book) -> None:
    start = job("2026-01-01", HANDOVER, psi(21), HANDED)
    stands = job("2026-02-01", OPENED, psi(18))
    mended = job("2026-03-01", OPENED, psi(8), ev.Repaired("arm.cracked", "as expected"))

    def against(*jobs: tuple[str, Sequence[ev.Record]]) -> str:
        found = past(book, *jobs).compared("arm.pressure")
        return f"{found.reading.value}{' before' if found.mended else ''}" if found else ""

    assert against(start, stands, mended) == "21 psi"
    assert against(stands, mended) == "18 psi"
    assert against(mended) == "8 psi before"
    assert against() == ""


def test_another_outcome_differs(book: Book) -> None:
    check = book.checks["box.where"]
    ends, nowhere = (Reading("1", "box.where", outcome=o) for o in ("ends", "nowhere"))
    assert differs(check, ends, nowhere)
    assert not differs(check, ends, ends)
