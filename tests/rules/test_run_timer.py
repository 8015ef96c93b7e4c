"""Run-on: the plate's seconds and how far they carry a rack."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import run

RUN_ON, ZONE = "run_timer.run_on", "conveyor_bar_pawls.zone_time"


def test_way_at_the_plates_speed() -> None:
    own = {"run_on": "30 s", "conveyor_speed": "5.8 ft/min"}
    shown = expected(book(), Machine("m", book().machines["two_tank_electric_208"], own), [], RUN_ON)
    assert shown is not None
    assert shown.low is not None
    assert shown.low.si == 24.0
    assert shown.working[-1] == "2.417 ft × 60 ÷ 5.8 ft/min + 5 s = 30 s"
    assert not shown.assumptions


def test_assumed_is_said() -> None:
    shown = expected(book(), Machine("m", book().machines["two_tank_electric_208"]), [], RUN_ON)
    assert shown is not None
    assert shown.assumptions


def made(**own: str) -> Machine:
    plate = {"run_on": "30 s", "conveyor_speed": "5.8 ft/min", "wash_zone": "28 in"}
    return Machine("m", book().machines["two_tank_electric_208"], {**plate, **own})


@pytest.mark.parametrize(
    ("seconds", "plate", "outcome"), [("18", "30 s", "short"), ("29", "30 s", "as_plate"), ("18", "20 s", "as_plate")]
)
def test_seconds_against_the_plate(seconds: str, plate: str, outcome: str) -> None:
    (found,) = run(made(run_on=plate), (RUN_ON, seconds), book=book()).findings
    assert (found.rule, found.outcome) == (RUN_ON, outcome)


@pytest.mark.parametrize(("zone", "outcome"), [("24", "short"), ("17", "as_plate"), ("36", "short")])
def test_a_fast_conveyor_carries_as_far_in_less(zone: str, outcome: str) -> None:
    """20 of 30 s are short at the plate's speed; at 1.42 of it they carry 95 % of the way."""
    done = run(made(), (ZONE, zone), (RUN_ON, "20"), book=book())
    found = next(f for f in done.findings if f.check == RUN_ON)
    assert found.outcome == outcome


def test_a_slow_conveyor_is_not_the_timers_doing() -> None:
    done = run(made(), (ZONE, "36"), (RUN_ON, "29"), book=book())
    found = next(f for f in done.findings if f.check == RUN_ON)
    assert found.outcome == "as_plate"
    assert not found.consults


def test_near_the_edge_both_are_open() -> None:
    (found,) = run(made(), (RUN_ON, "24"), book=book()).findings
    assert 0.2 < found.weights["short"] < 0.8
