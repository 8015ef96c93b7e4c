"""Rubbish in every field of the dialogue ends in a clear sentence, never in a traceback, and loses nothing."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diagnose.dialogue import requests as rq
from diagnose.dialogue.flow import next_request
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.session import Session
from diagnose.model import Book, load_book
from diagnose.terminal.front import tidy
from diagnose.terminal.letters import letter_in
from diagnose.view import words
from diagnose.view.layout import text_width
from tests.sheets import opened
from tests.small_job import STORY, MemoryJournal, copy_of, small_book, talk, talk_on

RUBBISH = st.one_of(
    st.text(max_size=60),
    st.text(alphabet="0123456789.,-+eE /;", max_size=20),
    st.text(alphabet="?sbwrtcgxunai!eph 0123456789", max_size=8),
    st.sampled_from(["9" * 400, "1e999", "-1", "0", "48 48 83 A", "[/b]", "\x1b[2J", "None", "w 99999999999", "g -1"]),
    st.sampled_from(
        ["NaN", "inf", "²", "٣", "½", "1 2 3", "LIVE LIVE", "c", "c " + "x" * 300, "\u202eabc", "u ²", "t ٣"]
    ),
)
# One place for every kind of question: the answers that lead there.
PLACES: dict[str, tuple[str, ...]] = {
    "AskMachine": (),
    "OfferPlate": STORY[:1],
    "Describe": STORY[:2],
    "AskFigure": ("1", "2", "Bay 2", "", "here"),
    "AskSafety": STORY[:3],
    "AskComplaint": STORY[:4],
    "AskContext": STORY[:6],
    "AskCaution": (*STORY[:7], "c volts"),
    "AskCheck": (*STORY[:7], "c volts", "LIVE"),
    "Decide": STORY[:10],
    "AskRepair": STORY[:14],
    "AskGone": STORY[:18],
    "AskClose": STORY[:19],
    "AskEnd": (*STORY[:7], "e"),
}
_BEGUN: tuple[ev.Event, ...] = (
    opened("two_tank_electric_208"),
    ev.PlateWanted(False),
    *(ev.MachineDescribed(what) for what in ("name", "serial", "site")),
    ev.SafetyAnswered(),
)
_LATE = ev.ReadingTaken("run_timer.run_on", {"": "20 s"})
_DIAL = ev.TurnedTo("adjust", "conveyor.run_on_dial", "conveyor.run_on")
_CARE = ev.Acknowledged(["isolate"], "conveyor.run_on_dial")
_TOLD = ev.Adjusted("conveyor.run_on_dial", "conveyor.run_on", {"mark": "20 x"}, found=True)
# The same for what is asked on the sheet of a handover: the events that lead there.
ON_SHEET: dict[str, tuple[ev.Event, ...]] = {
    "AskFailed": (*_BEGUN, _LATE),
    "AskFound": (*_BEGUN, _LATE, _DIAL, _CARE),
    "AskSet": (*_BEGUN, _LATE, _TOLD, _DIAL, _CARE),
    "AskLeave": (*_BEGUN, ev.TurnedTo("leave", line="before_power.level")),
    "AskWho": (*_BEGUN, ev.ReadingTaken("people.shown_daily", outcome="done")),
    "AskHandover": (*_BEGUN, ev.TurnedTo("end")),
    "AskHint": (*_BEGUN, ev.Hinted("rinse_gauge.flow_pressure", "the gauge first")),
    "AskOn": (*_BEGUN, ev.TurnedTo("hand on")),
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("rubbish")


@pytest.fixture(scope="module")
def book(folder: Path) -> Book:
    return small_book(folder / "knowledge")


@pytest.fixture(scope="module")
def places(book: Book, folder: Path) -> dict[str, Session]:
    found = {kind: talk(book, answers, folder / kind)[0] for kind, answers in PLACES.items()}
    for kind, events in ON_SHEET.items():
        found[kind] = Session(load_book(), MemoryJournal(), "job-1")
        for event in events:
            found[kind].do(event)
    return found


def test_every_kind_of_question_is_tried(places: dict[str, Session], folder: Path) -> None:
    for kind, session in places.items():
        scene = Scene(session, folder / kind / "machines")
        assert type(next_request(session.book, session.state, scene.options)).__name__ == kind
    asked = {each.__name__ for each in rq.Request.__args__} - {"Stopped", "Waiting", "Ended"}
    assert {*PLACES, *ON_SHEET} == asked


@pytest.mark.parametrize("kind", [*PLACES, *ON_SHEET])
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(typed=st.lists(RUBBISH, min_size=1, max_size=3))
def test_rubbish_is_answered_and_nothing_is_lost(
    places: dict[str, Session], folder: Path, kind: str, typed: list[str]
) -> None:
    session = copy_of(places[kind])
    before = session.records
    front = talk_on(session, typed, folder / kind)
    assert session.records[: len(before)] == before
    said = front.printed[front.printed.index(next(line for line in front.printed if line.startswith(">"))) :]
    left = any((letter := letter_in(tidy(text))) and letter.letter == "p" for text in typed)
    assert left or session.state.closed or any(not line.startswith(">") for line in said)
    assert all(text_width(line) <= 80 for line in front.printed if not line.startswith(">"))
    assert not any("Traceback" in line or "Error" in line for line in front.printed)


@pytest.mark.parametrize("letter", ["h", "w", "r", "t", "i", "t all", "w 1"])
def test_what_a_letter_shows_is_followed_by_the_question_again(
    places: dict[str, Session], folder: Path, letter: str
) -> None:
    for kind, place in places.items():
        if " " in letter and kind in ("Describe", "AskFigure", "AskComplaint", "AskWho", "AskOn"):
            continue  # in free text a letter with more behind it is part of the text
        session = copy_of(place)
        front = talk_on(session, [letter], folder / kind, 45)
        assert session.records == place.records
        assert all(text_width(line) <= 45 for line in front.printed)
        shown = " ".join(front.printed[front.printed.index(f"> {letter}") :])
        assert " again: " in shown or words.NOT_YET.split(".")[0][:30] in shown
