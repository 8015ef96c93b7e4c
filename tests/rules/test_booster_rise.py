"""Rise over a steam or gas booster: short of the heat put in, or as short as the heat."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, Reading
from diagnose.model.answers import parse_answer
from diagnose.rules import Expected, expected, findings
from diagnose.rules.engine import RuleRun
from tests.rule_examples import book

GAS, STEAM = "single_tank_gas_208", "two_tank_steam_208"
CLOCKED, PRESSURE, FLOW = "booster_gas.gas_clocked", "booster_steam.coil_pressure", "rinse_arms.flow_measured"
INLET = "supply_water.inlet_temperature"


def machine(kind: str, **plate: str) -> Machine:
    return Machine("x", book().machines[kind], plate)


def readings(typed: dict[str, str]) -> list[Reading]:
    taken = []
    for check, text in typed.items():
        values, outcome = parse_answer(book().checks[check], text)
        taken.append(Reading(check, check, values, outcome))
    return taken


def run(kind: str, typed: dict[str, str], **plate: str) -> RuleRun:
    return findings(book(), machine(kind, **plate), readings(typed))


def found(check: str, kind: str, typed: dict[str, str], **plate: str) -> Finding:
    return next(f for f in run(kind, typed, **plate).findings if f.check == check)


def expect(check: str, kind: str, typed: dict[str, str], **plate: str) -> Expected:
    shown = expected(book(), machine(kind, **plate), readings(typed), check)
    assert shown is not None
    return shown


@pytest.mark.parametrize(
    ("typed", "plate", "outcome"),
    [
        # 100,000 BTU/h at 75 % into 3 gpm is 50 F°
        ({CLOCKED: "99000", FLOW: "3.0", "booster_gas.rise": "48"}, {}, "as_rated"),
        ({CLOCKED: "99000", FLOW: "3.0", "booster_gas.rise": "28"}, {}, "short_for_input"),
        # 58,000 BTU/h is 29 F°: the rise is as short as the gas
        ({CLOCKED: "58000", FLOW: "3.0", "booster_gas.rise": "28"}, {}, "as_input"),
        # the same readings on a plate of 58,000 BTU/h are in order
        ({CLOCKED: "58000", FLOW: "3.0", "booster_gas.rise": "28"}, {"gas_input": "58000 BTU/h"}, "as_rated"),
        # twice the flow halves the rise, and nothing is wrong with the exchanger
        ({CLOCKED: "99000", FLOW: "5.4", "booster_gas.rise": "28"}, {}, "as_rated"),
        # not clocked: it is short, and that is all that can be said
        ({FLOW: "3.0", "booster_gas.rise": "28"}, {}, "short"),
        ({FLOW: "3.0", "booster_gas.rise": "48"}, {}, "as_rated"),
    ],
)
def test_gas(typed: dict[str, str], plate: dict[str, str], outcome: str) -> None:
    finding = found("booster_gas.rise", GAS, typed, **plate)
    assert finding.outcome == outcome
    assert finding.counts == ("booster_gas.rise",)
    assert (CLOCKED in finding.consults) == (CLOCKED in typed)


@pytest.mark.parametrize(
    ("typed", "plate", "outcome"),
    [
        # 20 psi on the plate and at the coil: 40 F° at 4.5 gpm from 140 °F
        ({PRESSURE: "20", FLOW: "4.5", INLET: "140", "booster_steam.rise": "38"}, {}, "as_rated"),
        ({PRESSURE: "20", FLOW: "4.5", INLET: "140", "booster_steam.rise": "22"}, {}, "short_for_input"),
        # 4 psi: steam of 225 °F instead of 259 gives a clean coil 29 F°
        ({PRESSURE: "4", FLOW: "4.5", INLET: "140", "booster_steam.rise": "28"}, {}, "as_input"),
        # colder water takes more: from 110 °F a clean coil gives 50 F°, so 38 is short
        ({PRESSURE: "20", FLOW: "4.5", INLET: "110", "booster_steam.rise": "32"}, {}, "short_for_input"),
        # a coil sized for 20 F° does what it is sized for
        (
            {PRESSURE: "20", FLOW: "4.5", INLET: "160", "booster_steam.rise": "19"},
            {"booster_inlet": "160 °F"},
            "as_rated",
        ),
        ({PRESSURE: "0.5", FLOW: "4.5", INLET: "140", "booster_steam.rise": "1"}, {}, "as_input"),
        ({FLOW: "4.5", INLET: "140", "booster_steam.rise": "22"}, {}, "short"),
    ],
)
def test_steam(typed: dict[str, str], plate: dict[str, str], outcome: str) -> None:
    assert found("booster_steam.rise", STEAM, typed, **plate).outcome == outcome


def test_near_the_edge_it_is_soft() -> None:
    weights = found("booster_gas.rise", GAS, {CLOCKED: "99000", FLOW: "3.0", "booster_gas.rise": "39.6"}).weights
    assert 0.3 < weights["short_for_input"] < 0.7


def test_a_flow_not_measured_leaves_it_open() -> None:
    """Too much water looks like a limed exchanger: without the flow, or its pressure, the rise is only short."""
    typed = {CLOCKED: "99000", "booster_gas.rise": "28"}
    assert found("booster_gas.rise", GAS, typed).outcome == "short"
    typed["rinse_gauge.flow_pressure"] = "20"
    assert found("booster_gas.rise", GAS, typed).outcome == "short_for_input"
    typed["rinse_gauge.flow_pressure"] = "60"  # √3 times the flow: 29 F° are right
    assert found("booster_gas.rise", GAS, typed).outcome == "as_rated"


def test_no_rise_read_no_word() -> None:
    assert not [f for f in run(GAS, {CLOCKED: "99000"}).findings if f.check == "booster_gas.rise"]
    assert not [f for f in run(STEAM, {PRESSURE: "20"}).findings if f.check == "booster_steam.rise"]


def test_expected_says_what_it_stands_on() -> None:
    shown = expect("booster_gas.rise", GAS, {CLOCKED: "60000", FLOW: "3.0"})
    assert shown.lines[0].startswith("30 F° or more (60000 BTU/h of gas clocked")
    assert "Gas input by the meter: 60000 BTU/h (measured)." in shown.working
    shown = expect("booster_steam.rise", STEAM, {PRESSURE: "4"})
    assert shown.low is not None
    assert 27 < shown.low.value < 30
    assert any("(steam table)" in line for line in shown.working)
    assert any(line.startswith("Steam pressure at the machine: 20 psi") for line in shown.working)
