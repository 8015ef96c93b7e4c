"""Run-on: the plate's seconds and how far they carry a rack."""

from __future__ import annotations

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book

RUN_ON = "run_timer.run_on"


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
