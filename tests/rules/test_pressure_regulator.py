"""The regulator's pair of pressures: sags, creeps, only set wrongly, or pulled down by the flow."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import expected
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
PAIR, FLOW = "pressure_regulator.droop_line", "rinse_arms.flow_measured"
PLATE = {
    "rinse_flow": "4.2 gpm",
    "rinse_pressure": "20 psi",
    "rinse_pressure_least": "15 psi",
    "rinse_pressure_most": "25 psi",
}


def _machine(**own: str) -> Machine:
    return Machine("m", BOOK.machines["two_tank_electric_208"], {**PLATE, **own})


def _found(machine: Machine, *typed: tuple[str, str]) -> Finding:
    return next(f for f in run_rules(machine, *typed, book=BOOK).findings if f.check == PAIR)


@pytest.mark.parametrize(
    ("pair", "outcome"),
    [
        ("23 20", "holds"),
        ("22 9", "sags"),
        ("60 20", "creeps"),
        ("60 6", "sags"),  # 60 at rest and 6 flowing is a restriction, not a leaking seat
        ("14 11", "low_and_steady"),
        ("36 32", "high_and_steady"),
        ("1.6 1.4", "low_and_steady"),  # psi are meant when no unit is typed
    ],
)
def test_pairs(pair: str, outcome: str) -> None:
    assert _found(_machine(), (PAIR, pair)).outcome == outcome


@pytest.mark.parametrize(
    ("flow", "rated", "outcome"),
    [("4.2 gpm", "4.2 gpm", "creeps"), ("7.5 gpm", "4.2 gpm", "holds"), ("7.5 gpm", "7.5 gpm", "creeps")],
)
def test_the_same_pair_at_another_flow(flow: str, rated: str, outcome: str) -> None:
    """10 psi of fall: too much for 4.2 gpm, right for 7.5 on a regulator meant for 4.2."""
    found = _found(_machine(rinse_flow=rated), (FLOW, flow), (PAIR, "27 17"))
    assert found.outcome == outcome
    assert found.consults == (f"{FLOW} at 0",)
    assert found.counts == (f"{PAIR} at 0",)


def test_near_the_edge() -> None:
    weights = _found(_machine(), (FLOW, "4.2 gpm"), (PAIR, "26 19")).weights  # 7 psi: 5 and 2
    assert 0.3 < weights["holds"] < 0.7


def test_wrong_way_round_and_no_plate() -> None:
    done = run_rules(_machine(), (PAIR, "8 22"), book=BOOK)
    assert done.findings == ()
    assert "at rest comes first" in done.unanswered[0].why
    assert run_rules(_machine(rinse_flow="0 gpm"), (PAIR, "22 20"), book=BOOK).findings == ()


def test_expected_with_its_working() -> None:
    shown = expected(BOOK, _machine(), [reading(FLOW, "6.3 gpm", book=BOOK)], PAIR)
    assert shown is not None
    assert shown.lines == ("23 psi at rest, 18.5 psi flowing",)
    assert "23 psi − 3 psi × 6.3 gpm ÷ 4.2 gpm = 18.5 psi" in shown.working
