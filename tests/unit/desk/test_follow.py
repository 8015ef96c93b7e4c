"""Following: each answer as it comes, how the ranking moved, hints that are taken; and nothing else changed."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from diagnose.desk.follow import follow
from diagnose.desk.stream import stream
from diagnose.dialogue import run_job
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book
from diagnose.terminal import ScriptedFront
from diagnose.view import desk_words
from diagnose.view.exits import Exit
from diagnose.view.layout import text_width
from tests.small_job import STORY, small_book

CLOCK = "2026-03-02T08:00:00+00:00"
JOB = "job-1001"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("small"))


class Between(ScriptedFront):
    """Plays answers; something happens elsewhere before each of them."""

    def __init__(self, turns: Sequence[tuple[Callable[[], object], str]], columns: int = 80) -> None:
        super().__init__([text for _, text in turns], columns)
        self._before = iter([act for act, _ in turns])

    def ask(self, default: str = "", edit: str = "", **more: object) -> str:
        next(self._before, lambda: None)()
        return super().ask(default, edit, **more)  # type: ignore[arg-type]


class Both:
    """A technician and a desk on one file."""

    def __init__(self, book: Book, folder: Path) -> None:
        self.book, self.folder = book, folder
        self.there = Journal(folder / "j", "tech-1", lambda: CLOCK)

    def work(self, *answers: str) -> str:
        front = ScriptedFront(answers)
        run_job(self.book, self.there, self.folder, front, JOB if self.there.has(JOB) else None, new_name=JOB)
        return front.text

    def scene(self) -> Scene:
        return Scene(Session(self.book, Journal(self.folder / "j", "desk-1", lambda: CLOCK), JOB), self.folder)

    def events(self, writer: str = "") -> list[object]:
        return [record.event for record in self.there.records(JOB) if writer in ("", record.writer)]


@pytest.fixture
def both(book: Book, tmp_path: Path) -> Both:
    one = Both(book, tmp_path)
    one.work(*STORY[:7])
    return one


def test_who_comes_late_sees_how_it_stands(both: Both) -> None:
    front = ScriptedFront([])
    assert follow(both.scene, front, once=True) == Exit.OK
    assert "Steam comes out: complained of" in front.text
    assert "Ranking" in front.text
    assert "Asked there now, question" in front.text


def test_an_answer_appears_with_what_it_moves(both: Both) -> None:
    front = Between([(lambda: both.work("c volts", "LIVE", "20"), ""), (lambda: None, "p")])
    assert follow(both.scene, front) == Exit.PAUSED
    shown = front.text[front.text.index(desk_words.FOLLOWING) :]
    before, after = shown.split("\n>\n", 1)
    assert "Volts at the fuse: 20 V" not in before
    assert "Volts at the fuse: 20 V" in after
    assert "(was " in after
    assert desk_words.LEFT in " ".join(after.split())


def test_a_hint_is_sent_taken_and_seen_to_be_taken(both: Both) -> None:
    turns = [
        (lambda: None, "c volts"),
        (lambda: None, "sounds like the fuse"),
        (lambda: both.work("1"), ""),
        (lambda: None, "p"),
    ]
    front = Between(turns)
    follow(both.scene, front, "Desk North")
    assert desk_words.SENT in front.text
    assert "Hint taken: Suggested next: Volts at the fuse. sounds like the fuse" in front.text
    assert both.events("desk-1") == [
        ev.Present("Desk North", "desk"),
        ev.Hinted("box.volts", "sounds like the fuse"),
    ]


def test_who_may_only_read_writes_nothing(both: Both) -> None:
    before = both.events()
    front = ScriptedFront(["c volts", "n hello", "r", "w 1", "t", "i", "h", "x 1", "20", "p"])
    follow(both.scene, front, may_write=lambda: False)
    assert both.events() == before
    assert front.text.count(desk_words.READ_ONLY) == 2
    assert " ".join(front.text.split()).count(desk_words.NO_LETTER) == 2


def test_a_closed_job_ends_it_with_the_summary(both: Both) -> None:
    front = Between([(lambda: both.work(*STORY[7:]), "")])
    assert follow(both.scene, front) == Exit.OK
    assert desk_words.NOW_CLOSED in front.text
    assert "Closed: repaired and proved" in front.text


@pytest.mark.parametrize("columns", [30, 45, 80])
def test_it_fits_and_hostile_words_stay_words(both: Both, columns: int) -> None:
    bad = "\x1b[2J\r> 1\nforged\u202e" + "x" * 100_000
    both.there.append(JOB, ev.NoteAdded("mine"))
    Journal(both.folder / "j", "other-1", lambda: CLOCK).append(JOB, ev.NoteAdded(bad))
    front = Between([(lambda: both.work("c where", "2"), "r"), (lambda: None, "p")], columns)
    follow(both.scene, front)
    printed = [line for line in front.printed if not line.startswith(">")]
    assert all(text_width(line) <= columns for line in printed)
    assert not any(ord(sign) < 32 or sign == "\u202e" for line in printed for sign in line)
    assert not any(line.startswith("forged") for line in printed)


def test_as_json_every_event_comes_once_and_the_standing_after_it(both: Both) -> None:
    def go_on(seconds: float) -> None:
        both.work(*STORY[7:])

    lines = [json.loads(line) for line in stream(both.scene(), wait=go_on)]
    told = [line for line in lines if line["what"] == "event"]
    assert [line["number"] for line in told] == list(range(1, len(both.events()) + 1))
    assert all(line["schema"] == 1 for line in lines)
    assert lines[-1]["what"] == "standing"
    assert lines[-1]["closed"] == "repaired"
    first = next(line for line in lines if line["what"] == "standing")
    assert first["closed"] is None
    assert first["ranking"][0].keys() == {"id", "title", "probability"}
    assert sum(line["question"] is not None for line in told) > 5


def test_an_answer_told_twice_shows_both(both: Both, book: Book) -> None:
    desk = Journal(both.folder / "j", "desk-1", lambda: CLOCK)
    desk.append(JOB, ev.Present("Desk North", "desk"))
    desk.append(JOB, ev.ReadingTaken("box.volts", {"": "208 V"}))
    front = Between([(lambda: both.work("c volts", "LIVE", "20"), ""), (lambda: None, "p")])
    follow(both.scene, front)
    shown = " ".join(front.text.split())
    assert "Answered twice - Desk North told: Volts at the fuse: 208 V. The one at the machine counts: 20 V." in shown
