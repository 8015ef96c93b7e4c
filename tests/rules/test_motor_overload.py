"""Overload settings against the nameplate."""

from __future__ import annotations

import pytest

from tests.rulebook import expect, machine, run

PUMP = "motor_overload.pump_setting"


@pytest.mark.parametrize(
    ("check", "setting", "outcome"),
    [
        (PUMP, "6.8", "as_nameplate"),
        (PUMP, "7.2", "as_nameplate"),
        (PUMP, "5.0", "below"),
        (PUMP, "9.5", "above"),
        ("motor_overload.drive_setting", "1.2", "as_nameplate"),
        ("motor_overload.drive_setting", "0.9", "below"),
        ("motor_overload.fan_setting", "3.5", "above"),
    ],
)
def test_settings(check: str, setting: str, outcome: str) -> None:
    assert run(machine(), (check, setting)).findings[0].outcome == outcome


def test_working_names_the_code() -> None:
    working = " ".join(run(machine(), (PUMP, "5.0")).findings[0].working)
    assert "74 % of the 6.8 A nameplate" in working
    assert "115 ÷ 100 × 6.8 A = 7.82 A" in working
    assert "125 ÷ 100 × 6.8 A = 8.5 A" in working


def test_silent_without_a_nameplate() -> None:
    assert run(machine(wash_motor_amps="0 A"), (PUMP, "5.0")).findings == ()


def test_expected() -> None:
    shown = expect(machine(), PUMP)
    assert shown is not None
    assert shown.lines == ("6.8 A, the nameplate's full-load amps; trip at most 7.82 A in general",)
