"""Fill time against volume, flow and pressure; the supply of the fill at rest and filling."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import Expected, RuleRun, expected
from diagnose.rules.engine import run as run_engine
from diagnose.rules.registry import RULES
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
TIME, PAIR, LOSS = "level_control.fill_time", "level_control.fill_pressure", "drain_overflow.overflow_rate"
PLATE = {"wash_tank_volume": "28 gal", "fill_flow": "6 gpm", "fill_pressure": "30 psi"}


def _machine(**own: str) -> Machine:
    return Machine("m", BOOK.machines["two_tank_electric_208"], {**PLATE, **own})


def _run(machine: Machine, *typed: tuple[str, str]) -> RuleRun:
    return run_rules(machine, *typed, book=BOOK)


def _found(done: RuleRun, check: str = TIME) -> Finding:
    return next(f for f in done.findings if f.check == check)


def _expect(machine: Machine, check: str, *typed: tuple[str, str]) -> Expected | None:
    return expected(BOOK, machine, [reading(*t, book=BOOK) for t in typed], check)


@pytest.mark.parametrize(
    ("volume", "flow", "outcome"),
    [
        ("28 gal", "6 gpm", "too_slow"),  # 4.7 minutes
        ("72 gal", "6 gpm", "as_computed"),  # 12 minutes: the same reading
        ("28 gal", "2.3 gpm", "as_computed"),  # 12.2 minutes, a small fill valve
        ("270 L", "22 L/min", "as_computed"),
        ("105 L", "22 L/min", "too_slow"),
    ],
)
def test_twelve_minutes_on_other_plates(volume: str, flow: str, outcome: str) -> None:
    assert _found(_run(_machine(wash_tank_volume=volume, fill_flow=flow), (TIME, "12 min"))).outcome == outcome


@pytest.mark.parametrize(
    ("pair", "minutes", "outcome"),
    [
        ("55 30", "4.7 min", "as_computed"),
        ("55 6", "11 min", "slow_by_supply"),  # 6 × √(6 ÷ 30) = 2.7 gpm: 10.4 minutes
        ("55 30", "11 min", "slow_by_fill"),
        ("55 6", "25 min", "slow_by_fill"),  # slower than even this pressure makes it
        ("80 70", "4.7 min", "slow_by_fill"),  # right at 30 psi, but 70 psi would do it in 3.1
    ],
)
def test_with_the_pressure_read(pair: str, minutes: str, outcome: str) -> None:
    done = _run(_machine(), (PAIR, pair), (TIME, minutes))
    found = _found(done)
    assert found.outcome == outcome
    assert found.counts == (f"{TIME} at 0",)
    assert found.consults == (f"{PAIR} at 0",)


def test_what_runs_away_explains_it() -> None:
    slow = _found(_run(_machine(), (TIME, "11 min"), (LOSS, "3.5 gpm")))  # 28 ÷ (6 − 3.5) = 11.2
    assert slow.outcome == "slow_by_loss"
    assert "28 gal ÷ (6 gpm − 3.5 gpm) = 11.2 min" in slow.working
    drip = _found(_run(_machine(), (TIME, "11 min"), (LOSS, "0.2 gpm")))
    assert drip.outcome == "too_slow"
    never = _found(_run(_machine(), (TIME, "60 min"), (LOSS, "6.5 gpm")))
    assert never.outcome == "slow_by_loss"


def test_near_the_edge_both_have_weight() -> None:
    weights = _found(_run(_machine(), (TIME, "6.3 min"))).weights  # 135 % of 4.67
    assert 0.35 < weights["too_slow"] < 0.65


@pytest.mark.parametrize(
    ("meant", "pair", "outcome"),
    [
        ("30 psi", "60 6", "falls_away"),  # full at rest: nothing of this is seen there
        ("30 psi", "60 40", "holds"),
        ("30 psi", "18 9", "rest_low"),
        ("10 psi", "18 9", "holds"),  # the same pair, a fill meant for less
        ("2 bar", "4bar 0.4bar", "falls_away"),
        ("30 psi", "118 90", "too_high"),  # over 80 psi at rest
        ("30 psi", "118 6", "falls_away"),  # what chokes on the way is said first
    ],
)
def test_pair(meant: str, pair: str, outcome: str) -> None:
    assert _found(_run(_machine(fill_pressure=meant), (PAIR, pair)), PAIR).outcome == outcome


def test_typed_the_wrong_way_round_is_refused() -> None:
    done = _run(_machine(), (PAIR, "6 60"))
    assert done.findings == ()
    assert "at rest comes first" in done.unanswered[0].why


def test_silent_without_the_plate() -> None:
    assert _run(_machine(fill_flow="0 gpm"), (TIME, "5 min")).findings == ()
    assert _run(_machine(fill_pressure="0 psi"), (PAIR, "50 20")).findings == ()
    assert _run(_machine(), (TIME, "0 min")).findings == ()


def test_expected_with_its_working() -> None:
    plain = _expect(_machine(), TIME)
    assert plain is not None
    assert plain.lines == ("about 4.7 min from empty, drain shut",)
    assert "28 gal ÷ 6 gpm = 4.667 min" in plain.working
    assert "Wash tank, water held: 28 gal (data plate)." in plain.working
    low = _expect(_machine(), TIME, (PAIR, "55 6"))
    assert low is not None
    assert low.lines == ("about 10 min from empty, drain shut",)
    assert "6 gpm × √(6 psi ÷ 30 psi) = 2.683 gpm" in low.working
    supply = _expect(_machine(), PAIR)
    assert supply is not None
    assert supply.lines[0].startswith("22.5 psi or more")


def test_without_the_rule_no_band_takes_the_minutes() -> None:
    """The rule alone answers: the plain band has no figure for minutes that depend on the tank."""
    typed = [reading(TIME, "12 min", book=BOOK)]
    plain = [r for r in RULES if r.name == "plain_band"]
    assert run_engine(BOOK, _machine(), typed, plain).findings == ()
    assert _found(_run(_machine(), (TIME, "12 min"))).rule == TIME
