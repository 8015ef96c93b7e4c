"""Water at 0.101325 MPa: values DERIVED with an IAPWS-IF97 library."""

from __future__ import annotations

import pytest

from diagnose.physics.heat import water_density, water_heat_capacity

# °C, kg/m3, kJ/(kg K), lb/gal
ROWS = [
    (10, 999.70, 4.195, 8.343),
    (20, 998.21, 4.185, 8.330),
    (40, 992.22, 4.179, 8.281),
    (50, 988.05, 4.180, 8.246),
    (60, 983.21, 4.183, 8.205),
    (66, 980.02, 4.186, 8.179),
    (70, 977.78, 4.188, 8.160),
    (71.1, 977.14, 4.189, 8.155),
    (80, 971.80, 4.196, 8.110),
    (82.2, 970.41, 4.197, 8.098),
    (90, 965.32, 4.205, 8.056),
]


@pytest.mark.parametrize(("celsius", "density", "capacity", "pounds"), ROWS)
def test_density_and_heat_capacity(celsius: float, density: float, capacity: float, pounds: float) -> None:
    kelvin = celsius + 273.15
    # The formula is of 1975: it stands within 0.02 kg/m3, a hundredth of what the rules could notice.
    assert water_density(kelvin) == pytest.approx(density, abs=0.02)
    assert water_density(kelvin) / 0.45359237 * 3.785411784e-3 == pytest.approx(pounds, abs=6e-4)
    assert water_heat_capacity(kelvin) / 1e3 == pytest.approx(capacity, abs=1e-3)
