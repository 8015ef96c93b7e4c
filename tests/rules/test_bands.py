"""Plain bands: units, plates, and the error of the instrument."""

from __future__ import annotations

import doctest

import pytest

from diagnose.rules import bands
from diagnose.rules.bands import band_weights, bands_of, limit_end
from diagnose.units import find_unit, parse_quantity
from tests.rulebook import BOOK, expect, machine, run

PANEL, TANK = "rinse_thermometer.panel_reading", "wash.tank"


@pytest.mark.parametrize(
    ("unit", "own", "low", "high"),
    [
        ("°F", {}, 180.0, 194.0),
        ("°C", {}, 82.0, 90.0),  # the plate's 180 °F is the limit's 180 °F, whose twin is 82 °C
        ("°C", {"rinse_temperature": "85 °C"}, 85.0, 90.0),
        ("°C", {"rinse_temperature": "185 °F"}, 85.0, 90.0),  # 185 °F is no figure of the limit: converted
    ],
)
def test_ends_are_in_the_unit_read(unit: str, own: dict[str, str], low: float, high: float) -> None:
    kind = find_unit(unit, "temperature")
    assert kind is not None
    ends = [limit_end(BOOK, machine(**own), "rinse_temperature", end, kind) for end in ("low", "high")]
    assert [e.value for e in ends] == pytest.approx([low, high])


def test_two_hundred_kilopascal_is_not_29_psi() -> None:
    for unit, high in (("psi", 30.0), ("kPa", 200.0), ("bar", 2.0)):
        kind = find_unit(unit, "pressure")
        assert kind is not None
        assert limit_end(BOOK, machine(), "rinse_pressure_code", "high", kind).value == pytest.approx(high)


def test_where_the_figure_stands() -> None:
    unit = parse_quantity("1 psi", "pressure").unit
    assert "assumed" in limit_end(BOOK, machine(), "rinse_pressure", "low", unit).stands
    own = machine(rinse_pressure_least="15 psi")
    assert limit_end(BOOK, own, "rinse_pressure", "low", unit).stands == "data plate"


@pytest.mark.parametrize("spread", [0.01, 1.0, 20.0])
@pytest.mark.parametrize("value", [150.0, 180.0, 187.0, 300.0])
def test_weights_sum_to_one(value: float, spread: float) -> None:
    unit = parse_quantity("1 °F", "temperature").unit
    of_panel = bands_of(BOOK, machine(), BOOK.checks[PANEL], unit)
    assert sum(band_weights(of_panel, value, spread).values()) == pytest.approx(1.0)


def test_better_instrument_is_surer() -> None:
    panel = run(machine(), (PANEL, "178")).findings[0].weights["low"]
    reference = run(machine(), ("rinse_thermometer.reference_reading", "178")).findings[0].weights["low"]
    assert 0.7 < panel < reference


def test_factor_on_a_plate_figure() -> None:
    unit = parse_quantity("1 cfm", "air flow").unit
    ends = bands_of(BOOK, machine(vent_entrance="300 cfm"), BOOK.checks["vent_dampers.flow_entrance"], unit)
    assert [b.high.value for b in ends if b.high] == pytest.approx([255.0, 375.0])


def test_the_worst_of_several_places_counts() -> None:
    assert run(machine(), ("wash.three_places", "160 140 161")).findings[0].outcome == "low"


def test_silent_without_bands() -> None:
    done = run(machine(), ("jam_switch.gap", "3 mm"))
    assert done.findings == ()
    assert "no bands" in done.unanswered[0].why


def test_expected_is_the_good_band() -> None:
    shown = expect(machine(), TANK)
    assert shown is not None
    assert shown.lines[0].startswith("150 to 172 °F")
    assert shown.low == parse_quantity("150 °F", "temperature")
    assert expect(machine(), "jam_switch.gap") is None
    assert expect(machine(), "pump.look") is None
    assert expect(machine(), "no.such") is None


def test_examples_in_docstrings_hold() -> None:
    assert doctest.testmod(bands).failed == 0
