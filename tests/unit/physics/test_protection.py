"""Overloads in time, judged by stepping their heat through the seconds."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from scipy.integrate import solve_ivp

from diagnose.physics import cooling, insulation, protection
from diagnose.physics.demand import RefusedError

PICKUP = protection.PICKUP


@pytest.mark.parametrize(
    ("current", "setting", "trip_class", "before"),
    [(12.0, 6.8, 10.0, 0.0), (9.0, 6.8, 20.0, 0.0), (12.0, 6.8, 10.0, 1.0), (30.0, 6.8, 30.0, 0.5)],
)
def test_trip_time_by_integration(current: float, setting: float, trip_class: float, before: float) -> None:
    tau = protection.trip_time_constant(trip_class)
    target = (current / (PICKUP * setting)) ** 2

    def trips(_: float, heat: list[float]) -> float:
        return heat[0] - 1.0

    trips.terminal = True  # type: ignore[attr-defined]
    done = solve_ivp(lambda _, h: [(target - h[0]) / tau], (0, 1e5), [(before / PICKUP) ** 2], events=trips, rtol=1e-9)
    assert protection.trip_time(current, setting, trip_class, before) == pytest.approx(done.t_events[0][0], rel=1e-5)


@pytest.mark.parametrize("before", [0.0, 0.6, 1.0])
def test_class_and_setting_are_read_back(before: float) -> None:
    time = protection.trip_time(12.0, 6.8, 20.0, before)
    assert protection.class_of_trip_time(12.0, 6.8, time, before) == pytest.approx(20.0)
    assert protection.setting_of_trip_time(12.0, time, 20.0, before) == pytest.approx(6.8)


def test_a_shorter_trip_means_a_lower_setting() -> None:
    settings = [protection.setting_of_trip_time(6.6, t, 10.0) for t in (30.0, 100.0, 300.0, 900.0)]
    assert settings == sorted(settings)
    assert settings[-1] < 6.6


def test_what_is_borne_for_ever_is_refused() -> None:
    with pytest.raises(RefusedError, match="borne for ever"):
        protection.trip_time(7.6, 6.8, 10.0)


def test_starts_allowed_bring_the_heat_just_to_the_setting() -> None:
    """Second by second over many hours: one start more an hour passes the setting, one less stays under it."""
    setting, start, run, tau = 7.6, 40.0, 6.0, 20000.0  # a slow replica, so that single starts do not show
    allowed = 3600 * cooling.starts_allowed(setting, 1.0, start, run)

    def heat_of(starts: float) -> float:
        heat, every = 0.0, round(3600 / starts)
        for second in range(20 * 3600):
            square = (start if second % every == 0 else run) ** 2 / setting**2
            heat += (square - heat) / tau
        return heat

    assert heat_of(allowed) == pytest.approx(1.0, abs=0.04)
    assert heat_of(allowed * 1.3) > heat_of(allowed) > heat_of(allowed * 0.7)
    amps = cooling.current_of_starts(allowed / 3600, 1.0, start, run)
    assert amps == pytest.approx(setting)


def test_cooling_by_small_steps() -> None:
    temperature, seconds = 423.15, 0
    while temperature > 343.15:
        temperature -= (temperature - 303.15) / 1800.0
        seconds += 1
    assert cooling.cooling_time(1800.0, 423.15, 343.15, 303.15) == pytest.approx(seconds, abs=3)


def test_a_protector_in_air_above_its_reset_never_closes() -> None:
    with pytest.raises(RefusedError, match="never closes"):
        cooling.cooling_time(1800.0, 423.15, 310.0, 311.0)


def test_insulation_halves_for_ten_degrees() -> None:
    at = [insulation.insulation_at_40(2e6, 313.15 + k) for k in (0, 10, 20, 30)]
    assert [b / a for a, b in pairwise(at)] == pytest.approx([2.0] * 3)
    assert at[0] == 2e6


def test_reset_time_is_the_cooling_of_the_replica() -> None:
    tau = protection.trip_time_constant(10.0)
    assert math.exp(-cooling.reset_time(10.0, 0.6) / tau) == pytest.approx(0.6)
