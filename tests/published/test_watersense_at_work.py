"""WaterSense at Work, U.S. Environmental Protection Agency, October 2012, equations 4-22 and 4-23, page 4-50."""

from __future__ import annotations

import pytest

from diagnose.formulas import said
from diagnose.physics.racks import annual_water

GALLON = 3.785411784e-3


@pytest.mark.parametrize(("per_rack", "racks", "gallons"), [(0.70, 400, 102_200), (0.54, 600, 118_260)])
def test_water_in_a_year(per_rack: float, racks: int, gallons: float) -> None:
    """Gallons per rack times racks a day times days; figures of the criteria and of their calculator."""
    assert annual_water(per_rack * GALLON, racks, 365) / GALLON == pytest.approx(gallons)


def test_saving_is_the_difference_of_two() -> None:
    """Equation 4-23: 0.87 gal/rack (a calculator's baseline, FROM MEMORY) against 0.70."""
    saved = annual_water(0.87 * GALLON, 400, 365) - annual_water(0.70 * GALLON, 400, 365)
    assert saved / GALLON == pytest.approx(0.17 * 400 * 365)


def test_written_as_one_would_on_paper() -> None:
    lines = said("water-year", "us", water_per_rack=0.7 * GALLON, racks_per_day=400.0, days=365.0)
    assert lines == ("0.7 gal × 400 × 365 = 102200 gal",)
