"""Exercises as files: what is written is read again, and what won't do says why."""

from __future__ import annotations

from pathlib import Path

import msgspec
import pytest

from diagnose.model import Book, load_book
from diagnose.practice.files import ExerciseError, read_exercise, write_exercise
from tests.practice_machine import ELEMENT, exercise, world


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def test_what_is_written_is_read_again(book: Book, tmp_path: Path) -> None:
    write_exercise(tmp_path / "one.json", exercise(ELEMENT))
    assert read_exercise(tmp_path / "one.json", book, world()) == exercise(ELEMENT)


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"machine": "zz"}, "no type of machine"),
        ({"complaint": "zz"}, "no complaint"),
        ({"faults": []}, "hides no fault"),
        ({"faults": [("zz.zz", 0.5)]}, "can be simulated"),
        ({"machine": "single_tank_gas_208"}, "another type or fault"),
        ({"faults": [(ELEMENT, 7.0)]}, "from 0 to 1"),
        ({"own": {"rinse_flow": "9 kW"}}, "its plate won't do"),
    ],
)
def test_what_will_not_do_says_why(book: Book, tmp_path: Path, changes: dict[str, object], told: str) -> None:
    write_exercise(tmp_path / "one.json", msgspec.structs.replace(exercise(ELEMENT), **changes))
    with pytest.raises(ExerciseError, match=told):
        read_exercise(tmp_path / "one.json", book, world())


def test_a_file_that_is_none_says_so(book: Book, tmp_path: Path) -> None:
    with pytest.raises(ExerciseError, match="can't be read"):
        read_exercise(tmp_path / "none.json", book, world())
    (tmp_path / "junk.json").write_bytes(b"\xff{")
    with pytest.raises(ExerciseError, match="is no exercise"):
        read_exercise(tmp_path / "junk.json", book, world())
