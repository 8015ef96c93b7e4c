"""Condensate of a tank's coil against what its rated heat makes."""

from __future__ import annotations

import pytest

from tests.rules.test_booster_rise import STEAM, expect, found, run

CONDENSATE, RINSE_PANEL = "tank_heater_steam.condensate", "tank_control.rinse_tank_temperature"


@pytest.mark.parametrize(
    ("read", "plate", "outcome"),
    [
        # 20 kW at 20 psi is 72.6 lb/h
        ("73", {}, "as_rated"),
        ("46", {}, "short"),
        ("46", {"tank_power": "13 kW"}, "as_rated"),
        ("5", {}, "scant"),
        ("150", {}, "too_much"),
    ],
)
def test_condensate(read: str, plate: dict[str, str], outcome: str) -> None:
    finding = found(CONDENSATE, STEAM, {CONDENSATE: read}, **plate)
    assert finding.outcome == outcome
    assert finding.counts == (CONDENSATE,)


def test_near_the_edge_it_is_no_verdict() -> None:
    weights = found(CONDENSATE, STEAM, {CONDENSATE: "54.5"}).weights  # 75 %
    assert weights["short"] == pytest.approx(0.5, abs=0.1)


def test_the_power_rinse_coil_goes_by_its_own_plate() -> None:
    typed = {RINSE_PANEL: "140", CONDENSATE: "46"}
    assert found(CONDENSATE, STEAM, typed, rinse_tank_power="13 kW").outcome == "as_rated"
    assert found(CONDENSATE, STEAM, typed).outcome == "short"


def test_silent_without_a_rating() -> None:
    done = run(STEAM, {CONDENSATE: "46"}, tank_power="0 kW")
    assert not done.findings
    assert any("rated heat" in f.silent for f in done.firings)


def test_expected() -> None:
    shown = expect(CONDENSATE, STEAM, {}, tank_power="20 kW")
    assert shown.lines == ("about 73 lb/h, 2.4 lb in two minutes",)
    assert shown.low is not None
    assert shown.low.value == pytest.approx(0.75 * 72.6, rel=0.01)
    assert any("3412" in line for line in shown.working)
