"""What is foretold roughly is near what is exact, and says which question is worth foretelling."""

from __future__ import annotations

import numpy as np
import pytest

from diagnose.inference import Situation, build_tree, foretold_roughly, predict, solve
from diagnose.model import Machine, load_book
from tests.unit.inference.hand_book import BOOK, MACHINE, saw

ASKED = ["a.gauge", "b.amps", "b.ohms", "a.inlet"]
SITUATIONS = [
    Situation((("cold", 0, True),)),
    Situation((("cold", 0, True),), (saw("a.gauge", "good"),)),
    Situation((("cold", 0, True), ("cold", 1, True)), (saw("a.gauge", "low"),), ("a.gauge_low",)),
]


@pytest.mark.parametrize("situation", SITUATIONS, ids=["at first", "after an answer", "after a repair"])
def test_one_fault_in_a_small_tree_is_told_nearly_exactly(situation: Situation) -> None:
    tree = build_tree(BOOK, MACHINE)
    exact = predict(tree, situation, ASKED)
    roughly = foretold_roughly(tree, situation, solve(tree, situation), ASKED)
    assert list(roughly) == ASKED
    for name in ASKED:
        assert roughly[name].causes == exact[name].causes
        assert list(roughly[name].outcomes.values()) == pytest.approx(list(exact[name].outcomes.values()), abs=0.05)
        assert np.abs(roughly[name].after - exact[name].after).max() < 0.1


def test_a_complaint_of_the_shipped_knowledge_is_told_so_that_questions_rank_alike() -> None:
    book = load_book()
    kind = book.machines["two_tank_electric_208"]
    tree, situation = build_tree(book, Machine("m", kind)), Situation((("rinse_cold", 0, True),))
    asked = [name for name, check in tree.checks.items() if book.checks[name].aloud and not check.computed]
    exact, roughly = predict(tree, situation, asked), foretold_roughly(tree, situation, solve(tree, situation), asked)
    off = [abs(roughly[n].outcomes[o] - p) for n in exact for o, p in exact[n].outcomes.items()]
    assert np.mean(off) < 0.02


def test_outcomes_are_chances_and_mix_to_what_is_believed_now() -> None:
    tree, situation = build_tree(BOOK, MACHINE), SITUATIONS[0]
    solution = solve(tree, situation)
    for told in foretold_roughly(tree, situation, solution, ASKED).values():
        chances = np.array(list(told.outcomes.values()))
        assert chances.sum() == pytest.approx(1.0)
        assert chances @ told.after == pytest.approx([solution.posterior[cause] for cause in told.causes])
