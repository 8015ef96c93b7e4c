"""Rinse aid fed a rack."""

from __future__ import annotations

import pytest

from tests.rules.test_sanitiser_feed import chemical, done, expect

FED = "rinse_aid_feed.fed_per_rack"


@pytest.mark.parametrize(
    ("fed", "water", "outcome"),
    [
        ("0.8 mL", "1.1 gal", "as_wanted"),  # 192 ppm
        ("6 mL", "1.1 gal", "too_much"),  # 1441 ppm
        ("2.5 mL", "0.5 gal", "too_much"),  # 1321 ppm
        ("2.5 mL", "2.5 gal", "as_wanted"),  # the same mL into more water: 264 ppm
        ("0.02 mL", "1.1 gal", "short"),
    ],
)
def test_goes_by_the_rinse_water(fed: str, water: str, outcome: str) -> None:
    assert done(chemical(rinse_per_rack=water), (FED, fed)).findings[0].outcome == outcome


def test_near_the_edge() -> None:
    assert 0.3 < done(chemical(rinse_per_rack="4 L"), (FED, "2.0 mL")).findings[0].weights["too_much"] < 0.7


def test_silent_without_a_reading() -> None:
    assert not done(chemical(), ("water_quality.rinse_ph", "5")).by_reading(f"{FED} at 0")


def test_expected() -> None:
    told = expect(chemical(rinse_per_rack="4 L"), FED)
    assert told is not None
    assert told.working[:2] == ("50 ppm × 4 L ÷ 1000 = 0.2 mL", "500 ppm × 4 L ÷ 1000 = 2 mL")
