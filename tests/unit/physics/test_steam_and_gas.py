"""A steam coil followed along its length, gas by its meter, and nonsense."""

from __future__ import annotations

import pytest
from scipy.integrate import solve_ivp

from diagnose.physics import gas, steam, steam_coil
from diagnose.physics.heat import TRADE_HEAT

PSI, GPM, BTU = 6894.757293168, 3.785411784e-3 / 60, 1055.05585262
RATED = (20 * PSI, 333.15, 4.5 * GPM, 40 / 1.8)


def along_the_coil(conductance: float, hot: float, inlet: float, flow: float) -> float:
    """Rise of the water, followed from one end of the coil to the other."""
    done = solve_ivp(
        lambda _, t: [conductance * (hot - t[0]) / (TRADE_HEAT * flow)], (0.0, 1.0), [inlet], rtol=1e-10, atol=1e-10
    )
    return float(done.y[0][-1]) - inlet


@pytest.mark.parametrize(
    ("psi", "inlet", "gpm"), [(20, 333.15, 4.5), (6, 333.15, 4.5), (20, 316.0, 3.0), (35, 340.0, 6.0)]
)
def test_coil_against_its_own_length(psi: float, inlet: float, gpm: float) -> None:
    rated_hot = steam.steam_temperature_at_gauge(20 * PSI)
    units = steam_coil.transfer_units(40 / 1.8, rated_hot - 333.15)
    conductance = units * TRADE_HEAT * 4.5 * GPM
    followed = along_the_coil(conductance, steam.steam_temperature_at_gauge(psi * PSI), inlet, gpm * GPM)
    assert steam_coil.coil_rise(psi * PSI, inlet, gpm * GPM, *RATED) == pytest.approx(followed, rel=1e-6)


def test_coil_as_rated_gives_its_rated_rise_and_less_of_everything_with_less_steam() -> None:
    assert steam_coil.coil_rise(RATED[0], RATED[1], RATED[2], *RATED) == pytest.approx(RATED[3])
    rises = [steam_coil.coil_rise(p * PSI, 333.15, 4.5 * GPM, *RATED) for p in (2, 5, 10, 20, 40)]
    assert rises == sorted(rises)


def test_condensate_is_the_heat_of_the_rise() -> None:
    made = steam.steam_for_rise(4.5 * GPM, 40 / 1.8, 20 * PSI)
    assert steam.condensate_power(made, 20 * PSI) == pytest.approx(TRADE_HEAT * 4.5 * GPM * 40 / 1.8)


def test_gauge_and_absolute_are_two_things() -> None:
    assert steam.steam_temperature_at_gauge(0.0) == pytest.approx(373.12, abs=0.01)
    assert steam.saturation_temperature(20 * PSI) < steam.steam_temperature_at_gauge(20 * PSI) - 15
    assert steam.latent_heat(20 * PSI) > steam.latent_heat_at_gauge(20 * PSI)


def test_trade_rule_of_the_meter() -> None:
    """3600 x cubic feet x heating value / seconds, at base pressure: 2 ft3 in 74 s is 100,000 BTU/h."""
    volume = 2 * 0.3048**3
    read = gas.gas_input(volume, 74.0, gauge=gas.BASE_PRESSURE - 101325.0) / BTU * 3600
    assert read == pytest.approx(3600 * 2 * 1030 / 74, rel=1e-6)


def test_a_meter_at_two_psi_counts_an_eighth_too_little() -> None:
    assert gas.meter_factor(2 * PSI) / gas.meter_factor(0.0) == pytest.approx(1 + 2 / 14.696, rel=1e-3)
    assert gas.meter_factor(0.0, 273.15) > gas.meter_factor(0.0)


def test_gas_there_and_back() -> None:
    power = gas.gas_for_rise(3 * GPM, 20.0, 0.75)
    assert gas.gas_rise(power, 0.75, 3 * GPM) == pytest.approx(20.0)
    assert gas.input_at_manifold(100.0, 3.5, 3.5) == pytest.approx(100.0)
    assert gas.input_at_manifold(100.0, 0.875, 3.5) == pytest.approx(50.0)


def test_nonsense_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="gauge"):
        steam.steam_temperature_at_gauge(-1.0)
    with pytest.raises(ValueError, match="condensate"):
        steam.condensate_power(-1.0, 20 * PSI)
    with pytest.raises(ValueError, match="rise to the steam"):
        steam_coil.coil_rise(20 * PSI, 333.15, 4.5 * GPM, 20 * PSI, 333.15, 4.5 * GPM, 90.0)
    with pytest.raises(ValueError, match="steam_over_inlet"):
        steam_coil.coil_rise(0.0, 380.0, 4.5 * GPM, *RATED)
    with pytest.raises(ValueError, match="time"):
        gas.gas_input(0.05, 0.0)
    with pytest.raises(ValueError, match="efficiency"):
        gas.gas_rise(1e5, 1.2, 3 * GPM)
    with pytest.raises(ValueError, match="efficiency"):
        gas.gas_for_rise(3 * GPM, 20.0, 0.0)
