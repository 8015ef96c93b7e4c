"""A copied journal writes under the same name as the one it was copied from: refused, and mended without loss."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from diagnose.fleet.errors import Refused
from diagnose.fleet.exchange import Exchange
from diagnose.fleet.store import connect
from diagnose.fleet.sync import greet, sync
from diagnose.job import events as ev
from diagnose.job.events import Event
from diagnose.job.folding import standing
from diagnose.job.journal import Journal
from tests.unit.fleet.conftest import Fleet

JOB = "job-1"


@pytest.fixture(scope="module")
def ann(fleet: Fleet) -> str:
    return fleet.member("copies_ann")


def written(path: Path, *events: Event) -> Journal:
    journal = Journal(path, writer=None)
    for event in events:
        journal.append(JOB, event)
    return journal


def copied(journal: Journal, path: Path) -> Path:
    journal._db.execute("pragma wal_checkpoint(truncate)")
    shutil.copy(journal.path, path)
    return path


def notes(journal: Journal) -> list[str]:
    return [r.event.text for r in journal.records(JOB) if isinstance(r.event, ev.NoteAdded)]


@pytest.fixture
def both(ann: str, tmp_path: Path, fleet: Fleet) -> tuple[Journal, Journal]:
    """A journal whose last event the store has, and its copy, which has written events of its own."""
    fleet.sql(
        "alter table diagnose.event disable trigger user; delete from diagnose.event; "
        "alter table diagnose.event enable trigger user"
    )
    first = written(tmp_path / "first", ev.NoteAdded("before"), ev.NoteAdded("wrong"))
    sync(first.path, ann)
    path = copied(first, tmp_path / "second")
    first.append(JOB, ev.NoteAdded("by the first"))
    sync(first.path, ann)
    return first, written(path, ev.NoteAdded("by the copy"), ev.Withdrawn(2), ev.NoteAdded("amiss"), ev.Withdrawn(5))


def test_a_copy_is_refused_loudly_and_nothing_of_it_is_taken(both: tuple[Journal, Journal], ann: str) -> None:
    _, copy = both
    exchange, store = Exchange(copy.path), connect(ann)
    greet(exchange, store)
    with pytest.raises(Refused, match=r"event 3 of job-1 by .* with another content.*--new-writer"):
        store.push(exchange.pending())
    exchange.close()
    store.close()
    with pytest.raises(Refused, match="--new-writer"):
        sync(copy.path, ann)
    assert len(copy.records(JOB)) == 6


def test_a_name_of_its_own_mends_it(both: tuple[Journal, Journal], ann: str, tmp_path: Path) -> None:
    first, copy = both
    old = copy.writer
    again = Journal(copy.path, writer=None)  # open in another window
    passed = sync(copy.path, ann, new_writer=True)
    assert (passed.renamed, passed.sent, passed.received) == (4, 4, 1)
    assert copy.writer == again.writer != old
    sync(first.path, ann)
    third = Journal(tmp_path / "third", writer=None)
    sync(third.path, ann)
    for journal in (first, copy, third):
        assert notes(journal) == ["before", "wrong", "by the first", "by the copy", "amiss"]
        kept = [r.event.text for r in standing(journal.records(JOB)) if isinstance(r.event, ev.NoteAdded)]
        assert kept == ["before", "by the first", "by the copy"]
    taken_back = [r.event for r in third.records(JOB) if isinstance(r.event, ev.Withdrawn)]
    assert taken_back == [ev.Withdrawn(2, old), ev.Withdrawn(3, copy.writer)]
    assert [r.seen for r in third.records(JOB)][-4:] == [
        f"{old}:2",
        f"{copy.writer}:1",
        f"{copy.writer}:2",
        f"{copy.writer}:3",
    ]
    again.append(JOB, ev.NoteAdded("goes on"))
    assert sync(copy.path, ann).sent == 1


def test_what_was_set_aside_is_kept_and_the_journal_stays_closed(both: tuple[Journal, Journal], ann: str) -> None:
    _, copy = both
    before = [r.event for r in copy.records(JOB)][2:]
    sync(copy.path, ann, new_writer=True)
    aside = copy._db.execute("select writer, seq, body from aside order by seq").fetchall()
    assert [seq for _, seq, _ in aside] == [3, 4, 5, 6]
    assert len(before) == 4
    with pytest.raises(Exception, match="append-only"):
        copy._db.execute("delete from event")


def test_what_the_store_has_already_is_not_written_twice(ann: str, tmp_path: Path) -> None:
    """The store took it and the answer was lost: a new name, asked for in error, doubles nothing."""
    journal = Journal(tmp_path / "j", writer=None)
    for text in ("one", "two"):
        journal.append("job-9", ev.NoteAdded(text))
    exchange, store = Exchange(journal.path), connect(ann)
    greet(exchange, store)
    store.push(exchange.pending())
    exchange.close()
    store.close()
    assert sync(journal.path, ann, new_writer=True).renamed == 0
    other = Journal(tmp_path / "other", writer=None)
    sync(other.path, ann)
    assert [r.event for r in other.records("job-9")] == [ev.NoteAdded("one"), ev.NoteAdded("two")]


def test_a_copy_with_somebody_else_is_refused_loudly(ann: str, fleet: Fleet, tmp_path: Path) -> None:
    journal = written(tmp_path / "j", ev.NoteAdded("mine"))
    sync(journal.path, ann)
    bert = fleet.member("copies_bert")
    copy = written(copied(journal, tmp_path / "copy"), ev.NoteAdded("copied"))
    with pytest.raises(Refused, match=r"belongs to another login.*--new-writer"):
        sync(copy.path, bert)
    assert sync(copy.path, bert, new_writer=True).renamed == 1


def test_a_fall_in_the_midst_leaves_the_journal_as_it_was(both: tuple[Journal, Journal]) -> None:
    from diagnose.fleet.renewal import renew

    _, copy = both
    before, writer = copy.records(JOB), copy.writer
    exchange = Exchange(copy.path)

    def falls(database: object) -> int:
        renew(database)  # type: ignore[arg-type]
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        exchange.rewrite(falls)
    exchange.close()
    assert (copy.records(JOB), copy.writer) == (before, writer)
