"""WaterSense at Work, U.S. Environmental Protection Agency, October 2012, equations 4-22 and 4-23, page 4-50."""

from __future__ import annotations

import pytest

from diagnose.formulas import said
from diagnose.inference import build_tree
from diagnose.model import Machine, load_book
from diagnose.physics.racks import annual_water

GALLON = 3.785411784e-3
BOOK = load_book()

# Points of upkeep on pages 4-48 and 4-49, in our words, and the fault each is there to prevent: a cause of ours under
# the complaint that the machine uses too much.
POINTS = [
    ("keep the rinse pressure within the maker's range", "pressure_regulator.set_high"),
    ("keep the rinse pressure within the maker's range", "pressure_regulator.bypass_open"),
    ("keep the rinse temperature within the maker's range", "booster_control.stat_set_high"),
    ("see that fill valves close fully", "drain_overflow.fill_weeps"),
    ("see that fill valves close fully", "level_control.hand_fill_open"),
    ("look at the rinse nozzles for wear", "rinse_arms.jets_worn"),
    ("keep the curtains on the machine", "curtains.entrance_missing"),
    ("keep the curtains on the machine", "curtains.exit_missing"),
    ("set the rinse bypass drain so that the wash tank is replenished", "drain_overflow.bypass_off"),
    ("run it in automatic mode", "operator_panel.set_to_hand"),
]


@pytest.mark.parametrize(("per_rack", "racks", "gallons"), [(0.70, 400, 102_200), (0.54, 600, 118_260)])
def test_water_in_a_year(per_rack: float, racks: int, gallons: float) -> None:
    """Gallons per rack times racks a day times days; figures of the criteria and of their calculator."""
    assert annual_water(per_rack * GALLON, racks, 365) / GALLON == pytest.approx(gallons)


def test_saving_is_the_difference_of_two() -> None:
    """Equation 4-23: 0.87 gal/rack (a calculator's baseline, FROM MEMORY) against 0.70."""
    saved = annual_water(0.87 * GALLON, 400, 365) - annual_water(0.70 * GALLON, 400, 365)
    assert saved / GALLON == pytest.approx(0.17 * 400 * 365)


def test_written_as_one_would_on_paper() -> None:
    lines = said("water-year", "us", water_per_rack=0.7 * GALLON, racks_per_day=400.0, days=365.0)
    assert lines == ("0.7 gal × 400 × 365 = 102200 gal",)


@pytest.mark.parametrize(("point", "cause"), POINTS, ids=[cause for _, cause in POINTS])
def test_each_point_of_upkeep_is_a_path_in_our_tree(point: str, cause: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines["two_tank_electric_208"]))
    assert cause in tree.causes_under("uses_too_much"), point


def test_the_bypass_is_found_where_the_tank_is_not_replenished() -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines["single_tank_electric_208"]))
    assert "drain_overflow.bypass_off" in tree.causes_under("tank_loses_water")


@pytest.mark.parametrize("entry", ["drain_overflow.fill_weeps", "drain_overflow.bypass_off", "water_use.runs_empty"])
def test_the_entries_name_it_as_their_source(entry: str) -> None:
    found = BOOK.causes.get(entry) or BOOK.events[entry]
    assert found.basis.source == "watersense_at_work"
