"""Air: what is refused, and how one formula bears out another."""

from __future__ import annotations

import pytest

from diagnose.physics import air, air_moved, air_state, exhaust, moist_air

CFM = 4.719474432e-4


def test_the_gap_of_wet_air_is_from_its_density() -> None:
    """50 °C saturated: some 7 % faster than the rule for standard air says."""
    wet = air.speed_of_pressure(60.0, air_state.density_of_air(323.15, 1.0))
    assert wet / air.speed_of_pressure(60.0) == pytest.approx(1.075, abs=0.005)


def test_heat_goes_with_the_air() -> None:
    once = exhaust.heat_of_exhaust(600 * CFM, 339.0, 297.0)
    assert exhaust.heat_of_exhaust(1200 * CFM, 339.0, 297.0) == pytest.approx(2 * once)
    assert exhaust.heat_of_exhaust(600 * CFM, 349.0, 297.0) > 1.4 * once


def test_heat_of_exhaust_is_that_of_the_mixture() -> None:
    """All of the air saturated at the tank's temperature: the same as the exhaust's own state, reckoned per dry air."""
    hot, room = moist_air.humidity_ratio(323.15, 1.0), moist_air.humidity_ratio(297.15, 0.5)
    swelled = moist_air.moist_volume(323.15, hot) / moist_air.moist_volume(297.15, room)
    whole = exhaust.heat_of_exhaust(0.2, 323.15, 297.15, tank_air=1.0)
    assert whole == pytest.approx(exhaust.exhaust_heat(0.2 * swelled, 323.15, 1.0, 297.15))


def test_fan_laws_hold_together() -> None:
    """Flow times suction is power, at any speed."""
    flow, suction = air_moved.fan_flow(0.28, 18.0, 22.0), air_moved.fan_suction(100.0, 18.0, 22.0)
    assert flow * suction == pytest.approx(air_moved.fan_power(28.0, 18.0, 22.0))
    assert air_moved.suction_of_flow(100.0, 0.28, flow) == pytest.approx(suction)


def test_opening_lets_in_what_lacks() -> None:
    short = air_moved.makeup_short(600 * CFM, 1500 * CFM, 1800 * CFM)
    area = air_moved.opening_needed(short, 5.0, 1.0)
    assert area * air.speed_of_pressure(5.0) == pytest.approx(short)


@pytest.mark.parametrize(
    "nonsense",
    [
        lambda: air.speed_of_pressure(-1.0),
        lambda: air.mean_speed([]),
        lambda: moist_air.humidity_ratio(300.0, 1.2),
        lambda: moist_air.humidity_ratio(373.15, 1.0),
        lambda: moist_air.saturation_pressure(400.0),
        lambda: air_state.humidity_of_wet_bulb(293.0, 300.0),
        lambda: air_state.humidity_of_wet_bulb(340.0, 283.0),
        lambda: exhaust.heat_of_exhaust(-0.1, 339.0, 297.0),
        lambda: air_moved.makeup_short(-1.0, 0.0, 0.0),
    ],
)
def test_nonsense_is_refused(nonsense) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=r".+"):
        nonsense()
