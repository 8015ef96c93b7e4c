"""Single letters mean the same everywhere."""

from __future__ import annotations

import pytest

from diagnose.terminal.letters import Letter, letter_in
from diagnose.view.words import LETTERS


@pytest.mark.parametrize("letter", [letter for letter, _, _ in LETTERS])
def test_each_letter_alone_is_understood_in_any_case_and_everywhere(letter: str) -> None:
    assert letter_in(letter) == letter_in(letter.upper()) == letter_in(letter, free=True) == Letter(letter)


@pytest.mark.parametrize(("letter", "word"), [(letter, word) for letter, word, _ in LETTERS if word])
def test_each_word_stands_for_its_letter(letter: str, word: str) -> None:
    assert letter_in(word) == letter_in(word.title()) == Letter(letter)


def test_more_may_follow() -> None:
    assert letter_in("w 2") == Letter("w", "2")
    assert letter_in("c  inlet temperature") == Letter("c", "inlet temperature")


@pytest.mark.parametrize("text", ["172", "172 F", "48 48 83", "water cold", "steam", "1", "", "-", "wash too cold"])
def test_answers_are_no_letters(text: str) -> None:
    assert letter_in(text) is None


def test_in_free_text_a_letter_at_the_start_is_part_of_the_text() -> None:
    assert letter_in("a motor trips", free=True) is None
    assert letter_in("C block kitchen", free=True) is None


def test_no_letter_has_two_meanings() -> None:
    letters = [letter for letter, _, _ in LETTERS]
    assert len(set(letters)) == len(letters)
