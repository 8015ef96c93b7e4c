"""The sheet: which lines a machine has, and what each comes to."""

from __future__ import annotations

import pytest

from diagnose.handover.sheet import failing
from diagnose.job import events as ev
from diagnose.model import fits, load_book
from tests.sheets import read, sheet_with

BOOK = load_book()
TWO, CHEMICAL, STEAM, GAS, HOOD = (
    "two_tank_electric_208",
    "two_tank_chemical_208",
    "two_tank_steam_208",
    "two_tank_gas_208",
    "two_tank_steam_hood_208",
)
PRESSURE, FLOW_IN, FLOW_OUT = "rinse_gauge.flow_pressure", "vent_dampers.flow_entrance", "vent_dampers.flow_exit"


def test_there_are_lines_enough_and_each_machine_has_a_sheet() -> None:
    assert len(BOOK.lines) >= 60
    for kind in BOOK.machines:
        sheet = sheet_with(BOOK, kind)
        assert len(sheet.lines) >= 60
        assert [line.number for line in sheet.lines] == list(range(1, len(sheet.lines) + 1))
        assert all(fits(sheet.machine, line.check.fits) for line in sheet.lines)
        assert len({line.check.id for line in sheet.lines}) == len(sheet.lines)


def test_sections_come_in_the_order_one_works() -> None:
    titles = [title for title, _ in sheet_with(BOOK, TWO).sections]
    assert titles == [
        "Before power",
        "Electrical",
        "Water and leaks",
        "Level and fill",
        "Heat",
        "Final rinse",
        "Pumps",
        "Conveyor",
        "Air",
        "Tables and curtains",
        "Chemicals",
        "Safety",
        "People",
    ]


@pytest.mark.parametrize(
    ("line", "on", "off"),
    [
        ("chemicals.sanitiser", CHEMICAL, TWO),
        ("final_rinse.heat_units", TWO, CHEMICAL),
        ("steam_and_gas.steam_pressure", STEAM, TWO),
        ("steam_and_gas.gas_firing", GAS, STEAM),
        ("air.hood_edge", HOOD, TWO),
        ("air.entrance", TWO, HOOD),
        ("heat.booster_amps", TWO, "single_tank_electric_240_single_phase"),
    ],
)
def test_lines_that_do_not_apply_are_not_shown(line: str, on: str, off: str) -> None:
    assert line in sheet_with(BOOK, on).by_id
    assert line not in sheet_with(BOOK, off).by_id


def test_each_line_says_what_is_wanted_and_whence() -> None:
    for kind in BOOK.machines:
        sheet = sheet_with(BOOK, kind)
        for line in sheet.lines:
            wanted, stands = sheet.wanted(line)
            assert wanted, line.id
            assert stands, line.id


@pytest.mark.parametrize(
    ("typed", "verdict"), [("20 psi", "pass"), ("12 psi", "fail"), ("15 psi", "cannot tell"), ("26 psi", "cannot tell")]
)
def test_a_reading_near_a_limit_is_no_verdict(typed: str, verdict: str) -> None:
    line = sheet_with(BOOK, TWO, read(BOOK, PRESSURE, typed)).by_id["final_rinse.pressure"]
    assert line.verdict == verdict


def test_a_better_instrument_can_tell() -> None:
    poor = read(BOOK, "rinse_thermometer.reference_reading", "182 F", "4 °F", "reference thermometer")
    good = read(BOOK, "rinse_thermometer.reference_reading", "182 F", "0.5 °F", "reference thermometer")
    assert sheet_with(BOOK, TWO, poor).by_id["final_rinse.manifold"].verdict == "cannot tell"
    assert sheet_with(BOOK, TWO, good).by_id["final_rinse.manifold"].verdict == "pass"
    assert sheet_with(BOOK, TWO, poor, good).by_id["final_rinse.manifold"].verdict == "pass"


def test_two_ends_are_judged_each_alone_and_both_together() -> None:
    readings = read(BOOK, FLOW_IN, "200 cfm"), read(BOOK, FLOW_OUT, "250 cfm")
    sheet = sheet_with(BOOK, TWO, *readings)
    assert sheet.by_id["air.entrance"].verdict == "pass"
    assert sheet.by_id["air.exit"].verdict == "fail"
    balance = sheet.by_id["air.balance"]
    assert (balance.verdict, balance.finding and balance.finding.outcome) == ("fail", "exit_short")
    assert sheet_with(BOOK, TWO, readings[0]).by_id["air.balance"].verdict == "not read"


def test_what_was_set_is_read_again_and_what_it_upsets() -> None:
    before = read(BOOK, PRESSURE, "12 psi"), read(BOOK, "rinse_thermometer.panel_reading", "186 F")
    turned = ev.Adjusted("final_rinse.regulator_screw", "final_rinse.pressure", {"turns": "0.5"})
    sheet = sheet_with(BOOK, TWO, *before, turned)
    assert sheet.by_id["final_rinse.pressure"].verdict == "again"
    assert sheet.by_id["final_rinse.panel"].verdict == "again"
    sheet = sheet_with(BOOK, TWO, *before, turned, read(BOOK, PRESSURE, "20 psi"))
    line = sheet.by_id["final_rinse.pressure"]
    assert (line.verdict, len(line.before)) == ("pass", 1)
    assert sheet.by_id["final_rinse.panel"].verdict == "again"
    as_found = ev.Adjusted("final_rinse.regulator_screw", "final_rinse.pressure", {"turns": "0"}, found=True)
    assert sheet_with(BOOK, TWO, *before, as_found).by_id["final_rinse.panel"].verdict == "pass"


def test_what_was_worked_out_from_an_upset_reading_is_open_again() -> None:
    readings = read(BOOK, FLOW_IN, "200 cfm"), read(BOOK, FLOW_OUT, "400 cfm")
    assert sheet_with(BOOK, TWO, *readings).by_id["air.balance"].verdict == "pass"
    moved = ev.Adjusted("air.dampers", "air.entrance", {})
    assert sheet_with(BOOK, TWO, *readings, moved).by_id["air.balance"].verdict == "not read"


def test_a_line_is_left_with_its_reason_until_it_is_read() -> None:
    left = ev.LineLeft("final_rinse.pressure", "waits for another trade", "plumber on Friday")
    line = sheet_with(BOOK, TWO, read(BOOK, PRESSURE, "12 psi"), left).by_id["final_rinse.pressure"]
    assert (line.verdict, line.left) == ("left", left)
    after = sheet_with(BOOK, TWO, left, read(BOOK, PRESSURE, "12 psi")).by_id["final_rinse.pressure"]
    assert (after.verdict, after.left) == ("fail", None)


def test_a_failure_comes_to_a_complaint() -> None:
    low = sheet_with(BOOK, TWO, read(BOOK, PRESSURE, "10 psi"))
    high = sheet_with(BOOK, TWO, read(BOOK, PRESSURE, "40 psi"))
    assert low.by_id["final_rinse.pressure"].comes_to == "rinse_pressure_low"
    assert high.by_id["final_rinse.pressure"].comes_to == "rinse_pressure_high"


def test_what_failed_before_a_repair_is_read_again_after_it() -> None:
    cause = "rinse_arms.jets_worn"
    events = read(BOOK, PRESSURE, "10 psi"), ev.ComplaintSaid("rinse_pressure_low"), ev.Repaired(cause, "as expected")
    sheet = sheet_with(BOOK, TWO, *events)
    assert sheet.by_id["final_rinse.pressure"].verdict == "again"
    assert failing(sheet) == ("rinse_pressure_low",)
    gone = sheet_with(BOOK, TWO, *events, ev.ComplaintSaid("rinse_pressure_low", present=False))
    assert failing(gone) == ()


def test_a_failure_left_with_a_remark_is_not_looked_for() -> None:
    events = read(BOOK, PRESSURE, "10 psi"), ev.ComplaintSaid("rinse_pressure_low")
    assert failing(sheet_with(BOOK, TWO, *events)) == ("rinse_pressure_low",)
    left = ev.LineLeft("final_rinse.pressure", "remark", "cause not found yet")
    assert failing(sheet_with(BOOK, TWO, *events, left)) == ()


def test_no_handover_without_what_must_be() -> None:
    sheet = sheet_with(BOOK, TWO)
    must = {line.id for line in sheet.missing}
    assert {"safety.stops", "safety.doors", "safety.guards", "electrical.earth", "fill.low_water"} <= must
    left = ev.LineLeft("safety.stops", "not now")
    assert "safety.stops" in {line.id for line in sheet_with(BOOK, TWO, left).missing}
    good = read(BOOK, "safety.stops_stop", "1")
    assert "safety.stops" not in {line.id for line in sheet_with(BOOK, TWO, good).missing}
    assert {line.id for line in sheet_with(BOOK, GAS).missing} >= {"steam_and_gas.gas_tight"}
