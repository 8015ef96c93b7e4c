"""The same ohms on another plate are another state; the edge is left open to both."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import findings
from tests.rulebook import reading

SHIPPED = load_book()
OHMS = "tank_heater_electric.terminal_ohms"


def _found(typed: str, kind: str = "two_tank_electric_208", **own: str) -> Finding:
    machine = Machine("m", SHIPPED.machines[kind], own)
    (found,) = findings(SHIPPED, machine, [reading(OHMS, typed, book=SHIPPED)]).findings
    return found


@pytest.mark.parametrize(
    ("power", "volts", "outcome"),
    [
        ("20 kW", "208 V", "healthy"),  # 4.3 ohm a pair
        ("20 kW", "240 V", "unlike"),  # 5.8 ohm a pair
        ("10 kW", "208 V", "unlike"),  # 8.7 ohm a pair
        ("27 kW", "240 V", "healthy"),  # 4.3 ohm a pair
    ],
)
def test_even_pairs(power: str, volts: str, outcome: str) -> None:
    assert _found("4.3 4.3 4.3", tank_power=power, tank_volts=volts).outcome == outcome


def test_open_element_is_named_and_the_reading_counted_once() -> None:
    found = _found("13.0 6.5 6.5", tank_power="20 kW", tank_volts="208 V")
    assert found.outcome == "one_element_open"
    assert found.rule == OHMS
    assert len(found.counts) == 1
    assert any("across T1-T2" in line for line in found.working)


def test_wye_is_its_own_pattern() -> None:
    """18 kW at 400 V in wye: 8.9 ohm an element, 17.8 a pair; the same figures mean nothing in a delta."""
    own = {"tank_power": "18 kW", "tank_volts": "400 V"}
    assert _found("17.8 17.8 17.8", "two_tank_electric_400_50", **own).outcome == "healthy"
    assert _found("17.8 900000 900000", "two_tank_electric_400_50", **own).outcome == "one_element_open"


def test_at_the_edge_both_are_kept() -> None:
    """A seventh over the plate's 4.33 ohm: old elements or others than the plate's, neither is sure."""
    found = _found("4.95 4.95 4.95", tank_power="20 kW", tank_volts="208 V")
    assert 0.02 < found.weights["healthy"] < 0.98
    assert 0.02 < found.weights["all_high"] < 0.98


@pytest.mark.parametrize(("typed", "outcome"), [("5.8 5.8 5.8", "all_high"), ("13.0 12.9 13.0", "triple")])
def test_even_but_high(typed: str, outcome: str) -> None:
    """240 V elements read a third more, a delta linked as a star three times as much."""
    assert _found(typed, tank_power="20 kW", tank_volts="208 V").outcome == outcome


def test_one_of_two_side_by_side() -> None:
    """20 kW at 208 V with six elements of 13 ohm: 6.5, 4.9 and 4.9 ohm with one of them open."""
    found = _found("6.5 4.9 4.9", tank_power="20 kW", tank_volts="208 V")
    assert found.outcome == "one_element_open"
    assert any("several elements side by side" in line and "T1-T2" in line for line in found.working)
