"""A settled tank: heat in against heat out; panel against the second thermometer; the least figure of each tank."""

from __future__ import annotations

import pytest

from diagnose.rules.facts import gather
from diagnose.rules.tank_balance import tank_meant
from diagnose.rules.tank_heat import RINSE, WASH
from tests.rule_examples import book
from tests.rules.test_booster_rise import expect, found, machine, readings, run

BALANCE, COMPARED = "tank_control.heat_balance", "tank_thermometer.compared"
PANEL, RINSE_PANEL = "tank_control.wash_temperature", "tank_control.rinse_tank_temperature"
REFERENCE, STOPS = "tank_thermometer.reference_reading", "tank_control.stop_temperature"
AMPS, RATE, INLET = "tank_heater_electric.line_amps", "drain_overflow.overflow_rate", "supply_water.inlet_temperature"
IN, OUT, WHICH = "vent_dampers.flow_entrance", "vent_dampers.flow_exit", "tank_heater_electric.which_tank"
ONE, TWO = "single_tank_electric_208", "two_tank_electric_208"
FULL = "41.6 41.6 41.6"  # 15 kW at 208 V


@pytest.mark.parametrize(
    ("typed", "plate", "outcome"),
    [
        # 15 kW in, 6 out at 140 °F with the vents as wanted
        ({PANEL: "140", AMPS: FULL, RATE: "0"}, {}, "panel_colder"),
        ({REFERENCE: "140", AMPS: FULL, RATE: "0"}, {}, "truly_colder"),
        # three times the air and more: 15 out
        ({REFERENCE: "140", AMPS: FULL, RATE: "0", IN: "650", OUT: "1350"}, {}, "truly_agrees"),
        # 1.4 gpm from 60 °F take 12.3 kW at 120 °F
        ({PANEL: "120", AMPS: FULL, RATE: "1.4", INLET: "60"}, {}, "panel_agrees"),
        # the same overflow fed at 115 °F takes next to nothing
        ({PANEL: "120", AMPS: FULL, RATE: "1.1", INLET: "115"}, {}, "panel_colder"),
        # a third of the heat, and the tank where that holds it
        ({REFERENCE: "139", AMPS: "24 24 0", RATE: "0"}, {}, "truly_agrees"),
        # no current holds no tank hot
        ({PANEL: "155", AMPS: "0 0 0", RATE: "0"}, {}, "hotter"),
    ],
)
def test_balance(typed: dict[str, str], plate: dict[str, str], outcome: str) -> None:
    finding = found(BALANCE, ONE, typed, **plate)
    assert finding.outcome == outcome
    counted = REFERENCE if REFERENCE in typed else PANEL
    assert finding.counts == (counted,)
    assert {AMPS, RATE} <= set(finding.consults)


@pytest.mark.parametrize(
    "typed",
    [
        {PANEL: "140", AMPS: FULL},  # overflow not looked at
        {PANEL: "140", RATE: "0"},  # heat not measured
        {PANEL: "164", AMPS: FULL, RATE: "0"},  # at its figure
    ],
)
def test_balance_leaves_the_panel_to_its_band(typed: dict[str, str]) -> None:
    done = run(ONE, typed)
    assert not [f for f in done.findings if f.check == BALANCE]
    assert found(PANEL, ONE, typed).rule == "plain_band"


def test_no_reading_is_counted_twice() -> None:
    done = run(ONE, {PANEL: "140", REFERENCE: "141", AMPS: FULL, RATE: "0"})
    counted = [reading for finding in done.findings for reading in finding.counts]
    assert len(counted) == len(set(counted)) == 4
    by = {reading: f.check for f in done.findings for reading in f.counts}
    assert by[PANEL] == COMPARED
    assert by[REFERENCE] == BALANCE


def test_near_the_balance_it_is_no_verdict() -> None:
    weights = found(BALANCE, ONE, {REFERENCE: "148", AMPS: FULL, RATE: "0", IN: "400", OUT: "800"}).weights
    assert max(weights.values()) < 0.9


@pytest.mark.parametrize(
    ("panel", "reference", "outcome"),
    [("145", "163", "panel_low"), ("161", "162", "agree"), ("165", "150", "panel_high")],
)
def test_compared(panel: str, reference: str, outcome: str) -> None:
    finding = found(COMPARED, ONE, {PANEL: panel, REFERENCE: reference})
    assert finding.outcome == outcome
    assert finding.counts == (PANEL,)
    assert finding.consults == (REFERENCE,)


@pytest.mark.parametrize(
    ("panel", "second", "outcome"),
    [("158", "180", "panel_low"), ("205", "204", "agree"), ("186", "161", "panel_high")],
)
def test_a_hot_tank_is_compared_by_its_own_pair(panel: str, second: str, outcome: str) -> None:
    typed = {"tank_control.tank_panel": panel, "tank_control.tank_reference": second}
    finding = found(COMPARED, TWO, typed)
    assert finding.outcome == outcome
    assert finding.counts == ("tank_control.tank_panel",)
    alone = run(TWO, {"tank_control.tank_panel": panel})
    assert not [f for f in alone.findings if f.check == COMPARED]


def test_a_small_difference_is_no_verdict() -> None:
    weights = found(COMPARED, ONE, {PANEL: "150", REFERENCE: "155"}).weights
    assert 0.1 < weights["agree"] < 0.9


def test_panel_alone_goes_by_its_band() -> None:
    done = run(ONE, {PANEL: "145"})
    assert [(f.check, f.rule) for f in done.findings] == [(PANEL, "plain_band")]
    assert any("second thermometer" in f.silent for f in done.firings)


def test_the_second_thermometer_is_held_against_the_tank_it_was_in() -> None:
    assert found(REFERENCE, TWO, {PANEL: "155", REFERENCE: "155"}).outcome == "good"
    assert found(REFERENCE, TWO, {RINSE_PANEL: "155", REFERENCE: "155"}).outcome == "low"
    assert (
        found(REFERENCE, TWO, {RINSE_PANEL: "155", REFERENCE: "155"}, rinse_tank_temperature="150 °F").outcome == "good"
    )
    assert found(STOPS, TWO, {RINSE_PANEL: "155", STOPS: "155"}).outcome == "early"
    edge = found(REFERENCE, TWO, {REFERENCE: "150"})
    assert edge.outcome == "good"  # the figure itself is good
    assert edge.weights["low"] == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("kind", "typed", "tank"),
    [
        (ONE, {}, WASH),
        (TWO, {}, WASH),
        (TWO, {RINSE_PANEL: "150"}, RINSE),
        (TWO, {RINSE_PANEL: "150", PANEL: "150"}, WASH),
        (TWO, {RINSE_PANEL: "150", PANEL: "150", WHICH: "rinse_tank"}, RINSE),
    ],
)
def test_which_tank_is_meant(kind: str, typed: dict[str, str], tank: object) -> None:
    assert tank_meant(gather(book(), machine(kind), readings(typed))) is tank


def test_expected_least() -> None:
    shown = expect(REFERENCE, TWO, {RINSE_PANEL: "150"})
    assert shown.lines == ("160 °F or more (power-rinse tank)",)
    assert shown.working


def test_beside_the_band_stands_what_holding_it_takes() -> None:
    shown = expect(PANEL, ONE, {IN: "400", OUT: "800"}, tank_power="15 kW")
    usual = expect(PANEL, ONE, {})
    assert usual.lines[-1] == "holding 160 °F without racks takes about 10 of 15 kW"
    assert shown.lines[-1] == "holding 160 °F without racks takes about 18 of 15 kW"
    assert any("1200 cfm hold" in line for line in shown.working)
    assert any("judgement" in line for line in usual.working)


def test_water_running_in_unmeasured_widens_the_balance() -> None:
    sure = found(BALANCE, ONE, {PANEL: "120", AMPS: FULL, RATE: "1.4", INLET: "60"}).weights
    unsure = found(BALANCE, ONE, {PANEL: "120", AMPS: FULL, RATE: "1.4"}, booster_inlet="60 °F").weights
    assert unsure["panel_agrees"] < sure["panel_agrees"]
