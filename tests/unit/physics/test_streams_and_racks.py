"""Streams, pipes and racks against enthalpies of the water table, a pipe followed piece by piece, and nonsense."""

from __future__ import annotations

import pytest
from iapws import IAPWS97
from scipy.integrate import solve_ivp

from diagnose.physics import racks, streams
from diagnose.physics.heat import TRADE_HEAT, heat_per_volume, power_for_rise, rise_of_flow

GPM = 3.785411784e-3 / 60


@pytest.mark.parametrize(("hot", "cold", "share"), [(355.0, 285.0, 0.5), (335.0, 300.0, 0.8), (360.0, 290.0, 0.1)])
def test_mixing_against_enthalpies(hot: float, cold: float, share: float) -> None:
    """By the water table masses and enthalpies add; by volume and one heat it is right within 1 % of the difference."""
    one, two = IAPWS97(T=hot, P=0.101325), IAPWS97(T=cold, P=0.101325)
    mass_hot, mass_cold = share * one.rho, (1 - share) * two.rho
    mixed = IAPWS97(P=0.101325, h=(mass_hot * one.h + mass_cold * two.h) / (mass_hot + mass_cold)).T
    assert streams.mixed_temperature(share, hot, 1 - share, cold) == pytest.approx(mixed, abs=0.01 * (hot - cold))


def test_pipe_followed_piece_by_piece() -> None:
    flow, room, loss = 2.5 * GPM, 295.0, 2.0
    followed = solve_ivp(
        lambda _, t: [-loss * (t[0] - room) / (TRADE_HEAT * flow)], (0.0, 40.0), [355.0], rtol=1e-10, atol=1e-10
    ).y[0][-1]
    assert streams.pipe_end_temperature(355.0, room, 40.0, loss, flow) == pytest.approx(followed, abs=1e-6)


def test_pipe_without_length_or_loss_keeps_its_heat_and_a_slow_one_cools_to_the_room() -> None:
    assert streams.pipe_end_temperature(355.0, 295.0, 0.0, 2.0, GPM) == 355.0
    assert streams.pipe_end_temperature(355.0, 295.0, 10.0, 0.0, GPM) == 355.0
    assert streams.pipe_end_temperature(355.0, 295.0, 5000.0, 3.0, GPM) == pytest.approx(295.0, abs=1e-6)


def test_trade_figure_of_a_pipe() -> None:
    """Common practice: 1 to 3 F° on a short run, up to 10 on a long bare one."""
    short = 355.0 - streams.pipe_end_temperature(355.0, 295.0, 9.0, 0.7, 2.5 * GPM)
    long = 355.0 - streams.pipe_end_temperature(355.0, 295.0, 60.0, 1.0, 2.5 * GPM)
    assert 0.5 < short * 1.8 < 3
    assert 6 < long * 1.8 < 12


def test_inlet_outlet_and_efficiency_go_back_and_forth() -> None:
    out = streams.outlet_temperature(333.0, 30e3, 4.2 * GPM)
    assert streams.inlet_needed(out, 30e3, 4.2 * GPM) == pytest.approx(333.0)
    power = power_for_rise(4.2 * GPM, 20.0, 0.75)
    assert streams.heater_efficiency(4.2 * GPM, 20.0, power) == pytest.approx(0.75)
    assert rise_of_flow(30e3, 4.2 * GPM) == pytest.approx(out - 333.0)


@pytest.mark.parametrize("celsius", [15, 40, 60, 82])
def test_heat_of_a_volume_against_the_table(celsius: int) -> None:
    water = IAPWS97(T=celsius + 273.15, P=0.101325)
    assert heat_per_volume(celsius + 273.15) == pytest.approx(water.rho * water.cp * 1e3, rel=5e-4)


def test_a_rush_of_racks_against_the_tank_heater() -> None:
    """What racks take, the heater must bring: drop and power are the same heat, told in two ways."""
    heat = racks.heat_per_rack(9.0, 850.0, 1.8, 1900.0, 295.0, 343.0)
    assert racks.drop_per_rack(heat, 0.1) * TRADE_HEAT * 0.1 == pytest.approx(heat)
    power = racks.power_for_racks(heat, 1 / 60)
    assert racks.recovery_time(heat, power, 0.0) == pytest.approx(60.0)
    assert racks.recovery_time(heat, power, power / 2) == pytest.approx(120.0)


def test_nonsense_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="flow"):
        streams.mixed_temperature(0.0, 340.0, 0.0, 290.0)
    with pytest.raises(ValueError, match="cold_flow"):
        streams.mixed_temperature(1.0, 340.0, -1.0, 290.0)
    with pytest.raises(ValueError, match="length"):
        streams.pipe_end_temperature(355.0, 295.0, -1.0, 1.0, GPM)
    with pytest.raises(ValueError, match="power_left"):
        racks.recovery_time(5e5, 2e3, 2.5e3)
    with pytest.raises(ValueError, match="ware_mass"):
        racks.heat_per_rack(-1.0, 850.0, 1.8, 1900.0, 295.0, 343.0)
    with pytest.raises(ValueError, match="start"):
        racks.heat_per_rack(1.0, 850.0, 1.8, 1900.0, -1.0, 343.0)
