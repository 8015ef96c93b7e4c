"""Conveyor timing: the same seconds and strokes on other plates, and both together."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import reading, run

ZONE, STROKES, PACE = (f"conveyor_bar_pawls.{n}" for n in ("zone_time", "strokes", "pace"))
PLATE = {"wash_zone": "28 in", "conveyor_stroke": "6 in", "conveyor_speed": "5.8 ft/min"}


def made(**own: str) -> Machine:
    return Machine("m", book().machines["two_tank_electric_208"], {**PLATE, **own})


@pytest.mark.parametrize(
    ("seconds", "outcome"),
    [("24", "as_plate"), ("29", "sixth_slow"), ("36.5", "far_slow"), ("20.1", "fifth_fast"), ("12", "far_fast")],
)
def test_zone_time(seconds: str, outcome: str) -> None:
    (found,) = run(made(), (ZONE, seconds), book=book()).findings
    assert (found.check, found.outcome) == (ZONE, outcome)


@pytest.mark.parametrize(
    ("speed", "outcome"), [("5.8 ft/min", "sixth_slow"), ("4.8 ft/min", "as_plate"), ("4 ft/min", "fifth_fast")]
)
def test_same_seconds_other_plate(speed: str, outcome: str) -> None:
    """28 in in 29 s is 4.83 ft/min."""
    (found,) = run(made(conveyor_speed=speed), (ZONE, "29"), book=book()).findings
    assert found.outcome == outcome
    assert found.working[0] == "28 in ÷ 12 × 60 ÷ 29 s = 4.828 ft/min"


def test_metric_plate_is_worked_in_metric() -> None:
    plate = {"wash_zone": "70 cm", "conveyor_speed": "1.8 m/min"}
    (found,) = run(made(**plate), (ZONE, "23.3"), book=book()).findings
    assert found.outcome == "as_plate"
    assert found.working[0].endswith("= 1.803 m/min")


def test_near_an_edge_counts_for_both() -> None:
    (found,) = run(made(), (ZONE, "27.4"), book=book()).findings
    assert 0.2 < found.weights["sixth_slow"] < 0.8
    assert 0.2 < found.weights["as_plate"] < 0.8


@pytest.mark.parametrize(
    ("per_minute", "stroke", "outcome"),
    [
        ("11.6", "6 in", "as_plate"),
        ("11.6", "4.5 in", "far_slow"),
        ("14", "6 in", "fifth_fast"),
        ("7", "6 in", "far_slow"),
    ],
)
def test_strokes(per_minute: str, stroke: str, outcome: str) -> None:
    (found,) = run(made(conveyor_stroke=stroke), (STROKES, per_minute), book=book()).findings
    assert (found.check, found.outcome) == (STROKES, outcome)


@pytest.mark.parametrize(
    ("seconds", "per_minute", "outcome"),
    [
        ("24", "11.6", "as_plate"),
        ("29", "9.7", "sixth_slow"),
        ("36", "7.7", "far_slow"),
        ("20", "13.9", "fifth_fast"),
        ("12", "23", "far_fast"),
        ("32", "11.6", "racks_lag"),
    ],
)
def test_both_together_are_counted_once(seconds: str, per_minute: str, outcome: str) -> None:
    done = run(made(), (ZONE, seconds), (STROKES, per_minute), book=book())
    (found,) = done.findings
    assert (found.check, found.outcome) == (PACE, outcome)
    assert set(found.counts) == {f"{ZONE} at 0", f"{STROKES} at 0"}


def test_racks_ahead_of_the_bar_are_not_believed_together() -> None:
    done = run(made(), (ZONE, "14"), (STROKES, "11.6"), book=book())
    assert {f.check for f in done.findings} == {ZONE, STROKES}
    assert any("outrun" in f.silent for f in done.firings)


def test_a_bar_that_stands_is_said() -> None:
    done = run(made(), (STROKES, "0"), book=book())
    assert not done.findings
    assert any("stands" in f.silent for f in done.firings)


def test_what_is_expected() -> None:
    zone = expected(book(), made(), [], ZONE)
    bar = expected(book(), made(), [], STROKES)
    assert zone is not None
    assert bar is not None
    assert zone.lines == ("24.1 s (28 in at 5.8 ft/min)",)
    assert zone.working[0] == "28 in ÷ 12 × 60 ÷ 5.8 ft/min = 24.14 s"
    assert "data plate" in zone.working[1]
    assert bar.working[0] == "6 in ÷ 12 × 11.6 = 5.8 ft/min"
    assumed = expected(book(), Machine("m", book().machines["two_tank_electric_208"]), [], ZONE)
    assert assumed is not None
    assert "assumed" in assumed.working[1]
    assert reading(ZONE, "24", book=book()).values
