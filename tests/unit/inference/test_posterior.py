"""The fast answer against the slow one: every combination of causes."""

from __future__ import annotations

import math
import random
from contextlib import suppress

import pytest

from diagnose.inference import (
    ImpossibleSituationError,
    Node,
    Situation,
    TooWideError,
    concerned,
    conditioning,
    conflicts,
    cutset,
    explain,
    predict,
    propagation,
    solve,
    solve_and_predict,
)
from tests.books import enumerate_situation, finding, make_tree, random_situation, random_tree


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
    assert set(concerned(tree, situation)) <= set(solution.posterior)
    assert solution.posterior == pytest.approx({node: posterior[node] for node in solution.posterior}, abs=1e-9)
    for check in checks:
        for outcome, (chance, after) in answers[check].items():
            assert predictions[check].outcomes[outcome] == pytest.approx(chance, abs=1e-9)
            given = predictions[check].posterior[outcome]
            assert given == pytest.approx({c: after[c] for c in given}, abs=1e-9)


def test_a_long_batch_is_cut(monkeypatch: pytest.MonkeyPatch) -> None:
    rng = random.Random(7)
    tree = random_tree(rng, causes=7, events=5, checks=8)
    situation = random_situation(rng, tree)
    solution, whole = solve_and_predict(tree, situation, tree.checks)
    monkeypatch.setattr(propagation, "MOST_CELLS", 64)
    again, cut = solve_and_predict(tree, situation, tree.checks)
    assert again.posterior == pytest.approx(solution.posterior, abs=1e-12)
    for check in tree.checks:
        assert cut[check].outcomes == pytest.approx(whole[check].outcomes, abs=1e-12)
        assert cut[check].after == pytest.approx(whole[check].after, abs=1e-12)


def _condition(monkeypatch: pytest.MonkeyPatch) -> None:
    """From here on, even small networks have some of their variables fixed."""
    monkeypatch.setattr(conditioning, "PLAIN", 0)
    for name, value in (("SMALL", 12), ("MOST_FIXED", 8)):
        monkeypatch.setattr(cutset, name, value)


@pytest.mark.parametrize("seed", range(60))
def test_conditioned_equals_the_whole(monkeypatch: pytest.MonkeyPatch, seed: int) -> None:
    """With some variables fixed, one combination after another, as with the tables that hold them all."""
    rng = random.Random(seed)
    tree = random_tree(rng, causes=8, events=5, complaints=2, checks=6)
    situation = random_situation(rng, tree, stages=seed % 2)
    try:
        solution, whole = solve_and_predict(tree, situation, tree.checks)
    except ImpossibleSituationError:
        return
    _condition(monkeypatch)
    again, mixed = solve_and_predict(tree, situation, tree.checks)
    assert again.posterior == pytest.approx(solution.posterior, abs=0.003)
    for check in tree.checks:
        assert mixed[check].outcomes == pytest.approx(whole[check].outcomes, abs=0.01)
        for nth, chance in enumerate(whole[check].outcomes.values()):
            assert chance * mixed[check].after[nth] == pytest.approx(chance * whole[check].after[nth], abs=0.01)
    monkeypatch.setattr(cutset, "LEFT_OUT", 0.0)
    exact = solve_and_predict(tree, situation, tree.checks)[1]
    for check in tree.checks:
        assert exact[check].outcomes == pytest.approx(whole[check].outcomes, abs=1e-9)
        assert exact[check].after == pytest.approx(whole[check].after, abs=1e-9)


@pytest.mark.parametrize("seed", range(20))
def test_of_many_in_doubt_the_most_probable_combinations_do(monkeypatch: pytest.MonkeyPatch, seed: int) -> None:
    rng = random.Random(seed)
    tree = random_tree(rng, causes=8, events=5, complaints=2, checks=6)
    situation = random_situation(rng, tree)
    try:
        whole = solve_and_predict(tree, situation, tree.checks)[1]
    except ImpossibleSituationError:
        return
    _condition(monkeypatch)
    monkeypatch.setattr(cutset, "MOST_OPEN", 5)
    monkeypatch.setattr(cutset, "MOST_TURNED", 5)
    with suppress(TooWideError):  # where they leave out too much
        mixed = predict(tree, situation, tree.checks)
        for check in mixed:
            assert mixed[check].outcomes == pytest.approx(whole[check].outcomes, abs=2 * cutset.MOST_LEFT_OUT)


@pytest.mark.parametrize("seed", range(20))
def test_conditioned_reasons_equal_the_whole(monkeypatch: pytest.MonkeyPatch, seed: int) -> None:
    """What if something had not been found: those cases know less than the first one, and are looked for further."""
    rng = random.Random(seed)
    tree = random_tree(rng, causes=8, events=5, complaints=2, checks=6)
    situation = random_situation(rng, tree)
    cause = tree.leaves[0]
    try:
        whole, found = explain(tree, situation, cause), conflicts(tree, situation)
    except ImpossibleSituationError:
        return
    _condition(monkeypatch)
    monkeypatch.setattr(cutset, "LEFT_OUT", 0.0)
    again = explain(tree, situation, cause)
    assert again.probability == pytest.approx(whole.probability, abs=1e-3)
    bits = {(r.item, r.sole): r.bits for r in (*whole.speaks_for, *whole.speaks_against)}
    for reason in (*again.speaks_for, *again.speaks_against):
        assert reason.bits == pytest.approx(bits.get((reason.item, reason.sole), 0.1), abs=0.05)
    assert [c.checks for c in conflicts(tree, situation)] == [c.checks for c in found]


def test_too_wide_is_an_error(monkeypatch: pytest.MonkeyPatch) -> None:
    tree = random_tree(random.Random(7), causes=7, events=5)
    monkeypatch.setattr(conditioning, "WIDEST", 4)
    with pytest.raises(TooWideError, match="4 are allowed"):
        solve(tree, Situation())


@pytest.mark.parametrize(
    ("situation", "says"),
    [
        (Situation(repaired=("nobody",)), "nobody is no cause"),
        (Situation(repaired=("e0",)), "e0 is no cause"),
        (Situation(complaints=(("nothing", 0, True),)), "nothing is nothing that this machine can have"),
        (Situation(complaints=(("t0", 1, True),)), "stage 1 of t0 lies outside 0 to 0"),
        (Situation(findings=(finding("k99", {"o0": 1.0}),)), "check k99 does not belong"),
        (Situation(findings=(finding("k0", {"never": 1.0}),)), "check k0 has no outcome never"),
    ],
)
def test_what_makes_no_sense_is_named(situation: Situation, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        solve(random_tree(random.Random(1)), situation)


def test_what_cannot_be() -> None:
    """A complaint that is there and gone at once."""
    with pytest.raises(ImpossibleSituationError):
        solve(random_tree(random.Random(1)), Situation((("t0", 0, True), ("t0", 0, False))))


def test_a_repair_that_cured() -> None:
    """One cause, mended, complaint gone: it is not so any more; what did not take would still show."""
    tree = make_tree(
        [
            Node("worn", "cause", prior=0.02),
            Node("unlisted.top", "unlisted", prior=0.0025),
            Node("top", "complaint", ("worn", "unlisted.top")),
        ]
    )
    broken = (("top", 0, True),)
    before = solve(tree, Situation(broken))
    cured = solve(tree, Situation((*broken, ("top", 1, False)), repaired=("worn",)))
    still = solve(tree, Situation((*broken, ("top", 1, True)), repaired=("worn",)))
    assert before.ranking[0][0] == "worn"
    assert cured.posterior["worn"] == cured.posterior["top"] == 0.0
    assert still.ranking[0][0] == "unlisted.top"
    assert still.posterior["worn"] < 0.25
