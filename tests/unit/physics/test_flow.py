"""Jets, regulators, supply, filling and hammer: limits, nonsense, and one formula against another."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from diagnose.physics import filling, flow, hammer, jets, regulator, supply


def test_worn_and_blocked_are_inverse_of_what_they_explain() -> None:
    assert jets.wear_of_flow(4.2, jets.flow_with_worn(4.2, 2.0, 2.3)) == pytest.approx(0.15)
    assert jets.jets_shut(14, 4.2, jets.flow_with_blocked(4.2, 14, 5)) == pytest.approx(5.0)
    assert jets.flow_with_blocked(4.2, 14, 14) == 0.0


def test_many_like_jets_are_one_large_factor() -> None:
    one = flow.factor_of_point(0.3, 20.0)
    assert jets.flow_of_jets(14, 0.3, 20.0, 11.0) == pytest.approx(flow.flow_at(14 * one, 11.0))


@pytest.mark.parametrize("worn", [1.0, 1.3, 2.0])
@pytest.mark.parametrize("droop", [0.0, 3.0, 8.0])
def test_droop_line_meets_the_jets_where_halving_says(worn: float, droop: float) -> None:
    factor = worn * 4.2 / math.sqrt(20.0)
    pressure = regulator.operating_pressure(23.0, droop, 4.2, factor)

    low, high = 0.0, 23.0
    for _ in range(80):
        middle = (low + high) / 2
        too_low = 23.0 - droop * flow.flow_at(factor, middle) / 4.2 > middle
        low, high = (middle, high) if too_low else (low, middle)
    assert pressure == pytest.approx(low, rel=1e-9)
    through = flow.flow_at(factor, pressure)
    assert regulator.drooped_pressure(23.0, droop, 4.2, through) == pytest.approx(pressure)
    assert regulator.droop_of_pair(23.0, pressure, through, 4.2) == pytest.approx(droop, abs=1e-9)


def test_the_fill_on_a_supply_loses_the_rest_pressure_in_two_places() -> None:
    through = supply.fill_flow_from_supply(60.0, 50.0, 4.2, 6.0, 30.0)
    left = supply.pressure_at_other_flow(60.0, 50.0, 4.2, through)
    assert through == pytest.approx(flow.flow_at_pressure(6.0, 30.0, left))
    series = flow.factor_of_series([supply.supply_factor(60.0, 50.0, 4.2), flow.factor_of_point(6.0, 30.0)])
    assert through == pytest.approx(flow.flow_at(series, 60.0))
    assert filling.fill_time_from_supply(28.0, 60.0, 50.0, 4.2, 6.0, 30.0) == pytest.approx(28.0 / through)


def test_fill_time_by_small_steps() -> None:
    filled, minutes, step = 0.0, 0.0, 0.001
    while filled < 28.0:
        filled += (6.0 - 1.5) * step
        minutes += step
    assert filling.fill_time_with_loss(28.0, 6.0, 1.5) == pytest.approx(minutes, abs=2 * step)


def test_hammer_is_continuous_at_the_critical_time_and_never_above_the_whole_blow() -> None:
    whole, critical = hammer.hammer_rapid(998.0, 1300.0, 2.0), hammer.critical_time(20.0, 1300.0)
    for share in (0.1, 0.999, 1.0, 1.001, 3.0, 30.0):
        slow = hammer.hammer_slow(998.0, 1300.0, 2.0, 20.0, share * critical)
        assert slow == pytest.approx(whole / max(1.0, share))
        assert hammer.hammer_handbook(998.0, 1300.0, 2.0, 20.0, share * critical) <= whole


def test_speed_times_area_is_flow() -> None:
    assert hammer.speed_in_pipe(3e-4, 0.016) * math.pi * 0.008**2 == pytest.approx(3e-4)


def test_level_and_leak() -> None:
    assert filling.leak_of_level(0.7, 0.55, 0.0254, 600.0) * 600.0 == pytest.approx(0.7 * 0.55 * 0.0254)


@pytest.mark.parametrize(
    "nonsense",
    [
        lambda: jets.orifice_flow(-0.002, 1e5),
        lambda: jets.orifice_flow(0.002, -1.0),
        lambda: jets.orifice_flow(0.002, 1e5, 1.2),
        lambda: jets.flow_of_jets(0, 1e-5, 1e5, 1e5),
        lambda: jets.flow_with_blocked(1e-4, 10, 11),
        lambda: jets.jets_shut(0, 1e-4, 1e-4),
        lambda: jets.wear_of_flow(1e-4, -1e-5),
        lambda: jets.flow_at_exponent(1e-4, 1e5, 1e5, 2.0),
        lambda: regulator.drooped_pressure(1e5, 5e4, 1e-4, 1e-3),
        lambda: regulator.droop_of_pair(1e5, 2e5, 1e-4, 1e-4),
        lambda: supply.supply_factor(2e5, 2e5, 1e-4),
        lambda: supply.supply_factor(2e5, 3e5, 1e-4),
        lambda: supply.pressure_at_other_flow(4e5, 3e5, 1e-4, 1e-3),
        lambda: filling.fill_time(0.1, 0.0),
        lambda: filling.fill_time(-0.1, 1e-4),
        lambda: filling.fill_time_with_loss(0.1, 3e-4, 3e-4),
        lambda: filling.leak_of_level(0.7, 0.5, -0.1, 60.0),
        lambda: hammer.hammer_rapid(998.0, 1300.0, -1.0),
        lambda: hammer.hammer_slow(998.0, 1300.0, 1.0, 10.0, 0.0),
        lambda: hammer.critical_time(10.0, 0.0),
        lambda: flow.factor_of_point(-1e-4, 1e5),
        lambda: flow.factor_of_series([]),
    ],
)
def test_nonsense_is_refused(nonsense: Callable[[], float]) -> None:
    with pytest.raises(ValueError):  # noqa: PT011 - each says its own sentence
        nonsense()
