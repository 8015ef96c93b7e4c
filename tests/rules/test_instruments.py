"""Instruments: matched by the check's words, with the ground their accuracy stands on."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from diagnose.model import Book, Instrument, InstrumentKind, Reading, load_book
from diagnose.model.instruments import parse_accuracy
from diagnose.rules import findings
from diagnose.rules.instruments import instrument_of, spread
from diagnose.units import UnitError, parse_quantity
from tests.rulebook import BOOK, machine, reading

PANEL = BOOK.checks["rinse_thermometer.panel_reading"]
REFERENCE = "rinse_thermometer.reference_reading"


def test_accuracy_follows_the_unit_read() -> None:
    fahrenheit, celsius = (parse_quantity(t, "temperature") for t in ("180 F", "82 C"))
    assert spread(PANEL, fahrenheit) == pytest.approx(3 / math.sqrt(3))
    assert spread(PANEL, celsius) == pytest.approx(5 / 3 / math.sqrt(3))
    gauge = BOOK.checks["rinse_gauge.flow_pressure"]
    assert instrument_of(gauge).accuracy(parse_quantity("140 kPa", "pressure")) == pytest.approx(13.79, abs=0.01)


def test_the_instrument_used_goes_before_the_one_asked_for() -> None:
    used = Reading("a", PANEL.id, instrument="second thermometer, probe")
    assert instrument_of(PANEL, used).kind == "reference thermometer"
    own = Instrument("reference thermometer", "temperature", "0.5 °F", name="probe")
    assert instrument_of(PANEL, replace(used, accuracy=own)) is own


def test_shares_and_constants_add() -> None:
    clamp = instrument_of(BOOK.checks["booster_electric.line_amps"])
    assert clamp.accuracy(parse_quantity("100 A", "current")) == pytest.approx(3.05)
    assert str(clamp) == "clamp meter, ± 3 % and 0.05 A"


def test_every_published_accuracy_names_its_section() -> None:
    for kind in load_book().instruments.values():
        assert kind.basis.kind != "published" or (kind.basis.source and kind.basis.where)
        assert kind.share > 0 or kind.absolute


def test_every_measured_check_of_the_shipped_book_has_an_instrument() -> None:
    book = load_book()
    unknown = [c.id for c in book.checks.values() if c.reading and instrument_of(c).kind == "instrument not known"]
    assert unknown == []


def test_a_book_with_kinds_of_its_own_judges_by_them() -> None:
    def weight(absolute: str) -> float:
        kind = InstrumentKind(id="x", title="x", quantity="temperature", absolute=absolute, basis=PANEL.basis)
        book = replace(BOOK, instruments={"x": kind})
        assert isinstance(book, Book)
        return findings(book, machine(), [reading(PANEL.id, "178 F")]).findings[0].weights["low"]

    assert weight("0.5 °F") > 0.99
    assert 0.5 < weight("6 °F") < 0.75


@pytest.mark.parametrize(
    ("text", "quantity", "absolute", "share"),
    [
        ("1 °F", "temperature", "1 °F", 0.0),
        ("± 0.5 C", "temperature", "0.5 °C", 0.0),
        ("2 %", "current", "", 0.02),
        ("1.5% + 0.1 ohm", "resistance", "0.1 ohm", 0.015),
        ("3 % and 0.05 A", "current", "0.05 A", 0.03),
        ("2 % of the reading and 1 %", "share", "1 %", 0.02),
    ],
)
def test_accuracy_as_data_sheets_write_it(text: str, quantity: str, absolute: str, share: float) -> None:
    assert parse_accuracy(text, quantity) == (absolute, pytest.approx(share))
    made = Instrument("kind", quantity, absolute, share)
    assert parse_accuracy(made.text, quantity) == (absolute, pytest.approx(share))


@pytest.mark.parametrize("text", ["", "good", "0 °F", "1 psi", "1 °F + 2 °F", "80 %", "-"])
def test_no_accuracy(text: str) -> None:
    with pytest.raises(UnitError):
        parse_accuracy(text, "temperature")


def test_widened_doubles_both_parts() -> None:
    wide = Instrument("k", "temperature", "1 °F", 0.01).widened(2)
    assert wide.text == "2 % and 2 °F"
    assert wide.accuracy(parse_quantity("180 F", "temperature")) == pytest.approx(5.6)
    assert wide.accuracy(parse_quantity("80 C", "temperature")) == pytest.approx(1.6 + 2 / 1.8)


def test_own_instrument_is_told_in_the_working_and_sharpens_a_verdict() -> None:
    plain = reading(REFERENCE, "179 F")
    own = Instrument("reference thermometer", "temperature", "0.3 °F", name="probe 7")
    wide = replace(own.widened(12), note="± 0.3 °F, calibration overdue since 2026-03: taken as ± 3.6 °F")
    usual, sharp, dull = (
        findings(BOOK, machine(), [replace(plain, accuracy=each)]).findings[0] for each in (None, own, wide)
    )
    assert sharp.weights["low"] > 0.99 > usual.weights["low"] > dull.weights["low"]
    assert "your reference thermometer 'probe 7', ± 0.3 °F" in " ".join(sharp.working)
    assert "overdue since 2026-03: taken as ± 3.6 °F" in " ".join(dull.working)


def test_a_consulted_reading_tells_its_instrument_too() -> None:
    own = Instrument(
        "bucket and watch", "flow", "", 0.02, name="pail", note="± 1 %, calibration overdue: taken as ± 2 %"
    )
    read = [
        reading("supply_water.inlet_temperature", "140 F"),
        reading("booster_electric.line_amps", "48 48 83"),
        replace(reading("rinse_arms.flow_measured", "4.2 gpm"), accuracy=own),
        reading("rinse_thermometer.panel_reading", "172 F"),
    ]
    balance = next(f for f in findings(BOOK, machine(), read).findings if f.check == "booster_electric.heat_balance")
    assert "Your bucket and watch 'pail', ± 1 %, calibration overdue: taken as ± 2 %." in balance.working
