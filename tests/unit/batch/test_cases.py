"""`knowledge lint --cases` names a case in which something else leads, with its line, and a cause without a case."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.batch.cases import case_problems, read_cases, uncovered
from diagnose.job.case import CaseError
from diagnose.model import Book, load_book

CASE = """
[[case]]
tells = "Lines 48, 48 and 83 A."
machine = "two_tank_electric_208"
complaints = ["rinse_cold"]
readings = { "booster_electric.line_amps" = "48 48 83 A" }
first = "%s"
why = "One element out."
"""


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def in_folder(tmp_path: Path, text: str) -> Path:
    (tmp_path / "own.toml").write_text(text, "utf-8")
    return tmp_path


def test_a_case_that_holds_says_nothing(book: Book, tmp_path: Path) -> None:
    cases = read_cases(in_folder(tmp_path, CASE % "booster_electric.element_open"))
    assert list(case_problems(book, cases)) == []
    missing = [p.what for p in uncovered(book, cases)]
    assert "no case puts booster_electric.element_open first" not in missing
    assert "no case puts booster_electric.lead_off first" in missing
    assert "no case is about steam_out" in missing


def test_a_case_in_which_another_leads_is_named_with_its_line(book: Book, tmp_path: Path) -> None:
    cases = read_cases(in_folder(tmp_path, "\n" + CASE % "rinse_arms.jets_worn"))
    (problem,) = case_problems(book, cases)
    assert problem.place.line == 3
    assert "rinse_arms.jets_worn should lead" in problem.what
    assert "booster_electric.element_open" in problem.what


def test_a_case_that_is_none_is_told_with_the_rest(book: Book, tmp_path: Path) -> None:
    text = CASE % "booster_electric.element_open"
    cases = read_cases(in_folder(tmp_path, text + text.replace("48 48 83 A", "plenty")))
    (problem,) = case_problems(book, cases)
    assert "own-2" in problem.what


def test_a_broken_file_is_refused(tmp_path: Path) -> None:
    with pytest.raises(CaseError, match=r"own\.toml: can't be read"):
        read_cases(in_folder(tmp_path, "[[case"))
