"""Time one rack keeps the rinse on: by its length and the conveyor's speed."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import run

RUN, ZONE = "rinse_actuator.rinse_run", "conveyor_bar_pawls.zone_time"
PLATE = {"rack_length": "20 in", "conveyor_speed": "5.8 ft/min", "wash_zone": "28 in"}


def made(**own: str) -> Machine:
    return Machine("m", book().machines["two_tank_electric_208"], {**PLATE, **own})


@pytest.mark.parametrize(("seconds", "outcome"), [("17.5", "as_computed"), ("30", "too_long"), ("9", "too_short")])
def test_against_the_plate(seconds: str, outcome: str) -> None:
    (found,) = run(made(), (RUN, seconds), book=book()).findings
    assert (found.check, found.outcome) == (RUN, outcome)


@pytest.mark.parametrize(("speed", "outcome"), [("5.8 ft/min", "too_long"), ("4 ft/min", "as_computed")])
def test_same_seconds_other_plate(speed: str, outcome: str) -> None:
    (found,) = run(made(conveyor_speed=speed), (RUN, "25.5"), book=book()).findings
    assert found.outcome == outcome


def test_a_slow_conveyor_explains_a_long_rinse() -> None:
    """42 s over 28 in is 3.33 ft/min: a rack of 20 in takes 30 s."""
    done = run(made(), (ZONE, "42"), (RUN, "30"), book=book())
    found = next(f for f in done.findings if f.check == RUN)
    assert found.outcome == "as_computed"
    assert found.consults == (f"{ZONE} at 0",)


def test_near_the_edge_both_are_open() -> None:
    (found,) = run(made(), (RUN, "21.3"), book=book()).findings
    assert 0.2 < found.weights["too_long"] < 0.8


def test_what_is_expected() -> None:
    shown = expected(book(), made(), [], RUN)
    assert shown is not None
    assert shown.lines == ("17.2 s, and up to 4 s more (20 in rack)",)
    assert shown.working[-1] == "(20 in + 0 in) ÷ 12 × 60 ÷ 5.8 ft/min + 0 s = 17.24 s"
