"""A falling level in gallons a minute, and whether the waste pipe accounts for it."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import Expected, RuleRun, expected
from diagnose.rules.engine import run as run_engine
from diagnose.rules.registry import RULES
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
DROP, WASTE = "tank_body.level_drop", "drain_overflow.overflow_rate"
MACHINE = Machine("m", BOOK.machines["two_tank_electric_208"])


def _run(*typed: tuple[str, str]) -> RuleRun:
    return run_rules(MACHINE, *typed, book=BOOK)


def _found(*typed: tuple[str, str]) -> Finding:
    return next(f for f in _run(*typed).findings if f.check == DROP)


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        ("28 22 1", "lost"),  # 28 × 22 × 1 ÷ 231 ÷ 10 = 0.27 gpm
        ("28 22 0.05", "holds"),  # 0.013 gpm
        ("10 8 0.3", "holds"),  # 0.0104 gpm in a small tank
        ("40 40 0.3", "lost"),  # the same fall in a large one: 0.21 gpm
        ("70cm 56cm 2.5cm", "lost"),
        ("28 22 0", "holds"),
    ],
)
def test_the_same_fall_in_tanks_of_other_sizes(typed: str, outcome: str) -> None:
    assert _found((DROP, typed)).outcome == outcome


@pytest.mark.parametrize(
    ("waste", "outcome"),
    [("0.26 gpm", "down_waste"), ("0.5 gpm", "down_waste"), ("0.05 gpm", "elsewhere"), ("0 gpm", "elsewhere")],
)
def test_what_the_waste_pipe_gives_of_it(waste: str, outcome: str) -> None:
    found = _found((DROP, "28 22 1"), (WASTE, waste))
    assert found.outcome == outcome
    assert found.counts == (f"{DROP} at 0",)
    assert found.consults == (f"{WASTE} at 0",)
    assert "28 in × 22 in × 1 in ÷ 231 ÷ 10 min = 0.2667 gpm" in found.working


def test_half_of_it_at_the_waste_leaves_both_open() -> None:
    weights = _found((DROP, "28 22 1"), (WASTE, "0.187 gpm")).weights  # 70 % of 0.267
    assert 0.3 < weights["elsewhere"] < 0.7


def test_no_verdict_without_length_and_width() -> None:
    done = _run((DROP, "0 22 1"))
    assert done.findings == ()
    assert "length and width" in done.unanswered[0].why


def test_the_rule_alone_answers() -> None:
    plain = [r for r in RULES if r.name == "plain_band"]
    assert run_engine(BOOK, MACHINE, [reading(DROP, "28 22 1", book=BOOK)], plain).findings == ()


def test_expected_with_its_working() -> None:
    told: Expected | None = expected(BOOK, MACHINE, [], DROP)
    assert told is not None
    assert told.lines == ("no fall to be seen; 1 in on a tank of 28 in by 22 in is 0.27 gpm",)
    assert told.high is not None
    assert told.high.value == pytest.approx(0.05 / 0.26667, rel=1e-3)
