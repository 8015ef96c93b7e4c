"""Air speed from velocity pressure: 4005 √VP (form of the industrial ventilation manual), SI, and traverses."""

from __future__ import annotations

import pytest

from diagnose.formulas import said
from diagnose.physics.air import STANDARD_DENSITY, mean_speed, speed_of_pressure
from diagnose.units import parse_quantity

FPM, INCH = parse_quantity("1 fpm", "air speed").si, parse_quantity("1 inWG", "pressure").si


@pytest.mark.parametrize(
    ("inches", "printed"), [(0.0625, 1001), (0.10, 1266), (0.25, 2002.5), (0.5, 2832), (1.0, 4005)]
)
def test_4005_rule(inches: float, printed: float) -> None:
    """0.075 lb/ft3; the rule's 4005 is rounded, so 0.2 % is allowed."""
    assert speed_of_pressure(inches * INCH) / FPM == pytest.approx(printed, rel=2e-3)


def test_si() -> None:
    """50 Pa at 1.204 kg/m3: 9.11 m/s."""
    assert speed_of_pressure(50.0, 1.204) == pytest.approx(9.11, abs=5e-3)
    assert pytest.approx(1.204, abs=1e-3) == STANDARD_DENSITY


def test_wet_air_is_faster() -> None:
    """Form FROM MEMORY, confidence high: saturated air of 50 °C, 1.042 kg/m3, 0.25 in: 2149 fpm."""
    assert speed_of_pressure(0.25 * INCH, 1.042) / FPM == pytest.approx(2149, rel=2e-3)


def test_average_speeds_never_pressures() -> None:
    """DERIVED: the mean speed is 1416.9 fpm; the root of the mean pressure would give 1421.6."""
    pressures = [0.10, 0.12, 0.15, 0.15, 0.11]
    right = mean_speed([p * INCH for p in pressures]) / FPM
    wrong = speed_of_pressure(sum(pressures) / 5 * INCH) / FPM
    assert right == pytest.approx(1416.9, rel=2e-3)
    assert wrong / right == pytest.approx(1421.6 / 1416.9, rel=1e-4)


def test_the_calculators_line() -> None:
    """DERIVED mean of five points as the calculator writes it, 0.075 lb/ft3."""
    pressures = tuple(p * INCH for p in (0.10, 0.12, 0.15, 0.15, 0.11))
    lines = said("air-speed-mean", "us", velocity_pressures=pressures, density=1.2014)
    assert float(lines[-1].split(" = ")[1].split()[0]) == pytest.approx(1416.9, rel=1e-3)
