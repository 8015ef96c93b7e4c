"""Plan Check Guide EHD 16-01, appendix E, San Joaquin County Environmental Health Department, 2017."""

from __future__ import annotations

import pytest

from diagnose.physics.gas import gas_for_rise
from diagnose.physics.heat import power_for_rise
from diagnose.units import parse_quantity

BTU_PER_HOUR = 1055.05585262 / 3600
ELECTRIC, GAS = 0.98, 0.75  # appendix E


@pytest.mark.parametrize(
    ("flow", "rise", "printed", "exact"),
    [("126 gph", "80 F", 25.1, 25.11), ("240 gph", "60 F", 35.9, 35.87)],  # appendix E, rack conveyor example
)
def test_electric_booster(flow: str, rise: str, printed: float, exact: float) -> None:
    kilowatts = power_for_rise(_flow(flow), _rise(rise), ELECTRIC) / 1e3
    assert kilowatts == pytest.approx(printed, abs=0.05)
    assert kilowatts == pytest.approx(exact, rel=1e-3)  # the guide has 8.33 lb/gal where the 500 rule has 500/60


@pytest.mark.parametrize(("flow", "rise", "printed"), [("126 gph", "80 F", 111_955.2), ("240 gph", "60 F", 159_936.0)])
def test_gas_booster(flow: str, rise: str, printed: float) -> None:
    """The guide's total of both, 279,888, is a slip: they sum to 271,891, and the total is not used."""
    assert power_for_rise(_flow(flow), _rise(rise), GAS) / BTU_PER_HOUR == pytest.approx(printed, rel=1e-3)


def test_wrong_total_of_the_guide_is_not_reproduced() -> None:
    """Both boosters together: 271,891 BTU/h; the guide's copy prints 279,888."""
    flows = [("126 gph", "80 F"), ("240 gph", "60 F")]
    total = sum(gas_for_rise(_flow(f), _rise(r), GAS) for f, r in flows) / BTU_PER_HOUR
    assert total == pytest.approx(271_891, rel=1e-3)
    assert abs(total - 279_888) > 5_000


def test_power_per_gallon_an_hour_at_60_degrees() -> None:
    """0.149 kW per gph, printed in a water-heater guideline of county health directors; 0.14947 at 98 %."""
    assert power_for_rise(_flow("1 gph"), _rise("60 F"), ELECTRIC) / 1e3 == pytest.approx(0.14947, rel=1e-3)


def test_wrong_value_of_a_form_is_not_reproduced() -> None:
    """One county form prints 40.8 kW for 265 gph; the formula gives 39.6."""
    kilowatts = power_for_rise(_flow("265 gph"), _rise("60 F"), ELECTRIC) / 1e3
    assert kilowatts == pytest.approx(39.6, abs=0.05)
    assert abs(kilowatts - 40.8) > 1


def _flow(text: str) -> float:
    return parse_quantity(text, "flow").si


def _rise(text: str) -> float:
    return parse_quantity(text, "temperature difference").si
