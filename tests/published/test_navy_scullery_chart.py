"""U.S. Navy, Engineman training manual NAVEDTRA 14076, chapter 7, table 7-4, scullery machines (public domain).

Its chart has five symptoms; those that fall under our complaints are here, in our words. Each pair of symptom and
cause must be a path in our tree, on a machine that can have it.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book
from diagnose.rules.bands import limit_end
from diagnose.units import parse_quantity

BOOK = load_book()

# (symptom, what the chart gives as cause, our complaint, our cause, a machine that can have it)
PAIRS = [
    (
        "racks slip off the chain conveyor",
        "chain tension has changed; both chains must be reset alike",
        "racks_jam",
        "conveyor_bar_pawls.chains_uneven",
        "chain_two_tank_electric_480",
    ),
    (
        "final rinse below 180 °F",
        "booster does not heat enough: descale the coil",
        "rinse_cold",
        "booster_steam.coil_limed",
        "two_tank_steam_208",
    ),
    (
        "final rinse below 180 °F",
        "booster does not heat enough: mend leaks",
        "rinse_cold",
        "booster_steam.coil_leaks",
        "two_tank_steam_208",
    ),
    (
        "final rinse below 180 °F",
        "thermostat wants calibrating",
        "rinse_cold",
        "booster_control.stat_set_low",
        "two_tank_electric_208",
    ),
    (
        "final rinse below 180 °F",
        "thermostat wants replacing",
        "rinse_cold",
        "booster_control.stat_drifted",
        "two_tank_electric_208",
    ),
    ("spray pressure low", "nozzles or slots plugged", "wash_weak", "spray_arms.jets_limed", "two_tank_electric_208"),
    ("spray pressure low", "strainer baskets plugged", "wash_weak", "pump.suction_blocked", "two_tank_electric_208"),
    ("spray pressure low", "baskets plugged", "wash_weak", "scrap_screens.trays_blinded", "two_tank_electric_208"),
    ("spray pressure low", "pump belts slipping", "wash_weak", "pump.belt_slips", "two_tank_electric_208"),
    ("pumps opened yearly", "erosion of the impeller", "wash_weak", "pump.impeller_worn", "two_tank_electric_208"),
]


@pytest.mark.parametrize(("symptom", "says", "complaint", "cause", "machine"), PAIRS, ids=lambda x: str(x)[:30])
def test_the_pair_is_a_path_in_our_tree(symptom: str, says: str, complaint: str, cause: str, machine: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines[machine]))
    assert cause in tree.causes_under(complaint), f"{symptom}: {says}"


def test_the_chart_is_named_as_a_source_where_it_is_used() -> None:
    assert any(c.basis.source == "navedtra_14076" for c in BOOK.causes.values())


@pytest.mark.parametrize("kind", ["single_tank_electric_208", "two_tank_electric_208"])
def test_the_manuals_older_wash_band_does_not_govern(kind: str) -> None:
    """NAVEDTRA 14163 washes at 140 to 160 °F; the Food Code 4-501.110(A) and the data plate ask for more."""
    machine = Machine("x", BOOK.machines[kind])
    unit = parse_quantity("140 F", "temperature").unit
    least = limit_end(BOOK, machine, "wash_tank_least", "low", unit)
    assert least.value >= limit_end(BOOK, None, "tank_temperature", "low", unit).value > 140.0
