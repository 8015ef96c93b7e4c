"""Affinity laws, the pump against its jets, and the suction with hot water."""

from __future__ import annotations

import iapws
import pytest

from diagnose.physics import pumps, suction


def test_50_against_60_hertz() -> None:
    assert pumps.flow_at_speed(1.0, 60, 50) == pytest.approx(0.83, abs=0.005)
    assert pumps.pressure_at_speed(1.0, 60, 50) == pytest.approx(0.69, abs=0.005)
    assert pumps.power_at_speed(1.0, 60, 50) == pytest.approx(0.58, abs=0.005)


def test_power_in_the_water_follows_from_flow_and_pressure_at_any_speed() -> None:
    flow, pressure = pumps.flow_at_speed(0.008, 60, 50), pumps.pressure_at_speed(55e3, 60, 50)
    assert pumps.hydraulic_power(flow, pressure) == pytest.approx(
        pumps.power_at_speed(pumps.hydraulic_power(0.008, 55e3), 60, 50)
    )


@pytest.mark.parametrize("share", [0.2, 0.7, 1.0, 1.4, 2.5])
def test_jets_and_curve_meet(share: float) -> None:
    """At the pressure found, what the jets pass is what the curve gives."""
    rated, head = 55e3, 1.4
    found = pumps.pressure_through_jets(rated, share, head)
    through_jets = share * (found / rated) ** 0.5  # in rated flows
    on_curve = rated * (head - (head - 1.0) * through_jets**2)
    assert found == pytest.approx(on_curve)


@pytest.mark.parametrize("celsius", [60, 70, 80, 90])
def test_suction_against_the_library(celsius: float) -> None:
    """Saturation pressures 19.946, 31.201, 47.415, 70.182 kPa."""
    water = iapws.IAPWS97(T=273.15 + celsius, x=0)
    head = (101325.0 - water.P * 1e6) / (water.rho * 9.80665) + 0.3 - 0.5
    assert suction.suction_head(273.15 + celsius, 0.3, 0.5) == pytest.approx(head, abs=0.01)


def test_hotter_water_and_a_felted_screen_take_the_margin() -> None:
    cool = suction.suction_margin(333.15, 0.3, 0.3, 2.0)
    hot = suction.suction_margin(363.15, 0.3, 0.3, 2.0)
    felted = suction.suction_margin(344.15, 0.3, 6.0, 2.0)
    assert cool > hot > 0 > felted


def test_nonsense_is_refused() -> None:
    with pytest.raises(ValueError, match="speed"):
        pumps.flow_at_speed(1.0, 0.0, 50.0)
    with pytest.raises(ValueError, match="flow"):
        pumps.hydraulic_power(-1.0, 50.0)
    with pytest.raises(ValueError, match="head"):
        pumps.pressure_through_jets(1e5, 1.0, 1.0)
    with pytest.raises(ValueError, match="loss"):
        suction.suction_head(340.0, 0.0, -1.0)
