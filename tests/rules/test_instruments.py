"""Instruments: matched by the check's words, with the ground their accuracy stands on."""

from __future__ import annotations

import math

import pytest

from diagnose.model import Reading, load_book
from diagnose.rules.instruments import INSTRUMENTS, instrument_of, spread
from diagnose.units import parse_quantity
from tests.rulebook import BOOK

PANEL = BOOK.checks["rinse_thermometer.panel_reading"]


def test_accuracy_follows_the_unit_read() -> None:
    fahrenheit, celsius = (parse_quantity(t, "temperature") for t in ("180 F", "82 C"))
    assert spread(PANEL, fahrenheit) == pytest.approx(3 / math.sqrt(3))
    assert spread(PANEL, celsius) == pytest.approx(5 / 3 / math.sqrt(3))
    gauge = BOOK.checks["rinse_gauge.flow_pressure"]
    assert instrument_of(gauge).accuracy(parse_quantity("140 kPa", "pressure")) == pytest.approx(13.79, abs=0.01)


def test_the_instrument_used_goes_before_the_one_asked_for() -> None:
    used = Reading("a", PANEL.id, instrument="second thermometer, probe")
    assert instrument_of(PANEL, used).kind == "reference thermometer"


def test_shares_and_constants_add() -> None:
    clamp = instrument_of(BOOK.checks["booster_electric.line_amps"])
    assert clamp.accuracy(parse_quantity("100 A", "current")) == pytest.approx(3.05)
    assert str(clamp) == "clamp meter, ± 3 % and 0.05 A"


def test_every_published_accuracy_names_its_section() -> None:
    for kind in INSTRUMENTS:
        assert kind.basis.kind != "published" or (kind.basis.source and kind.basis.where)
        assert kind.share > 0 or kind.absolute


def test_every_measured_check_of_the_shipped_book_has_an_instrument() -> None:
    book = load_book()
    unknown = [c.id for c in book.checks.values() if c.reading and instrument_of(c).kind == "instrument not known"]
    assert unknown == []
