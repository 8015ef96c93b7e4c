"""An exercise as a trainee meets it: asking, paying, being careless, repairing, and the debrief."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from diagnose.model import Book, load_book
from diagnose.practice.care import ways
from diagnose.practice.course import Course
from diagnose.practice.exercise import Exercise, Result
from diagnose.practice.kept import Kept, Worked
from diagnose.practice.start import begin, go_on
from diagnose.terminal.scripted import ScriptedFront
from diagnose.view.exits import Exit
from diagnose.view.layout import text_width
from tests.practice_machine import ELEMENT, INLET, LINES, OHMS, THERMOMETER, exercise, world

CLOCK = "2026-03-02T08:00:00+00:00"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


@pytest.fixture
def kept(tmp_path: Path) -> Kept:
    return Kept(tmp_path / "practice.sqlite3", clock=lambda: CLOCK)


def way(book: Book, what: str, name: str, first: str) -> str:
    """The number of a way to begin, as listed in the exercises here."""
    entry = book.checks[name] if what == "check" else book.causes[name]
    return str([w.id for w in ways(entry, book, 7)].index(first) + 1)


def play(
    book: Book, kept: Kept, answers: list[str], of: Exercise, columns: int = 80
) -> tuple[str, Result | None, Exit]:
    front = ScriptedFront(answers, columns)
    code = begin(book, world(), kept, front, of)
    return front.text, kept.result("exercise-1"), code


def test_a_careful_path_ends_in_a_proved_repair(book: Book, kept: Kept) -> None:
    care, dead = way(book, "check", LINES, "care"), way(book, "repair", ELEMENT, "dead")
    text, result, code = play(book, kept, ["line amps", care, f"g {ELEMENT}", dead], exercise(ELEMENT))
    assert code == Exit.OK
    assert result is not None
    assert result.solved
    assert not result.unsafe
    assert result.wrong_repairs == 0
    assert "Booster line currents: 48 48 83 A" in text
    assert "Proved" in text
    assert "Passed: repaired and proved." in text
    assert "It was: One heating element is open." in text
    assert "A third of the heat is gone." in text
    assert result.said == [ELEMENT]
    assert result.checks == [LINES]


def test_minutes_are_those_of_the_knowledge_with_covers_and_states_paid_once(book: Book) -> None:
    course = Course(book, world(), exercise(ELEMENT))
    course.take(Worked("check", LINES, "care"))
    check, access, states = book.checks[LINES], book.access, book.states
    assert course.practice.minutes == check.minutes + access["control box"].minutes
    course.take(Worked("check", LINES, "care"))
    assert course.practice.minutes == 2 * check.minutes + access["control box"].minutes
    before = course.practice.minutes
    course.take(Worked("check", OHMS, "dead"))
    ohms = book.checks[OHMS]
    opened = sum(access[a].minutes for a in set(ohms.open) - {"control box"})
    assert course.practice.minutes - before == ohms.minutes + opened + states["isolated"].minutes


@pytest.mark.parametrize("first", ["straight", "button"])
def test_going_at_live_parts_is_let_happen_and_fails(book: Book, kept: Kept, first: str) -> None:
    wrong, dead = way(book, "check", LINES, first), way(book, "repair", ELEMENT, "dead")
    text, result, _ = play(book, kept, ["line amps", wrong, f"g {ELEMENT}", dead], exercise(ELEMENT))
    assert "48 48 83 A" in text, "the reading is had all the same"
    assert result is not None
    assert len(result.unsafe) == 1
    assert result.solved
    assert "Failed: somebody would have been hurt" in text
    assert "LIVE PARTS" in text.split("Debrief")[1]


def test_power_left_on_for_work_that_wants_it_off_fails(book: Book, kept: Kept) -> None:
    live = way(book, "repair", ELEMENT, "care")
    text, result, _ = play(book, kept, [f"g {ELEMENT}", live], exercise(ELEMENT))
    assert result is not None
    assert "locked and proved dead" in result.unsafe[0]
    assert "ISOLATE" in text.split("Debrief")[1]


def test_a_live_reading_on_a_dead_machine_shows_nothing_and_hurts_nobody(book: Book, kept: Kept) -> None:
    text, result, _ = play(
        book, kept, ["line amps", way(book, "check", LINES, "dead"), "e", "give up"], exercise(ELEMENT)
    )
    assert result is not None
    assert not result.unsafe
    assert result.checks == []
    assert result.minutes == book.states["isolated"].minutes
    assert "With the power off" in text
    assert "48 48 83" not in text.split("Debrief")[0]


def test_leaving_it_costs_nothing(book: Book, kept: Kept) -> None:
    _, result, _ = play(book, kept, ["line amps", "5", "line amps", "b", "e", "give up"], exercise(ELEMENT))
    assert result is not None
    assert result.minutes == 0.0
    assert not result.solved


def test_what_cannot_be_read_says_so_and_takes_no_time(book: Book, kept: Kept) -> None:
    text, result, _ = play(
        book, kept, ["c hygrometer at the hood", "overload dial setting", "e", "give up"], exercise(ELEMENT)
    )
    assert "cannot be read here" in text
    assert result is not None
    assert result.minutes == 0.0


def test_a_sound_part_costs_its_minutes_and_counts(book: Book, kept: Kept) -> None:
    text, result, _ = play(
        book, kept, [f"g {INLET}", way(book, "repair", INLET, "care"), "e", f"{ELEMENT}", ""], exercise(ELEMENT)
    )
    assert "it was sound" in text
    assert result is not None
    assert result.wrong_repairs == 1
    assert result.minutes >= book.causes[INLET].minutes
    assert result.solved, "said without a repair"
    assert result.said == [ELEMENT]


def test_of_two_faults_one_repair_leaves_it_still_so(book: Book, kept: Kept) -> None:
    dead = way(book, "repair", ELEMENT, "dead")
    care = way(book, "repair", INLET, "care")
    text, result, _ = play(book, kept, [f"g {ELEMENT}", dead, f"g {INLET}", care], exercise(ELEMENT, INLET))
    assert "still so. Final rinse too cold" in text
    assert result is not None
    assert result.solved
    assert set(result.said) == {ELEMENT, INLET}


def test_the_wrong_cause_said_is_not_found(book: Book, kept: Kept) -> None:
    text, result, _ = play(book, kept, ["e", INLET, ""], exercise(ELEMENT))
    assert result is not None
    assert not result.solved
    assert "Not found. You said:" in text


def test_nothing_is_judged_unless_asked(book: Book, kept: Kept) -> None:
    care = way(book, "check", LINES, "care")
    text, _, _ = play(book, kept, ["line amps", care], exercise(ELEMENT))
    assert "58 %" not in text
    assert "Ranking" not in text
    front = ScriptedFront(["w", "r"])
    go_on(book, world(), kept, front, "exercise-1")
    assert "58 %" in front.text
    assert "Ranking" in front.text


def test_a_lying_thermometer_is_named_in_the_debrief(book: Book, kept: Kept) -> None:
    lies = (("reference thermometer", 5.0),)
    answers = ["w", THERMOMETER, way(book, "check", THERMOMETER, "care"), "e", "give up"]
    text, _, _ = play(book, kept, answers, exercise(ELEMENT, lies=lies))
    assert "177 °F" in text, "168 °F and the lie of 9 F°"
    assert "your reference thermometer lied: it read 9 F° too high" in text


@pytest.mark.parametrize("rubbish", ["", "zzqx", "99999", "-1", "\x1b[A", "x" * 3000, "u", "t all", "0"])
def test_rubbish_gets_a_remedy_and_the_question_stands(book: Book, kept: Kept, rubbish: str) -> None:
    text, result, code = play(book, kept, [rubbish], exercise(ELEMENT))
    assert code == Exit.PAUSED
    assert result is None
    last = text.split("p pause")[-1]
    assert "Traceback" not in text
    assert len(last.strip()) > 20
    assert kept.steps("exercise-1") == []


@pytest.mark.parametrize("columns", [45, 80])
def test_every_line_fits(book: Book, kept: Kept, columns: int) -> None:
    care = way(book, "check", LINES, "straight")
    answers = ["h", "i", "list", "1-3", "element", "line amps", care, "w", "r", "g", "list", "", "e", ELEMENT, ""]
    text, _, _ = play(book, kept, answers, exercise(ELEMENT), columns)
    assert max(text_width(line) for line in text.splitlines()) <= columns


def test_it_goes_on_at_the_same_question_wherever_it_was_left(book: Book, kept: Kept) -> None:
    care, dead = way(book, "check", LINES, "care"), way(book, "repair", ELEMENT, "dead")
    answers = ["line amps", care, "w", "n one out", "g", ELEMENT, dead]
    whole, _, _ = play(book, kept, answers, exercise(ELEMENT))
    for cut in (1, 4, 6):  # before care is chosen, after a note, before a repair
        name = kept.begin(exercise(ELEMENT))
        first, rest = ScriptedFront(answers[:cut]), ScriptedFront(answers[cut:])
        assert go_on(book, world(), kept, first, name) == Exit.PAUSED
        assert go_on(book, world(), kept, rest, name) == Exit.OK
        question = first.text.split("\n\n")[-1].splitlines()[0]
        if answers[cut - 1] not in ("w", "n one out"):
            assert question in rest.text
        assert rest.text.split("Debrief")[1].replace("\n", " ") == whole.split("Debrief")[1].replace("\n", " ")


def test_the_debrief_comes_again_and_the_result_stands(book: Book, kept: Kept) -> None:
    play(book, kept, ["e", ELEMENT, ""], exercise(ELEMENT))
    front = ScriptedFront([])
    assert go_on(book, world(), kept, front, "exercise-1", trainee="another") == Exit.OK
    assert "Debrief" in front.text
    assert [r.trainee for r in kept.results()] == [""]
    assert go_on(book, world(), kept, front, "exercise-9") == Exit.NO_SUCH_JOB


@pytest.mark.parametrize("seed", range(4))
def test_typed_at_random_nothing_breaks_and_all_of_it_is_played_again(book: Book, kept: Kept, seed: int) -> None:
    chance = random.Random(seed)
    typed = [
        *(
            "line amps",
            "list",
            "1-5",
            "g",
            "g element",
            f"g {ELEMENT}",
            f"g {INLET}",
            "e",
            "",
            "b",
            "s",
            "w",
            "w inlet",
        ),
        *(
            "r",
            "i",
            "h",
            "?",
            "n x",
            "n",
            "u",
            "c",
            THERMOMETER,
            OHMS,
            "zzq",
            "0",
            "-",
            "\u202e",
            "é" * 50,
            "24",
            *"123456",
        ),
    ]
    front = ScriptedFront([chance.choice(typed) for _ in range(40)], chance.choice([20, 45, 80]))
    begin(book, world(), kept, front, exercise(ELEMENT, INLET))
    assert all(text_width(line) <= front.width for line in front.printed if not line.startswith(">"))
    kept_exercise = kept.exercise("exercise-1")
    assert kept_exercise is not None
    once = Course(book, world(), kept_exercise, kept.steps("exercise-1"))
    again = Course(book, world(), kept_exercise, kept.steps("exercise-1"))
    assert (once.path, once.practice.minutes, once.unsafe) == (again.path, again.practice.minutes, again.unsafe)
