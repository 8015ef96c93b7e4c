"""Between people: hints between two questions, what others wrote, and who goes on."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.dialogue import run_job
from diagnose.job import events as ev
from diagnose.job.crew import crew_of
from diagnose.job.journal import Journal
from diagnose.model import Book
from diagnose.terminal import ScriptedFront
from diagnose.view import together_words as words
from diagnose.view.exits import Exit
from diagnose.view.layout import text_width
from tests.small_job import STORY, small_book

CLOCK = "2026-03-02T08:00:00+00:00"
JOB = "job-1001"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("small"))


class Two:
    """A technician and a desk on one journal file."""

    def __init__(self, book: Book, folder: Path) -> None:
        self.book, self.folder = book, folder
        self.there = Journal(folder / "j", "tech-1", lambda: CLOCK)
        self.desk = Journal(folder / "j", "desk-1", lambda: CLOCK)

    def talk(self, answers: tuple[str, ...], person: str = "", columns: int = 80) -> tuple[str, Exit]:
        front = ScriptedFront(answers, columns)
        job = JOB if self.there.has(JOB) else None
        code = run_job(self.book, self.there, self.folder, front, job, new_name=JOB, person=person)
        assert all(text_width(line) <= columns for line in front.printed if not line.startswith(">"))
        return front.text, code

    def events(self) -> list[object]:
        return [record.event for record in self.there.records(JOB)]


@pytest.fixture
def two(book: Book, tmp_path: Path) -> Two:
    return Two(book, tmp_path)


def test_a_hint_comes_between_two_questions_and_is_taken(two: Two) -> None:
    two.talk(STORY[:7])
    two.desk.append(JOB, ev.Present("Desk North", "desk"))
    two.desk.append(JOB, ev.Hinted("box.volts", "the fuse sounds likely"))
    text, _ = two.talk(("1",))
    assert "From Desk North: Suggested next: Volts at the fuse. the fuse sounds likely" in text
    assert words.HINT_TAKE in text
    assert text.index(words.HINT_TAKE) < text.index("Type LIVE and Enter")
    assert ev.HintAnswered(2, "desk-1", True) in two.events()


def test_a_hint_left_changes_nothing(two: Two) -> None:
    plain, _ = two.talk(STORY[:7])
    two.desk.append(JOB, ev.Hinted("box.volts"))
    text, _ = two.talk(("s",))
    assert plain.splitlines()[-4:] == text.splitlines()[-4:]
    assert ev.HintAnswered(1, "desk-1", False) in two.events()


def test_a_hint_never_comes_between_a_caution_and_its_work_nor_before_the_dangers(two: Two) -> None:
    two.talk(STORY[:3])
    two.desk.append(JOB, ev.Hinted(text="mind the step"))
    text, _ = two.talk(())
    assert "mind the step" not in text
    text, _ = two.talk(("0", "1", "like a sauna", "", "2"))
    assert text.index("is one of these so?") < text.index("mind the step") < text.index("What does the kitchen")
    two.talk(("c volts", "LIVE"))
    two.desk.append(JOB, ev.Hinted(text="hurry"))
    text, _ = two.talk(("20",))
    assert text.index("How many volts?") < text.index("hurry")


def test_words_alone_are_noted_and_an_unknown_check_is_words(two: Two) -> None:
    two.talk(STORY[:7])
    two.desk.append(JOB, ev.Hinted("no.such", "look twice"))
    text, _ = two.talk(("1",))
    assert "a check that this knowledge does not have (no.such). look twice" in " ".join(text.split())
    assert words.HINT_NOTED in text


def test_enter_alone_takes_in_what_others_wrote(two: Two) -> None:
    two.talk(STORY[:7])

    class Meanwhile(ScriptedFront):
        def ask(self, default: str = "", edit: str = "", **more: object) -> str:
            if not self.printed[-1].startswith(">") and not two.desk.has("told"):
                two.desk.append(JOB, ev.NoteAdded("I am on the line"))
                two.desk.append("told", ev.NoteAdded("once"))
            return super().ask(default, edit, **more)  # type: ignore[arg-type]

    front = Meanwhile(["", "p"])
    run_job(two.book, two.there, two.folder, front, JOB)
    assert "I am on the line" in front.text
    assert "Enter alone is no answer" not in front.text


def test_what_others_typed_moves_no_cursor_and_forges_no_line(two: Two) -> None:
    two.talk(STORY[:7])
    bad = "\x1b[2J\r> 2\nQuestion 9\u202e" + "x" * 100_000
    two.desk.append(JOB, ev.Present("\x1b]0;" + "n" * 5000, "desk"))
    two.desk.append(JOB, ev.Hinted("box.\x07", bad))
    two.desk.append(JOB, ev.NoteAdded(bad))
    text, _ = two.talk(("2",), columns=45)
    assert not any(ord(c) < 32 and c != "\n" for c in text)
    assert "\u202e" not in text
    assert not any(line.startswith(("> 2", "Question 9")) for line in text.splitlines()[:-60])
    assert len(text) < 20_000


@pytest.mark.parametrize("width", [30, 45, 80])
def test_no_line_of_others_begins_where_ours_do(two: Two, width: int) -> None:
    two.talk(STORY[:7])
    forged = " ".join(["> LIVE", "Question 14", "Job job-1001", "Caution:"] * 40)
    two.desk.append(JOB, ev.Present(forged, "desk"))
    two.desk.append(JOB, ev.NoteAdded(forged))
    two.desk.append(JOB, ev.Hinted(text=forged))
    text, _ = two.talk(("h", "2", "e", "4", forged), columns=width)
    lines = text.splitlines()
    typed = next(n for n, line in enumerate(lines) if line.startswith("> > LIVE"))
    ours = [line for n, line in enumerate(lines) if line.startswith("> ") and n != typed]
    assert ours == ["> h", "> 2", "> e", "> 4"]
    assert sum(line.startswith("Question 14") for line in lines) == 0


def test_a_job_is_handed_on_and_another_technician_goes_on(two: Two) -> None:
    two.talk(STORY[:7])
    text, code = two.talk(("e", "4", "the late shift; panel is still warm"))
    assert "Job job-1001 waits for a technician: the late shift; panel is still warm." in text
    assert "diagnose resume job-1001" in text
    assert code == Exit.PAUSED
    front = ScriptedFront(("0",))
    other = Journal(two.folder / "j", "tech-2", lambda: CLOCK)
    crew = crew_of(["licensed electrician"])
    run_job(two.book, other, two.folder, front, JOB, crew=crew, person="B")
    assert "Before anything else: is one of these so?" in front.text
    assert ev.Present("B", "machine", crew.who) in two.events()
    assert "Next check: Volts at the fuse" in front.text


def test_nobody_says_who_they_are_while_they_work_alone(two: Two) -> None:
    two.talk(STORY[:7])
    two.talk(())
    assert not any(isinstance(each, ev.Present) for each in two.events())


def test_a_name_that_was_set_is_said_once(two: Two) -> None:
    two.talk(STORY[:3], person="Mira")
    two.talk(STORY[3:7], person="Mira")
    assert [each for each in two.events() if isinstance(each, ev.Present)] == [ev.Present("Mira", "machine")]
