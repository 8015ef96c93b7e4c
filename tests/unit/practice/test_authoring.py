"""An instructor's exercise: asked for, tried on the machine, refused where nobody would call, and run from its file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diagnose.model import Book, load_book
from diagnose.practice.authoring import Author
from diagnose.practice.exercise import Exercise
from diagnose.practice.files import read_exercise, write_exercise
from diagnose.practice.port import simulate
from diagnose.terminal import Paused, ScriptedFront
from diagnose.view.layout import text_width
from tests.practice_machine import ELEMENT, INLET, world

TYPE = "two_tank_electric_208"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def written(book: Book, answers: list[str], columns: int = 80) -> tuple[Exercise, str]:
    front = ScriptedFront(answers, columns)
    exercise = Author(book, world(), front, 5).write()
    assert max(text_width(line) for line in front.printed) <= columns
    return exercise, " ".join(front.text.split())


def asked(book: Book, answers: list[str]) -> str:
    """What is printed where the answers end too soon."""
    front = ScriptedFront(answers)
    with pytest.raises(Paused):
        Author(book, world(), front, 5).write()
    return " ".join(front.text.split())


@pytest.mark.parametrize("columns", [80, 45])
def test_what_is_answered_is_what_is_written(book: Book, tmp_path: Path, columns: int) -> None:
    answers = [TYPE, ELEMENT, "0.9", INLET, "", "1", "-6 F", "1", "It rains.", "Nobody is there.", "", "My first", "Me"]
    exercise, _ = written(book, answers, columns)
    assert exercise.machine == TYPE
    assert exercise.faults == [(ELEMENT, 0.9), (INLET, 0.8)]
    ((name, off),) = exercise.lies
    assert name == "reference thermometer"
    assert off == pytest.approx(-10 / 3, abs=1e-4)
    assert (exercise.complaint, exercise.title, exercise.by) == ("rinse_cold", "My first", "Me")
    assert exercise.story == ["It rains.", "Nobody is there."]
    write_exercise(tmp_path / "one.json", exercise)
    assert "practice --file" in (tmp_path / "one.json").read_text("utf-8")
    assert read_exercise(tmp_path / "one.json", book, world()) == exercise
    assert simulate(world(), book, exercise).present == (ELEMENT, INLET)


def test_enter_alone_takes_what_is_offered(book: Book) -> None:
    exercise, text = written(book, [TYPE, ELEMENT, "", "", "", "", "", "", ""])
    assert exercise.lies == []
    assert exercise.story
    assert all(sentence in text for sentence in exercise.story)
    assert exercise.title.startswith(book.title("rinse_cold"))


def test_faults_nobody_would_call_for_are_refused_with_the_remedy(book: Book) -> None:
    whole = world()

    class Quiet:
        def __init__(self, machine: object) -> None:
            self._machine = machine

        def complaints(self) -> tuple[str, ...]:
            present = self._machine.present  # type: ignore[attr-defined]
            return ("rinse_cold",) if INLET in present else ()

        def __getattr__(self, name: str) -> object:
            return getattr(self._machine, name)

    quiet = replace(whole, build=lambda *given: Quiet(whole.build(*given)))  # type: ignore[arg-type, return-value]
    front = ScriptedFront([TYPE, ELEMENT, "0.1", "", "", INLET, "", "", "", "", "", "", ""])
    exercise = Author(book, quiet, front, 5).write()
    assert "Other faults, or graver ones" in " ".join(front.text.split())
    assert [name for name, _ in exercise.faults] == [INLET]


@pytest.mark.parametrize(
    ("answers", "told"),
    [
        (["999"], "a number from 1 to"),
        (["zz zz"], "is no one type"),
        ([TYPE, ""], "an exercise needs a fault"),
        ([TYPE, "zz zz"], "is like no fault"),
        ([TYPE, ELEMENT, "7"], "is no severity"),
        ([TYPE, ELEMENT, "nan"], "is no severity"),
        ([TYPE, ELEMENT, "", ELEMENT], "is there already"),
        ([TYPE, ELEMENT, "", "", "9"], "a number from 1 to 3"),
        ([TYPE, ELEMENT, "", "", "1", "5 psi"], "this wants"),
        ([TYPE, ELEMENT, "", "", "1", "900 F"], "no instrument"),
        ([TYPE, ELEMENT, "", "", "1", "0 F"], "no lie"),
        ([TYPE, ELEMENT, "", "", "", "4"], "number"),
        ([TYPE, ELEMENT, "", "", "", "", "w" * 301], "At most 300"),
    ],
)
def test_what_will_not_do_says_what_would(book: Book, answers: list[str], told: str) -> None:
    assert told in asked(book, answers)


def test_lists_are_shown(book: Book) -> None:
    text = asked(book, ["list", TYPE, "list"])
    assert book.machines[TYPE].title in text
    assert book.title(ELEMENT) in text


def test_p_leaves(book: Book) -> None:
    assert "What is wrong" in asked(book, [TYPE, "p"])


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(
        st.one_of(st.sampled_from(["", "1", "2", "list", "-5 F", TYPE, ELEMENT]), st.text(max_size=40)), max_size=14
    )
)
def test_rubbish_ends_in_an_exercise_or_in_leaving(book: Book, typed: list[str]) -> None:
    front = ScriptedFront(typed)
    try:
        exercise = Author(book, world(), front, 5).write()
    except Paused:
        return
    assert exercise.faults
    assert exercise.complaint == "rinse_cold"
