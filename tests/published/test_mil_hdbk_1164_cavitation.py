"""U.S. Department of Defense, MIL-HDBK-1164, section 6.4.2, operation of centrifugal pumps: cavitation (public domain).

Restricted suction, water too hot, head at the suction short, overspeed, too little submergence; never throttle the
suction. Each is found in our tree, and the physics of the suction says the same.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book
from diagnose.physics.suction import suction_head

BOOK = load_book()
FT = 0.3048

PAIRS = [
    ("suction restricted", "wash_weak", "pump.suction_blocked"),
    ("suction restricted by its baskets", "wash_weak", "scrap_screens.trays_blinded"),
    ("water too hot", "wash_weak", "pump.boils_at_suction"),
    ("head at the suction short", "wash_weak", "pump.boils_at_suction"),
    ("too little submergence", "wash_weak", "pump.level_low"),
    ("runs faster than its wheel is made for", "motor_trips", "pump.impeller_too_big"),
]


@pytest.mark.parametrize(("says", "complaint", "cause"), PAIRS)
def test_what_makes_a_pump_cavitate_is_a_path_in_our_tree(says: str, complaint: str, cause: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines["two_tank_electric_208"]))
    assert cause in tree.causes_under(complaint), says


def test_the_suction_is_never_throttled() -> None:
    assert "Never throttle the suction" in BOOK.causes["pump.boils_at_suction"].why


def kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


def test_hot_water_short_head_restriction_and_low_level_all_take_from_the_suction() -> None:
    good = suction_head(kelvin(160), 1 * FT, 1 * FT)
    assert suction_head(kelvin(190), 1 * FT, 1 * FT) < good  # too hot
    assert suction_head(kelvin(160), 1 * FT, 8 * FT) < good  # restricted
    assert suction_head(kelvin(160), 0.1 * FT, 1 * FT) < good  # too little submergence


@pytest.mark.parametrize(("at", "feet"), [(160, 24), (190, 13)])
def test_the_entry_carries_the_heads_of_the_physics(at: float, feet: float) -> None:
    """Without height or loss, at sea level: as the entry says."""
    assert suction_head(kelvin(at), 0.0, 0.0) / FT == pytest.approx(feet, abs=0.6)
    assert f"{feet} ft" in BOOK.causes["pump.boils_at_suction"].why
