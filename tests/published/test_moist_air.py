"""Moist air: tables and example 1 of ASHRAE Fundamentals 2017, chapter 1, as given by the psychrolib tests."""

from __future__ import annotations

import psychrolib
import pytest

from diagnose.physics import air_state, moist_air

ZERO = 273.15
psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize(("celsius", "printed"), [(5, 872.6), (25, 3169.7), (50, 12351.3), (100, 101418.0)])
def test_saturation_pressure(celsius: float, printed: float) -> None:
    """Table 3, Pa, within 3 parts in 10,000."""
    assert moist_air.saturation_pressure(ZERO + celsius) == pytest.approx(printed, rel=3e-4)


@pytest.mark.parametrize(
    ("celsius", "printed", "within"),
    [(5, 0.005425, 0.01), (25, 0.020173, 0.01), (50, 0.086863, 0.01), (85, 0.838105, 0.02)],
)
def test_saturated_humidity_ratio(celsius: float, printed: float, within: float) -> None:
    """Table 2, kg/kg at 101325 Pa."""
    assert moist_air.humidity_ratio(ZERO + celsius, 1.0) == pytest.approx(printed, rel=within)


@pytest.mark.parametrize(("celsius", "printed"), [(25, 76504), (50, 275353), (85, 2307539)])
def test_saturated_enthalpy(celsius: float, printed: float) -> None:
    """Table 2, J/kg, within 1 %, with the humidity ratio of the same formulas."""
    ratio = moist_air.humidity_ratio(ZERO + celsius, 1.0)
    assert moist_air.moist_enthalpy(ZERO + celsius, ratio) == pytest.approx(printed, rel=0.01)


def test_example_1() -> None:
    """40 °C dry, 20 °C wet: W 0.0065, dew point 7 °C, 14 %, 56.7 kJ/kg, 0.896 m3/kg as read from the chart."""
    ratio = air_state.humidity_of_wet_bulb(ZERO + 40, ZERO + 20)
    assert ratio == pytest.approx(0.0065, abs=1e-4)
    assert air_state.dew_point(ratio) - ZERO == pytest.approx(7, abs=0.7)
    assert air_state.relative_humidity(ZERO + 40, ratio) == pytest.approx(0.14, abs=0.005)
    assert moist_air.moist_enthalpy(ZERO + 40, ratio) == pytest.approx(56700, rel=0.01)
    assert moist_air.moist_volume(ZERO + 40, ratio) == pytest.approx(0.896, abs=1e-3)


@pytest.mark.parametrize(
    ("celsius", "ratio", "enthalpy", "density"),
    [
        (30, 0.02720, 99.7, 1.146),
        (40, 0.04888, 166.1, 1.096),
        (60, 0.15242, 458.6, 0.981),
        (70, 0.27669, 798.4, 0.909),
        (80, 0.54694, 1529.8, 0.823),
    ],
)
def test_more_saturated_air(celsius: float, ratio: float, enthalpy: float, density: float) -> None:
    """DERIVED by psychrolib, ideal gas."""
    found = moist_air.humidity_ratio(ZERO + celsius, 1.0)
    assert found == pytest.approx(ratio, rel=1e-3)
    assert moist_air.moist_enthalpy(ZERO + celsius, found) / 1e3 == pytest.approx(enthalpy, rel=1e-3)
    assert moist_air.moist_density(ZERO + celsius, found) == pytest.approx(density, abs=1e-3)


@pytest.mark.parametrize("celsius", [1, 12, 24, 37, 48, 63, 79, 88])
@pytest.mark.parametrize("humidity", [0.2, 0.5, 0.93])
def test_against_psychrolib(celsius: float, humidity: float) -> None:
    ratio = moist_air.humidity_ratio(ZERO + celsius, humidity)
    assert ratio == pytest.approx(psychrolib.GetHumRatioFromRelHum(celsius, humidity, 101325), rel=1e-3)
    assert air_state.relative_humidity(ZERO + celsius, ratio) == pytest.approx(humidity)
    assert moist_air.moist_enthalpy(ZERO + celsius, ratio) == pytest.approx(
        psychrolib.GetMoistAirEnthalpy(celsius, ratio), rel=1e-3
    )
    assert moist_air.moist_density(ZERO + celsius, ratio) == pytest.approx(
        psychrolib.GetMoistAirDensity(celsius, ratio, 101325), rel=1e-3
    )
    if ratio > 0.005:
        dew = psychrolib.GetTDewPointFromHumRatio(celsius, ratio, 101325)
        assert air_state.dew_point(ratio) - ZERO == pytest.approx(dew, abs=0.05)


@pytest.mark.parametrize(("dry", "wet"), [(24, 17), (35, 33), (40, 20), (55, 50)])
def test_two_thermometers_against_psychrolib(dry: float, wet: float) -> None:
    found = air_state.humidity_of_wet_bulb(ZERO + dry, ZERO + wet)
    assert found == pytest.approx(psychrolib.GetHumRatioFromTWetBulb(dry, wet, 101325), rel=2e-3)
