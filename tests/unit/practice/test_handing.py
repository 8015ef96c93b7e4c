"""Results handed in: written whole, read strictly, and told as tables at any width."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest

from diagnose.model import Book, load_book
from diagnose.practice.choosing import next_exercise, ranked
from diagnose.practice.handing import (
    class_json,
    class_lines,
    progress_json,
    progress_lines,
    read_class,
    write_result,
)
from diagnose.practice.making import NoExerciseError, make
from diagnose.view.layout import text_width
from tests.practice_machine import world
from tests.unit.practice.test_progress import NOW, result


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def named(who: str, **more: object) -> object:
    return msgspec.structs.replace(result(), trainee=who, **more)


def test_a_folder_of_results_with_rubbish_in_it(tmp_path: Path) -> None:
    write_result(tmp_path / "ann.json", result())
    (tmp_path / "half.json").write_text('{"exercise": {', "utf-8")
    (tmp_path / "other.json").write_text('{"name": 1}', "utf-8")
    (tmp_path / "bytes.json").write_bytes(b"\xff\xfe\x00")
    (tmp_path / "deep.json").write_text("[" * 100_000, "utf-8")
    (tmp_path / "notes.txt").write_text("not looked at", "utf-8")
    (tmp_path / "folder.json").mkdir()
    handed = read_class(tmp_path)
    assert [name for name, _ in handed.results] == ["ann.json"]
    assert handed.results[0][1] == result()
    assert len(handed.refused) == 5
    assert all("; " in sentence for sentence in handed.refused)


def test_nothing_is_written_over(tmp_path: Path) -> None:
    (tmp_path / "mine").write_text("precious", "utf-8")
    with pytest.raises(FileExistsError):
        write_result(tmp_path / "mine", result())
    assert (tmp_path / "mine").read_text("utf-8") == "precious"


@pytest.mark.parametrize("width", [80, 45, 30])
def test_the_class_fits_and_is_added_up(book: Book, width: int) -> None:
    given = [
        ("1", named("Ann", minutes=30.0)),
        ("2", named("Ann", minutes=50.0, wrong_repairs=2)),
        ("3", named("Ann", minutes=5.0, solved=False)),
        ("4", named("bo", unsafe=["opened live"])),
        ("5", named("", minutes=40.0)),
    ]
    lines = [str(line) for line in class_lines(book, given, width)]  # type: ignore[arg-type]
    assert max(map(text_width, lines)) <= width
    text = " ".join(" ".join(lines).split())
    assert "nobody named" in text
    # Of Ann's, two found in 80 minutes where the best paths take 40.
    assert "2.00" in text
    if width == 80:
        assert "Ann 3 2 0 2 2.00" in text
        assert "bo 1 1 1 0 1.00" in text


def test_no_results_say_how_they_come(book: Book) -> None:
    assert "--result" in str(class_lines(book, [], 80)[-1])


def test_for_machines(tmp_path: Path) -> None:
    write_result(tmp_path / "ann.json", result())
    (tmp_path / "x.json").write_text("[]", "utf-8")
    told = json.loads(class_json(read_class(tmp_path)))
    assert told["results"][0]["file"] == "ann.json"
    assert told["results"][0]["result"]["solved"] is True
    assert len(told["refused"]) == 1


def test_progress_is_told_and_the_weakest_comes_next(book: Book) -> None:
    fake = world()
    order = ranked(book, fake, [result(solved=False)])
    assert order[0].complaint == "rinse_cold"
    for width in (80, 45):
        lines = [str(line) for line in progress_lines(book, order, width)]
        assert max(map(text_width, lines)) <= width
        assert book.complaints["rinse_cold"].title in " ".join(" ".join(lines).split())
    assert json.loads(progress_json(order))["complaints"][0]["complaint"] == "rinse_cold"
    exercise = next_exercise(book, fake, 3, None, order)
    assert (exercise.complaint, exercise.level) == ("rinse_cold", 1)


def test_another_trainee_stands_elsewhere(book: Book) -> None:
    given = [named("Ann", solved=False, at=NOW.isoformat())]
    assert ranked(book, world(), given, "Ann")[0].tried == 1  # type: ignore[arg-type]
    assert all(not s.tried for s in ranked(book, world(), given, "bo"))  # type: ignore[arg-type]


def test_nothing_practised_says_how_to_begin(book: Book) -> None:
    assert "diagnose practice" in str(progress_lines(book, ranked(book, world(), []), 80)[0])


def test_what_the_kitchen_can_never_say_is_not_practised(book: Book) -> None:
    mute = replace(world(), complaints=frozenset(("not_dry",)))
    assert [s.complaint for s in ranked(book, mute, [])] == ["not_dry"]
    with pytest.raises(NoExerciseError, match="take another"):
        make(book, 1, 1, "rinse_cold", mute)
