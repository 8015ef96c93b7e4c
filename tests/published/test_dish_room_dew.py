"""ASHRAE Handbook, Fundamentals, chapter 1, psychrometrics: dry and wet thermometer before a surface that drips.

Its example 1 has 40 °C dry and 20 °C wet, dew point 7 °C as read from the chart; read through the psychrolib tests.
"""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.physics.air_state import dew_point_of_air
from tests.rule_examples import book
from tests.rulebook import run

SWEATING = "room_air.sweating"


def fahrenheit(kelvin: float) -> float:
    return kelvin * 1.8 - 459.67


@pytest.mark.parametrize(("air", "humidity", "dew"), [(80, 0.6, 65), (75, 0.5, 55)])
def test_figures_of_the_entries(air: float, humidity: float, dew: float) -> None:
    """DERIVED: 80 °F at 60 % drips under 65 °F, 75 °F at 50 % under 55 °F."""
    kelvin = (air + 459.67) / 1.8
    assert fahrenheit(dew_point_of_air(kelvin, humidity)) == pytest.approx(dew, abs=0.6)


@pytest.mark.parametrize(("surface", "outcome"), [("3C", "cold_surface"), ("13C", "no_sweat")])
def test_example_1_by_the_rule(surface: str, outcome: str) -> None:
    machine = Machine("m", book().machines["two_tank_electric_208"], {})
    (found,) = run(machine, (SWEATING, f"40C 20C {surface}"), book=book()).findings
    assert found.outcome == outcome
