"""The load of a van against trying everything: every set of causes, every load."""

from __future__ import annotations

from itertools import chain, combinations, product

import numpy as np
import pytest

from diagnose.inference import van
from diagnose.inference.van import Load, Needs, best_load, filled

SECOND = 240.0


def world(seed: int, causes: int, parts: int) -> tuple[np.ndarray, Needs, np.ndarray]:  # type: ignore[type-arg]
    """Causes that are there independently, at least one of them: their own chances, what follows, and prices."""
    random = np.random.default_rng(seed)
    alone = random.uniform(0.01, 0.5, causes)
    table = np.zeros((causes, parts))
    for row in range(causes):
        for column in random.choice(parts, size=random.choice([0, 1, 1, 2, 3]), replace=False):
            table[row, column] = random.choice([1.0, 1.0, 0.3])
    possible = random.random(causes) < 0.85
    some = 1.0 - np.prod(1.0 - alone)
    return alone, Needs(alone / some, table, possible), random.uniform(1.0, 20.0, parts)


def enumerated(alone: np.ndarray, needs: Needs, load: set[int]) -> float:  # type: ignore[type-arg]
    """The chance to finish, over every set of causes with one at least."""
    able = [
        float(possible) * np.prod([1.0 - want for part, want in enumerate(row) if part not in load])
        for row, possible in zip(needs.parts, needs.possible, strict=True)
    ]
    done = total = 0.0
    for present in product((False, True), repeat=len(alone)):
        if any(present):
            chance = np.prod(np.where(present, alone, 1.0 - alone))
            total += chance
            done += chance * np.prod([a for a, there in zip(able, present, strict=True) if there])
    return float(done / total)


def flags(loads: list[set[int]], parts: int) -> np.ndarray:  # type: ignore[type-arg]
    return np.array([[part in load for part in range(parts)] for load in loads], dtype=bool)


@pytest.mark.parametrize("seed", range(8))
def test_the_chance_to_finish_is_that_over_every_set_of_causes(seed: int) -> None:
    alone, needs, _ = world(seed, causes=7, parts=5)
    loads = [set[int](), {0}, {1, 3}, {0, 2, 4}, {0, 1, 2, 3, 4}]
    chances = needs.finished(flags(loads, 5))
    assert chances == pytest.approx([enumerated(alone, needs, load) for load in loads], abs=1e-9)


def test_how_likely_a_part_is_needed_is_that_of_any_cause_that_needs_it() -> None:
    alone, needs, _ = world(3, causes=6, parts=4)
    total = 1.0 - np.prod(1.0 - alone)
    for part in range(4):
        none = np.prod(1.0 - alone * needs.parts[:, part])
        assert needs.needed()[part] == pytest.approx((1.0 - none) / total, abs=1e-9)


def best_of_all(needs: Needs, carrying: np.ndarray, most: int) -> float:  # type: ignore[type-arg]
    parts = range(len(carrying))
    every = [set(each) for each in chain.from_iterable(combinations(parts, k) for k in range(most + 1))]
    chances = needs.finished(flags(every, len(carrying)))
    return max(float(chance * SECOND - carrying[list(load)].sum()) for chance, load in zip(chances, every, strict=True))


def worth(load: Load, carrying: np.ndarray) -> float:  # type: ignore[type-arg]
    return load.chance * SECOND - float(carrying[list(load.parts)].sum())


@pytest.mark.parametrize("seed", range(10))
@pytest.mark.parametrize("most", [1, 2, 4])
def test_where_loads_are_few_the_best_of_all_is_carried(seed: int, most: int) -> None:
    _, needs, carrying = world(seed, causes=9, parts=7)
    load = best_load(needs, carrying, SECOND, most)
    assert len(load.parts) <= most
    assert worth(load, carrying) == pytest.approx(best_of_all(needs, carrying, most), abs=1e-6)


def test_where_loads_are_many_it_comes_as_near_as_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(van, "_FEW", 0)
    ratios = []
    for seed in range(40):
        _, needs, carrying = world(100 + seed, causes=12, parts=10)
        load = best_load(needs, carrying, SECOND, 4)
        ratios.append(worth(load, carrying) / best_of_all(needs, carrying, 4))
    assert max(ratios) <= 1.0 + 1e-9
    assert min(ratios) > 0.97
    assert sum(ratio > 1.0 - 1e-6 for ratio in ratios) >= 36


def test_two_parts_that_help_only_together_are_found(monkeypatch: pytest.MonkeyPatch) -> None:
    needs = Needs(np.array([0.7, 0.3]), np.array([[1.0, 1.0, 0.0], [0.0, 0.0, 1.0]]), np.array([True, True]))
    for few in (4000, 0):
        monkeypatch.setattr(van, "_FEW", few)
        assert best_load(needs, np.full(3, 3.0), SECOND, 2).parts == (0, 1)
        assert best_load(needs, np.full(3, 3.0), SECOND, 1).parts == (2,)


def test_what_costs_more_than_it_spares_stays_at_home() -> None:
    needs = Needs(np.array([0.9, 0.1]), np.eye(2), np.array([True, True]))
    assert best_load(needs, np.array([3.0, 30.0]), SECOND, 4).parts == (0,)
    assert best_load(needs, np.array([300.0, 300.0]), SECOND, 4) == Load((), pytest.approx(0.0))  # type: ignore[arg-type]
    nothing = Needs(np.array([1.0]), np.zeros((1, 0)), np.array([True]))
    assert best_load(nothing, np.zeros(0), SECOND, 4) == Load((), pytest.approx(1.0))  # type: ignore[arg-type]


def test_something_not_listed_is_never_finished() -> None:
    needs = Needs(np.array([0.75, 0.25]), np.array([[1.0], [0.0]]), np.array([True, False]))
    assert best_load(needs, np.array([3.0]), SECOND, 4).chance == pytest.approx(0.75, abs=1e-4)


def test_a_quick_load_takes_a_pair_of_parts_only_with_room_for_both() -> None:
    need = np.array([[True, True, False], [False, False, True]])
    weights = np.array([[0.7, 0.3], [0.7, 0.3]])
    assert filled(weights, need, 1).tolist() == [[False, False, True]] * 2
    assert filled(weights, need, 2).tolist() == [[True, True, False]] * 2
    assert filled(weights, need, 9).all()
