"""What the report of sensitivity moves: a word to its neighbour on the scale, and nothing else."""

from __future__ import annotations

import pytest

from diagnose.model import Book, load_book
from diagnose.model.truth import likelihood_row
from tests.bench.sensitivity import moved_row, moved_word

SCALE = {"always": 0.99, "usually": 0.75, "seldom": 0.07}


@pytest.mark.parametrize(
    ("said", "by", "moved"),
    [
        ("usually", 1, "always"),
        ("usually", -1, "seldom"),
        ("always", 1, "always"),
        ("seldom", -1, "seldom"),
        (0.42, 1, 0.42),
    ],
)
def test_a_word_moves_to_its_neighbour(said: str | float, by: int, moved: str | float) -> None:
    assert moved_word(SCALE, said, by) == moved


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def test_a_moved_row_stays_a_distribution_and_named_outcomes_move_that_way(book: Book) -> None:
    check = book.checks["booster_electric.line_amps"]
    before = likelihood_row(book, check, "none")
    rising = sorted(book.scales["likelihood"].words, key=lambda w: book.scales["likelihood"].words[w])
    for by in (1, -1):
        after = dict(zip(check.outcomes, moved_row(book, check, "none", by), strict=True))
        assert sum(after.values()) == pytest.approx(1.0)
        for outcome, said in check.shows["none"].items():
            inner = isinstance(said, str) and said not in (rising[0], rising[-1])
            if inner and len(check.shows["none"]) == 1:
                assert (after[outcome] - before[outcome]) * by > 0
