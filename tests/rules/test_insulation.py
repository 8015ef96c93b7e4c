"""Insulation brought to 40 °C: the same megohms in a hot and in a cold motor."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, Reading, load_book
from diagnose.rules import expected, findings
from diagnose.units import parse_quantity

BOOK = load_book()
HERE = Machine("under test", BOOK.machines["two_tank_electric_208"])
MEG, CASE = "pump_motor.insulation", "pump_motor.case_temperature"


def read(check: str, text: str, stage: int = 0) -> Reading:
    quantity = BOOK.checks[check].reading.quantity  # type: ignore[union-attr]
    return Reading(f"{check} at {stage}", check, {"": parse_quantity(text, quantity)}, stage=stage)


def weights(meg: str, case: str | None = None) -> dict[str, float]:
    taken = [read(MEG, meg)] + ([read(CASE, case)] if case else [])
    found = next(f for f in findings(BOOK, HERE, taken).findings if f.check == MEG)
    assert found.rule == ("insulation" if case else "plain_band")
    return dict(found.weights)


@pytest.mark.parametrize(
    ("meg", "case", "heaviest"),
    [
        ("2 Mohm", "160 °F", "good"),  # 71 °C: 2 × 2^3.1 = 17
        ("2 Mohm", "104 °F", "weak"),  # at 40 °C it is what it reads
        ("2 Mohm", "50 °F", "leaks"),  # 10 °C: 2 × 2^-3 = 0.25
        ("80 Mohm", "10 °C", "good"),  # 80 / 8 = 10
        ("0.05 Mohm", "160 °F", "leaks"),
    ],
)
def test_megohms_and_warmth(meg: str, case: str, heaviest: str) -> None:
    found = weights(meg, case)
    assert max(found, key=lambda o: found[o]) == heaviest
    assert found[heaviest] > 0.8


def test_near_the_edge_it_is_no_verdict() -> None:
    found = weights("5 Mohm", "104 °F")
    assert 0.35 < found["good"] < 0.65


def test_without_warmth_the_plain_band_answers() -> None:
    assert weights("2 Mohm")["weak"] > 0.9


def test_the_case_read_before_a_repair_is_of_another_hour() -> None:
    taken = [read(CASE, "160 °F"), read(MEG, "2 Mohm", stage=1)]
    found = [f for f in findings(BOOK, HERE, taken).findings if f.check == MEG]
    assert all(f.rule == "plain_band" for f in found)


def test_each_reading_is_counted_once() -> None:
    done = findings(BOOK, HERE, [read(MEG, "2 Mohm"), read(CASE, "160 °F")])
    assert sorted(r for f in done.findings for r in f.counts) == [f"{CASE} at 0", f"{MEG} at 0"]
    assert next(f for f in done.findings if f.check == MEG).consults == (f"{CASE} at 0",)


def test_expected_follows_the_warmth() -> None:
    warm = expected(BOOK, HERE, [read(CASE, "140 °F")], MEG)
    assert warm is not None
    assert warm.lines == ("1.25 Mohm or more with the case at 140 °F",)  # 60 °C: a quarter of 5
    cold = expected(BOOK, HERE, [], MEG)
    assert cold is not None
    assert "at 40 °C" in cold.lines[0]


@pytest.mark.parametrize(("case", "outcome"), [("150 °F", "good"), ("104 °F", "weak"), ("60 °F", "leaks")])
def test_the_conveyor_motor_as_well(case: str, outcome: str) -> None:
    """1.5 Mohm at 66 °C is 8.8 at 40 °C; at 16 °C it is 0.28."""
    taken = [read("drive_motor.insulation", "1.5 Mohm"), read("drive_motor.case_temperature", case)]
    found = next(f for f in findings(BOOK, HERE, taken).findings if f.check == "drive_motor.insulation")
    assert (found.rule, found.outcome) == ("insulation", outcome)
