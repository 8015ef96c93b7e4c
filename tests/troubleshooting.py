"""A small world in which the best possible policy can be found by trying everything: the judge of the advice.

The belief is the whole joint distribution over which causes are present (the last bit is "something not listed").
Shares with the product only the records that describe work (Task, Economy) and a check's table.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from diagnose.inference import TreeCheck
from diagnose.inference.economy import Economy, Task
from diagnose.inference.network import REPAIR_DID_NOT_TAKE

__all__ = ["Belief", "Policy", "Stand", "World", "cost_of", "least_cost", "random_world"]

Belief = NDArray[np.float64]


@dataclass(frozen=True)
class World:
    causes: tuple[str, ...]  # the last one is unlisted and cannot be repaired
    start: Belief
    repairs: tuple[Task, ...]
    proof: Task
    checks: tuple[TreeCheck, ...]
    tasks: tuple[Task, ...]  # of the checks
    economy: Economy
    rows: tuple[NDArray[np.float64], ...]  # per check: (outcomes, states) likelihoods


@dataclass(frozen=True)
class Stand:
    """Where a job stands."""

    belief: Belief
    asked: frozenset[int] = frozenset()
    repaired: frozenset[int] = frozenset()
    open: frozenset[str] = frozenset()
    state: str = "running"

    @property
    def key(self) -> tuple[object, ...]:
        return self.belief.round(10).tobytes(), self.asked, self.repaired, self.open, self.state


# A policy names the next step: ("check", n), ("repair", n) or ("help", 0).
Policy = Callable[[World, Stand], tuple[str, int]]


def minutes_of(world: World, stand: Stand, task: Task) -> float:
    opening = sum(world.economy.access[a] for a in task.open - stand.open)
    return task.minutes + opening + world.economy.move(stand.state, task.state)


def after_check(world: World, stand: Stand, nth: int) -> list[tuple[float, Stand]]:
    task = world.tasks[nth]
    branches = []
    for row in world.rows[nth]:
        joint = stand.belief * row
        chance = float(joint.sum())
        if chance > 1e-12:
            branches.append(
                (chance, Stand(joint / chance, stand.asked | {nth}, stand.repaired, stand.open | task.open, task.state))
            )
    return branches


def after_repair(world: World, stand: Stand, nth: int) -> tuple[float, list[tuple[float, Stand]]]:
    """Minutes of the repair with the look afterwards, and what remains when the complaint is still there."""
    task = world.repairs[nth]
    mended = Stand(stand.belief, open=stand.open | task.open, state=task.state)
    minutes = minutes_of(world, stand, task) + minutes_of(world, mended, world.proof)
    flipped, taken = _flip(len(stand.belief), nth)
    fresh = (stand.belief + stand.belief[flipped]) * taken
    fresh[0] = 0.0  # the complaint would be gone
    still = float(fresh.sum())
    opened = stand.open | task.open | world.proof.open
    left = Stand(fresh / still, stand.asked, stand.repaired | {nth}, opened, world.proof.state)
    return minutes, [(still, left)]


@cache
def _flip(states: int, bit: int) -> tuple[NDArray[np.int64], Belief]:
    """For each state the one with this bit turned, and how likely its bit is after the repair."""
    every = np.arange(states)
    fresh = np.where(every >> bit & 1, REPAIR_DID_NOT_TAKE, 1.0 - REPAIR_DID_NOT_TAKE)
    return every ^ (1 << bit), fresh


def least_cost(world: World) -> float:
    """Expected minutes of the best policy there is, by dynamic programming over beliefs."""
    known: dict[tuple[object, ...], float] = {}

    @cache
    def quickest(repaired: frozenset[int]) -> float:
        """Nothing ends without at least the quickest repair that is left and a look, or help."""
        left = [task.minutes for nth, task in enumerate(world.repairs) if nth not in repaired]
        return min(min(left, default=np.inf) + world.proof.minutes, world.economy.help_minutes)

    def value(stand: Stand) -> float:
        key = stand.key
        if key in known:
            return known[key]
        best = world.economy.help_minutes
        # What is likely first: the sooner something good is known, the less of the rest is looked into.
        for nth in sorted(set(range(len(world.repairs))) - stand.repaired, key=lambda n: repair_price(stand, n)):
            if minutes_of(world, stand, world.repairs[nth]) < best:
                minutes, branches = after_repair(world, stand, nth)
                best = min(best, total(minutes, branches, best))
        for nth in range(len(world.checks)):
            if nth not in stand.asked:
                minutes = minutes_of(world, stand, world.tasks[nth])
                if minutes + quickest(stand.repaired) < best:
                    best = min(best, total(minutes, after_check(world, stand, nth), best))
        known[key] = best
        return best

    def repair_price(stand: Stand, nth: int) -> float:
        likely = float(stand.belief[bits[nth]].sum())
        return world.repairs[nth].minutes / max(likely, 1e-9)

    def total(minutes: float, branches: Sequence[tuple[float, Stand]], limit: float) -> float:
        ahead = sum(chance * quickest(stand.repaired) for chance, stand in branches)
        for chance, stand in branches:
            if minutes + ahead >= limit:
                return limit  # cannot be better
            minutes += chance * value(stand)
            ahead -= chance * quickest(stand.repaired)
        return minutes

    bits = [np.flatnonzero(np.arange(len(world.start)) >> nth & 1) for nth in range(len(world.repairs))]
    return value(Stand(world.start))


def cost_of(world: World, policy: Policy) -> float:
    """Expected minutes of a policy, over every answer and every outcome of a repair."""

    def value(stand: Stand) -> float:
        kind, nth = policy(world, stand)
        if kind == "help":
            return world.economy.help_minutes
        if kind == "repair":
            minutes, branches = after_repair(world, stand, nth)
        else:
            minutes, branches = minutes_of(world, stand, world.tasks[nth]), after_check(world, stand, nth)
        return minutes + sum(chance * value(stand) for chance, stand in branches)

    return value(Stand(world.start))


def random_world(rng: random.Random, causes: int, checks: int) -> World:
    """Some causes under one complaint, noisy checks, covers and states that cost time."""
    economy = Economy(
        {"box": rng.uniform(2, 10), "cover": rng.uniform(2, 20)},
        {"running": 0.0, "isolated": 5.0},
        {"running": 0.0, "isolated": 3.0},
        rng.uniform(120, 300),
    )
    names = (*(f"c{n}" for n in range(causes)), "unlisted.top")
    frequencies = rng.choice([(0.001, 0.0025, 0.006, 0.016, 0.04, 0.2), (0.006, 0.016, 0.04), (0.1, 0.2, 0.4)])
    priors = [rng.choice(frequencies) for _ in range(causes)] + [0.0025]
    states = np.arange(1 << len(names))
    start = np.ones(len(states))
    for bit, prior in enumerate(priors):
        start *= np.where(states >> bit & 1, prior, 1.0 - prior)
    start[0] = 0.0  # the complaint is there
    made = [_random_check(rng, f"k{n}", causes) for n in range(checks)]
    return World(
        names,
        start / start.sum(),
        tuple(Task(rng.uniform(5, 90), _covers(rng), rng.choice(["running", "isolated"])) for _ in range(causes)),
        Task(rng.uniform(1, 6)),
        tuple(made),
        tuple(Task(rng.uniform(1, 12), _covers(rng), rng.choice(["running", "running", "isolated"])) for _ in made),
        economy,
        tuple(_by_state(check, states) for check in made),
    )


def _covers(rng: random.Random) -> frozenset[str]:
    return frozenset(a for a in ("box", "cover") if rng.random() < 0.35)


def _random_check(rng: random.Random, name: str, causes: int) -> TreeCheck:
    looks_at = rng.sample(range(causes), rng.randint(1, min(3, causes)))
    outcomes = tuple(f"o{n}" for n in range(rng.choice([2, 2, 3])))
    rows = []
    for nth in range(len(looks_at) + 1):
        said = rng.choice([0.99, 0.93, 0.75])
        row = [(1.0 - said) / (len(outcomes) - 1)] * len(outcomes)
        row[nth % len(outcomes) if nth < len(looks_at) else -1] = said
        rows.append(row)
    return TreeCheck(name, tuple(f"c{n}" for n in looks_at), outcomes, np.array(rows))


def _by_state(check: TreeCheck, states: NDArray[np.int64]) -> NDArray[np.float64]:
    row = np.full(len(states), len(check.looks_at))
    for nth in reversed(range(len(check.looks_at))):
        row[states >> int(check.looks_at[nth][1:]) & 1 == 1] = nth
    return np.asarray(check.shows[row].T)
