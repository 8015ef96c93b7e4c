"""Pressure lost across the rinse valve, at the flow that passes."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import expected
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
LOSS, FLOW, GAUGE = "rinse_valve.loss_across", "rinse_arms.flow_measured", "rinse_gauge.flow_pressure"


def _machine(rinse_flow: str = "4.2 gpm") -> Machine:
    return Machine("m", BOOK.machines["two_tank_electric_208"], {"rinse_flow": rinse_flow, "rinse_pressure": "20 psi"})


def _found(machine: Machine, *typed: tuple[str, str]) -> Finding:
    return next(f for f in run_rules(machine, *typed, book=BOOK).findings if f.check == LOSS)


@pytest.mark.parametrize(
    ("flow", "loss", "rated", "outcome"),
    [
        ("4.2 gpm", "2 psi", "4.2 gpm", "small"),
        ("2.2 gpm", "4 psi", "4.2 gpm", "large"),  # 14.6 psi at the rated flow
        ("2.2 gpm", "4 psi", "2.2 gpm", "small"),  # another plate: 4 psi as it stands
        ("6.4 gpm", "6.5 psi", "4.2 gpm", "small"),  # 2.8 psi
        ("16 L/min", "2 psi", "4.2 gpm", "small"),
    ],
)
def test_loss_at_the_flow(flow: str, loss: str, rated: str, outcome: str) -> None:
    found = _found(_machine(rated), (FLOW, flow), (LOSS, loss))
    assert found.outcome == outcome
    assert found.rule == LOSS
    assert found.consults == (f"{FLOW} at 0",)


def test_the_gauge_serves_where_no_flow_was_caught() -> None:
    found = _found(_machine(), (GAUGE, "6"), (LOSS, "4"))
    assert found.outcome == "large"  # 6 psi drives 55 %: 13 psi at the rated flow
    assert found.consults == (f"{GAUGE} at 0",)


def test_without_either_the_plain_band_answers() -> None:
    found = _found(_machine(), (LOSS, "4"))
    assert (found.rule, found.outcome) == ("plain_band", "small")


def test_near_the_edge() -> None:
    weights = _found(_machine(), (FLOW, "4.2 gpm"), (LOSS, "5 psi")).weights
    assert 0.4 < weights["large"] < 0.6


def test_expected_with_its_working() -> None:
    shown = expected(BOOK, _machine(), [reading(FLOW, "6.3 gpm", book=BOOK)], LOSS)
    assert shown is not None
    assert shown.lines == ("under 11 psi at the flow there is",)
    assert any("5 psi × 1.50² = 11 psi" in line for line in shown.working)
    alone = expected(BOOK, _machine(), [], LOSS)
    assert alone is not None
    assert alone.lines == ("under 5 psi at the rated flow",)
