"""TM 5-683 / NAVFAC MO-116, chapter 5: a contactor's coil works from 85 to 110 % of its rated volts."""

from __future__ import annotations

import pytest

from diagnose.calculator import gather_figures, reckon
from diagnose.formulas import find_formula
from diagnose.model import load_book


@pytest.mark.parametrize(
    ("volts", "verdict"), [("101", "below"), ("103", "inside"), ("131", "inside"), ("133", "above")]
)
def test_120_volt_coil(volts: str, verdict: str) -> None:
    """Under 102 or over 132 V is to be pointed out."""
    wanted = gather_figures(find_formula("coil-volts"), {"voltage": volts, "rated": "120"})
    held = reckon(wanted, load_book()).held
    assert held is not None
    assert held.verdict == verdict
