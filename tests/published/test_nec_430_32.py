"""National Electrical Code 430.32, motor overload protection; read in secondary copies (2008 text and later)."""

from __future__ import annotations

import pytest

from diagnose.physics.motors import integral_protector_trip, overload_trip
from diagnose.physics.setting import overload_dial
from tests.rulebook import machine, run


@pytest.mark.parametrize(
    ("amps", "cool_or_service", "starting", "trip"),
    [
        (34.0, False, False, 39.1),  # 430.32(A)(1): 115 %
        (34.0, True, False, 42.5),  # 430.32(A)(1): 125 % with service factor 1.15 or rise of 40 °C, either alone
        (10.0, False, True, 13.0),  # 430.32(C): 130 %, e.g. service factor 1.12 (code quiz, 2015)
        (10.0, True, True, 14.0),  # 430.32(C): 140 %
    ],
)
def test_separate_device(amps: float, cool_or_service: bool, starting: bool, trip: float) -> None:
    assert overload_trip(amps, cool_or_service, starting) == pytest.approx(trip)


@pytest.mark.parametrize(
    ("amps", "share"),
    [(5.0, 1.70), (9.0, 1.70), (9.1, 1.56), (20.0, 1.56), (20.1, 1.40)],  # 430.32(A)(2)
)
def test_integral_protector(amps: float, share: float) -> None:
    assert integral_protector_trip(amps) == pytest.approx(amps * share)


def test_the_dial_lies_within_the_code() -> None:
    """430.32(A)(1): a motor of 34 A at most at 39.1 A in general, at 42.5 A by its nameplate's marks."""
    assert overload_dial(34.0, 1.0, 1.15) == pytest.approx((34.0, 34.0, 39.1))
    assert overload_dial(34.0, 1.0, 1.25) == pytest.approx((34.0, 34.0, 42.5))


def test_the_rule_counts_from_the_nameplate() -> None:
    """430.6: overloads by the nameplate, not by the code's tables."""
    own = machine(wash_motor_amps="34 A")
    found = run(own, ("motor_overload.pump_setting", "34 A")).findings[0]
    assert found.outcome == "as_nameplate"
    assert any("115 ÷ 100 × 34 A = 39.1 A" in line for line in found.working)
    assert any("125 ÷ 100 × 34 A = 42.5 A" in line for line in found.working)
    assert run(own, ("motor_overload.pump_setting", "46 A")).findings[0].outcome == "above"
