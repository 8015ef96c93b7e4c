"""Motors: unbalance by symmetrical components, a lost phase by Kirchhoff, and what makes no sense is refused."""

from __future__ import annotations

import cmath
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.physics import motor_load, motor_supply, motors
from diagnose.physics.demand import RefusedError

SIDE = st.floats(190.0, 220.0)


@given(SIDE, SIDE, SIDE)
def test_negative_sequence_by_symmetrical_components(ab: float, bc: float, ca: float) -> None:
    """The three voltages close to a triangle; its phasors are resolved by the turning operator."""
    inner = (ab**2 + bc**2 - ca**2) / (2 * ab * bc)
    first = complex(ab, 0.0)
    second = bc * cmath.exp(1j * (math.acos(inner) - math.pi))  # turned so that all three add up to nought
    third = -(first + second)
    assert abs(third) == pytest.approx(ca)
    turn = cmath.exp(2j * math.pi / 3)
    positive = abs(first + turn * second + turn**2 * third)
    negative = abs(first + turn**2 * second + turn * third)
    expected = min(negative, positive) / max(negative, positive)
    assert motors.negative_sequence_factor([ab, bc, ca]) == pytest.approx(expected, abs=2e-6)


@given(SIDE, SIDE, SIDE)
def test_nema_and_true_unbalance_are_neighbours(ab: float, bc: float, ca: float) -> None:
    nema, true = motors.nema_unbalance([ab, bc, ca]), motors.negative_sequence_factor([ab, bc, ca])
    assert true <= 1.2 * nema + 1e-5  # at most 2/root 3 of it, for small unbalance
    assert true >= 0.95 * nema - 1e-5


def test_lost_phase_by_kirchhoff() -> None:
    """Three equal windings in delta on two lines: one of them in parallel with the two others in series."""
    nodal = np.array([[2.0, -1.0], [-1.0, 2.0]])  # admittances of the floating corner and the fed one, ground returned
    floating, fed = np.linalg.solve(nodal, np.array([0.0, 1.0]))
    bridged, others = fed, floating
    assert bridged / others == pytest.approx(2.0)
    line = bridged + others
    assert bridged / line == pytest.approx(2.0 / 3.0)
    before = 6.0
    assert motor_load.lost_phase_winding(before) == pytest.approx(2.0 / 3.0 * motor_load.lost_phase_line(before))


def test_same_power_on_two_lines() -> None:
    watts = math.sqrt(3.0) * 208.0 * 6.5 * 0.8
    assert watts / (208.0 * 0.8) == pytest.approx(motor_load.lost_phase_line(6.5))


def test_derating_never_rises() -> None:
    shares = [motor_load.derating(u / 1000.0) for u in range(51)]
    assert shares == sorted(shares, reverse=True)
    assert shares[0] == 1.0


@pytest.mark.parametrize("values", [[208.0], [208.0, 208.0], [0.0, 0.0, 0.0], [208.0, -1.0, 208.0]])
def test_unbalance_of_what_are_no_three_voltages(values: list[float]) -> None:
    with pytest.raises(ValueError, match=r"three|nought|can't"):
        motors.nema_unbalance(values)


def test_three_voltages_that_do_not_close() -> None:
    with pytest.raises(ValueError, match="can't exist"):
        motors.negative_sequence_factor([100.0, 100.0, 250.0])


def test_nonsense_is_refused() -> None:
    with pytest.raises(RefusedError):
        motor_load.full_load_current(1500.0, 208.0, 1.2, 0.8)
    with pytest.raises(RefusedError):
        motor_load.extra_rise(80.0, 0.06)
    with pytest.raises(ValueError, match="no code letter"):
        motor_supply.code_letter_figure("O")
