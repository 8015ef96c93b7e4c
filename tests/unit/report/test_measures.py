"""Figures in sentences in the other system: what is turned, what is left alone."""

from __future__ import annotations

import pytest

from diagnose.language import ENGLISH
from diagnose.report.measures import Measures
from diagnose.units import UNITS, Quantity, counterpart, in_system, parse_quantity


@pytest.mark.parametrize(
    ("said", "si", "both"),
    [
        ("172 °F: under the least", "78 °C: under the least", "172 °F (78 °C): under the least"),
        ("20 psi (gauge, ± 2 psi)", "138 kPa (gauge, ± 14 kPa)", "20 psi (138 kPa) (gauge, ± 2 psi (± 14 kPa))"),
        ("off by ± 3 °F", "off by ± 1.7 °C", "off by ± 3 °F (± 1.7 °C)"),  # an error, not a temperature
        ("a rise of 40 F°", "a rise of 22 C°", "a rise of 40 F° (22 C°)"),
        ("150 °F (66 °C) burns", "66 °C burns", "150 °F (66 °C) burns"),  # both stand there already
        ("(118 120 °F)", "(48 49 °C)", "(118 120 °F (48 49 °C))"),  # one unit behind several figures
        ("15 to 25 psi", "103 to 172 kPa", "15 to 25 psi (103 to 172 kPa)"),
        ("-0.04 inWG", "-10 Pa", "-0.04 inWG (-10 Pa)"),
        ("10-20 psi", "69-138 kPa", "10-20 psi (69-138 kPa)"),
        ("48 A, 6 in, size 3 psig", "48 A, 6 in, size 3 psig", "48 A, 6 in, size 3 psig"),
        ("4 to 8 °F over it", "4 to 8 °F over it", "4 to 8 °F over it"),  # a difference, as the trade writes it
        ("de 140 a 160 °F", "de 60 a 71 °C", "de 140 a 160 °F (60 a 71 °C)"),
        ("3600 heat units", "3600 heat units", "3600 heat units"),
    ],
)
def test_sentences(said: str, si: str, both: str) -> None:
    assert Measures("si").text(said) == si
    assert Measures("us").text(said) == said.replace(" (66 °C)", "")
    assert Measures("both").text(said) == both
    assert Measures().text(said) == said


def test_what_is_said_in_si_is_told_in_us_units() -> None:
    assert Measures("us").text("82 °C and 140 kPa") == "180 °F and 20.3 psi"


def test_bands_in_words() -> None:
    low, high = parse_quantity("180 °F", "temperature"), parse_quantity("194 °F", "temperature")
    assert Measures().span(low, high, ENGLISH) == "180 to 194 °F"
    assert Measures("both").span(low, high, ENGLISH) == "180 to 194 °F (82 to 90 °C)"
    assert Measures("si").span(low, None, ENGLISH) == "82 °C or more"
    assert Measures("both").span(None, high, ENGLISH) == "under 194 °F (90 °C)"
    assert Measures().span(None, None, ENGLISH) == ""
    amps = parse_quantity("83.271 A", "current")
    assert Measures("both").span(amps, amps, ENGLISH) == "83.3 A"


def test_every_unit_has_a_fellow_and_comes_back() -> None:
    for unit in UNITS:
        for system in ("us", "si"):
            other = counterpart(unit, system)
            assert other.dimension == unit.dimension
            assert other.system in (system, "both") or other == unit
            if unit.system in ("us", "si") and unit.system != system and other == unit:
                assert (unit.dimension, unit.symbol) in {
                    ("hardness", "°dH"),
                    ("hardness", "°f"),
                    ("hardness", "mmol/L"),
                }
    there = in_system(Quantity(1234.0, counterpart(parse_quantity("1 psi", "pressure").unit, "us")), "si")
    assert in_system(there, "us").value == pytest.approx(1234.0, abs=0.1)
