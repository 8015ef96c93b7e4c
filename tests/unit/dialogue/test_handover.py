"""A handover in the dialogue: lines in turn, what fails is set, looked into or left, and what bars the end."""

from __future__ import annotations

import contextlib
from collections.abc import Sequence
from pathlib import Path

import pytest

from diagnose.dialogue import requests as rq
from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.flow import next_request
from diagnose.dialogue.scene import Scene
from diagnose.handover.sheet import failing
from diagnose.job import events as ev
from diagnose.job.machines import list_machines
from diagnose.job.session import Session
from diagnose.model import Book, load_book
from diagnose.terminal.front import Paused
from diagnose.terminal.scripted import ScriptedFront
from diagnose.units import parse_quantity
from tests.sheets import opened, read
from tests.small_job import MemoryJournal

TWO = "two_tank_electric_208"
PRESSURE = "rinse_gauge.flow_pressure"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def begun(book: Book, *events: ev.Event) -> Session:
    """A handover past its first questions, with earth and insulation proved, so that power may be on."""
    session = Session(book, MemoryJournal(), "job-1")
    first = (
        opened(TWO),
        ev.PlateWanted(False),
        ev.MachineDescribed("name", "quay"),
        ev.MachineDescribed("serial"),
        ev.MachineDescribed("site", "invented"),
        ev.SafetyAnswered(),
        read(book, "electrical.earth_path", "0.02"),
        read(book, "breaker_earth_leakage.feed_insulation", "20"),
    )
    for event in (*first, *events):
        session.do(event)
    return session


def talk(session: Session, answers: Sequence[str], tmp_path: Path) -> ScriptedFront:
    front = ScriptedFront(answers, 80)
    with contextlib.suppress(Paused):
        Conversation(Scene(session, tmp_path / "machines", purpose="handover"), front).run()
    return front


def turns(session: Session) -> list[float]:
    """What the regulator's screw was turned to, from where it stood at first."""
    told = [event.settings["turns"] for _, event in session.state.adjusted]
    return [parse_quantity(text, "count").value for text in told]


def asked(session: Session, tmp_path: Path) -> rq.Request:
    scene = Scene(session, tmp_path / "machines")
    return next_request(session.book, session.state, scene.options)


def test_it_begins_with_machine_and_dangers_and_then_the_first_line(book: Book, tmp_path: Path) -> None:
    session = Session(book, MemoryJournal(), "job-1")
    front = talk(session, [TWO, "1", "quay", "", "Quay Street, invented", "0"], tmp_path)
    assert [m.name for m in list_machines(tmp_path / "machines")] == ["quay"]
    assert session.state.purpose == "handover"
    assert "Line 1 of 119, Before power" in front.text
    assert "complain" not in front.text


def test_what_fails_is_set_and_read_again(book: Book, tmp_path: Path) -> None:
    session = begun(book, read(book, PRESSURE, "12"))
    front = talk(session, ["1", "CLEAR", "1"], tmp_path)
    assert "Worked out: Turn the screw in by 1 turn" in front.text
    assert turns(session) == [1.0]
    request = asked(session, tmp_path)
    assert isinstance(request, rq.AskCheck)
    assert request.check == PRESSURE
    front = talk(session, ["20", "p"], tmp_path)
    assert "pass: Rinse pressure while flowing: 20 psi" in front.text


def test_turns_told_by_hand_count_on(book: Book, tmp_path: Path) -> None:
    session = begun(book, read(book, PRESSURE, "12"))
    talk(session, ["1", "CLEAR", "1 0.5", "13.5", "1", "CLEAR", "1 0.25"], tmp_path)
    assert turns(session) == [0.5, 0.75]


def test_what_cannot_be_set_becomes_a_diagnosis_with_what_was_read(book: Book, tmp_path: Path) -> None:
    session = begun(book, read(book, PRESSURE, "12"))
    front = talk(session, ["3"], tmp_path)
    assert session.state.present == ("rinse_pressure_low",)
    assert session.state.context["since"] == "since it was connected"
    assert "Ranking" in front.text
    assert [f.check for f in session.assessment.findings if f.check == PRESSURE]
    front = talk(session, ["e", "1"], tmp_path)
    assert not failing(Scene(session, tmp_path).sheet)
    left = session.state.left["final_rinse.pressure"][1]
    assert (left.why, "not found" in left.text) == ("remark", True)


def test_after_the_repair_the_line_is_read_again(book: Book, tmp_path: Path) -> None:
    events = (
        read(book, PRESSURE, "12"),
        ev.ComplaintSaid("rinse_pressure_low"),
        ev.Repaired("pressure_regulator.set_low", "as expected"),
        ev.ComplaintSaid("rinse_pressure_low", present=False),
    )
    session = begun(book, *events)
    scene = Scene(session, tmp_path)
    assert scene.on_sheet
    assert scene.sheet.by_id["final_rinse.pressure"].verdict == "again"


def test_a_line_is_left_with_a_reason_and_a_remark_needs_words(book: Book, tmp_path: Path) -> None:
    session = begun(book)
    front = talk(session, ["s", "5", "2 plumber on Friday"], tmp_path)
    assert "A remark needs words" in front.text
    assert session.state.left["before_power.level"][1] == ev.LineLeft(
        "before_power.level", "waits for another trade", "plumber on Friday"
    )


def test_a_word_is_typed_once_for_a_state_of_the_machine(book: Book, tmp_path: Path) -> None:
    session = begun(book)
    first = ["0.02", "1", "1", "LOCKED", "1"]  # level, feet, plate; then the first line that asks for isolating
    front = talk(session, [*first, "1"], tmp_path)
    assert front.text.count("Type LOCKED and Enter") == 1
    assert "Wash arms" in front.text or "arms" in front.text


def test_another_state_of_the_machine_asks_for_care_anew(book: Book, tmp_path: Path) -> None:
    session = begun(book, ev.Acknowledged(["isolate"], "before_power.inside_empty"))
    session.do(read(book, "rinse_thermometer.panel_reading", "187"))
    front = talk(session, ["l 4"], tmp_path)
    assert "Type LOCKED and Enter" in front.text


def test_nothing_is_switched_on_before_earth_and_insulation_are_right(book: Book, tmp_path: Path) -> None:
    session = Session(book, MemoryJournal(), "job-1")
    told = (ev.MachineDescribed("name", "quay"), ev.MachineDescribed("serial"), ev.MachineDescribed("site"))
    for event in (opened(TWO), ev.PlateWanted(False), *told, ev.SafetyAnswered()):
        session.do(event)
    front = talk(session, ["l 52"], tmp_path)
    assert "Nothing is switched on before these are as wanted" in front.text
    sheet = Scene(session, tmp_path).sheet
    for line in sheet.lines:
        if not sheet.barred(line) and line.verdict == "to do":
            session.do(ev.LineLeft(line.id, "not now"))
    request = asked(session, tmp_path)
    assert isinstance(request, rq.AskHandover)


def test_no_handover_while_something_must_be_missing(book: Book, tmp_path: Path) -> None:
    session = begun(book)
    for line in Scene(session, tmp_path).sheet.lines:
        if line.verdict == "to do":
            session.do(ev.LineLeft(line.id, "not now"))
    front = talk(session, ["9"], tmp_path)
    assert "No handover without these" in front.text
    assert "hand over, with" not in front.text
    for name in [line.check.id for line in Scene(session, tmp_path).sheet.missing]:
        check = book.checks[name]
        good = next(str(n) for n, outcome in enumerate(check.outcomes.values(), 1) if outcome.good)
        session.do(read(book, name, good))
    front = talk(session, ["1"], tmp_path)
    assert session.state.closed is not None
    assert session.state.closed.how == "handed over"


def test_who_was_shown_is_asked_and_belongs_to_the_line(book: Book, tmp_path: Path) -> None:
    session = begun(book, read(book, "people.shown_gauges", "1"))
    talk(session, ["two of the evening crew"], tmp_path)
    assert session.state.line_notes == {"people.gauges": ("two of the evening crew",)}
    assert session.state.notes == ()
    session.back()
    assert session.state.line_notes == {}


def test_both_ends_are_read_before_either_is_decided_and_set_together(book: Book, tmp_path: Path) -> None:
    session = begun(book, read(book, "vent_dampers.flow_entrance", "300"))
    assert not isinstance(asked(session, tmp_path), rq.AskFailed)
    session.do(read(book, "vent_dampers.flow_exit", "250"))
    front = talk(session, ["1", "80 50", "1"], tmp_path)
    assert "How far open do both handles stand now" in front.text
    assert "entrance damper from 80 %" in " ".join(front.text.split())
    found, done = (e for _, e in session.state.adjusted)
    assert (found.found, done.found, set(done.settings)) == (True, False, {"entrance", "exit"})


@pytest.mark.parametrize(
    ("check", "typed", "answers", "says"),
    [
        ("run_timer.run_on", "20 s", ["1", "LOCKED", "20"], "Set the timer from mark 20 up to mark 30"),
        ("tables.pitch", "0.05 in/ft", ["1", "LOCKED", "48in 1.5mm"], "Raise the foot by 0.55 in"),
        ("tank_control.wash_temperature", "140", ["1", "LOCKED", "140 138 128"], "Set the dial up from 140 °F"),
        ("motor_overload.pump_setting", "5", ["1", "LOCKED"], "Set the overload up from 5 A to 6.8 A"),
        ("detergent_feed.tank_strength", "400", ["1", "CLEAR", "30"], "Set the feeder from mark 30 up"),
        ("conveyor_bar_pawls.rack_speed", "7.5 ft/min", ["1", "LIVE", "60"], "Set the drive from 60 Hz down"),
    ],
)
def test_how_far_is_worked_out(
    book: Book, tmp_path: Path, check: str, typed: str, answers: list[str], says: str
) -> None:
    session = begun(book, read(book, check, typed))
    front = talk(session, answers, tmp_path)
    assert says in " ".join(front.text.split())


def test_a_new_process_asks_the_same_question_while_something_is_set(book: Book, tmp_path: Path) -> None:
    session = begun(book, read(book, "run_timer.run_on", "20 s"))
    talk(session, ["1", "LOCKED", "20"], tmp_path)
    again = Session(book, MemoryJournal(session.records), "job-1")
    assert isinstance(asked(again, tmp_path), rq.AskSet)


def test_the_end_can_take_up_what_was_left(book: Book, tmp_path: Path) -> None:
    session = begun(book)
    for line in Scene(session, tmp_path).sheet.lines:
        if line.verdict == "to do":
            session.do(ev.LineLeft(line.id, "not now"))
    talk(session, ["1"], tmp_path)
    assert session.state.left == {}
    request = asked(session, tmp_path)
    assert isinstance(request, rq.AskCheck)
    assert request.check == "before_power.level_frame"


def test_care_comes_before_one_looks_how_it_stands(book: Book, tmp_path: Path) -> None:
    session = begun(book, read(book, "run_timer.run_on", "20 s"))
    front = talk(session, ["1", "LOCKED"], tmp_path)
    assert front.text.index("Caution: ISOLATE FIRST") < front.text.index("At which mark does the timer's dial stand")
    session = begun(book, read(book, "vent_dampers.flow_entrance", "300"), read(book, "vent_dampers.flow_exit", "250"))
    front = talk(session, ["1"], tmp_path)
    assert front.text.index("Caution: WORK AT HEIGHT") < front.text.index("How far open do both handles stand")


def test_a_gas_valve_is_set_by_the_fitters_gauge_alone(book: Book) -> None:
    assert book.adjustments["steam_and_gas.gas_valve"].working is None
