"""Which check decides at a gate: bits worked out by hand and by trying every cause, the order, and what is left out."""

from __future__ import annotations

from math import log2

import pytest

from diagnose.inference import build_tree
from diagnose.inference.layered import layered
from diagnose.inference.parting import Parting
from diagnose.model.truth import likelihood_row, row_of, so_nodes
from tests.small_tree import BOOK, MACHINE


@pytest.fixture(scope="module")
def parting() -> Parting:
    return Parting(build_tree(BOOK, MACHINE), "no_spray")


def entropy(shares: list[float]) -> float:
    return -sum(p * log2(p) for p in shares if p > 0)


def by_hand(check: str, branches: list[list[str]]) -> float:
    """Expected bits of a check about which branch it is, one cause at a time, from the meaning of the tables."""
    table = BOOK.checks[check]
    prior = {c: BOOK.frequency(BOOK.causes[c].how_often) for each in branches for c in each}
    total = sum(prior[c] for each in branches for c in each)
    joint = [dict.fromkeys(table.outcomes, 0.0) for _ in branches]
    for seen, causes in zip(joint, branches, strict=True):
        for cause in causes:
            row = row_of(table, so_nodes(BOOK, [cause], MACHINE))
            for outcome, p in likelihood_row(BOOK, table, row).items():
                seen[outcome] += p * prior[cause] / total
    outcomes = [sum(seen[o] for seen in joint) for o in table.outcomes]
    shares = [sum(seen.values()) for seen in joint]
    return entropy(shares) + entropy(outcomes) - entropy([p for seen in joint for p in seen.values()])


def test_bits_at_a_gate_are_those_worked_out_by_hand(parting: Parting) -> None:
    branches = [["arm.jets_choked"], ["arm.cap_off"], ["feed.valve_shut", "feed.screen_full"]]
    told = {t.check: t for t in parting.between("arm.dry")}
    assert set(told) == {"arm.look", "feed.gauge"}
    for check, each in told.items():
        assert each.bits == pytest.approx(by_hand(check, branches), abs=1e-12)
        assert 0 < each.share <= 1
    assert parting.between("arm.dry")[0].check == "arm.look"


def test_a_branch_against_the_others(parting: Parting) -> None:
    rest = ["arm.jets_choked", "arm.cap_off"]
    told = parting.among("arm.dry", "feed.starved")
    for each in told:
        assert each.bits == pytest.approx(
            by_hand(each.check, [["feed.valve_shut", "feed.screen_full"], rest]), abs=1e-12
        )


def test_a_perfect_check_settles_all_and_an_idle_one_nothing() -> None:
    tree = build_tree(BOOK, MACHINE)
    told = {t.check: t for t in Parting(tree, "no_spray").between("feed.starved")}
    assert told["arm.look"].bits == pytest.approx(0.0, abs=1e-12)  # it looks at the event: its members are alike
    assert told["feed.gauge"].bits > 0.1
    assert told["feed.gauge"].doubt == pytest.approx(entropy([0.02 / 0.0225, 0.0025 / 0.0225]))


def test_what_is_computed_is_never_named(parting: Parting) -> None:
    assert all(t.check != "feed.sum" for gate in ("arm.dry", "feed.starved", "no_spray") for t in parting.between(gate))


def test_ways_of_every_kind_of_gate(parting: Parting) -> None:
    assert parting.ways("feed.crossed") == [(pytest.approx(0.0004), frozenset({"feed.tap_open", "feed.check_leaks"}))]
    assert {causes for _, causes in parting.ways("drive.weak")} == {
        frozenset({"drive.belt", "drive.brush"}),
        frozenset({"drive.belt", "drive.volts"}),
        frozenset({"drive.brush", "drive.volts"}),
    }
    assert [causes for _, causes in parting.ways("feed.starved")] == [
        frozenset({"feed.valve_shut"}),
        frozenset({"feed.screen_full"}),
    ]


def test_what_a_cause_is_shown_by(parting: Parting) -> None:
    assert parting.shown("arm.cap_off")[0].check == "arm.look"
    assert parting.likely_outcome("arm.look", "arm.cap_off") == "gone"
    assert parting.likely_outcome("drive.hear", "drive.brush") == "crackles"
    assert parting.likely_outcome("feed.feel", "feed.crossed") == "cold"


def test_the_whole_book_is_a_tree_of_its_own() -> None:
    assert "feed.lock" in build_tree(BOOK, None).below("no_spray")
    assert "feed.lock" not in build_tree(BOOK, MACHINE).below("no_spray")


def test_only_a_tree_can_be_laid_out() -> None:
    size = dict.fromkeys("abc", (10.0, 4.0))
    with pytest.raises(ValueError, match="only a tree"):
        layered([("a", "b"), ("c", "b")], "a", size, 1, 1)
    with pytest.raises(ValueError, match="only a tree"):
        layered([("b", "a"), ("a", "c")], "a", size, 1, 1)
