"""Gas booster: its heat by the meter, the heat balance over the panel, and what the meter should show."""

from __future__ import annotations

import pytest

from diagnose.rules.booster_gas import EFFICIENCY, heat_now, rated_heat
from diagnose.rules.facts import Silent, gather
from tests.rule_examples import book
from tests.rules.test_booster_rise import CLOCKED, FLOW, GAS, INLET, expect, found, machine, readings, run

PANEL, BALANCE = "rinse_thermometer.panel_reading", "booster_gas.heat_balance"


def test_heat_is_three_quarters_of_what_was_clocked() -> None:
    facts = gather(book(), machine(GAS), readings({CLOCKED: "80000 BTU/h"}))
    heat, rated = heat_now(facts), rated_heat(facts)
    assert not isinstance(heat, Silent)
    assert not isinstance(rated, Silent)
    assert heat.power / rated.power == pytest.approx(0.8)
    assert heat.read
    assert heat.error < rated.error
    assert EFFICIENCY == 0.75


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        # full gas: 140 + 50 = 190; 164 is colder than that
        ({PANEL: "164", INLET: "140", CLOCKED: "99000", FLOW: "3.0"}, "reads_below_balance"),
        # 58,000 BTU/h: 140 + 29 = 169
        ({PANEL: "168", INLET: "140", CLOCKED: "58000", FLOW: "3.0"}, "agrees"),
        # 110 + 50 = 160 can't read 178
        ({PANEL: "178", INLET: "110", CLOCKED: "99000", FLOW: "3.0"}, "reads_above_balance"),
    ],
)
def test_balance(typed: dict[str, str], outcome: str) -> None:
    finding = found(BALANCE, GAS, typed)
    assert finding.outcome == outcome
    assert finding.counts == (PANEL,)


@pytest.mark.parametrize(
    "typed",
    [
        {PANEL: "164", INLET: "140"},  # not clocked: colder than rated says nothing of the exchanger
        {PANEL: "164", CLOCKED: "99000"},  # no inlet
        {PANEL: "184", INLET: "140", CLOCKED: "99000"},  # in order
    ],
)
def test_balance_leaves_the_panel_to_its_band(typed: dict[str, str]) -> None:
    done = run(GAS, typed)
    assert not [f for f in done.findings if f.check == BALANCE]
    assert found(PANEL, GAS, typed).rule == "plain_band"


def test_the_panel_is_counted_once() -> None:
    done = run(GAS, {PANEL: "164", INLET: "140", CLOCKED: "99000", FLOW: "3.0"})
    assert [f.check for f in done.findings if PANEL in f.counts] == [BALANCE]


@pytest.mark.parametrize(("plate", "seconds"), [("100000 BTU/h", "75 s"), ("58000 BTU/h", "130 s")])
def test_expected_at_the_meter(plate: str, seconds: str) -> None:
    shown = expect(CLOCKED, GAS, {}, gas_input=plate)
    assert shown.lines == (f"{plate}: 2 ft3 in {seconds}",)
    assert shown.working[0] == f"Gas input of the booster: {plate} (data plate)."
    assert any("1030 BTU/ft3" in line for line in shown.working)


def test_expected_at_the_meter_follows_the_manifold() -> None:
    """√(2.0 / 3.5) = 76 %: less than that by the meter is jets, not pressure."""
    shown = expect(CLOCKED, GAS, {"booster_gas.manifold_pressure": "2.0 inWG"}, gas_pressure="3.5 inWG")
    assert shown.lines[1] == "sound jets at 2 inWG: 75593 BTU/h"
    assert any("√(2 ÷ 3.5)" in line for line in shown.working)
    assert len(expect(CLOCKED, GAS, {}).lines) == 1


def test_what_it_can_make_stands_beside_the_band_of_the_rinse() -> None:
    assert "about 190 °F at most" in expect(PANEL, GAS, {INLET: "140", FLOW: "3.0"}).lines[1]
    assert "about 170 °F at most" in expect(PANEL, GAS, {INLET: "140", FLOW: "3.0", CLOCKED: "60000"}).lines[1]
    assert len(expect(PANEL, GAS, {}).lines) == 1
