"""Motor Systems Tip Sheet 8, In-Plant Voltage Drops, U.S. Department of Energy, 2012 (DOE/GO-102012-3732)."""

from __future__ import annotations

import pytest

from diagnose.physics.motor_supply import feeder_loss

DROPS, AMPS, ATTAINABLE = (8.1, 5.9, 10.6), (199.7, 205.7, 201.8), 2.5


@pytest.mark.parametrize(("line", "kilowatts", "kilowatt_hours"), [(0, 1.12, 9796), (1, 0.70, 6126), (2, 1.63, 14318)])
def test_survey(line: int, kilowatts: float, kilowatt_hours: float) -> None:
    loss = feeder_loss(DROPS[line] - ATTAINABLE, AMPS[line]) / 1e3
    assert loss == pytest.approx(kilowatts, abs=0.006)
    assert loss * 8760 == pytest.approx(kilowatt_hours, abs=2.0)


def test_total() -> None:
    total = sum(feeder_loss(d - ATTAINABLE, a) for d, a in zip(DROPS, AMPS, strict=True)) / 1e3
    assert total == pytest.approx(3.45, abs=0.005)
    assert total * 8760 == pytest.approx(30240, abs=2.0)


def test_drops_of_that_survey_are_uneven() -> None:
    """Page 1: drops that differ by more than 15 % point at poor joints; here -28 and +29 % off their mean."""
    mean = sum(DROPS) / 3
    off = [100 * (d / mean - 1) for d in DROPS]
    assert mean == pytest.approx(8.2)
    assert min(off) == pytest.approx(-28, abs=0.5)
    assert max(off) == pytest.approx(29, abs=0.5)
