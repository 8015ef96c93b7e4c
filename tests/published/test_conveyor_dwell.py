"""Dwell in a zone: length over speed; no universal speed (Food Code 4-204.113, 4-501.15: the plate governs)."""

from __future__ import annotations

import pytest

from diagnose.physics.conveyor import dwell, racks_an_hour
from diagnose.physics.conveyor_speed import speed_of_strokes, speed_of_time

FOOT, FT_MIN = 0.3048, 0.3048 / 60


def test_rinse_zone() -> None:
    """DERIVED: a rinse zone of 2 ft at 5.8 ft/min is passed in 20.7 s."""
    assert dwell(2 * FOOT, 5.8 * FT_MIN) == pytest.approx(20.7, abs=0.05)


def test_timed_and_counted_agree() -> None:
    """31 s over 3 ft is what 11.6 strokes of 6 in a minute make."""
    timed = speed_of_time(3 * FOOT, 31.0)
    assert timed == pytest.approx(speed_of_strokes(0.5 * FOOT, 11.6 / 60), rel=5e-3)
    assert racks_an_hour(timed, 20 / 12 * FOOT, 0) * 3600 == pytest.approx(209, abs=1)
