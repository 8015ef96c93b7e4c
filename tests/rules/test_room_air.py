"""Make-up balance: the same hoods and supply beside other machines."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import run

FLOWS, IN, OUT = "room_air.makeup_flows", "vent_dampers.flow_entrance", "vent_dampers.flow_exit"


def made(entrance: str = "200 cfm", exit_: str = "400 cfm") -> Machine:
    own = {"vent_entrance": entrance, "vent_exit": exit_}
    return Machine("m", book().machines["two_tank_electric_208"], own)


@pytest.mark.parametrize(
    ("typed", "outcome"), [("1500 1900", "balanced"), ("1500 900", "short"), ("300 1500", "over"), ("0 0", "short")]
)
def test_balance(typed: str, outcome: str) -> None:
    (found,) = run(made(), (FLOWS, typed), book=book()).findings
    assert (found.check, found.outcome) == (FLOWS, outcome)


def test_same_flows_other_plate() -> None:
    """600 cfm lack 400 of 1000; 150 cfm have 50 more than they take."""
    (large,) = run(made(), (FLOWS, "400 600"), book=book()).findings
    (small,) = run(made("50 cfm", "100 cfm"), (FLOWS, "400 450"), book=book()).findings
    assert (large.outcome, small.outcome) == ("short", "balanced")


def test_the_machine_as_read_goes_before_the_plate() -> None:
    done = run(made(), (IN, "60"), (OUT, "120"), (FLOWS, "400 470"), book=book())
    found = next(f for f in done.findings if f.check == FLOWS)
    assert found.outcome == "balanced"
    assert set(found.consults) == {f"{IN} at 0", f"{OUT} at 0"}
    (plate,) = run(made(), (FLOWS, "400 470"), book=book()).findings
    assert plate.outcome == "short"


def test_near_the_edge_both_are_open() -> None:
    (found,) = run(made(), (FLOWS, "1400 1500"), book=book()).findings
    assert 0.1 < found.weights["short"] < 0.9


def test_working_and_expectation() -> None:
    (found,) = run(made(), (FLOWS, "1500 900"), book=book()).findings
    assert "600 cfm + 1500 cfm − 900 cfm = 1200 cfm" in found.working
    shown = expected(book(), made(), [], FLOWS)
    assert shown is not None
    assert shown.working[0] == "Machine's exhaust 200 cfm + 400 cfm = 600 cfm: as wanted, not read."
