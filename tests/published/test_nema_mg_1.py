"""NEMA MG-1: derating by unbalance; a chart reading of its figure 14-1, and the set commonly printed (from memory)."""

from __future__ import annotations

import pytest

from diagnose.physics.demand import RefusedError
from diagnose.physics.motor_load import derating


@pytest.mark.parametrize(
    ("percent", "share"),
    # Chart reading published on an engineering reference page; to be met within 0.015.
    [
        (0.5, 1.0),
        (1.5, 0.97),
        (2.0, 0.95),
        (2.5, 0.93),
        (3.0, 0.89),
        (3.5, 0.85),
        (4.0, 0.82),
        (4.5, 0.78),
        (5.0, 0.76),
    ],
)
def test_chart(percent: float, share: float) -> None:
    assert derating(percent / 100.0) == pytest.approx(share, abs=0.0151)


@pytest.mark.parametrize(("percent", "share"), [(2.0, 0.95), (3.0, 0.88), (4.0, 0.82), (5.0, 0.75)])
def test_common_set(percent: float, share: float) -> None:
    assert derating(percent / 100.0) == pytest.approx(share)


def test_another_page_prints_090_at_3_per_cent() -> None:
    assert abs(derating(0.03) - 0.90) > 0.01


def test_not_above_five_per_cent() -> None:
    with pytest.raises(RefusedError):
        derating(0.051)
