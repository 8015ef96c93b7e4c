"""Instruments of one's own in the conversation: taken by themselves, chosen by a letter, kept with the reading."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import pytest

from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.instruments import OwnInstrument
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book, InstrumentKind
from diagnose.terminal.front import Paused
from diagnose.terminal.scripted import ScriptedFront
from tests.small_job import STORY, small_book

BEFORE = STORY[:9]  # up to the question for the volts
METER = OwnInstrument(name="red", kind="meter", accuracy="1 %", calibrated="2026-01")
LATE = OwnInstrument(name="old", kind="meter", accuracy="2 %", calibrated="2024-12")


@pytest.fixture
def book(tmp_path: Path) -> Book:
    small = small_book(tmp_path / "knowledge")
    basis = next(iter(small.checks.values())).basis
    kind = InstrumentKind(id="meter", title="voltmeter", quantity="voltage", share=0.03, basis=basis)
    return replace(small, instruments={"meter": kind})


def _talk(
    book: Book, folder: Path, answers: Sequence[str], own: Sequence[OwnInstrument] = (METER, LATE), width: int = 100
) -> tuple[Session, ScriptedFront]:
    """Go on with the one job in this folder, in what is as good as a new process each time."""
    journal = Journal(folder / "j.sqlite3", clock=lambda: "2026-03-02T08:00:00+00:00")
    session = Session(book, journal, "job-1")
    front = ScriptedFront(answers, width)
    with suppress(Paused):
        Conversation(Scene(session, folder / "machines", own=own), front).run()
    return session, front


def _taken(session: Session) -> ev.ReadingTaken:
    return next(r.event for r in session.records if isinstance(r.event, ev.ReadingTaken))


def test_without_any_of_ones_own_all_is_as_it_was(book: Book, tmp_path: Path) -> None:
    session, front = _talk(book, tmp_path, [*BEFORE, "20"], own=())
    assert "With: voltmeter\n" in front.text
    assert _taken(session) == ev.ReadingTaken("box.volts", {"": "20.0 V"})


def test_the_one_in_calibration_is_taken_and_named(book: Book, tmp_path: Path) -> None:
    session, front = _talk(book, tmp_path, [*BEFORE, "20"], own=(LATE, METER))
    assert "With: your voltmeter 'red', ± 1 % (m: another)" in front.text
    taken = _taken(session)
    assert (taken.instrument, taken.of_kind, taken.accuracy, taken.taken_as) == ("red", "voltmeter", "1 %", "")
    assert any("your voltmeter 'red', ± 1 %" in line for line in session.assessment.findings[0].working)


def test_another_is_chosen_and_its_overdue_calibration_is_said(book: Book, tmp_path: Path) -> None:
    session, front = _talk(book, tmp_path, [*BEFORE, "m 2", "20"])
    told = "your voltmeter 'old', ± 2 %, calibration overdue since 2026-01: taken as ± 4 %"
    assert f"With: {told} (m: another)" in " ".join(front.text.split())
    assert _taken(session).accuracy == "4 %"
    assert any(told in line for line in session.assessment.findings[0].working)


def test_the_letter_lists_what_could_be_used(book: Book, tmp_path: Path) -> None:
    session, front = _talk(book, tmp_path, [*BEFORE, "m", "3", "20"])
    assert "1  your voltmeter 'red', ± 1 %" in front.text
    assert "3  none of yours: voltmeter, ± 3 %" in front.text
    assert "With: voltmeter (m: one of yours)" in front.text
    assert _taken(session).instrument is None


def test_a_choice_outlives_the_process(book: Book, tmp_path: Path) -> None:
    _talk(book, tmp_path, [*BEFORE, "m 2"])
    session, front = _talk(book, tmp_path, ["20"])
    assert "With: your voltmeter 'old'" in front.text
    assert _taken(session).instrument == "old"


def test_a_reading_stands_when_the_instrument_is_forgotten(book: Book, tmp_path: Path) -> None:
    session, _ = _talk(book, tmp_path, [*BEFORE, "20"])
    before = session.assessment.findings[0].working
    again, _ = _talk(book, tmp_path, [], own=())
    assert again.assessment.findings[0].working == before
    chosen_then_gone, front = _talk(book, tmp_path / "other", [*BEFORE, "m 2"])
    assert chosen_then_gone.state.instruments == {"box.volts": "old"}
    _, front = _talk(book, tmp_path / "other", ["20"], own=(METER,))
    assert "With: voltmeter (m: one of yours)" in front.text


def test_enter_alone_leaves_it_and_nonsense_is_refused(book: Book, tmp_path: Path) -> None:
    session, front = _talk(book, tmp_path, [*BEFORE, "m", "", "m 9", "m x", "20"])
    assert _taken(session).instrument == "red"
    assert "from 1 to 3" in front.text
    assert not session.state.instruments


def test_where_there_is_nothing_to_choose(book: Book, tmp_path: Path) -> None:
    _, front = _talk(book, tmp_path, [*BEFORE, "20", "c where", "m"])
    assert "looked at, not measured" in front.text
    _, front = _talk(book, tmp_path / "none", [*BEFORE, "m"], own=())
    assert "diagnose instrument add" in front.text
    _, front = _talk(book, tmp_path / "first", ["m"])
    assert "does not apply" in front.text
