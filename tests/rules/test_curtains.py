"""Gap at a curtain: its limit, and the air drawn in past it on this machine."""

from __future__ import annotations

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import reading

GAP, FLOW = "curtains.entrance_gap", "vent_dampers.flow_entrance"


def made(entrance: str) -> Machine:
    return Machine("m", book().machines["two_tank_electric_208"], {"vent_entrance": entrance})


def test_plate_flow_draws_air_in() -> None:
    shown = expected(book(), made("200 cfm"), [], GAP)
    assert shown is not None
    assert shown.working[-2] == "200 × 144 ÷ (24 × (1 + 0.1 × 20)) = 400 fpm"
    assert "400 fpm holds" in shown.working[-1]


def test_a_flow_read_goes_before_the_plate() -> None:
    shown = expected(book(), made("200 cfm"), [reading(FLOW, "40 cfm", book=book())], GAP)
    assert shown is not None
    assert "40 cfm as read" in shown.working[1]
    assert "does not hold" in shown.working[-1]
    assert not shown.assumptions
