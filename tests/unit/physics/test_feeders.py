"""Drops along a run of wire."""

from __future__ import annotations

import pytest

from diagnose.physics.feeders import conductor_drop, drop_share


def test_three_phases_lose_root_three_and_one_phase_twice_a_wire() -> None:
    wire = 50.0 * 0.83e-3 * 40.0
    assert conductor_drop(50.0, 40.0, 0.83e-3, 3) == pytest.approx(3**0.5 * wire)
    assert conductor_drop(50.0, 40.0, 0.83e-3, 1) == pytest.approx(2 * wire)


def test_nonsense_is_refused() -> None:
    with pytest.raises(ValueError, match="phase"):
        conductor_drop(50.0, 40.0, 0.83e-3, 2)
    with pytest.raises(ValueError, match="panel"):
        drop_share(0.0, 200.0)
