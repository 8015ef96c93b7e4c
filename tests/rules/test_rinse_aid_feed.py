"""Rinse aid fed a rack."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from tests.rules.test_sanitiser_feed import BOOK, chemical, done, expect

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


def test_without_a_figure_a_rack_the_rinse_is_shared_among_the_racks() -> None:
    """4.2 gpm over 208 racks an hour is 1.21 gal: 0.15 mL is 33 ppm; with a quarter of the flow it is enough."""
    machine = Machine("m", BOOK.machines["two_tank_electric_208"])
    assert done(machine, (FED, "0.15 mL")).findings[0].outcome == "short"
    thrifty = Machine("m", BOOK.machines["two_tank_electric_208"], {"rinse_flow": "1.05 gpm"})
    assert done(thrifty, (FED, "0.15 mL")).findings[0].outcome == "as_wanted"  # 131 ppm
    told = expect(machine, FED)
    assert told is not None
    assert "1.21 gal a rack" in told.lines[0]
