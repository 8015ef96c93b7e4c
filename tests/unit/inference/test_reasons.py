"""Reasons, conflicts, and what nothing listed explains."""

from __future__ import annotations

import math

import pytest

from diagnose.inference import Situation, build_tree, conflicts, explain, nothing_listed_fits, solve
from tests.books import enumerate_situation
from tests.unit.inference.hand_book import BOOK, MACHINE, saw

TREE = build_tree(BOOK, MACHINE, {"age": "old"})
COLD = (("cold", 0, True),)


def bits(p: float) -> float:
    return math.log2(p / (1 - p))


def test_each_reason_is_what_would_be_missing_without_it() -> None:
    findings = (saw("b.amps", "one_element_out"), saw("a.inlet", "warm"), saw("b.ohms", "open"))
    why = explain(TREE, Situation(COLD, findings), "b.element_open")
    told = {(r.item.kind, r.item.what): r.bits for r in (*why.speaks_for, *why.speaks_against)}
    whole = enumerate_situation(TREE, Situation(COLD, findings))[0]["b.element_open"]
    for nth, found in enumerate(findings):
        rest = findings[:nth] + findings[nth + 1 :]
        without = enumerate_situation(TREE, Situation(COLD, rest))[0]["b.element_open"]
        assert told.get(("finding", found.check), 0.0) == pytest.approx(bits(whole) - bits(without), abs=0.1)
    young = build_tree(BOOK, MACHINE)
    assert told["context", "age"] == pytest.approx(
        bits(whole) - bits(solve(young, Situation(COLD, findings)).posterior["b.element_open"])
    )
    assert why.probability == pytest.approx(whole)
    assert why.prior == pytest.approx(BOOK.frequency("common"))


def test_sorted_by_weight_for_and_against() -> None:
    why = explain(TREE, Situation(COLD, (saw("b.amps", "healthy"), saw("b.ohms", "open"))), "b.element_open")
    assert [r.item.what for r in why.speaks_for] == ["cold", "b.ohms", "age"]
    assert [r.item.what for r in why.speaks_against] == ["b.amps"]
    assert all(a.bits >= b.bits > 0 for a, b in zip(why.speaks_for, why.speaks_for[1:], strict=False))


def test_ruling_out_is_no_matter_of_bits() -> None:
    why = explain(TREE, Situation(COLD, (), (), ("b.element_open",)), "b.element_open")
    assert why.probability == 0.0
    assert why.speaks_against[0].sole
    assert why.speaks_against[0].bits == -math.inf


def test_an_event_has_reasons_too() -> None:
    why = explain(TREE, Situation(COLD, (saw("a.inlet", "cold"),)), "b.heat_short")
    assert why.speaks_against[0].item.what == "a.inlet"


def test_two_looks_at_the_same_thing_that_differ() -> None:
    situation = Situation(COLD, (saw("a.inlet", "warm"), saw("b.amps", "healthy"), saw("b.ohms", "open")))
    (conflict,) = conflicts(TREE, situation)
    assert conflict.checks == ("b.amps", "b.ohms")
    assert (conflict.first, conflict.second) == (1, 2)
    _, given, _ = enumerate_situation(TREE, Situation(COLD))
    alone = [enumerate_situation(TREE, Situation(COLD, (f,)))[1] / given for f in situation.findings[1:]]
    together = enumerate_situation(TREE, Situation(COLD, situation.findings[1:]))[1] / given
    assert conflict.bits == pytest.approx(math.log2(alone[0] * alone[1] / together))


@pytest.mark.parametrize(
    "findings",
    [
        (),
        (saw("b.amps", "one_element_out"),),
        (saw("b.amps", "one_element_out"), saw("b.ohms", "open")),
        (saw("a.inlet", "warm"), saw("b.amps", "healthy"), saw("a.gauge", "good")),
    ],
)
def test_readings_that_agree(findings: tuple) -> None:  # type: ignore[type-arg]
    assert conflicts(TREE, Situation(COLD, findings)) == ()


def test_two_faults_are_no_contradiction() -> None:
    """Cold water and an open element, each seen by its own check: rare together, but both may be."""
    assert conflicts(TREE, Situation(COLD, (saw("a.inlet", "cold"), saw("b.ohms", "open")))) == ()


def test_nothing_listed() -> None:
    healthy = tuple(
        saw(c, o) for c, o in (("a.inlet", "warm"), ("b.amps", "healthy"), ("a.gauge", "good"), ("b.ohms", "sound"))
    )
    situation = Situation(COLD, healthy, (), ("s.volts_low",))
    assert nothing_listed_fits(TREE, situation, solve(TREE, situation)) == ("cold",)
    started = Situation(COLD)
    assert nothing_listed_fits(TREE, started, solve(TREE, started)) == ()
