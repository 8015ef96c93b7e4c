"""Platinum sensors: IEC 60751:2008, full table and formula."""

from __future__ import annotations

import pytest

from diagnose.physics.pt100 import pt100_lead_error, pt100_resistance, pt100_temperature, pt100_tolerance

TABLE = {
    0: 100.00, 10: 103.90, 20: 107.79, 25: 109.73, 50: 119.40, 60: 123.24, 70: 127.08, 80: 130.90, 90: 134.71,
    100: 138.51, 140: 153.58, 150: 157.33,
}  # fmt: skip


@pytest.mark.parametrize(("celsius", "ohms"), TABLE.items())
def test_table(celsius: float, ohms: float) -> None:
    assert pt100_resistance(celsius + 273.15) == pytest.approx(ohms, abs=0.0051)


@pytest.mark.parametrize(("ohms", "celsius"), [(127.08, 70.01), (130.90, 80.01)])
def test_inverse(ohms: float, celsius: float) -> None:
    assert pt100_temperature(ohms) - 273.15 == pytest.approx(celsius, abs=0.0051)


def test_tolerance_classes() -> None:
    assert pt100_tolerance(355.15, "A") == pytest.approx(0.314)
    assert pt100_tolerance(355.15, "B") == pytest.approx(0.710)


def test_one_ohm_of_leads_reads_2_6_degrees_hot() -> None:
    """DERIVED from the slope, 0.385 ohm a degree."""
    assert pt100_lead_error(353.15, 1.0) == pytest.approx(2.6, abs=0.05)
    assert pt100_lead_error(273.15, 0.385) == pytest.approx(1.0, abs=0.02)
