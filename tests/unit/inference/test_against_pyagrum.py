"""The same trees in an independent library for Bayesian networks."""

from __future__ import annotations

import random

import pytest

from diagnose.inference import solve_and_predict
from tests.books import random_situation, random_tree
from tests.junction_tree import answer, network_of


@pytest.mark.parametrize("seed", range(110))
def test_equals_a_junction_tree(seed: int) -> None:
    rng = random.Random(1000 + seed)
    tree = random_tree(rng, causes=rng.randint(8, 16), events=rng.randint(4, 9), complaints=rng.randint(1, 3), checks=9)
    situation = random_situation(rng, tree, findings=6)
    done = {finding.check for finding in situation.findings}
    asked = [check for check in tree.checks.values() if check.id not in done]
    net, evidence = network_of(tree, situation, asked)
    judge = answer(net, evidence)
    solution, predictions = solve_and_predict(tree, situation, [check.id for check in asked])
    for node, probability in solution.posterior.items():
        assert probability == pytest.approx(judge.posterior(node)[1], abs=1e-9)
    for check in asked:
        chances = judge.posterior(check.id)
        for nth, outcome in enumerate(check.outcomes):
            assert predictions[check.id].outcomes[outcome] == pytest.approx(chances[nth], abs=1e-9)
    prediction = predictions[rng.choice(asked).id]
    for nth, outcome in enumerate(prediction.outcomes):
        judge = answer(net, {**evidence, prediction.check: nth})
        for cause, probability in prediction.posterior[outcome].items():
            assert probability == pytest.approx(judge.posterior(cause)[1], abs=1e-9)
