"""The volts a booster has: measured, or the plate's; never a mean over a lost line."""

from __future__ import annotations

import pytest

from diagnose.rules.booster_supply import Supply, supply_of
from diagnose.rules.facts import Silent, gather
from tests.rulebook import BOOK, machine, reading


def _supply(volts: str | None, stage: int = 0, **own: str) -> Supply | Silent:
    taken = [reading("supply_power.line_volts", volts)] if volts else []
    return supply_of(gather(BOOK, machine(**own), taken, stage))


def test_mean_of_measured_volts() -> None:
    supply = _supply("200 202 204")
    assert isinstance(supply, Supply)
    assert supply.volts == pytest.approx(202)
    assert supply.power_now == pytest.approx(30e3 * (202 / 208) ** 2)


def test_a_lost_line_is_not_averaged() -> None:
    supply = _supply("208 104 104")
    assert isinstance(supply, Supply)
    assert supply.volts == 208
    assert supply.read is None


def test_earlier_stage_serves_later_ones() -> None:
    supply = _supply("200 200 200", stage=2)
    assert isinstance(supply, Supply)
    assert supply.volts == 200


def test_no_power_no_supply() -> None:
    assert isinstance(_supply(None, booster_power="0 kW"), Silent)
