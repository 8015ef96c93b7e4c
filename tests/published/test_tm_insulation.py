"""TM 55-1905-223-24-17, 2-14: more than 5 megohm after 60 seconds, and 1.15 times the reading after 10 seconds."""

from __future__ import annotations

import pytest

from diagnose.physics.insulation import absorption_ratio, insulation_verdict


@pytest.mark.parametrize(
    ("after_60", "after_10", "verdict"),
    [
        (4e6, 3e6, "low"),  # 4 megohm fails
        (20e6, 20e6 / 1.1, "damp"),  # ratio 1.1 fails
        (20e6, 20e6 / 1.16, "good"),
        (5e6, 4e6, "low"),  # more than 5 megohm is wanted
    ],
)
def test_verdict(after_60: float, after_10: float, verdict: str) -> None:
    assert insulation_verdict(after_60, after_10) == verdict


def test_ratio() -> None:
    assert absorption_ratio(23e6, 20e6) == pytest.approx(1.15)
