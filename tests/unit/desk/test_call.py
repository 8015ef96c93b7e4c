"""A call: danger first, nothing a kitchen may not do, said aloud, and ended in one of three ways."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from diagnose.desk.board_next import next_blocks
from diagnose.desk.call import take_call
from diagnose.desk.call_flow import wanted_in_call
from diagnose.desk.feed import Feed
from diagnose.desk.now_asked import asked_now
from diagnose.desk.visit_sheet import visit_json
from diagnose.dialogue import run_job
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.folding import fold
from diagnose.job.journal import Journal
from diagnose.job.machines import SavedMachine, save_machine
from diagnose.job.session import Session
from diagnose.job.state import JobState
from diagnose.model import Book, load_book
from diagnose.terminal import ScriptedFront
from diagnose.view import call_words
from diagnose.view.exits import Exit
from diagnose.view.layout import text_width

CLOCK = "2026-03-02T08:00:00+00:00"
JOB = "job-1001"
# A machine is found by its looks, then the story is told.
TYPE = ("1", "1", "1", "2", *["?"] * 8)
BEGUN = ("1 Ana", "0")


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


class Desk:
    """A desk and the technician who comes, on one file."""

    def __init__(self, book: Book, folder: Path) -> None:
        self.book, self.folder = book, folder
        self.journal = Journal(folder / "j", "desk-1", lambda: CLOCK)

    def call(self, *answers: str, columns: int = 80, language: str = "") -> tuple[str, Exit]:
        front = ScriptedFront(answers, columns)
        job = JOB if self.journal.has(JOB) else None
        code = take_call(
            self.book, self.journal, self.folder / "m", front, job, new_name=JOB, person="Desk", language=language
        )
        assert all(text_width(line) <= columns for line in front.printed if not line.startswith(">"))
        return front.text, code

    def visit(self, *answers: str) -> str:
        front = ScriptedFront(answers)
        run_job(self.book, Journal(self.folder / "j", "tech-1", lambda: CLOCK), self.folder / "m", front, JOB)
        return front.text

    @property
    def state(self) -> JobState:
        return fold(self.journal.records(JOB), self.book)

    def until_story(self, complaint: str) -> None:
        """Up to the first check: the type, the place, the complaint, nothing known around it."""
        self.call(*BEGUN)
        while self.state.machine is None:
            self.call("1")
        self.call("Quay Street, invented", complaint, "", *[""] * len(self.book.context))


@pytest.fixture
def desk(book: Book, tmp_path: Path) -> Desk:
    return Desk(book, tmp_path)


def said(text: str) -> str:
    return " ".join(text.split())


def test_danger_comes_before_anybody_asks_which_machine_it_is(desk: Desk) -> None:
    gas = list(desk.book.stops).index("gas_smell") + 1 if "gas_smell" in desk.book.stops else 1
    text, code = desk.call("1 Ana", str(gas), "Canteen North, invented; Ana")
    stop = list(desk.book.stops.values())[gas - 1]
    assert code == Exit.OK
    assert text.index(call_words.STOP_FIRST) < text.index(stop.aloud_then[0].split(".")[0])
    assert "racks" not in text
    ended = desk.state.call_ended
    assert ended is not None
    assert (ended.how, "Canteen North" in ended.text) == ("stop", True)
    assert desk.state.waits is not None
    assert desk.state.closed is None
    there = desk.visit("p")
    assert "Which machine?" in there


def test_the_type_of_machine_is_found_by_what_is_seen_from_outside(desk: Desk) -> None:
    text, _ = desk.call(*BEGUN, *TYPE)
    assert "types of machine are left" in text
    machine = desk.state.machine
    assert machine is not None
    assert machine.type.traits["conveyor"] != "flight"
    assert desk.state.allowed == {"operator"}
    assert "data plate at hand" not in text


def test_a_saved_machine_is_known_by_its_place(desk: Desk) -> None:
    save_machine(desk.folder / "m", SavedMachine(name="north 1", type="two_tank_electric_208", site="Canteen North"))
    text, _ = desk.call(*BEGUN, "canteen north")
    assert "north 1: Canteen North" in text
    machine = desk.state.machine
    assert machine is not None
    assert (machine.name, machine.site) == ("north 1", "Canteen North")
    assert desk.state.allowed == {"operator"}


def test_what_needs_a_tool_a_cover_or_live_parts_is_refused(desk: Desk) -> None:
    desk.until_story("water not hot at the end")
    text, _ = desk.call("c booster line currents", "g 1")
    assert said(text).count(call_words.NOT_FOR_KITCHENS) == 2
    assert desk.state.turned.what == "advice"


def test_every_question_to_a_kitchen_has_words_to_say_and_needs_nothing(desk: Desk, book: Book) -> None:
    desk.until_story("racks get stuck")
    for _ in range(14):
        text, _ = desk.call("?")
        if call_words.NOTHING_LEFT in said(text):
            break
    asked = [check for check in desk.state.skipped if check in book.checks]
    assert 3 <= len(asked) <= 12
    assert all(book.checks[check].aloud for check in asked)
    assert all(set(book.checks[check].open) <= {"none"} for check in asked)


def test_the_kitchen_puts_it_right_and_the_call_is_over(desk: Desk, book: Book) -> None:
    desk.until_story("racks get stuck")
    session = Session(book, desk.journal, JOB)
    cause = next(row.id for row in session.assessment.rows if row.id in book.causes and book.causes[row.id].aloud)
    session.do(ev.TurnedTo("repair", cause))
    care, _ = desk.call("1")  # a bare number opens nothing that can hurt
    assert call_words.CARE_FIRST in said(care)
    assert book.causes[cause].aloud[0].split(".")[0] not in said(care)
    text, _ = desk.call("CLEAR", "1")
    assert book.causes[cause].aloud[0].split(".")[0] in said(text)
    for _ in range(8):
        last = text[text.rindex("Question") :]
        sure = call_words.SOLVED[0] in last or "Is it gone now?" in last
        text, code = desk.call("1" if sure else "?")
        if desk.state.closed is not None:
            break
    assert code == Exit.OK
    closed = desk.state.closed
    assert closed is not None
    assert (closed.how, closed.text) == ("solved on the telephone", book.causes[cause].title)
    assert desk.state.call_ended == ev.CallEnded("solved", book.causes[cause].title)


def test_a_call_about_a_closed_job_opens_it_on_purpose_only(desk: Desk) -> None:
    for event in (*_STORY, ev.CallEnded("solved", "x"), ev.Closed("solved on the telephone", "x")):
        desk.journal.append(JOB, event)
    before = desk.journal.records(JOB)
    text, code = desk.call("1")
    assert "is closed: solved on the telephone" in text
    assert (code, desk.journal.records(JOB)) == (Exit.OK, before)
    desk.call("2", "1 Ana", "p")
    assert desk.state.closed is None
    assert desk.state.call == ev.CallBegun("kitchen", "Ana")


def test_what_the_kitchen_cannot_do_is_not_asked_for_again(desk: Desk, book: Book) -> None:
    desk.until_story("racks get stuck")
    Session(book, desk.journal, JOB).do(ev.TurnedTo("repair", "operation.loaded_crooked"))
    text, _ = desk.call("s")
    assert desk.state.turned.what == "advice"
    assert desk.state.repairs == ()
    assert call_words.MENDS.format(title=book.causes["operation.loaded_crooked"].title) not in text.split("> s")[1]


def test_a_visit_is_prepared_and_the_technician_goes_on_with_what_is_known(desk: Desk, book: Book) -> None:
    desk.until_story("water not hot at the end")
    first, _ = desk.call()
    assert "Rinse pressure while flowing" in first
    desk.call("20")
    text, code = desk.call("e", "2 tomorrow at ten")
    assert code == Exit.OK
    for part in (call_words.VISIT, call_words.PARTS, call_words.BRING, call_words.WHO_COMES, "20 psi"):
        assert part in text
    assert "heating element" in text
    assert "does not sanitise" in text
    assert f"diagnose resume {JOB}" in text
    told = json.loads(visit_json(Scene(Session(book, desk.journal, JOB), desk.folder)))
    assert 0 < told["chance"] <= 1
    assert len(told["carried"]) <= 4
    there = desk.visit("0", "1", "p")
    assert "is one of these so?" in there
    assert "data plate at hand" in there
    state = desk.state
    assert "technician" in state.allowed
    assert [str(v) for r in state.readings for v in r.values.values()] == ["20 psi"]


def test_what_the_telephone_told_is_outweighed_at_the_machine(desk: Desk, book: Book) -> None:
    desk.until_story("water not hot at the end")
    desk.call("20", "e", "2")
    desk.visit("0", "1", "c rinse pressure while flowing", "12 psi")
    (both,) = desk.state.beside
    assert both.told.event == ev.ReadingTaken("rinse_gauge.flow_pressure", {"": "20.0 psi"})
    assert (both.told.writer, both.counts.writer) == ("desk-1", "tech-1")
    assert str(desk.state.readings_now()["rinse_gauge.flow_pressure"].values[""]) == "12 psi"


def test_a_technician_who_calls_may_do_all_and_goes_on_alone(desk: Desk) -> None:
    text, _ = desk.call("2 B", "0", "two tanks, hot water, built-in 30 kW electric booster, 208 V", "1")
    assert "are the figures of its data plate at hand" in text.casefold()
    text, code = desk.call(
        "Quay Street, invented", "water not hot at the end", *[""] * 6, "c booster line currents", "1"
    )
    assert "Type LIVE and Enter" in text
    text, code = desk.call("s", "e", "1")
    assert code == Exit.OK
    assert desk.state.call_ended == ev.CallEnded("goes on", "")


def test_a_call_goes_on_where_it_was_left(desk: Desk) -> None:
    desk.call(*BEGUN, "1")
    text, code = desk.call("p")
    assert code == Exit.PAUSED
    assert f"diagnose desk call {JOB}" in text
    assert desk.state.types_told == {"carries": "in racks"}


def test_back_goes_to_the_question_before(desk: Desk) -> None:
    desk.call(*BEGUN, "1", "b", "2")
    assert list(desk.state.types_told.values()) == ["straight onto a belt"]
    desk.call("b", "b", "b", "2 B")
    assert desk.state.call is not None
    assert desk.state.call.caller == "technician"


def test_it_is_said_in_the_callers_language_with_the_english_below(desk: Desk) -> None:
    text, _ = desk.call(*BEGUN, language="es")
    assert "¿" in text
    assert "Do you smell gas?" in text
    again, _ = desk.call()
    assert "¿" in again  # the language is kept with the call


@pytest.mark.parametrize("columns", [30, 45])
def test_a_call_fits_a_narrow_screen(desk: Desk, columns: int) -> None:
    desk.call(*BEGUN, columns=columns)
    desk.until_story("racks get stuck") if desk.state.call is None else None
    desk.call("1", "?", "h", "t", "i", "rubbish", columns=columns)


_KIND = "two_tank_electric_208"
_ON = (ev.CallBegun("kitchen"), ev.SafetyAnswered())
_STORY = (
    *_ON,
    ev.Opened(machine=_KIND, type=_KIND, allowed=("operator",)),
    ev.MachineDescribed("site", "Quay Street, invented"),
    ev.ComplaintSaid("racks_jam"),
    ev.StepDone("complaints"),
    *(ev.ContextGiven(name) for name in ("last_done", "since", "pattern", "hardness", "age")),
)
_MENDED = (
    *_STORY,
    ev.Repaired("operation.loaded_crooked", "as expected"),
    *(ev.Skipped(check, "not now") for check in ("operation.feed_watch", "guide_rails.rack_run")),
)
# Each kind of question a call has of its own: the events that lead there.
PLACES: dict[str, tuple[ev.Event, ...]] = {
    "AskCaller": (ev.NoteAdded("begun"),),
    "AskSafety": (ev.CallBegun("kitchen"),),
    "AskWhere": (ev.CallBegun("kitchen"), ev.SafetyAnswered("gas_smell")),
    "AskSaved": _ON,
    "AskType": (*_ON, ev.TypeTold("")),
    "Describe": _STORY[:3],
    "AskComplaint": _STORY[:4],
    "AskContext": _STORY[:6],
    "AskCheck": _STORY,
    "AskCaution": (*_STORY, ev.TurnedTo("repair", "operation.loaded_crooked")),
    "LetMend": (
        *_STORY,
        ev.TurnedTo("repair", "operation.loaded_crooked"),
        ev.Acknowledged(["moving_conveyor"], "operation.loaded_crooked"),
    ),
    "AskGone": _MENDED,
    "AskSolved": (*_MENDED, ev.ComplaintSaid("racks_jam", False)),
    "AskCallEnd": (*_STORY, ev.TurnedTo("end")),
}
RUBBISH = (
    "99",
    "-1",
    "\x1b[2J",
    "what?",
    "1" * 300,
    "0 0",
    "²",
    "w 9",
    "c",
    "",
    "g 1",
    "x 1",
    "m",
    "l 3",
    "f",
    "\u202e1",
)


@pytest.mark.parametrize("kind", PLACES)
def test_rubbish_at_every_kind_of_question_loses_nothing(desk: Desk, kind: str) -> None:
    save_machine(desk.folder / "m", SavedMachine(name="north 1", type=_KIND, site="Canteen North"))
    for event in PLACES[kind]:
        desk.journal.append(JOB, event)
    scene = Scene(Session(desk.book, desk.journal, JOB), desk.folder / "m")
    assert type(wanted_in_call(scene)).__name__ == kind
    before = desk.journal.records(JOB)
    shown = [str(line) for block in Feed(scene).catch_up(80) for line in block]  # who looks on sees the same question
    told = " ".join(" ".join(shown).split())
    assert kind == "AskCaller" or asked_now(wanted_in_call(scene), scene) in told  # before a call is on it is any job
    assert list(next_blocks(scene))
    text, _ = desk.call(*RUBBISH, "h", "t", "i", "p")
    assert desk.journal.records(JOB)[: len(before)] == before
    assert "Error" not in text
    assert not any(ord(sign) < 32 and sign != "\n" for sign in text)


@pytest.mark.parametrize("typed", ["", "99", "-1", "\x1b[2J", "what?", "1" * 500, "0"])
def test_rubbish_loses_nothing_and_is_answered(desk: Desk, typed: str) -> None:
    desk.call(*BEGUN, "1")
    before = desk.journal.records(JOB)
    text, _ = desk.call(typed, "p")
    assert desk.journal.records(JOB)[: len(before)] == before
    assert "Traceback" not in text
