"""Sanitiser feed: dose against the plate, strip against the dose."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, load_book
from diagnose.rules import Expected, RuleRun, expected
from tests.rulebook import reading, run

BOOK = load_book()
RACK, OUTPUT, STRIP = "sanitiser_feed.per_rack", "sanitiser_feed.output", "sanitiser_feed.strip"
WATER, FLOW, BALANCE = "sanitiser_feed.water_per_rack", "rinse_arms.flow_measured", "sanitiser_feed.feed_balance"


def chemical(**own: str) -> Machine:
    return Machine("m", BOOK.machines["single_tank_chemical_208"], own)


def done(machine: Machine, *typed: tuple[str, str]) -> RuleRun:
    return run(machine, *typed, book=BOOK)


def expect(machine: Machine, check: str, *typed: tuple[str, str]) -> Expected | None:
    return expected(BOOK, machine, [reading(*t, book=BOOK) for t in typed], check)


@pytest.mark.parametrize(
    ("stock", "water", "drawn", "outcome"),
    [
        ("5.25 %", "1.1 gal", "4.0 mL", "as_wanted"),  # 50 × 4.164 ÷ 52.5 = 3.97 mL
        ("5.25 %", "1.1 gal", "2.1 mL", "short"),
        ("5.25 %", "1.1 gal", "0 mL", "nothing"),
        ("5.25 %", "1.1 gal", "8 mL", "too_much"),
        ("10.5 %", "1.1 gal", "2.1 mL", "as_wanted"),  # the same mL of stock twice as strong
        ("10.5 %", "1.1 gal", "4.0 mL", "too_much"),
        ("5.25 %", "0.55 gal", "2.1 mL", "as_wanted"),  # the same mL into half the water
        ("5.25 %", "2.2 gal", "4.0 mL", "short"),
    ],
)
def test_drawn_a_rack_goes_by_stock_and_water(stock: str, water: str, drawn: str, outcome: str) -> None:
    found = done(chemical(sanitiser_stock=stock, rinse_per_rack=water), (RACK, drawn)).findings[0]
    assert (found.check, found.outcome) == (RACK, outcome)
    assert found.weights[outcome] > 0.8


@pytest.mark.parametrize(("stock", "outcome"), [("5.25 %", "as_wanted"), ("3 %", "short")])
def test_output_goes_by_the_flow(stock: str, outcome: str) -> None:
    found = done(chemical(sanitiser_stock=stock), (OUTPUT, "12 mL/min")).findings[0]
    assert found.outcome == outcome
    assert "gpm × 3.7854" in found.working[0]


def test_near_an_edge_it_is_no_verdict() -> None:
    found = done(chemical(), (RACK, "2.98 mL")).findings[0]  # 75 % of 3.97 mL
    assert 0.3 < found.weights["short"] < 0.7


def test_working_in_si() -> None:
    found = done(chemical(rinse_per_rack="4 L"), (RACK, "3.8 mL")).findings[0]
    assert found.working[0] == "50 ppm × 4 L ÷ (5.25 × 10) = 3.81 mL wanted."
    assert any("Type's figure" in line for line in found.working)


@pytest.mark.parametrize(
    ("drawn", "water", "strip", "outcome"),
    [
        ("4.0 mL", "1.1 gal", "10 ppm", "strip_below"),  # 50 ppm must be there
        ("4.0 mL", "2.2 gal", "25 ppm", "agrees"),  # 25 ppm by the same dose in twice the water
        ("1.0 mL", "1.1 gal", "12 ppm", "agrees"),
        ("0.2 mL", "1.1 gal", "35 ppm", "strip_above"),
        ("4.0 mL", "1.1 gal", "110 ppm", "strip_above"),  # 50 ppm is all this dose gives
        ("8.0 mL", "1.1 gal", "100 ppm", "agrees"),
        ("4.0 mL", "0.55 gal", "100 ppm", "agrees"),
    ],
)
def test_balance(drawn: str, water: str, strip: str, outcome: str) -> None:
    run_ = done(chemical(), (RACK, drawn), (WATER, water), (STRIP, strip))
    found = next(f for f in run_.findings if f.check == BALANCE)
    assert found.outcome == outcome
    assert found.counts == (f"{STRIP} at 0",)
    assert set(found.consults) == {f"{RACK} at 0", f"{WATER} at 0"}
    assert not any(f.check == STRIP for f in run_.findings), "the strip is counted once"


def test_balance_by_the_minute() -> None:
    run_ = done(chemical(), (OUTPUT, "12 mL/min"), (FLOW, "3.4 gpm"), (STRIP, "10 ppm"))
    assert next(f for f in run_.findings if f.check == BALANCE).outcome == "strip_below"


def test_without_the_water_the_strip_is_judged_by_itself() -> None:
    run_ = done(chemical(), (RACK, "4.0 mL"), (STRIP, "20 ppm"))
    assert {f.check: f.outcome for f in run_.findings} == {RACK: "as_wanted", STRIP: "weak"}
    assert any("must be known" in f.silent for f in run_.firings)


def test_a_strong_strip_is_left_to_its_own_rule() -> None:
    run_ = done(chemical(), (RACK, "4.0 mL"), (WATER, "1.1 gal"), (STRIP, "50 ppm"))
    assert {f.check for f in run_.findings} == {RACK, WATER, STRIP}


def test_what_is_expected() -> None:
    told = expect(chemical(), RACK)
    assert told is not None
    assert told.low is not None
    assert told.high is not None
    assert told.low.value < 3.97 < told.high.value
    assert told.working[0].endswith("= 3.966 mL")
    assert any("type's figure, assumed" in line for line in told.working)
    assert any("data plate" in line for line in expect(chemical(sanitiser_stock="10 %"), RACK).working)  # type: ignore[union-attr]
