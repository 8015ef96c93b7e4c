"""Thermistors: a public sheet of a generic 10 kohm curve, a logger manual, DERIVED rows of the beta model."""

from __future__ import annotations

import pytest

from diagnose.physics.ntc import (
    beta_of_two_points,
    beta_resistance,
    ntc_resistance,
    ntc_temperature,
    wrong_curve_reading,
)

A, B, C = 1.12924e-3, 2.34108e-4, 0.87755e-7
SHEET = {
    0: 32650, 10: 19903, 20: 12493, 25: 10000, 30: 8056, 40: 5325, 50: 3601, 60: 2487, 70: 1752, 80: 1256, 82.2: 1169,
    85: 1070, 90: 916, 100: 678,
}  # fmt: skip
BETA_3950 = {60: 2486, 70: 1760, 80: 1270, 90: 934, 100: 698}
BETA_3435 = {60: 2981, 70: 2207, 80: 1662, 90: 1272}


@pytest.mark.parametrize(("celsius", "ohms"), SHEET.items())
def test_sheet(celsius: float, ohms: float) -> None:
    assert ntc_resistance(celsius + 273.15, A, B, C) == pytest.approx(ohms, rel=1e-3)
    assert ntc_temperature(ohms, A, B, C) - 273.15 == pytest.approx(celsius, abs=0.04)


def test_independent_entries() -> None:
    """A logger manual: 32650.9 ohm at 0 °C, 31030.8 at 1 °C."""
    assert ntc_temperature(32650.9, A, B, C) - 273.15 == pytest.approx(-0.001, abs=0.001)
    assert ntc_temperature(31030.8, A, B, C) - 273.15 == pytest.approx(1.0, abs=0.005)


@pytest.mark.parametrize(
    ("beta", "celsius", "ohms"),
    [(3950, t, r) for t, r in BETA_3950.items()] + [(3435, t, r) for t, r in BETA_3435.items()],
)
def test_beta_model(beta: float, celsius: float, ohms: float) -> None:
    assert beta_resistance(celsius + 273.15, 10e3, beta) == pytest.approx(ohms, abs=0.6)


def test_beta_of_the_sheet() -> None:
    assert beta_of_two_points(10000, 298.15, 1070.0, 358.15) == pytest.approx(3976.8, abs=2)


def test_trap_wrong_curve_is_8_5_degrees_at_80() -> None:
    """DERIVED: a probe of beta 3435 has 1662 ohm at 80 °C, which the 3977 curve takes for 71.5 °C."""
    shown = ntc_temperature(beta_resistance(353.15, 10e3, 3435), A, B, C) - 273.15
    assert shown == pytest.approx(71.5, abs=0.1)
    assert 80 - shown == pytest.approx(8.5, abs=0.1)
    # By beta alone it is 0.2 more, as beta is a straight line through a curve.
    assert wrong_curve_reading(353.15, 10e3, 3435, 10e3, 3976.8) - 273.15 == pytest.approx(71.3, abs=0.1)
