"""Scales of words, beside the European convention for frequencies (guideline on summary of product characteristics,
revision 2, September 2009, section 4.8) and Words of Estimative Probability (1964) with the ends of IPCC AR4.

Of the first only words and order are taken: its steps are ten to one, ours are set by judgement.
"""

from __future__ import annotations

import pytest

from diagnose.model import Book, load_book

# Word -> (from, below), as the guideline has them.
CONVENTION = {
    "very common": (1 / 10, 1.0),
    "common": (1 / 100, 1 / 10),
    "uncommon": (1 / 1_000, 1 / 100),
    "rare": (1 / 10_000, 1 / 1_000),
    "very rare": (0.0, 1 / 10_000),
}
# Middle values of 1964 in our words for them, and the ends of 2007.
ESTIMATIVE = {"nearly always": 0.93, "usually": 0.75, "about half": 0.50, "sometimes": 0.30, "seldom": 0.07}


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def test_frequency_words_stand_in_the_order_of_the_convention(book: Book) -> None:
    ours = book.scales["frequency"].words
    falling = sorted(ours, key=lambda w: -ours[w])
    assert [w for w in falling if w in CONVENTION] == sorted(CONVENTION, key=lambda w: -CONVENTION[w][0])
    assert set(ours) - set(CONVENTION) == {"occasional"}


def test_the_numbers_are_not_those_of_the_convention_and_it_is_said(book: Book) -> None:
    scale = book.scales["frequency"]
    assert any(not CONVENTION[w][0] <= p < CONVENTION[w][1] for w, p in scale.words.items() if w in CONVENTION)
    assert "judgement" in scale.origin
    assert scale.sources == ("smpc_2009",)


def test_likelihood_words_carry_the_published_numbers(book: Book) -> None:
    words = book.scales["likelihood"].words
    assert {w: words[w] for w in ESTIMATIVE} == ESTIMATIVE
    assert words["always"] == 0.99  # over 99 in 100: virtually certain
    assert words["hardly ever"] == 0.01  # under 1 in 100: exceptionally unlikely
