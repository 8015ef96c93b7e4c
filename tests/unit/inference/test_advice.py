"""The advice against the best policy there is, and against simpler ways to choose."""

from __future__ import annotations

import random
from functools import cache

import numpy as np
import pytest

from diagnose.inference import Node, Prediction, Situation, solve_and_predict
from diagnose.inference.economy import Circumstances
from diagnose.inference.options import weigh_options
from diagnose.inference.repairs import Repairs
from tests.books import make_tree
from tests.troubleshooting import Stand, World, cost_of, least_cost, minutes_of, random_world

WORLDS = 45


def marginals(belief: np.ndarray) -> np.ndarray:  # type: ignore[type-arg]
    bits = int(np.log2(len(belief)))
    states = np.arange(len(belief))
    return np.array([belief[(states >> bit & 1) == 1].sum() for bit in range(bits)])


def predictions(world: World, stand: Stand) -> list[Prediction]:
    made = []
    for nth, check in enumerate(world.checks):
        if nth in stand.asked:
            continue
        joints = [stand.belief * row for row in world.rows[nth]]
        chances = {o: float(j.sum()) for o, j in zip(check.outcomes, joints, strict=True)}
        after = np.array([marginals(j / max(j.sum(), 1e-300)) for j in joints])
        made.append(Prediction(check.id, chances, world.causes, after))
    return made


def advised(world: World, stand: Stand) -> tuple[str, int]:
    possible = [None if n in stand.repaired else task for n, task in enumerate(world.repairs)]
    repairs = Repairs([*possible, None], [range(len(world.causes))], world.proof, world.economy)
    tasks = {check.id: task for check, task in zip(world.checks, world.tasks, strict=True)}
    now = Circumstances(open=stand.open, state=stand.state)
    best = weigh_options(world.causes, marginals(stand.belief), predictions(world, stand), tasks, repairs, now).best
    return best.kind, 0 if best.kind == "help" else int(best.id[1:])


def repair_cost(world: World, stand: Stand, nth: int) -> float:
    task = world.repairs[nth]
    return minutes_of(world, stand, task) + world.economy.move(task.state, "running") + world.proof.minutes


def most_probable(world: World, stand: Stand) -> tuple[str, int]:
    p = marginals(stand.belief)
    left = [n for n in range(len(world.repairs)) if n not in stand.repaired]
    return ("repair", max(left, key=lambda n: p[n])) if left else ("help", 0)


def probability_over_cost(world: World, stand: Stand) -> tuple[str, int]:
    p = marginals(stand.belief)
    left = [n for n in range(len(world.repairs)) if n not in stand.repaired]
    return ("repair", max(left, key=lambda n: p[n] / repair_cost(world, stand, n))) if left else ("help", 0)


def information_per_minute(world: World, stand: Stand) -> tuple[str, int]:
    """Ask what tells most per minute until one cause is 90 % sure or nothing is left to ask."""
    p = marginals(stand.belief)
    ask = [n for n in range(len(world.checks)) if n not in stand.asked]
    if p.max() >= 0.9 or not ask:
        return most_probable(world, stand)

    def told(nth: int) -> float:
        joint = stand.belief * world.rows[nth]
        chance = joint.sum(axis=1, keepdims=True)
        independent = chance * stand.belief
        where = joint > 0
        bits = float((joint[where] * np.log2(joint[where] / independent[where])).sum())
        return bits / minutes_of(world, stand, world.tasks[nth])

    return "check", max(ask, key=told)


@cache
def results() -> dict[str, np.ndarray]:  # type: ignore[type-arg]
    rng = random.Random(20)
    worlds = [random_world(rng, rng.choice([3, 3, 4]), rng.choice([2, 3])) for _ in range(WORLDS)]
    least = np.array([least_cost(world) for world in worlds])
    policies = (advised, most_probable, probability_over_cost, information_per_minute)
    return {p.__name__: np.array([cost_of(w, p) for w in worlds]) / least for p in policies}


def test_near_the_optimum() -> None:
    ratio = results()["advised"]
    assert ratio.min() >= 1.0 - 1e-9, "no policy can beat the optimum: the judge is wrong"
    assert ratio.mean() <= 1.03
    assert ratio.max() <= 1.15


def test_better_than_simpler_ways() -> None:
    mean = {name: float(ratio.mean()) for name, ratio in results().items()}
    advice = mean.pop("advised")
    assert all(advice < other - 0.02 for other in mean.values()), (advice, mean)


@pytest.mark.parametrize("seed", range(12))
def test_the_inference_sees_the_same_world(seed: int) -> None:
    """What the policies were judged with, by enumeration, is what the inference hands to the advice."""
    rng = random.Random(seed)
    world = random_world(rng, 4, 3)
    free = [_prior(world, bit) for bit in range(len(world.causes))]
    kinds = ["cause"] * (len(world.causes) - 1) + ["unlisted"]
    leaves = [Node(n, k, prior=p) for n, k, p in zip(world.causes, kinds, free, strict=True)]  # type: ignore[arg-type]
    tree = make_tree([*leaves, Node("top", "complaint", world.causes)], world.checks)
    solution, foreseen = solve_and_predict(tree, Situation((("top", 0, True),)), tree.checks)
    assert [solution.posterior[c] for c in world.causes] == pytest.approx(marginals(world.start), abs=1e-9)
    for mine in predictions(world, Stand(world.start)):
        assert foreseen[mine.check].outcomes == pytest.approx(mine.outcomes, abs=1e-9)
        assert foreseen[mine.check].after == pytest.approx(mine.after, abs=1e-9)


def _prior(world: World, bit: int) -> float:
    """A cause's prior from the ratio of two states that differ in it only (another cause being present in both)."""
    other = 2 if bit == 0 else 1
    odds = float(world.start[other | 1 << bit] / world.start[other])
    return odds / (1.0 + odds)
