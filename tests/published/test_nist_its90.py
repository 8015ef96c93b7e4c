"""Thermocouples: NIST SRD 60 and Monograph 175, values from full-precision coefficients; classes of IEC 60584-1."""

from __future__ import annotations

import pytest

from diagnose.physics.thermocouples import (
    junction_temperature,
    reversed_reading,
    terminal_emf,
    thermocouple_emf,
    thermocouple_tolerance,
    uncompensated_reading,
)

CELSIUS = (20, 25, 50, 60, 70, 80, 82, 90, 100)
TABLE = {
    "K": (0.798, 1.000, 2.023, 2.436, 2.851, 3.267, 3.350, 3.682, 4.096),
    "J": (1.019, 1.277, 2.585, 3.116, 3.650, 4.187, 4.294, 4.726, 5.269),
    "T": (0.790, 0.992, 2.036, 2.468, 2.909, 3.358, 3.448, 3.814, 4.279),
}
ROWS = [(kind, t, mv) for kind, row in TABLE.items() for t, mv in zip(CELSIUS, row, strict=True)]


@pytest.mark.parametrize(("kind", "celsius", "millivolts"), ROWS)
def test_table(kind: str, celsius: float, millivolts: float) -> None:
    assert thermocouple_emf(celsius + 273.15, kind) * 1e3 == pytest.approx(millivolts, abs=0.001)


def test_cold_junction() -> None:
    """DERIVED: K at 80 °C with terminals at 25 °C gives 2.267 mV and reads 55.9 °C if uncompensated."""
    assert terminal_emf(353.15, 298.15, "K") * 1e3 == pytest.approx(2.267, abs=0.001)
    assert uncompensated_reading(353.15, 298.15, "K") - 273.15 == pytest.approx(55.9, abs=0.05)
    assert junction_temperature(2.267e-3, 298.15, "K") - 273.15 == pytest.approx(80.0, abs=0.05)


def test_reversed_pair_falls() -> None:
    assert reversed_reading(353.15, 298.15, "K") < reversed_reading(333.15, 298.15, "K") < 298.15


@pytest.mark.parametrize(
    ("kind", "grade", "celsius", "degrees"),
    # IEC 60584-1, from memory
    [("K", "1", 82, 1.5), ("J", "1", 82, 1.5), ("T", "1", 82, 0.5), ("K", "2", 82, 2.5), ("T", "2", 82, 1.0)],
)
def test_tolerance_classes(kind: str, grade: str, celsius: float, degrees: float) -> None:
    assert thermocouple_tolerance(celsius + 273.15, kind, grade) == degrees


def test_shares_count_where_they_are_larger() -> None:
    """IEC 60584-1, from memory: 0.75 % of 400 would be 3.0; within this range of T 0.75 % of 200 is 1.5."""
    assert thermocouple_tolerance(473.15, "T", "2") == pytest.approx(1.5)
