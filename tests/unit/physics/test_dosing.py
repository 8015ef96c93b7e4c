"""Doses, stocks, softeners: mass in is mass out, judged by bookkeeping and by integration step by step."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from diagnose.physics import chlorine, dosing, sanitising, scale, stock, tube_pump, water


@given(st.floats(1e-7, 1e-4), st.floats(0.01, 0.2), st.floats(1e-3, 0.05))
def test_what_goes_in_is_what_is_there(dose: float, strength: float, volume: float) -> None:
    grams = dose * 1e6 * strength  # mL of stock with so many grams each
    assert math.isclose(dosing.strength_of_dose(dose, strength, volume) * volume, grams, rel_tol=1e-9)
    there = dosing.strength_of_dose(dose, strength, volume)
    assert math.isclose(dosing.dose_for_strength(there, strength, volume), dose, rel_tol=1e-9)


@given(st.floats(1e-8, 1e-5), st.floats(1e-5, 1e-3), st.floats(1, 60))
def test_a_minute_and_a_rack_agree(pump: float, rinse: float, seconds: float) -> None:
    """Fed with the rinse, dose over water is output over flow whatever the time."""
    by_rack = dosing.strength_of_dose(tube_pump.dose_of_pump(pump, seconds), 0.05, rinse * seconds)
    assert math.isclose(by_rack, dosing.strength_in_stream(pump, 0.05, rinse), rel_tol=1e-9)
    assert math.isclose(tube_pump.feed_time(tube_pump.dose_of_pump(pump, seconds), pump), seconds, rel_tol=1e-9)


def test_turns_make_the_dose() -> None:
    flow = tube_pump.tube_pump_flow(0.5, 4e-7)
    assert math.isclose(tube_pump.dose_of_turns(0.5, 4e-7, 18.0), tube_pump.dose_of_pump(flow, 18.0))


def test_a_mixed_tank_by_integration() -> None:
    inflow, volume = 2e-4, 0.08
    solved = solve_ivp(lambda t, c: -inflow / volume * c, (0, 900), [2000.0], rtol=1e-9)
    assert math.isclose(stock.tank_strength_after(2000.0, inflow * 900, volume), solved.y[0][-1], rel_tol=1e-5)


def test_feeding_what_is_carried_off_holds_the_strength() -> None:
    """Rack by rack: what the rinse pushes out is put back, and the tank stays within a percent or two."""
    strength, tank, rack = 2000.0, 0.083, 0.004
    mass = strength * tank / 1e3
    for _ in range(500):
        mass = mass * math.exp(-rack / tank) + stock.detergent_needed(strength, rack)
    assert math.isclose(mass / tank * 1e3, strength, rel_tol=0.03)


def test_half_of_a_stock_is_left_after_its_half_life() -> None:
    assert stock.stock_after(0.1, 0.0, 1e6) == 0.1
    assert math.isclose(stock.stock_after(0.1, 3e6, 1e6), 0.0125)


@given(st.floats(100, 800), st.floats(0, 50), st.floats(0, 1))
def test_bypass_comes_back(hard: float, soft: float, share: float) -> None:
    mixed = water.mixed_hardness(hard, soft, share)
    assert math.isclose(water.bypass_share(min(max(mixed, soft), hard), hard, soft), share, abs_tol=1e-9)


def test_softener_takes_out_what_it_can_hold() -> None:
    volume = scale.softener_volume(2.0, 300.0)
    assert math.isclose(scale.scale_mass(300.0, volume), 2.0)
    assert math.isclose(scale.softener_days(2.0, 300.0, volume / 4), 4.0)


def test_a_layer_weighs_what_it_is() -> None:
    assert math.isclose(scale.scale_layer(2710 * 0.5 * 1e-3, 0.5, 2710.0), 1e-3)


@pytest.mark.parametrize(
    "nonsense",
    [
        lambda: dosing.strength_of_dose(1e-6, 0.05, 0.0),
        lambda: tube_pump.tube_pump_flow(-1.0, 1e-6),
        lambda: stock.stock_after(0.05, -1.0, 1e6),
        lambda: water.mixed_hardness(300.0, 0.0, 1.2),
        lambda: water.bypass_share(400.0, 300.0, 0.0),
        lambda: water.hardness_from_ions(-1.0, 0.0),
        lambda: scale.softener_volume(1.0, 0.0),
        lambda: sanitising.heat_unit_rate(-5.0),
        lambda: sanitising.heat_units_of_trace([], 1.0),
        lambda: sanitising.heat_units_of_trace([340.0], 0.0),
        lambda: sanitising.temperature_for_heat_units(5.0),
        lambda: sanitising.temperature_for_heat_units(1e5),
        lambda: sanitising.z_of_two_points(10.0, 10.0, 5.0),
        lambda: chlorine.chlorine_verdict(50.0, 99.0, 310.0),
        lambda: chlorine.chlorine_least_temperature(10.0, 7.0),
        lambda: chlorine.contact_time_least("bleach", 50.0, 7.0, 300.0),
    ],
)
def test_nonsense_is_refused(nonsense) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=r"."):
        nonsense()
