"""The fold: what a job's events add up to."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.job import events as ev
from diagnose.job.folding import fold
from diagnose.job.state import JobState
from diagnose.model import Book, load_book
from diagnose.units import UnitError
from tests.small_knowledge import write_small


@pytest.fixture
def book(tmp_path: Path) -> Book:
    return load_book(write_small(tmp_path))


OPENED = ev.Opened(machine="line 1", type="plain", own={"rinse_pressure": "22.0 psi"}, site="Quay Street (invented)")
LOW = ev.ReadingTaken("arm.pressure", {"": "12.0 psi"})


def state_of(book: Book, *events: ev.Event) -> JobState:
    return fold([ev.Record(number=n, at="t", writer="w", event=e) for n, e in enumerate(events, 1)], book)


def test_the_machine_keeps_what_its_plate_says(book: Book) -> None:
    machine = state_of(book, OPENED).machine
    assert machine is not None
    assert str(machine.plate("rinse_pressure")) == "22 psi"
    assert not machine.assumed("rinse_pressure")
    assert machine.assumed("volts")


def test_readings_keep_their_exact_value(book: Book) -> None:
    state = state_of(book, OPENED, ev.ReadingTaken("arm.pressure", {"": "14.96 psi"}))
    assert state.readings[0].value.value == 14.96


def test_a_repair_begins_a_new_stage(book: Book) -> None:
    state = state_of(
        book,
        OPENED,
        ev.ComplaintSaid("no_rinse"),
        LOW,
        ev.Skipped("arm.look_choked", "can't reach"),
        ev.Repaired("arm.cracked", "as expected"),
        ev.ReadingTaken("arm.pressure", {"": "20.0 psi"}),
        ev.ComplaintSaid("no_rinse", present=False),
    )
    assert state.stage == 1
    assert [r.stage for r in state.readings] == [0, 1]
    assert list(state.readings_now()) == ["arm.pressure"]
    assert state.complaints == (("no_rinse", 0, True), ("no_rinse", 1, False))
    assert state.present == ()
    assert state.skipped == {}
    assert state.turned == ev.TurnedTo("prove", "arm.cracked")


def test_withdrawn_is_as_if_it_had_never_been(book: Book) -> None:
    plain = state_of(book, OPENED, ev.ComplaintSaid("no_rinse"))
    undone = state_of(book, OPENED, ev.ComplaintSaid("no_rinse"), LOW, ev.Withdrawn(3))
    assert undone == plain


def test_a_withdrawn_withdrawal_brings_the_answer_back(book: Book) -> None:
    state = state_of(book, OPENED, LOW, ev.Withdrawn(2), ev.Withdrawn(3))
    assert len(state.readings) == 1


def test_answers_name_what_can_be_taken_back(book: Book) -> None:
    state = state_of(book, OPENED, ev.SafetyAnswered(), ev.ComplaintSaid("no_rinse"), ev.NoteAdded("x"), LOW)
    assert state.answers == (1, 2, 3, 5)


def test_what_was_turned_to_ends_with_its_answer(book: Book) -> None:
    turned = ev.TurnedTo("check", "arm.look_choked")
    assert state_of(book, OPENED, turned).turned == turned
    assert state_of(book, OPENED, turned, LOW).turned == turned
    assert state_of(book, OPENED, turned, ev.Skipped("arm.look_choked", "don't know")).turned.what == "advice"


def test_said_twice_at_one_stage_the_last_word_counts(book: Book) -> None:
    said = (ev.ComplaintSaid("no_rinse"), ev.ComplaintSaid("no_rinse", present=False), ev.ComplaintSaid("no_rinse"))
    assert state_of(book, OPENED, *said).complaints == (("no_rinse", 0, True),)


def test_a_skipped_check_that_is_answered_later_is_no_longer_skipped(book: Book) -> None:
    assert state_of(book, OPENED, ev.Skipped("arm.pressure", "not now"), LOW).skipped == {}


def test_readings_of_another_knowledge_are_kept_in_words(book: Book) -> None:
    state = state_of(
        book,
        OPENED,
        ev.ReadingTaken("gone.check", {"": "1.0 A"}),
        ev.ReadingTaken("arm.look_choked", {}, "purple"),
        ev.ReadingTaken("arm.pressure", {"L1": "1.0 psi"}),
    )
    assert state.readings == ()
    assert len(state.unread) == 3


def test_a_machine_of_another_knowledge_is_a_sentence(book: Book) -> None:
    with pytest.raises(UnitError, match="'gone' is not in this knowledge"):
        state_of(book, ev.Opened(machine="x", type="gone"))
