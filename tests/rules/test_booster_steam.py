"""Steam booster: a clean coil at the steam there is, its condensate, and the heat balance over the panel."""

from __future__ import annotations

import pytest

from diagnose.rules import expected
from tests.rule_examples import book
from tests.rules.test_booster_rise import FLOW, INLET, PRESSURE, STEAM, expect, found, machine, readings, run

CONDENSATE, TRAP = "booster_steam.rise_and_condensate", "booster_steam.trap_temperature"
PANEL, BALANCE = "rinse_thermometer.panel_reading", "booster_steam.heat_balance"


@pytest.mark.parametrize(
    ("typed", "plate", "outcome"),
    [
        # 500 x 4.5 x 40 / 940 = 96 lb/h
        ({CONDENSATE: "94 lb/h", FLOW: "4.5"}, {}, "as_reckoned"),
        ({CONDENSATE: "55 lb/h", FLOW: "4.5", TRAP: "working"}, {}, "short_and_hot"),
        ({CONDENSATE: "55 lb/h", FLOW: "4.5", TRAP: "held"}, {}, "short_and_cool"),
        ({CONDENSATE: "55 lb/h", FLOW: "4.5", PRESSURE: "20"}, {}, "short_and_hot"),
        ({CONDENSATE: "55 lb/h", FLOW: "4.5", PRESSURE: "8"}, {}, "short_and_cool"),
        ({CONDENSATE: "200 lb/h", FLOW: "4.5"}, {}, "too_much"),
        # a coil for half the rise makes half the condensate, and that is right
        ({CONDENSATE: "47 lb/h", FLOW: "4.5", INLET: "160"}, {"booster_inlet": "160 °F"}, "as_reckoned"),
        # SI as well
        ({CONDENSATE: "43 kg/h", FLOW: "17 L/min"}, {}, "as_reckoned"),
    ],
)
def test_condensate(typed: dict[str, str], plate: dict[str, str], outcome: str) -> None:
    finding = found(CONDENSATE, STEAM, typed, **plate)
    assert finding.outcome == outcome
    assert finding.counts == (CONDENSATE,)


def test_condensate_near_the_edge_is_soft_and_without_a_trap_undecided() -> None:
    edge = found(CONDENSATE, STEAM, {CONDENSATE: "71 lb/h", FLOW: "4.5"}).weights
    assert 0.3 < edge["as_reckoned"] < 0.7
    short = found(CONDENSATE, STEAM, {CONDENSATE: "45 lb/h", FLOW: "4.5"}).weights
    assert short["short_and_hot"] == pytest.approx(short["short_and_cool"])


def test_expected_condensate() -> None:
    shown = expect(CONDENSATE, STEAM, {FLOW: "4.5"})
    assert shown.lines == ("about 96 lb/h, 3.2 lb in two minutes",)
    assert any("÷ 939.5 BTU/lb" in line for line in shown.working)


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        ({PANEL: "164", INLET: "140", PRESSURE: "20", FLOW: "4.5"}, "reads_below_balance"),
        ({PANEL: "169", INLET: "140", PRESSURE: "5", FLOW: "4.5"}, "agrees"),
        # a coil may be larger than its plate asks: hotter than reckoned is no contradiction
        ({PANEL: "177", INLET: "140", PRESSURE: "8", FLOW: "4.5"}, "agrees"),
    ],
)
def test_balance(typed: dict[str, str], outcome: str) -> None:
    finding = found(BALANCE, STEAM, typed)
    assert finding.outcome == outcome
    assert finding.counts == (PANEL,)
    assert PRESSURE in finding.consults
    assert "reads_above_balance" not in finding.weights


def test_balance_keeps_silent_without_the_steam_at_the_coil() -> None:
    done = run(STEAM, {PANEL: "164", INLET: "140", FLOW: "4.5"})
    assert not [f for f in done.findings if f.check == BALANCE]
    assert found(PANEL, STEAM, {PANEL: "164", INLET: "140", FLOW: "4.5"}).rule == "plain_band"


def test_what_it_can_make_stands_beside_the_band_of_the_rinse() -> None:
    full = expect(PANEL, STEAM, {INLET: "140", FLOW: "4.5"}).lines
    short = expect(PANEL, STEAM, {INLET: "140", FLOW: "4.5", PRESSURE: "4"}).lines
    assert "about 180 °F at most" in full[1]
    assert "about 168 °F at most" in short[1]


def test_figures_that_no_coil_can_have_are_passed_over() -> None:
    """A rise of 150 F° by steam of 227 °F from 30 °F: nothing is said in figures, and nothing breaks."""
    plate = {"steam_pressure": "1 psi", "booster_inlet": "33 °F", "rinse_temperature": "230 °F"}
    shown = expected(book(), machine(STEAM, **plate), readings({INLET: "140"}), "booster_steam.rise")
    assert shown is None
    assert len(expect(PANEL, STEAM, {INLET: "140"}, **plate).lines) == 1
    done = run(STEAM, {INLET: "140", FLOW: "4.5", "booster_steam.rise": "30"}, **plate)
    assert not [f for f in done.findings if f.check == "booster_steam.rise"]
