"""Signs a terminal lacks are written out, and nothing unseen reaches the screen."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.view.encode import clean, for_charset

CHARSETS = ("ascii", "cp437", "cp1252", "latin-1", "utf-8")


@pytest.mark.parametrize("charset", CHARSETS)
@given(text=st.text())
def test_everything_can_be_written(charset: str, text: str) -> None:
    for_charset(clean(text), charset).encode(charset)


@pytest.mark.parametrize(
    ("charset", "shown"),
    [
        ("ascii", "180 F +/-3, >= 5 ohm, 10 kohm, 2 1/2 - 3 x 4"),
        ("cp437", "180 °F ±3, ≥ 5 Ω, 10 kΩ, 2 ½ - 3 x 4"),
        ("cp1252", "180 °F ±3, >= 5 ohm, 10 kohm, 2 ½ – 3 × 4"),
        ("utf-8", "180 °F ±3, ≥ 5 Ω, 10 kΩ, 2 ½ – 3 × 4"),
    ],
)
def test_signs_of_the_trade(charset: str, shown: str) -> None:
    assert for_charset("180 °F ±3, ≥ 5 Ω, 10 kΩ, 2 ½ – 3 × 4", charset) == shown


@given(st.text())
def test_nothing_unseen_is_left(text: str) -> None:
    assert not any(unicodedata.category(c) in ("Cc", "Cf", "Cs") for c in clean(text))


def test_every_charset_is_survived_even_an_unknown_one() -> None:
    assert for_charset("5 Ω", "no-such-charset") == "5 ohm"
