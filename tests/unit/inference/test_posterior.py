"""The fast answer against the slow one: every combination of causes."""

from __future__ import annotations

import math
import random

import pytest

from diagnose.inference import ImpossibleSituationError, solve, solve_and_predict
from tests.books import enumerate_situation, random_situation, random_tree


@pytest.mark.parametrize("seed", range(200))
def test_equals_enumeration(seed: int) -> None:
    rng = random.Random(seed)
    tree = random_tree(rng, causes=rng.randint(3, 7), events=rng.randint(1, 5), complaints=rng.randint(1, 2))
    situation = random_situation(rng, tree, stages=seed % 3)
    checks = sorted(tree.checks)
    posterior, evidence, answers = enumerate_situation(tree, situation, checks)
    if evidence == 0.0:
        with pytest.raises(ImpossibleSituationError):
            solve(tree, situation)
        return
    solution, predictions = solve_and_predict(tree, situation, checks)
    assert math.exp(solution.log_evidence) == pytest.approx(evidence, rel=1e-9)
    assert solution.posterior == pytest.approx(posterior, abs=1e-9)
    for check in checks:
        for outcome, (chance, after) in answers[check].items():
            assert predictions[check].outcomes[outcome] == pytest.approx(chance, abs=1e-9)
            given = predictions[check].posterior[outcome]
            assert given == pytest.approx({c: after[c] for c in given}, abs=1e-9)
