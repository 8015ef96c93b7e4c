"""Gas of a tank's burner: what the meter should show, and what its plain band makes of it."""

from __future__ import annotations

import pytest

from tests.rules.test_booster_rise import GAS, expect, found

CLOCKED = "tank_heater_gas.gas_clocked"


@pytest.mark.parametrize(
    ("read", "plate", "outcome"),
    [
        ("79000", "80000 BTU/h", "rated"),
        ("60000", "80000 BTU/h", "low"),
        ("60000", "60000 BTU/h", "rated"),
        ("3000", "80000 BTU/h", "none"),
    ],
)
def test_band_follows_the_plate(read: str, plate: str, outcome: str) -> None:
    assert found(CLOCKED, GAS, {CLOCKED: read}, tank_gas_input=plate).outcome == outcome


def test_expected_by_the_meter() -> None:
    shown = expect(CLOCKED, GAS, {}, tank_gas_input="80000 BTU/h")
    # 2 ft3 of 1,030 BTU are 2,060 BTU, a little more at 7 inWG: 94 s at 80,000 BTU/h
    assert shown.lines == ("80000 BTU/h: 2 ft3 in 94 s",)
    assert any("data plate" in line for line in shown.working)
    assert shown.low is not None
    assert shown.low.value == pytest.approx(72000)
