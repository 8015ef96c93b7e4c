"""Water hammer: Joukowsky's equation as two web calculators print it, and the handbook's 0.07 rule (weak copies).

The handbook's own example exceeds the whole blow, which no valve can: a wrong published value, kept as a negative test.
"""

from __future__ import annotations

import pytest

from diagnose.formulas import said
from diagnose.physics.hammer import critical_time, hammer_handbook, hammer_rapid, hammer_slow

FT, PSI = 0.3048, 6894.757293168
WATER = 998.0
A, V, L = 4500 * FT, 5 * FT, 50 * FT


def test_whole_blow() -> None:
    assert hammer_rapid(WATER, A, 1 * FT) / PSI == pytest.approx(60.6, abs=0.15)  # psi for each ft/s
    assert hammer_rapid(WATER, A, V) / PSI == pytest.approx(303, abs=0.7)
    assert hammer_rapid(998.0, 1400.0, 1.5) / 1e5 == pytest.approx(20.96, abs=0.005)


def test_critical_time() -> None:
    assert critical_time(L, A) * 1e3 == pytest.approx(22, abs=0.3)


def test_slow_in_proportion_to_critical_over_closing_time() -> None:
    whole, critical = hammer_rapid(WATER, A, V), critical_time(L, A)
    assert hammer_slow(WATER, A, V, L, 4 * critical) == pytest.approx(whole / 4)
    assert hammer_slow(WATER, A, V, L, critical / 2) == pytest.approx(whole)


def test_the_handbook_rule_is_capped() -> None:
    """0.07 × 5 × 50 ÷ 0.03 = 583 psi is printed; the whole blow is 303."""
    bare = 0.07 * 5 * 50 / 0.03
    assert bare == pytest.approx(583, abs=0.5)
    assert hammer_handbook(WATER, A, V, L, 0.03) / PSI == pytest.approx(303, abs=0.7)
    assert hammer_handbook(WATER, A, V, L, 0.1) / PSI == pytest.approx(0.07 * 5 * 50 / 0.1, rel=1e-6)


def test_said_by_the_calculator() -> None:
    lines = said("hammer-handbook", "us", density=WATER, wave_speed=A, velocity=V, length=L, time=0.03)
    assert lines[0] == "0.07 × 5 ft/s × 50 ft ÷ 0.03 s = 583.3 psi"
    assert lines[-1] == "the lesser of the two: 302.6 psi"
