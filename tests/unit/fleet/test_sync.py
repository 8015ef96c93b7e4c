"""Events go from journal to journal by way of the store: each once, in order, word for word."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from diagnose.fleet.errors import Refused
from diagnose.fleet.exchange import Exchange
from diagnose.fleet.store import Store, connect
from diagnose.fleet.sync import greet, pull, push, sync
from diagnose.job import events as ev
from diagnose.job.folding import fold
from diagnose.job.journal import Journal
from diagnose.model import load_book
from tests.unit.fleet.conftest import Fleet

HOSTILE = (
    "bell \x07, escape \x1b[2J, delete \x7f, next line \x85",
    "turned \u202e round \u2066 and joined \u200d",
    "none \x00 at all",
    "\\u0000 in letters, \\ and \" and '; drop table event; -- %s {0}",
    "a wide \U0001f527 and a line\nand another\r\n\ttab",
    "x" * 100_000,
)


def words(journal: Journal, job: str) -> list[str]:
    return [r.event.text for r in journal.records(job) if isinstance(r.event, ev.NoteAdded)]


def bodies(journal: Journal, job: str) -> list[tuple[object, ...]]:
    rows = journal._db.execute("select writer, seq, seen, at, body from event where job = ? order by number", (job,))
    return rows.fetchall()


@pytest.fixture(scope="module")
def two(fleet: Fleet) -> tuple[str, str]:
    """The addresses of a technician and a desk."""
    return fleet.member("sync_ann"), fleet.member("sync_desk", "desk")


def test_two_journals_come_to_the_same(two: tuple[str, str], tmp_path: Path) -> None:
    here, there = Journal(tmp_path / "here", writer=None), Journal(tmp_path / "there", writer=None)
    here.append("job-1", ev.Opened(machine="two_tank_electric_208", type="two_tank_electric_208"))
    here.append("job-1", ev.SafetyAnswered())
    first = sync(here.path, two[0])
    assert (first.sent, first.received) == (2, 0)
    assert abs(first.ahead) < 5
    assert sync(there.path, two[1]).received == 2
    there.append("job-1", ev.Present("Desk", "desk"))
    here.append("job-1", ev.ComplaintSaid("rinse_cold"))
    there.append("job-1", ev.Hinted(text="listen to the pump"))
    for journal, address in ((here, two[0]), (there, two[1]), (here, two[0])):
        sync(journal.path, address)
    assert [r.key for r in here.records("job-1")] == [r.key for r in there.records("job-1")]
    book = load_book()
    one, other = fold(here.records("job-1"), book), fold(there.records("job-1"), book)
    assert one.hints == other.hints
    assert one.hints[0].given.text == "listen to the pump"
    assert one.present == other.present == ("rinse_cold",)
    again = sync(here.path, two[0])
    assert (again.sent, again.received) == (0, 0)


def test_hostile_words_come_through_byte_for_byte(two: tuple[str, str], tmp_path: Path) -> None:
    here, there = Journal(tmp_path / "here", writer=None), Journal(tmp_path / "there", writer=None)
    for text in HOSTILE:
        here.append("job-2", ev.NoteAdded(text))
    sync(here.path, two[0])
    sync(there.path, two[1])
    assert bodies(there, "job-2") == bodies(here, "job-2")
    assert [json.loads(str(row[-1]))["text"] for row in bodies(there, "job-2")] == list(HOSTILE)
    assert not [text for text in words(there, "job-2") if not text.isprintable()]


def test_kinds_of_newer_programs_are_passed_on_as_they_are(two: tuple[str, str], tmp_path: Path) -> None:
    here, there = Journal(tmp_path / "here", writer=None), Journal(tmp_path / "there", writer=None)
    odd = '{"kind": "Sung",  "song": [3, null, {"deep": "\\ud83d\\ude00"}], "n": 1E5, "n": 0}'
    row = ("job-3", 1, here.writer, "2026-03-02T08:00:00+00:00", odd, 1)
    here._db.execute("insert into event (job, number, writer, at, body, seq) values (?, ?, ?, ?, ?, ?)", row)
    sync(here.path, two[0])
    sync(there.path, two[1])
    assert [r.event for r in there.records("job-3")] == [ev.Unknown("Sung")]
    assert bodies(there, "job-3")[0][-1] == odd


def test_a_body_too_deep_to_read_is_kept_and_said(two: tuple[str, str], fleet: Fleet, tmp_path: Path) -> None:
    deep = '{"kind": "NoteAdded", "text": ' + "[" * 3000 + "]" * 3000 + "}"
    insert = "insert into diagnose.event (job, writer, seq, seen, at, body) values ('job-10', 'deep', 1, '', %s, %s)"
    fleet.sql(insert, "2026-03-02T08:00:00Z", deep, login="sync_ann")
    there = Journal(tmp_path / "there", writer=None)
    sync(there.path, two[1])
    assert isinstance(there.records("job-10")[0].event, ev.Unknown)
    assert bodies(there, "job-10")[0][-1] == deep


def test_what_one_wrote_who_met_no_other_stays(two: tuple[str, str], tmp_path: Path) -> None:
    Journal(tmp_path / "j", "local").append("job-4", ev.NoteAdded("of old"))
    journal = Journal(tmp_path / "j", writer=None)
    journal.append("job-4", ev.NoteAdded("of now"))
    assert sync(journal.path, two[0]).sent == 1
    other = Journal(tmp_path / "other", writer=None)
    sync(other.path, two[1])
    assert words(other, "job-4") == ["of now"]


class Dying(Store):
    """A connection that breaks after the store has the letters, before it can say so."""

    def push(self, letters):  # type: ignore[no-untyped-def]
        super().push(letters)
        raise ConnectionAbortedError


def test_a_thousand_written_without_a_network_arrive_once(two: tuple[str, str], tmp_path: Path) -> None:
    here, there = Journal(tmp_path / "here", writer=None), Journal(tmp_path / "there", writer=None)
    here._db.execute("pragma synchronous=off")
    for nth in range(1000):
        here.append(f"job-5{nth % 3}", ev.NoteAdded(str(nth)))
    exchange, store = Exchange(here.path), connect(two[0])
    greet(exchange, store)
    with pytest.raises(ConnectionAbortedError):
        push(exchange, Dying(store.connection, store.host), 300)
    assert exchange.unsent() == 1000
    assert sync(here.path, two[0]).sent <= 1000
    assert exchange.unsent() == 0
    sync(there.path, two[1])
    for job in ("job-50", "job-51", "job-52"):
        assert words(there, job) == words(here, job)
    assert sum(len(words(there, f"job-5{n}")) for n in range(3)) == 1000
    exchange.close()
    store.close()


def test_a_lost_journal_put_back_from_an_older_copy_fetches_its_own(two: tuple[str, str], tmp_path: Path) -> None:
    here = Journal(tmp_path / "here", writer=None)
    here.append("job-6", ev.NoteAdded("one"))
    sync(here.path, two[0])
    here._db.execute("pragma wal_checkpoint(truncate)")
    (tmp_path / "old").write_bytes((tmp_path / "here").read_bytes())
    here.append("job-6", ev.NoteAdded("two"))
    sync(here.path, two[0])
    old = Journal(tmp_path / "old", writer=None)
    assert sync(old.path, two[0]).received == 1
    old.append("job-6", ev.NoteAdded("three"))
    assert sync(old.path, two[0]).sent == 1
    sync(here.path, two[0])
    assert words(here, "job-6") == ["one", "two", "three"]


def test_another_store_is_refused_until_told_so(two: tuple[str, str], fleet: Fleet, tmp_path: Path) -> None:
    here = Journal(tmp_path / "here", writer=None)
    here.append("job-7", ev.NoteAdded("one"))
    sync(here.path, two[0])
    elsewhere = fleet.member("sync_far", company="Another Invented Company")
    with pytest.raises(Refused, match="--new-store"):
        sync(here.path, elsewhere)
    told = sync(here.path, elsewhere, new_store=True)
    assert (told.sent, told.received) == (1, 0)


def test_a_store_put_back_to_an_earlier_state_is_noticed(two: tuple[str, str], fleet: Fleet, tmp_path: Path) -> None:
    here = Journal(tmp_path / "here", writer=None)
    for nth in range(3):
        here.append("job-8", ev.NoteAdded(str(nth)))
    sync(here.path, two[0])
    with fleet.connect() as owner:  # whoever keeps the store can, and has to go out of the way for it
        owner.execute("alter table diagnose.event disable trigger event_stays")
        owner.execute("delete from diagnose.event where job = 'job-8' and seq > 1")
        owner.execute("alter table diagnose.event enable trigger event_stays")
    with pytest.raises(Refused, match="earlier state"):
        sync(here.path, two[0])
    sync(here.path, two[0], new_store=True)
    other = Journal(tmp_path / "other", writer=None)
    sync(other.path, two[1])
    assert words(other, "job-8") == ["0", "1", "2"]


def test_a_hole_is_refused(two: tuple[str, str], tmp_path: Path) -> None:
    exchange, store = Exchange(tmp_path / "j"), connect(two[0])
    journal = Journal(tmp_path / "j", writer=None)
    for nth in range(3):
        journal.append("job-9", ev.NoteAdded(str(nth)))
    greet(exchange, store)
    with pytest.raises(Refused, match="is missing"):
        store.push(exchange.pending()[1:])
    assert push(exchange, store) == 3
    assert "job-9" not in {letter.job for letter in pull(exchange, store)}
    exchange.close()
    store.close()
