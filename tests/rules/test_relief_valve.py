"""The relief valve: what stands at the booster before and after heating, and what came from its pipe."""

from __future__ import annotations

import pytest

from tests.rules.test_booster_rise import expect, found, run

PAIR, CAUGHT = "relief_valve.standing_pair", "relief_valve.caught"
CUT_OUT, INLET = "booster_control.cut_out", "supply_water.inlet_temperature"
TWO, METRIC = "two_tank_electric_208", "two_tank_electric_400_50"


@pytest.mark.parametrize(
    ("pair", "plate", "outcome"),
    [
        ("22 118", {}, "climbs"),
        ("22 26", {}, "steady"),
        ("100 104", {}, "stands_high"),
        # the same line under a valve of another stamp
        ("100 104", {"relief_pressure": "150 psi"}, "steady"),
        ("60 64", {"relief_pressure": "75 psi"}, "stands_high"),
        ("60 64", {}, "steady"),
    ],
)
def test_the_pair(pair: str, plate: dict[str, str], outcome: str) -> None:
    assert found(PAIR, TWO, {PAIR: pair}, **plate).outcome == outcome


def test_the_pair_in_bar() -> None:
    assert found(PAIR, METRIC, {PAIR: "1.6 7.8 bar"}).outcome == "climbs"
    assert "bar" in found(PAIR, METRIC, {PAIR: "1.6 7.8 bar"}).working[0]


def test_the_pair_tells_the_share_of_the_stamp() -> None:
    working = " ".join(found(PAIR, TWO, {PAIR: "22 100"}).working)
    assert "80 % of it" in working
    assert "78 psi" in working


@pytest.mark.parametrize(
    ("typed", "plate", "outcome"),
    [
        ({CAUGHT: "6 fl oz"}, {}, "as_expansion"),
        ({CAUGHT: "0 fl oz"}, {}, "nothing"),
        ({CAUGHT: "40 fl oz"}, {}, "beyond"),
        ({CAUGHT: "40 fl oz"}, {"booster_volume": "20 gal"}, "as_expansion"),
        # from 60 °F the same booster has twice as much to get rid of
        ({CAUGHT: "11.5 fl oz", INLET: "60 F"}, {}, "as_expansion"),
        ({CAUGHT: "11.5 fl oz", INLET: "140 F"}, {}, "beyond"),
    ],
)
def test_what_was_caught(typed: dict[str, str], plate: dict[str, str], outcome: str) -> None:
    finding = found(CAUGHT, TWO, typed, **plate)
    assert finding.outcome == outcome
    assert finding.counts == (CAUGHT,)
    assert (INLET in finding.consults) == (INLET in typed)


def test_caught_works_with_the_cut_out_read() -> None:
    usual = found(CAUGHT, TWO, {CAUGHT: "6 fl oz"})
    read = found(CAUGHT, TWO, {CAUGHT: "6 fl oz", CUT_OUT: "180 F"})
    assert CUT_OUT in read.consults
    assert any("188" in line for line in usual.working)
    assert not any("188" in line for line in read.working)


def test_silent_where_nothing_can_be_reckoned() -> None:
    done = run(TWO, {CAUGHT: "6 fl oz", INLET: "185 F", CUT_OUT: "184 F"})
    assert not [f for f in done.findings if f.check == CAUGHT]
    assert any("colder than it is heated" in f.silent for f in done.firings)


def test_expected() -> None:
    shown = expect(CAUGHT, TWO, {})
    assert shown.lines == ("nothing; with nowhere to expand about 6.2 fl oz each time it heats up",)
    assert any("booster" in line.lower() for line in shown.assumptions)
    assert "mL" in expect(CAUGHT, METRIC, {}).lines[0]
    assert expect(PAIR, TWO, {}).lines == ("both under 93.8 psi, and within 15 psi of one another",)
