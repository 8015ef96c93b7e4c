"""FDA Food Code 4-204.114: baffles, curtains or other means keep the waters of neighbouring tanks from each other.

Hence what is missing of them must be found under the complaint of ware that is soiled again.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book

BOOK = load_book()


@pytest.mark.parametrize("kind", ["two_tank_electric_208", "two_tank_chemical_208", "chain_two_tank_electric_480"])
@pytest.mark.parametrize("cause", ["curtains.inner_missing", "curtains.spray_pipe_turned", "tank_body.baffle_out"])
def test_a_missing_baffle_or_curtain_soils_the_ware_again(cause: str, kind: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines[kind]))
    assert cause in tree.causes_under("carry_over")


def test_a_single_tank_has_no_neighbour() -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines["single_tank_electric_208"]))
    assert not {"curtains.inner_missing", "tank_body.baffle_out"} & set(tree.causes_under("carry_over"))
