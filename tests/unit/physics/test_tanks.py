"""Tanks against a numerical solution of their own heat balance, and against nonsense."""

from __future__ import annotations

import math

import pytest
from scipy.integrate import solve_ivp

from diagnose.physics import overflow, tanks
from diagnose.physics.heat import TRADE_HEAT, heat_up_time

GAL = 3.785411784e-3
TANK = {"volume": 30 * GAL, "power": 15e3, "loss": 50.0, "room": 295.0}
RUNS = {"inflow": 0.8 * GAL / 60, "inflow_temperature": 320.0}


def followed(
    start: float, time: float, *, volume: float, power: float, loss: float, room: float, **runs: float
) -> float:
    """The tank followed in small steps."""
    inflow, at = runs.get("inflow", 0.0), runs.get("inflow_temperature", room)

    def slope(_: float, t: list[float]) -> list[float]:
        return [(power + loss * (room - t[0]) + TRADE_HEAT * inflow * (at - t[0])) / (TRADE_HEAT * volume)]

    return float(solve_ivp(slope, (0.0, time), [start], rtol=1e-10, atol=1e-10).y[0][-1])


@pytest.mark.parametrize("runs", [{"inflow": 0.0, "inflow_temperature": 300.0}, RUNS])
def test_temperature_after_follows_the_heat_balance(runs: dict[str, float]) -> None:
    for start, time in ((288.0, 900.0), (350.0, 3000.0)):
        got = overflow.temperature_after(start=start, time=time, **TANK, **runs)
        assert got == pytest.approx(followed(start, time, **TANK, **runs), abs=1e-5)


def test_time_and_temperature_are_each_others_inverse() -> None:
    for start, target, watts in ((288.0, 340.0, 12e3), (365.0, 350.0, 4e3)):
        time = tanks.time_to_temperature(start=start, target=target, **{**TANK, "power": watts}, **RUNS)
        again = overflow.temperature_after(start=start, time=time, **{**TANK, "power": watts}, **RUNS)
        assert again == pytest.approx(target, abs=1e-6)


def test_heat_up_with_loss_goes_over_into_the_plain_one_and_is_longer() -> None:
    plain = heat_up_time(30 * GAL, 50.0, 15e3)
    assert tanks.heat_up_time_with_loss(30 * GAL, 290.0, 340.0, 15e3, 0.0, 295.0) == pytest.approx(plain)
    assert tanks.heat_up_time_with_loss(30 * GAL, 290.0, 340.0, 15e3, 1e-6, 295.0) == pytest.approx(plain)
    assert tanks.heat_up_time_with_loss(30 * GAL, 290.0, 340.0, 15e3, 60.0, 295.0) > plain


def test_settled_tank_is_held_by_its_own_power() -> None:
    settled = tanks.steady_temperature(9e3, 50.0, 295.0, RUNS["inflow"], RUNS["inflow_temperature"])
    held = tanks.power_to_hold(settled, 295.0, 50.0, RUNS["inflow"], RUNS["inflow_temperature"])
    assert held == pytest.approx(9e3)
    late = followed(300.0, 2e5, volume=0.1, power=9e3, loss=50.0, room=295.0, **RUNS)
    assert late == pytest.approx(settled, abs=1e-4)


def test_loss_is_read_back_from_the_cooling_it_causes() -> None:
    end = followed(344.0, 1800.0, volume=0.12, power=0.0, loss=42.0, room=295.0)
    assert tanks.loss_factor_of_cooling(0.12, 344.0, end, 1800.0, 295.0) == pytest.approx(42.0, rel=1e-5)


def test_thinning_by_many_small_rinses_comes_to_the_exponential() -> None:
    left, small = 1.0, 0.00001
    for _ in range(10000):
        left *= 1 - small / 0.1
    assert overflow.share_left(0.1, 10000 * small) == pytest.approx(left, rel=1e-3)
    assert overflow.temperature_after_rinse(0.1, 330.0, 0.1, 350.0) == pytest.approx(350 - 20 * math.exp(-1))


def test_power_that_cannot_reach_the_target_is_refused() -> None:
    with pytest.raises(ValueError, match="never comes"):
        tanks.heat_up_time_with_loss(0.1, 290.0, 345.0, 2e3, 50.0, 295.0)
    with pytest.raises(ValueError, match="never comes"):
        tanks.heat_up_time_with_loss(0.1, 345.0, 290.0, 2e3, 50.0, 295.0)
    with pytest.raises(ValueError, match="settles nowhere"):
        tanks.steady_temperature(2e3, 0.0, 295.0, 0.0, 300.0)
    with pytest.raises(ValueError, match="cools"):
        tanks.loss_factor_of_cooling(0.1, 330.0, 340.0, 600.0, 295.0)
    for name in ("volume", "loss", "power"):
        with pytest.raises(ValueError, match=name):
            tanks.heat_up_time_with_loss(**{**TANK, "start": 290.0, "target": 330.0, name: -1.0})
