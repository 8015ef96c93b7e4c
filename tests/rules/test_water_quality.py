"""Softener from three tests of hardness."""

from __future__ import annotations

import pytest

from tests.rules.test_sanitiser_feed import chemical, done

SOFTENER = "water_quality.softener"


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        ("20 1 1", "sound"),
        ("20 18 18", "exhausted"),
        ("20 1 9", "bypassed"),
        ("340mg/L 20mg/L 150mg/L", "bypassed"),
        ("30 4 4", "sound"),  # 4 gpg of 30 is 13 % left
        ("8 4 4", "exhausted"),  # the same 4 gpg of 8 is half of it
    ],
)
def test_softener(typed: str, outcome: str) -> None:
    found = done(chemical(), (SOFTENER, typed)).findings[0]
    assert found.outcome == outcome


def test_near_the_edge() -> None:
    assert 0.3 < done(chemical(), (SOFTENER, "20 4 4")).findings[0].weights["exhausted"] < 0.7


def test_soft_raw_water_says_nothing() -> None:
    run_ = done(chemical(), (SOFTENER, "2 1 1"))
    assert not run_.findings
    assert any("nothing to show" in f.silent for f in run_.firings)


def test_working_names_both_scales_and_the_share() -> None:
    working = done(chemical(), (SOFTENER, "20 1 8")).findings[0].working
    assert any("36.84 % goes round it" in line for line in working)
    assert any("hard by the public survey" in line and "by the trade" in line for line in working)
    assert any("of scale" in line for line in working)
