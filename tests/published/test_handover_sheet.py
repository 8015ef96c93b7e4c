"""What published documents want of a machine that is handed over is on its sheet, and judged as they say.

FDA Food Code: 4-204.113 data plate, 4-204.115 thermometers, 4-204.117 feeds, 4-204.118 gauge, 4-302.13 and .14 means to
test, 4-501.110 wash temperatures, 4-501.112 rinse temperatures, 4-501.113 pressure, 4-501.114 chlorine, 4-703.11 the
surface at 160 °F. NSF/ANSI 3, secondary: 3600 heat units at the dish.
"""

from __future__ import annotations

import pytest

from diagnose.model import load_book
from tests.sheets import read, sheet_with

BOOK = load_book()
SINGLE, TWO, CHEMICAL = "single_tank_electric_208", "two_tank_electric_208", "two_tank_chemical_208"
EXACT = "0.01 °F"  # so that a limit can be told to a degree


def verdict(kind: str, line: str, check: str, typed: str, accuracy: str = "", own: dict[str, str] | None = None) -> str:
    kind_of = "reference thermometer" if "F" in accuracy else "pressure gauge" if accuracy else ""
    return sheet_with(BOOK, kind, read(BOOK, check, typed, accuracy, kind_of), own=own).by_id[line].verdict


@pytest.mark.parametrize("kind", sorted(BOOK.machines))
def test_every_sheet_asks_for_what_the_code_wants_to_be_there(kind: str) -> None:
    checks = {line.check.id for line in sheet_with(BOOK, kind).lines}
    assert {
        "before_power.plate_read",
        "heat.thermometers_there",
        "final_rinse.gauge_place",
        "chemicals.feed_alarm",
        "chemicals.test_kit_there",
        "curtains.entrance_look",
    } <= checks


@pytest.mark.parametrize(
    ("kind", "typed", "wanted"),
    [(SINGLE, "159 F", "fail"), (SINGLE, "160.1 F", "pass"), (TWO, "149 F", "fail"), (TWO, "150.1 F", "pass")],
)
def test_wash_tank_at_least(kind: str, typed: str, wanted: str) -> None:
    assert verdict(kind, "heat.wash_settled", "tank_control.wash_temperature", typed, EXACT) == wanted


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [("179 F", "fail"), ("180.1 F", "pass"), ("193.9 F", "pass"), ("195 F", "fail"), ("82.1 C", "pass")],
)
def test_hot_water_rinse_from_180_to_194(typed: str, wanted: str) -> None:
    check = "rinse_thermometer.reference_reading"
    assert verdict(TWO, "final_rinse.manifold", check, typed, EXACT) == wanted


@pytest.mark.parametrize(("typed", "wanted"), [("119 F", "fail"), ("120.1 F", "pass")])
def test_chemical_rinse_at_least_120(typed: str, wanted: str) -> None:
    check = "rinse_thermometer.reference_reading_chemical"
    assert verdict(CHEMICAL, "final_rinse.manifold_chemical", check, typed, EXACT) == wanted


def test_the_plate_governs_the_pressure() -> None:
    # Code: 5 to 30 psi, and inside the plate's own range. 12 psi is inside the code's, outside a plate of 15 to 25.
    check, line = "rinse_gauge.flow_pressure", "final_rinse.pressure"
    plate = {"rinse_pressure_least": "15 psi", "rinse_pressure_most": "25 psi"}
    wide = {"rinse_pressure_least": "8 psi", "rinse_pressure_most": "28 psi"}
    assert verdict(TWO, line, check, "12 psi", "0.1 psi", plate) == "fail"
    assert verdict(TWO, line, check, "12 psi", "0.1 psi", wide) == "pass"
    sheet = sheet_with(BOOK, TWO, own=plate)
    assert "data plate" in " ".join(sheet.wanted(sheet.by_id[line]))


def test_a_label_that_turned_shows_160_at_the_ware() -> None:
    check = BOOK.checks["rinse_thermometer.label_on_plate"]
    good = next(str(nth) for nth, outcome in enumerate(check.outcomes.values(), 1) if outcome.good)
    line = sheet_with(BOOK, TWO, read(BOOK, check.id, good)).by_id["final_rinse.label"]
    assert line.verdict == "pass"
    assert "160 °F" in " ".join(sheet_with(BOOK, TWO).wanted(line))


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        # By the formula of test_heat_units: twelve seconds at 167 °F are 12 x 347.7 = 4172 units; at 155 °F 292.
        ("167 167 167 167 167 167 167 167 167 167 167 167 F", "pass"),
        ("155 155 155 155 155 155 155 155 155 155 155 155 F", "fail"),
    ],
)
def test_3600_heat_units_at_the_dish(typed: str, wanted: str) -> None:
    assert verdict(TWO, "final_rinse.heat_units", "rinse_proof.trace", typed) == wanted


def test_chlorine_under_what_the_code_bears_fails() -> None:
    # 4-501.114: under 25 mg/L no temperature and no pH makes up for it.
    assert verdict(CHEMICAL, "chemicals.sanitiser", "sanitiser_feed.strip", "10 ppm") == "fail"
    assert verdict(CHEMICAL, "chemicals.sanitiser", "sanitiser_feed.strip", "50 ppm") == "pass"


def test_figures_without_a_source_say_so() -> None:
    sheet = sheet_with(BOOK, TWO)
    for name in ("tables_and_curtains.pitch", "water.pressure_ahead", "water.hardness"):
        assert "common practice" in " ".join(sheet.wanted(sheet.by_id[name]))
    assert "judgement" in " ".join(sheet.wanted(sheet.by_id["tables_and_curtains.across"]))
