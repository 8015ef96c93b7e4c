"""U.S. Navy, Engineman training manual NAVEDTRA 14076, chapter 7, table 7-4, scullery machines (public domain).

Two of its symptoms, in our words: spots or film on the ware, and a low spray pressure, which leaves soil. Each pair of
symptom and cause must be a path in our tree, on a machine that can have it.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book

BOOK = load_book()
SPOTS, LOW = "spots or film on the ware", "spray pressure low"

# (symptom, what the chart gives as cause or remedy, our complaint, our cause)
PAIRS = [
    (SPOTS, "greasy wash water", "film_spots", "soil_load.scum_stays"),
    (SPOTS, "dirty tank", "film_spots", "soil_load.tank_spent"),
    (SPOTS, "weak sprays", "film_spots", "pump.suction_blocked"),
    (SPOTS, "misdirected sprays, wash", "film_spots", "spray_arms.arm_turned"),
    (SPOTS, "misdirected sprays, rinse", "film_spots", "rinse_arms.jets_askew"),
    (SPOTS, "detergent mix too thin", "film_spots", "detergent_feed.set_low"),
    (SPOTS, "detergent mix too strong", "film_spots", "detergent_feed.set_high"),
    (SPOTS, "detergent of the wrong kind", "film_spots", "detergent_feed.wrong_product"),
    (SPOTS, "adjust the conveyor's speed", "film_spots", "drive_motor.speed_set_high"),
    (SPOTS, "check nozzles of the wash", "film_spots", "spray_arms.jets_limed"),
    (SPOTS, "check nozzles of the rinse", "film_spots", "rinse_arms.jets_limed"),
    (SPOTS, "check pipes", "film_spots", "spray_arms.manifold_choked"),
    (SPOTS, "check trays", "film_spots", "scrap_screens.screen_out"),
    (SPOTS, "check strainers", "film_spots", "scrap_screens.trays_blinded"),
    (SPOTS, "check for leaks", "film_spots", "spray_arms.joint_leaks"),
    (SPOTS, "check valves", "film_spots", "drain_overflow.fill_weeps"),
    (SPOTS, "check the pump's impeller", "film_spots", "pump.impeller_worn"),
    (LOW, "nozzles or slots plugged", "soil_left", "spray_arms.jets_limed"),
    (LOW, "pipework plugged", "soil_left", "spray_arms.manifold_choked"),
    (LOW, "strainer baskets plugged", "soil_left", "scrap_screens.trays_blinded"),
    (LOW, "suction strainer plugged", "soil_left", "pump.suction_blocked"),
    (LOW, "pump belts slipping", "soil_left", "pump.belt_slips"),
    (LOW, "impeller eroded", "soil_left", "pump.impeller_worn"),
]


@pytest.mark.parametrize("machine", ["two_tank_electric_208", "single_tank_chemical_208"])
@pytest.mark.parametrize(("symptom", "says", "complaint", "cause"), PAIRS, ids=lambda x: str(x)[:30])
def test_the_pair_is_a_path_in_our_tree(symptom: str, says: str, complaint: str, cause: str, machine: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines[machine]))
    assert cause in tree.causes_under(complaint), f"{symptom}: {says}"


def test_the_chart_has_no_part_in_dry_ware() -> None:
    """A pair that is not so must not be found: else the paths above would prove nothing."""
    tree = build_tree(BOOK, Machine("x", BOOK.machines["two_tank_electric_208"]))
    assert "pump.belt_slips" not in tree.causes_under("not_dry")
    assert "soil_load.tank_spent" not in tree.causes_under("wash_weak")
