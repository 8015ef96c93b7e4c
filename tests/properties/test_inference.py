"""What must hold of every ranking, whatever the tree."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from diagnose.inference import (
    ImpossibleSituationError,
    Situation,
    Solution,
    TreeCheck,
    concerned,
    explain,
    predict,
    solve,
)
from diagnose.inference.explain import FEWEST_BITS
from diagnose.inference.repairs import fitted_scale
from tests.books import finding, make_tree
from tests.properties.strategies import Trouble, troubles

quick = settings(max_examples=60, deadline=None)


def solved(trouble: Trouble, situation: Situation | None = None) -> Solution:
    try:
        return solve(trouble.tree, situation or trouble.situation)
    except ImpossibleSituationError:
        assume(False)
        raise


@quick
@given(troubles(stages=2))
def test_probabilities(trouble: Trouble) -> None:
    solution = solved(trouble)
    assert all(-1e-12 <= p <= 1.0 + 1e-12 for p in solution.posterior.values())
    assert {f"unlisted.{complaint}" for complaint, _, _ in trouble.situation.complaints} <= set(solution.causes)
    assert solution.log_evidence <= 1e-12


@quick
@given(troubles())
def test_what_is_complained_of_is_so(trouble: Trouble) -> None:
    solution = solved(trouble)
    for complaint in trouble.situation.still_there:
        assert solution.posterior[complaint] == pytest.approx(1.0)
        assert sum(solution.posterior[c] for c in trouble.tree.causes_under(complaint)) >= 1.0 - 1e-9
    for node in trouble.situation.ruled_out:
        assert solution.posterior[node] == 0.0


@quick
@given(troubles(stages=1))
def test_order_of_findings_does_not_matter(trouble: Trouble) -> None:
    turned = replace(trouble.situation, findings=trouble.situation.findings[::-1])
    assert solved(trouble, turned).posterior == pytest.approx(solved(trouble).posterior, abs=1e-9)


@quick
@given(troubles(stages=1))
def test_predictions_average_to_what_is_believed(trouble: Trouble) -> None:
    solution = solved(trouble)
    for prediction in predict(trouble.tree, trouble.situation, trouble.open).values():
        chances = np.array(list(prediction.outcomes.values()))
        assert chances.sum() == pytest.approx(1.0)
        before = [solution.posterior[cause] for cause in prediction.causes]
        assert chances @ prediction.after == pytest.approx(np.array(before), abs=1e-9)


@quick
@given(troubles(stages=1), st.data())
def test_a_prediction_comes_true(trouble: Trouble, data: st.DataObject) -> None:
    """Believing an outcome beforehand or being told it comes to the same."""
    assume(trouble.open)
    before, predictions = solved(trouble), predict(trouble.tree, trouble.situation, trouble.open)
    check = data.draw(st.sampled_from(trouble.open))
    outcome = data.draw(st.sampled_from(trouble.tree.checks[check].outcomes))
    answered = finding(check, {outcome: 1.0}, trouble.situation.stage)
    told = solved(trouble, replace(trouble.situation, findings=(*trouble.situation.findings, answered)))
    prediction = predictions[check]
    assert told.log_evidence - before.log_evidence == pytest.approx(math.log(prediction.outcomes[outcome]), abs=1e-9)
    for cause, p in prediction.posterior[outcome].items():
        assert p == pytest.approx(told.posterior[cause], abs=1e-9)


@quick
@given(troubles(), st.data(), st.floats(0.05, 0.95), st.floats(0.05, 0.95))
def test_a_look_at_one_cause_multiplies_its_odds(
    trouble: Trouble, data: st.DataObject, when_so: float, when_not: float
) -> None:
    cause = data.draw(st.sampled_from(concerned(trouble.tree, trouble.situation)))
    look = TreeCheck("look", (cause,), ("yes", "no"), np.array([[when_so, 1 - when_so], [when_not, 1 - when_not]]))
    tree = make_tree(list(trouble.tree.nodes.values()), [*trouble.tree.checks.values(), look])
    seen = finding("look", {"yes": 1.0})
    situation = replace(trouble.situation, findings=(*trouble.situation.findings, seen))
    before = solved(trouble).posterior[cause]
    after = solve(tree, situation).posterior[cause]
    assert after * (1 - before) * when_not == pytest.approx(before * (1 - after) * when_so, abs=1e-12)
    if 1e-9 < before < 1 - 1e-9:
        reasons = explain(tree, situation, cause)
        bits = math.log2(when_so / when_not)
        reason = next((r for r in reasons.speaks_for + reasons.speaks_against if r.item.what == "look"), None)
        assert (reason.bits if reason else 0.0) == pytest.approx(bits, abs=1e-6 if reason else FEWEST_BITS)


@quick
@given(troubles(stages=1))
def test_a_finding_that_says_nothing_changes_nothing(trouble: Trouble) -> None:
    looks_at = tuple(trouble.tree.nodes)[:3]
    blank = TreeCheck("blank", looks_at, ("a", "b"), np.full((len(looks_at) + 1, 2), 0.5))
    tree = make_tree(list(trouble.tree.nodes.values()), [*trouble.tree.checks.values(), blank])
    found = (*trouble.situation.findings, finding("blank", {"a": 1.0}))
    before = solved(trouble)
    after = solve(tree, replace(trouble.situation, findings=found))
    assert after.posterior == pytest.approx(before.posterior, abs=1e-9)


@quick
@given(st.lists(st.floats(0.001, 0.4), min_size=2, max_size=8))
def test_scale_fits_independent_causes(priors: list[float]) -> None:
    """Independent causes of which at least one is present give back the chance of that."""
    some = 1.0 - math.prod(1.0 - p for p in priors)
    assert fitted_scale(np.array([priors]) / some)[0] == pytest.approx(some, rel=1e-3)
