"""Volts at a coil: its band, and whether the supply explains them."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, Reading, load_book
from diagnose.rules import expected, findings
from diagnose.units import parse_quantity

BOOK = load_book()
VOLTS = "supply_power.line_volts"
COIL = "contactor.coil_volts"


def machine(**plate: str) -> Machine:
    figures = {"volts": "208 V", "control_volts": "120 V"} | plate
    return Machine("under test", BOOK.machines["two_tank_electric_208"], figures)


def reading(check: str, *volts: float) -> Reading:
    labels = BOOK.checks[check].reading.each or [""]  # type: ignore[union-attr]
    return Reading(check, check, {n: parse_quantity(f"{v} V", "voltage") for n, v in zip(labels, volts, strict=True)})


def weights(coil: float, lines: float | None, **plate: str) -> dict[str, float]:
    read = [reading(COIL, coil)] + ([reading(VOLTS, lines, lines, lines)] if lines else [])
    found = [f for f in findings(BOOK, machine(**plate), read).findings if f.check == COIL]
    return dict(found[0].weights) if found else {}


@pytest.mark.parametrize(
    ("coil", "lines", "heaviest"),
    [
        (119, 208, "in_band"),
        (104, 208, "short_in_band"),  # a 240 V tap on 208 V
        (108, 187, "in_band"),  # 0.90 of both
        (94, 187, "low_beyond"),  # the same tap on a low supply
        (74, 208, "low_beyond"),  # a poor contact
        (97, 168, "low_with_supply"),  # 0.81 of both
        (138, 208, "high"),
    ],
)
def test_coil_beside_its_supply(coil: float, lines: float, heaviest: str) -> None:
    found = weights(coil, lines)
    assert max(found, key=lambda o: found[o]) == heaviest
    assert found[heaviest] > 0.75


def test_another_label_means_another_thing() -> None:
    assert weights(94, 187)["low_beyond"] > 0.9
    assert weights(94, 187, control_volts="110 V")["in_band"] > 0.5


def test_near_the_edge_it_is_no_verdict() -> None:
    found = weights(102, 177)  # 85 % of label and of plate
    assert 0.3 < found["in_band"] < 0.7
    assert 0.3 < found["low_with_supply"] < 0.7


def test_without_the_supply_a_low_coil_stays_open() -> None:
    found = weights(90, None)
    assert found["low_beyond"] == pytest.approx(found["low_with_supply"])


def test_a_lost_line_is_no_level_of_the_supply() -> None:
    read = [reading(COIL, 90), reading(VOLTS, 208, 40, 40)]
    found = next(f for f in findings(BOOK, machine(), read).findings if f.check == COIL)
    assert found.consults == ()


@pytest.mark.parametrize(("coil", "plate"), [(94, "0 V"), (0, "120 V")])
def test_silent(coil: float, plate: str) -> None:
    done = findings(BOOK, machine(control_volts=plate), [reading(COIL, coil)])
    assert done.findings == ()
    assert done.unanswered


def test_expected() -> None:
    shown = expected(BOOK, machine(), [reading(VOLTS, 187, 187, 187)], COIL)
    assert shown is not None
    assert shown.lines == ("102 to 132 V (120 V coil)", "about 108 V from this supply, with the right tap")
    assert any("0.85 × 120 V = 102 V" in line for line in shown.working)
