"""Three-element banks and volts squared: rows DERIVED from Ohm's law, some found in print as noted."""

from __future__ import annotations

import math

import pytest

from diagnose.physics.bank_words import heat_in_state, state_of_amps, state_of_ohms
from diagnose.physics.electric_heat import balanced_line_current, power_at_voltage
from diagnose.physics.element_bank import (
    BankState,
    bank_currents,
    bank_power,
    bank_resistances,
    element_resistance,
)

ONE, TWO, LOST = BankState(frozenset({0})), BankState(frozenset({0, 1})), BankState(lost_line=2)


@pytest.mark.parametrize(
    ("rated", "volts", "share"),
    [
        (240, 208, 0.7511),
        (208, 240, 1.3314),
        (240, 220, 0.8403),
        (480, 460, 0.9184),
        (480, 440, 0.8403),
        (230, 208, 0.8178),
        (208, 197, 0.897),
        (208, 187, 0.808),
    ],
)
def test_volts_squared(rated: float, volts: float, share: float) -> None:
    assert power_at_voltage(1.0, rated, volts) == pytest.approx(share, abs=5e-4)


def test_36_kilowatt_for_240_on_208() -> None:
    power = power_at_voltage(36e3, 240, 208)
    assert power == pytest.approx(27.04e3, rel=1e-4)
    assert balanced_line_current(power, 208) == pytest.approx(75.06, abs=0.01)
    assert balanced_line_current(36e3, 240) == pytest.approx(86.60, abs=0.01)


@pytest.mark.parametrize(
    ("kilowatts", "volts", "amps"), [(15, 208, 41.64), (9, 208, 24.98), (18, 240, 43.30), (36, 480, 43.30)]
)
def test_balanced_current(kilowatts: float, volts: float, amps: float) -> None:
    assert balanced_line_current(kilowatts * 1e3, volts) == pytest.approx(amps, abs=0.01)


def test_11_amp_elements_make_19_amp_lines() -> None:
    """Worked in an electrical forum: 11 A × 1.732, and 19 A still on the shared line with two elements on."""
    volts, element = 208.0, 11.0
    power = 3 * element * volts
    assert bank_currents(power, volts, "delta")[0] == pytest.approx(19.05, abs=0.01)
    assert max(bank_currents(power, volts, "delta", ONE)) == pytest.approx(19.05, abs=0.01)


@pytest.mark.parametrize(
    ("kilowatts", "volts", "element", "pair"),
    [(15, 208, 8.653, 5.769), (9, 208, 14.42, 9.614), (18, 240, 9.6, 6.4), (36, 480, 19.2, 12.8)],
)
def test_delta_resistances(kilowatts: float, volts: float, element: float, pair: float) -> None:
    resistance = element_resistance(kilowatts * 1e3, volts, "delta")
    assert resistance == pytest.approx(element, rel=1e-3)
    assert bank_resistances(resistance, "delta") == pytest.approx((pair,) * 3, rel=1e-3)


def test_delta_one_element_open() -> None:
    """Power two thirds (also found on a shop's formula page); lines 0.577, 0.577, 1; ohms 2R, R, R."""
    assert bank_power(15e3, 208, "delta", ONE) == pytest.approx(10e3)
    assert bank_currents(15e3, 208, "delta", ONE) == pytest.approx((24.04, 24.04, 41.64), abs=0.01)
    assert bank_resistances(8.653, "delta", frozenset({0})) == pytest.approx((17.31, 8.653, 8.653), abs=0.01)


def test_delta_one_element_open_is_not_three_quarters() -> None:
    """One widely copied heater sheet prints 3/4; its own equations, 2V²/R over 3V²/R, give 2/3."""
    assert abs(bank_power(1.0, 208, "delta", ONE) - 0.75) > 0.08


def test_delta_one_line_lost() -> None:
    assert bank_power(15e3, 208, "delta", LOST) == pytest.approx(7.5e3)
    assert bank_currents(15e3, 208, "delta", LOST) == pytest.approx((36.06, 36.06, 0.0), abs=0.01)


def test_delta_two_elements_open() -> None:
    assert bank_power(15e3, 208, "delta", TWO) == pytest.approx(5e3)
    assert sorted(bank_currents(1.0, 1.0, "delta", TWO)) == pytest.approx([0.0, 1 / 3, 1 / 3])
    assert bank_resistances(1.0, "delta", frozenset({0, 1})) == (math.inf, math.inf, 1.0)


def test_wye_without_neutral() -> None:
    """One element open and one line lost look alike: power one half (also found in print), 0.866, 0.866, 0."""
    resistance = element_resistance(27e3, 400, "wye")
    assert resistance == pytest.approx(400**2 / 27e3)
    assert bank_resistances(resistance, "wye") == pytest.approx((2 * resistance,) * 3)
    for state in (BankState(frozenset({2})), LOST):
        assert bank_power(27e3, 400, "wye", state) == pytest.approx(13.5e3)
        shares = [i / balanced_line_current(27e3, 400) for i in bank_currents(27e3, 400, "wye", state)]
        assert shares == pytest.approx([0.866, 0.866, 0.0], abs=1e-3)
    opened = bank_resistances(resistance, "wye", frozenset({2}))
    assert opened == (2 * resistance, math.inf, math.inf)


def test_wye_with_neutral() -> None:
    """One element open or one line lost leaves two thirds (same page)."""
    for state in (ONE, LOST):
        assert bank_power(9e3, 208, "wye with neutral", state) == pytest.approx(6e3)


def test_same_rows_with_elements_side_by_side() -> None:
    """The formulas by word: open delta two thirds, never three quarters; a lost line one half; open wye one half."""
    assert heat_in_state(15e3, 208, "delta", "one element open", 1) == pytest.approx(10e3)
    assert heat_in_state(15e3, 208, "delta", "one line lost", 1) == pytest.approx(7.5e3)
    assert heat_in_state(15e3, 208, "delta", "two elements open", 1) == pytest.approx(5e3)
    assert heat_in_state(27e3, 400, "wye", "one element open", 1) == pytest.approx(13.5e3)
    assert heat_in_state(9e3, 208, "wye with neutral", "one line lost", 1) == pytest.approx(6e3)
    # Only with two elements to a leg, and one of the six open, is another share left: five sixths.
    assert heat_in_state(15e3, 208, "delta", "one element open", 2) == pytest.approx(12.5e3)


def test_the_state_is_read_back_from_the_published_figures() -> None:
    assert state_of_amps((24.0, 24.0, 41.6), 15e3, 208, "delta", 1) == ("T1-T2: open", 1.0)
    assert state_of_amps((36.1, 36.1, 0.0), 15e3, 208, "delta", 1) == ("line L3 lost", 1.0)
    assert state_of_ohms((17.31, 8.65, 8.65), 15e3, 208, "delta", 1) == ("T1-T2: open", 1.0)
    assert state_of_ohms((5.77, 5.77, 5.77), 15e3, 208, "delta", 1) == ("whole", 1.0)
