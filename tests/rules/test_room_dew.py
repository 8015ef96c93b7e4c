"""Surfaces against the dew point: one reading three ways, and the same surface under other air."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import run

SWEATING = "room_air.sweating"


def machine() -> Machine:
    return Machine("m", book().machines["two_tank_electric_208"], {})


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        ("84 80 72", "wet_air"),  # dew point 79 °F
        ("75 63 50", "cold_surface"),  # dew point 56 °F
        ("75 63 70", "no_sweat"),
        ("24C 17C 10C", "cold_surface"),  # dew point 13 °C
        ("29C 26.5C 22C", "wet_air"),
    ],
)
def test_three_ways(typed: str, outcome: str) -> None:
    (found,) = run(machine(), (SWEATING, typed), book=book()).findings
    assert (found.check, found.outcome) == (SWEATING, outcome)


def test_the_same_surface_under_other_air() -> None:
    """62 °F sweats under a dew point of 79 °F and stays dry under one of 56 °F."""
    (wet,) = run(machine(), (SWEATING, "84 80 62"), book=book()).findings
    (dry,) = run(machine(), (SWEATING, "75 63 62"), book=book()).findings
    assert (wet.outcome, dry.outcome) == ("wet_air", "no_sweat")


def test_near_the_dew_point_both_stay_open() -> None:
    (found,) = run(machine(), (SWEATING, "75 63 57"), book=book()).findings
    assert 0.1 < found.weights["no_sweat"] < 0.9


def test_air_drier_than_a_wet_sock_can_show_is_refused_with_a_reason() -> None:
    done = run(machine(), (SWEATING, "100 45 50"), book=book())
    assert not [f for f in done.findings if f.rule == SWEATING]
    assert any("wet the sock" in u.why for u in done.unanswered)


def test_working_and_expectation() -> None:
    (found,) = run(machine(), (SWEATING, "84 80 72"), book=book()).findings
    assert any("dew point 78.7 °F" in line for line in found.working)
    shown = expected(book(), machine(), [], SWEATING)
    assert shown is not None
    assert "68 °F" in shown.lines[0]
