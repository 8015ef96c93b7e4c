"""Text fits every width and loses no word."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.view.layout import Line, flow, percent, table, text_width, wrap

WIDTHS = (30, 45, 80, 132)
TEXTS = st.text(
    alphabet=st.characters(blacklist_categories=("Cs", "Cc", "Zl", "Zp", "Zs")) | st.just(" "), max_size=300
)


def words_of(lines: list[Line] | list[str]) -> list[str]:
    return re.split(r"[ \u00a0]+", " ".join(lines).strip(" \u00a0"))


@given(TEXTS, st.sampled_from(WIDTHS))
def test_no_line_is_too_wide_and_no_sign_is_lost(text: str, width: int) -> None:
    lines = wrap(text, width, "  1. ")
    assert all(text_width(line) <= width for line in lines)
    assert "".join("".join(lines).split()) == "".join(("  1. " + text).split())


@given(st.lists(st.text("abcdefgh", min_size=1, max_size=25), min_size=1, max_size=20), st.sampled_from(WIDTHS))
def test_words_stay_whole(words: list[str], width: int) -> None:
    assert words_of(wrap(" ".join(words), width)) == words
    assert words_of(flow(words, width)) == words


@pytest.mark.parametrize("width", WIDTHS)
def test_a_number_keeps_its_unit(width: int) -> None:
    text = "The rinse is at 172 °F and must be 180 °F or more; two lines carry 58 % of it, the third 83 A. " * 3
    for line in wrap(text, width):
        assert not re.search(r"\d$", line) or line.endswith("3")


def test_wide_signs_count_twice() -> None:
    assert text_width("食堂") == 4
    assert all(text_width(line) <= 30 for line in wrap("食堂" * 40, 30))


@pytest.mark.parametrize("width", WIDTHS)
def test_a_table_keeps_every_cell_at_every_width(width: int) -> None:
    rows = [("job-1234", "2026-01-02", "Final rinse too cold; Racks jam"), ("job-9", "2026-01-03", "")]
    lines = table(["job", "touched", "complaints"], rows, width)
    text = " ".join(" ".join(lines).split())
    assert all(cell in text for row in rows for cell in row)
    assert all(text_width(line) <= width for line in lines)
    assert ("job: job-9" in text) == (width < 60)


def test_percents_line_up() -> None:
    shown = [percent(p / 200) for p in range(201)]
    assert {len(p) for p in shown} == {5}
    assert all(p.endswith(" %") for p in shown)
