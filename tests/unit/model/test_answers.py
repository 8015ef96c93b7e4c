"""What is typed for a check becomes values by place, or a chosen outcome."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.model import Book, load_book
from diagnose.model.answers import parse_answer, parse_values, show_values
from diagnose.units import UnitError
from tests.small_knowledge import write_small

SHIPPED = load_book()
LINES = SHIPPED.checks["booster_electric.line_amps"]


@pytest.mark.parametrize(
    "text", ["48 48 83", "48/48/83 A", "48 A, 48 A, 83 A", " 48;48;83", "48A 48A 83A", "48 48 83 amps"]
)
def test_three_values_in_any_dress(text: str) -> None:
    assert [q.value for q in parse_values(LINES, text).values()] == [48, 48, 83]


def test_a_decimal_comma_is_no_separator() -> None:
    assert [q.value for q in parse_values(LINES, "48,5 48,0 83").values()] == [48.5, 48, 83]


@pytest.mark.parametrize("unit", ["BTU/h", "ft/min", "L/min", "in/ft", "m3/h"])
def test_a_stroke_inside_a_unit_is_kept(unit: str) -> None:
    kinds = {"BTU/h": "power", "ft/min": "speed", "L/min": "flow", "in/ft": "slope", "m3/h": "air flow"}
    check = next(
        c for c in SHIPPED.checks.values() if c.reading and c.reading.quantity == kinds[unit] and not c.reading.each
    )
    least = check.reading.least if check.reading else None
    assert least is None or parse_values(check, f"{least.split()[0]} {least.split()[1]}")
    try:
        (value,) = parse_values(check, f"5 {unit}").values()
    except UnitError as error:
        assert "out of range" in str(error)
    else:
        assert value.unit.symbol == unit


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("48 48", "this wants 3 values \\(L1, L2, L3\\), like"),
        ("", "this wants 3 values"),
        ("hot", "is no number"),
        ("48 48 9999", "out of range here \\(0 A to 400 A\\)"),
        ("48 48 83 psi", "psi is a unit of pressure"),
    ],
)
def test_refusals_say_what_would_do(text: str, says: str) -> None:
    with pytest.raises(UnitError, match=says):
        parse_values(LINES, text)


def test_values_print_as_they_are_typed() -> None:
    assert show_values(parse_values(LINES, "48/48.5/83A")) == "48 48.5 83 A"


@pytest.fixture
def small(tmp_path: Path) -> Book:
    return load_book(write_small(tmp_path))


@pytest.mark.parametrize("text", ["broken", "2", "BROKEN", " 2 "])
def test_an_outcome_by_id_number_or_title(small: Book, text: str) -> None:
    assert parse_answer(small.checks["arm.look_choked"], text) == ({}, "broken")


@pytest.mark.parametrize("text", ["0", "3", "", "purple", "²", "9" * 400])
def test_no_such_outcome_is_a_sentence(small: Book, text: str) -> None:
    with pytest.raises(UnitError, match="type a number from 1 to 2"):
        parse_answer(small.checks["arm.look_choked"], text)


@given(st.sampled_from(sorted(SHIPPED.checks)), st.text(max_size=40))
def test_rubbish_is_a_sentence(name: str, text: str) -> None:
    try:
        parse_answer(SHIPPED.checks[name], text)
    except UnitError as error:
        assert str(error)
