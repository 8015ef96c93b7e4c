"""Minutes of heating up: as computed, slow with a reason measured, or slow besides."""

from __future__ import annotations

import pytest

from tests.rules.test_booster_rise import expect, found, run

TIME, RINSE_TIME = "tank_control.heat_up_time", "tank_control.rinse_heat_up_time"
FILL, AMPS = "tank_control.fill_temperature", "tank_heater_electric.line_amps"
RATE, INLET = "drain_overflow.overflow_rate", "supply_water.inlet_temperature"
ONE, TWO, METRIC = "single_tank_electric_208", "two_tank_electric_208", "two_tank_electric_400_50"


@pytest.mark.parametrize(
    ("typed", "plate", "outcome"),
    [
        # 22 gal by 100 F° with 15 kW: 22.5 min
        ({FILL: "60", TIME: "23"}, {}, "as_computed"),
        ({FILL: "60", TIME: "38"}, {}, "too_slow"),
        ({FILL: "60", TIME: "80"}, {}, "far_too_slow"),
        # the same minutes on 30 gal and 10 kW are in order
        ({FILL: "60", TIME: "42"}, {"wash_tank_volume": "30 gal", "tank_power": "10 kW"}, "as_computed"),
        # from a warm fill they are not
        ({FILL: "140", TIME: "23"}, {}, "far_too_slow"),
        # an element out explains 35 min, and does not explain 80
        ({FILL: "60", TIME: "36", AMPS: "24 24 41.6"}, {}, "slow_explained"),
        ({FILL: "60", TIME: "80", AMPS: "24 24 41.6"}, {}, "too_slow"),
        # a healthy bank does not
        ({FILL: "60", TIME: "36", AMPS: "41.6 41.6 41.6"}, {}, "too_slow"),
        # 0.8 gpm of 60 °F over the drain: 53 min
        ({FILL: "60", TIME: "50", RATE: "0.8", INLET: "60", AMPS: "41.6 41.6 41.6"}, {}, "slow_explained"),
        # currents like no state leave the plate's heat to compare with
        ({FILL: "60", TIME: "36", AMPS: "8 25 36"}, {}, "too_slow"),
        # a fill nobody measured may have been cold or warm: 90 min is slow from any
        ({TIME: "90"}, {}, "far_too_slow"),
    ],
)
def test_minutes(typed: dict[str, str], plate: dict[str, str], outcome: str) -> None:
    finding = found(TIME, ONE, typed, **plate)
    assert finding.outcome == outcome
    assert finding.counts == (TIME,)
    assert set(finding.consults) >= {FILL} & set(typed)


def test_near_the_edge_it_is_no_verdict() -> None:
    weights = found(TIME, ONE, {FILL: "60", TIME: "29.3"}).weights  # 1.3 times 22.5
    assert 0.3 < weights["too_slow"] < 0.7
    assert weights["far_too_slow"] < 0.01


def test_a_fill_not_measured_leaves_room() -> None:
    weights = found(TIME, ONE, {TIME: "20"}).weights
    assert 0.2 < weights["as_computed"] < 0.8  # in order from 60 °F, far too slow from 135


def test_the_power_rinse_has_its_own_plate() -> None:
    typed = {FILL: "60", RINSE_TIME: "18"}
    assert found(RINSE_TIME, TWO, typed).outcome == "as_computed"
    assert found(RINSE_TIME, TWO, typed, rinse_tank_power="40 kW").outcome == "too_slow"
    assert not [f for f in run(ONE, {FILL: "60", TIME: "20"}).findings if f.check == RINSE_TIME]


def test_a_tank_that_never_gets_there() -> None:
    typed = {FILL: "60", TIME: "120", RATE: "1.5", INLET: "60", AMPS: "24 24 41.6"}
    finding = found(TIME, ONE, typed)
    assert finding.outcome == "slow_explained"
    assert any("never gets there" in line for line in finding.working)


def test_silent_without_a_heater() -> None:
    done = run("single_tank_gas_208", {TIME: "40"}, tank_gas_input="0 BTU/h")
    assert not [f for f in done.findings if f.check == TIME]
    assert any("gas input" in f.silent for f in done.firings)


def test_expected_minutes_and_why() -> None:
    shown = expect(TIME, ONE, {FILL: "60 °F"})
    assert shown.lines[0].startswith("23 min from 60 °F")
    assert shown.high is not None
    assert shown.high.value == pytest.approx(1.3 * 22.55, rel=0.01)
    assert any(line.endswith("= 22.55 min") for line in shown.working)
    assert any("type's figure, assumed" in line for line in shown.working)
    both = expect(TIME, ONE, {})
    assert "min from 135 °F" in both.lines[0]
    assert expect(TIME, ONE, {FILL: "60 °F", AMPS: "0 0 0"}).lines[0].startswith("never")


def test_expected_minutes_in_metric() -> None:
    shown = expect(RINSE_TIME, METRIC, {FILL: "15 °C"})
    assert "from 15 °C" in shown.lines[0]
    assert any("69.68 × 90 L" in line for line in shown.working)
