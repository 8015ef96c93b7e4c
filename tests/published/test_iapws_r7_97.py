"""IAPWS R7-97 (2007), industrial formulation for water and steam: tables 35 and 36, and a library that computes it.

The release's numbers are FROM MEMORY, confidence high; the library reproduces them.
"""

from __future__ import annotations

import math

import pytest
from iapws import IAPWS97

from diagnose.physics.heat import TRADE_HEAT, water_density, water_heat_capacity
from diagnose.physics.steam import latent_heat, saturation_pressure, saturation_temperature

AIR = 0.101325  # MPa


@pytest.mark.parametrize(("pressure", "temperature"), [(0.1, 372.755919), (1.0, 453.035632)])
def test_table_36_saturation_temperature(pressure: float, temperature: float) -> None:
    assert saturation_temperature(pressure * 1e6) == pytest.approx(temperature, abs=1e-6)


def test_table_35_saturation_pressure() -> None:
    assert saturation_pressure(300.0) / 1e6 == pytest.approx(0.00353658941, rel=1e-8)


def test_beyond_200_celsius_it_refuses() -> None:
    """Table 35 has 500 K and table 36 10 MPa: outside what steam in a kitchen is, and refused rather than stretched."""
    with pytest.raises(ValueError, match="outside"):
        saturation_pressure(500.0)
    with pytest.raises(ValueError, match="outside"):
        saturation_temperature(10e6)


@pytest.mark.parametrize(
    ("celsius", "kilopascal"), [(60, 19.946), (70, 31.201), (80, 47.415), (90, 70.182), (100, 101.418)]
)
def test_saturation_pressure_of_hot_tanks(celsius: float, kilopascal: float) -> None:
    """DERIVED with the library."""
    assert saturation_pressure(celsius + 273.15) / 1e3 == pytest.approx(kilopascal, abs=6e-4)


@pytest.mark.parametrize("celsius", range(10, 201, 5))
def test_saturation_and_latent_heat_against_the_library(celsius: int) -> None:
    steam, water = IAPWS97(T=celsius + 273.15, x=1), IAPWS97(T=celsius + 273.15, x=0)
    assert saturation_pressure(celsius + 273.15) == pytest.approx(steam.P * 1e6, rel=1e-7)
    assert saturation_temperature(steam.P * 1e6) == pytest.approx(celsius + 273.15, abs=1e-6)
    assert latent_heat(steam.P * 1e6) == pytest.approx((steam.h - water.h) * 1e3, rel=1e-4)


@pytest.mark.parametrize("celsius", range(10, 91, 2))
def test_water_against_the_library(celsius: int) -> None:
    """Density and heat capacity within 0.05 % from 10 to 90 °C."""
    water = IAPWS97(T=celsius + 273.15, P=AIR)
    assert water_density(celsius + 273.15) == pytest.approx(water.rho, rel=5e-4)
    assert water_density(celsius + 273.15) == pytest.approx(water.rho, abs=0.02)
    assert water_heat_capacity(celsius + 273.15) == pytest.approx(water.cp * 1e3, rel=5e-4)


@pytest.mark.parametrize("celsius", range(10, 91, 10))
def test_trade_rule_stands_within_three_per_cent_of_water_at_any_of_these(celsius: int) -> None:
    water = IAPWS97(T=celsius + 273.15, P=AIR)
    assert math.isclose(TRADE_HEAT, water.rho * water.cp * 1e3, rel_tol=0.03)
