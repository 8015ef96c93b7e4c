"""Played jobs end, cost what they cost, and find what is there; causes alike in every check are named."""

from __future__ import annotations

import pytest

from diagnose.inference import FaultTree, build_tree
from diagnose.inference.played import likely_causes, play
from diagnose.inference.separation import inseparable
from diagnose.model import Book, Machine, load_book
from tests.small_knowledge import write_small


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


@pytest.fixture(scope="module")
def tree(book: Book) -> FaultTree:
    return build_tree(book, Machine("", book.machines["two_tank_electric_208"]))


def test_a_job_is_the_same_for_the_same_seed_and_its_minutes_add_up(book: Book, tree: FaultTree) -> None:
    one = play(book, tree, "rinse_cold", "booster_electric.element_open", 3)
    assert one == play(book, tree, "rinse_cold", "booster_electric.element_open", 3)
    assert 0 <= one.idle <= one.looking < one.minutes
    assert one.checks > 0
    assert one.helped or book.causes[one.cause].minutes <= one.minutes - one.looking


def test_what_is_there_is_mostly_found(book: Book, tree: FaultTree) -> None:
    plays = [play(book, tree, "wash_weak", cause, 1) for cause in likely_causes(tree, "wash_weak", 6)]
    assert sum(p.helped for p in plays) <= 2
    assert sum(p.wrong_repairs for p in plays) <= 4


def test_causes_are_taken_as_often_as_they_are_found(tree: FaultTree) -> None:
    causes = sorted(set(likely_causes(tree, "rinse_cold", 4000)))
    total = sum(tree.nodes[c].prior for c in causes)
    taken = likely_causes(tree, "rinse_cold", 400)
    assert len(taken) == 400
    for cause in causes:
        assert taken.count(cause) == pytest.approx(400 * tree.nodes[cause].prior / total, abs=12)


def test_pairs_alike_in_every_check_are_found(tmp_path: object) -> None:
    from pathlib import Path

    assert isinstance(tmp_path, Path)
    small = load_book(write_small(tmp_path))
    machine = Machine("", small.machines["plain"])
    told = build_tree(small, machine)
    (complaint,) = small.complaints
    known = {frozenset(pair) for pair in inseparable(told, complaint)}
    bare = FaultTree(told.nodes, {})
    assert known < {frozenset(pair) for pair in inseparable(bare, complaint)}
