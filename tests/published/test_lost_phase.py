"""A lost phase: DERIVED ratios, and the pattern of a loss ahead of a transformer (from memory, confidence high)."""

from __future__ import annotations

import math

import pytest

from diagnose.physics.motor_load import lost_phase_line, lost_phase_winding
from diagnose.rules import Expected
from tests.rulebook import expect, machine, run

PUMP = "pump_motor.line_amps"


def test_lines_at_the_root_of_three() -> None:
    """Same power, power factor and efficiency; in practice up to about twice (from memory, medium)."""
    assert lost_phase_line(1.0) == pytest.approx(1.73, abs=0.005)


def test_the_bridged_winding_carries_twice_its_own() -> None:
    own = 1.0 / math.sqrt(3.0)
    assert lost_phase_winding(1.0) / own == pytest.approx(2.0)
    assert lost_phase_winding(1.0) / lost_phase_line(1.0) == pytest.approx(2 / 3)


@pytest.mark.parametrize("share", [1.7, 2.0, 2.2])
def test_one_line_dead_is_a_lost_phase_and_no_overload(share: float) -> None:
    amps = 6.8 * share
    found = run(machine(), (PUMP, f"{amps:.1f} {amps:.1f} 0")).findings[0]
    assert found.outcome == "phase_lost"
    assert found.weights.get("high", 0.0) < 0.01


def test_115_115_230_points_ahead_of_the_transformer() -> None:
    found = run(machine(), (PUMP, "7.8 7.8 15.6")).findings[0]
    assert found.outcome != "phase_lost"
    assert any("ahead of a transformer" in line for line in found.working)


def test_low_volts_are_checked_by_ten_per_cent() -> None:
    """A maintenance article: a motor that will not start wants its phases and its volts, 10 % at the most, first."""
    shown = expect(machine(volts="230 V"), "supply_power.line_volts")
    assert isinstance(shown, Expected)
    assert shown.low is not None
    assert shown.low.value == pytest.approx(207.0)
