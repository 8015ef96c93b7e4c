"""Where a figure comes from, told in one line."""

from __future__ import annotations

import pytest

from diagnose.rules.facts import gather
from diagnose.rules.told import limit_si, plates_told, reading_told, shown
from diagnose.units import parse_quantity
from tests.rulebook import BOOK, machine, reading


def test_plate_or_type() -> None:
    facts = gather(BOOK, machine(rinse_flow="16 L/min"), [])
    assert plates_told(facts, "rinse_flow", "rinse_pressure", "gas_input") == (
        "Rated final-rinse flow: 16 L/min (data plate).",
        "Flow pressure of the final rinse: 20 psi (type's figure, assumed).",
    )


def test_a_reading_of_one_and_of_three_places() -> None:
    one, three = reading("rinse_gauge.flow_pressure", "12"), reading("booster_electric.line_amps", "48 48 83")
    facts = gather(BOOK, machine(), [one, three])
    assert reading_told(facts, one) == ("rinse gauge.flow pressure: 12 psi (measured).",)
    assert reading_told(facts, three)[0].endswith("L1 48 A, L2 48 A, L3 83 A (measured).")
    assert reading_told(facts, None) == ()


def test_a_limit_is_taken_as_it_is_rounded_for_the_reader() -> None:
    facts = gather(BOOK, machine(), [])
    psi, kilopascal = (parse_quantity(text, "pressure").unit for text in ("1 psi", "1 kPa"))
    assert limit_si(facts, "rinse_pressure_code", "high", psi) == pytest.approx(30 * 6894.757, rel=1e-6)
    assert limit_si(facts, "rinse_pressure_code", "high", kilopascal) == 200e3
    with pytest.raises(LookupError):
        limit_si(facts, "no_such", "high", psi)


def test_shown() -> None:
    assert shown(2.0523e-4, "flow", "gpm") == "3.25 gpm"
