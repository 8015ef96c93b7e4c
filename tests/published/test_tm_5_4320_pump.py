"""U.S. Army, TM 5-4320-200-13&P, table 4-2, troubleshooting of a centrifugal pump (public domain).

Its pairs in our words, each to be found in our tree under a weak wash spray. Two rows have no place on a wash pump and
are named: it stands under its tank, and has neither check valve nor priming.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book

BOOK = load_book()

PAIRS = [
    ("low capacity", "impeller clogged", "pump.object_in_impeller"),
    ("low capacity", "impeller broken or worn", "pump.impeller_worn"),
    ("low capacity", "case or its joint leaks", "tank_body.delivery_joint"),
    ("low capacity", "worn seals", "pump.seal_sucks_air"),
    ("low capacity", "clearance at the wear plate", "pump.impeller_worn"),
    ("will not prime", "suction flange loose", "pump.seal_sucks_air"),
    ("will not prime", "seals", "pump.seal_sucks_air"),
]
NOT_HERE = ("check valve stuck, low capacity", "check valve stuck, will not prime")


@pytest.mark.parametrize("complaint", ["wash_weak", "soil_left"])
@pytest.mark.parametrize(("symptom", "says", "cause"), PAIRS)
def test_the_pair_is_a_path_in_our_tree(symptom: str, says: str, cause: str, complaint: str) -> None:
    for kind in ("two_tank_electric_208", "single_tank_electric_240_single_phase"):
        tree = build_tree(BOOK, Machine("x", BOOK.machines[kind]))
        assert cause in tree.causes_under(complaint), f"{symptom}: {says} on {kind}"


def test_the_entry_covers_what_the_chart_says_of_one_cause() -> None:
    assert "wear face" in BOOK.causes["pump.impeller_worn"].shows
    assert "flange" in BOOK.causes["pump.seal_sucks_air"].why
    assert "vanes" in " ".join(BOOK.causes["pump.object_in_impeller"].repair)


def test_a_wash_pump_has_no_check_valve() -> None:
    """What the chart has and we leave out is said, and stays out."""
    assert NOT_HERE
    for cause in BOOK.causes.values():
        if cause.id.startswith("pump."):
            assert "check valve" not in f"{cause.title} {cause.shows}".casefold()
