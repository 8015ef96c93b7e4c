"""Twenty links of either chain: against the plate's pitch, and against each other."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine
from diagnose.rules import RuleRun
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import run

CHAIN = "conveyor_chain.chain_length"


def made(pitch: str = "1 in") -> Machine:
    return Machine("m", book().machines["chain_two_tank_electric_480"], {"chain_pitch": pitch})


def found(done: RuleRun) -> Finding:
    return next(f for f in done.findings if f.check == CHAIN)


@pytest.mark.parametrize(
    ("read", "pitch", "outcome"),
    [
        ("20.1 20.1", "1 in", "as_new"),  # 0.5 %
        ("20.8 20.8", "1 in", "both_long"),  # 4 %
        ("20.8 20.8", "1.04 in", "as_new"),  # the same reading, a chain of another pitch
        ("20.02 20.5", "1 in", "unlike"),  # 0.1 and 2.5 %
        ("30.05 30.05", "1.5 in", "as_new"),
        ("782mm 783mm", "38.1 mm", "both_long"),  # 2.6 and 2.8 %
    ],
)
def test_a_length_says_nothing_without_the_pitch(read: str, pitch: str, outcome: str) -> None:
    done = run(made(pitch), (CHAIN, read), book=book())
    assert found(done).outcome == outcome


def test_near_the_limit_both_are_open() -> None:
    weights = found(run(made(), (CHAIN, "20.4 20.4"), book=book())).weights
    assert 0.25 < weights["both_long"] < 0.75


@pytest.mark.parametrize("read", ["19 19", "21.2 20"])
def test_a_shorter_or_one_sided_length_is_not_wear_of_both(read: str) -> None:
    """5 % short is nineteen links taken for twenty: no wear; one side 6 % longer is unlike, whatever the mean."""
    weights = found(run(made(), (CHAIN, read), book=book())).weights
    assert weights.get("both_long", 0.0) < 0.05


def test_another_number_of_links_is_no_finding() -> None:
    done = run(made(), (CHAIN, "24 24"), book=book())
    assert not [f for f in done.findings if f.check == CHAIN]


def test_expected_is_pitch_times_links() -> None:
    shown = expected(book(), made("1.5 in"), [], CHAIN)
    assert shown is not None
    assert shown.low is not None
    assert shown.high is not None
    assert shown.low.value == pytest.approx(30.0)
    assert shown.high.value == pytest.approx(30.6)
    assert not shown.assumptions
