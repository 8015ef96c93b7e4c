"""Constants and examples of heat into water: trade institute sheet (secondary) and DERIVED rows."""

from __future__ import annotations

import pytest

from diagnose.physics.heat import (
    TRADE_HEAT,
    heat_up_time,
    power_for_rise,
    rise_of_flow,
    water_density,
    water_heat_capacity,
)
from diagnose.physics.streams import inlet_needed, outlet_temperature
from diagnose.units import parse_quantity


def _si(text: str, quantity: str) -> float:
    return parse_quantity(text, quantity).si


@pytest.mark.parametrize(
    ("flow", "rise", "kilowatts"),
    # DERIVED: 500 BTU/h per gpm and °F
    [("2.5 gpm", "40 F", 14.65), ("2.5 gpm", "70 F", 25.64), ("3.5 gpm", "40 F", 20.51), ("4.5 gpm", "70 F", 46.16)],
)
def test_500_rule(flow: str, rise: str, kilowatts: float) -> None:
    power = power_for_rise(_si(flow, "flow"), _si(rise, "temperature difference"))
    assert power / 1e3 == pytest.approx(kilowatts, abs=0.01)


@pytest.mark.parametrize(
    ("power", "flow", "rise"),
    # DERIVED: dT = kW x 3412 / (500 gpm)
    [("15 kW", "2.5 gpm", 40.9), ("18 kW", "3 gpm", 40.9), ("30 kW", "4.5 gpm", 45.5), ("30 kW", "4.2 gpm", 48.7)],
)
def test_booster_rise(power: str, flow: str, rise: float) -> None:
    assert rise_of_flow(_si(power, "power"), _si(flow, "flow")) * 1.8 == pytest.approx(rise, abs=0.06)


def test_one_kilowatt_is_4_1_gallons_an_hour_at_100_degrees() -> None:
    """Trade institute sheet, secondary; 3412.14 / 8.33 = 409.6."""
    rise = rise_of_flow(1e3, _si("4.1 gph", "flow")) * 1.8
    assert rise == pytest.approx(100, abs=0.2)


def test_one_element_open_on_15_kilowatt() -> None:
    """DERIVED: two thirds of 40.9 F° is 27.3; 140 °F in gives 167 °F."""
    rise = rise_of_flow(_si("15 kW", "power") * 2 / 3, _si("2.5 gpm", "flow")) * 1.8
    assert rise == pytest.approx(27.3, abs=0.05)
    assert 140 + rise == pytest.approx(167, abs=0.5)


def test_tank_heat_up() -> None:
    """DERIVED: 30 gal from 60 to 160 °F on 15 kW takes 29.3 min without losses."""
    seconds = heat_up_time(_si("30 gal", "volume"), _si("100 F", "temperature difference"), 15e3)
    assert seconds / 60 == pytest.approx(29.3, abs=0.05)


def test_500_rule_overstates_hot_water_by_2_6_per_cent() -> None:
    """DERIVED with IAPWS density at 180 °F: 487 instead of 500 BTU/h per gpm and °F."""
    hot = water_density(_si("180 F", "temperature"))
    assert hot / 0.45359237 * 3.785411784e-3 * 60 == pytest.approx(487, abs=1.5)  # lb/gal x 60 min, 1 BTU/lb °F
    assert pytest.approx(4.18e6, rel=2e-3) == TRADE_HEAT
    true = hot * water_heat_capacity(_si("180 F", "temperature"))
    assert true / TRADE_HEAT - 1 == pytest.approx(-0.026, abs=5e-4)
    cold = power_for_rise(_si("2.5 gpm", "flow"), _si("40 F", "temperature difference"))
    warm = power_for_rise(_si("2.5 gpm", "flow"), _si("40 F", "temperature difference"), heat_per_volume=true)
    assert warm / cold == pytest.approx(0.974, abs=5e-4)


@pytest.mark.parametrize(("inlet", "outlet"), [("140 F", 180.9), ("110 F", 150.9)])
def test_cold_supply_is_no_fault_of_the_booster(inlet: str, outlet: float) -> None:
    """DERIVED: 15 kW into 2.5 gpm gives 40.9 F° from wherever the water starts."""
    leaving = outlet_temperature(_si(inlet, "temperature"), 15e3, _si("2.5 gpm", "flow"))
    assert leaving * 1.8 - 459.67 == pytest.approx(outlet, abs=0.06)
    needed = inlet_needed(_si("180 F", "temperature"), 15e3, _si("2.5 gpm", "flow")) * 1.8 - 459.67
    assert needed == pytest.approx(139.1, abs=0.06)
