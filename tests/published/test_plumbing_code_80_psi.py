"""Plumbing codes ask for a pressure regulator and strainer where the supply exceeds 80 psi (a city's amendment of the
Uniform Plumbing Code; secondary copy)."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, load_book
from tests.rulebook import run

BOOK = load_book()
PLATE = Machine("m", BOOK.machines["two_tank_electric_208"], {"fill_pressure": "30 psi"})


@pytest.mark.parametrize(("psi", "outcome"), [("85", "high"), ("75", "good"), ("25", "low")])
def test_ahead_of_the_regulator(psi: str, outcome: str) -> None:
    found = run(PLATE, ("supply_water.pressure_ahead", psi), book=BOOK).findings
    assert found[0].outcome == outcome


@pytest.mark.parametrize(("rest", "flagged"), [("85", True), ("75", False)])
def test_ahead_of_the_fill_at_rest(rest: str, flagged: bool) -> None:
    (found,) = run(PLATE, ("level_control.fill_pressure", f"{rest} 40"), book=BOOK).findings
    assert found.outcome == ("too_high" if flagged else "holds")
    assert any("more than a branch should stand" in line for line in found.working) is flagged
