"""Supply volts: lost line, unbalance, level."""

from __future__ import annotations

import pytest

from tests.rulebook import expect, machine, run

VOLTS = "supply_power.line_volts"


@pytest.mark.parametrize(
    ("seen", "outcome"),
    [
        ("208 208 208", "healthy"),
        ("207 208 206", "healthy"),
        ("180 180 181", "low"),
        ("235 236 235", "high"),
        ("205 208 200", "unbalanced"),
        ("208 104 104", "one_line_lost"),
        ("208 2 207", "one_line_lost"),
        ("208 190 189", "unbalanced"),
        ("208 0 0", "one_line_lost"),
    ],
)
def test_states(seen: str, outcome: str) -> None:
    assert run(machine(), (VOLTS, seen)).findings[0].outcome == outcome


def test_a_reading_at_the_limit_is_no_hard_verdict() -> None:
    weights = run(machine(), (VOLTS, "187 187 187")).findings[0].weights
    assert 0.3 < weights["low"] < 0.7


def test_low_and_unequal_share_the_weight() -> None:
    weights = run(machine(), (VOLTS, "170 178 176")).findings[0].weights
    assert weights["low"] == pytest.approx(weights["unbalanced"], abs=0.02)


def test_working_shows_the_arithmetic() -> None:
    working = " ".join(run(machine(), (VOLTS, "205 208 200")).findings[0].working)
    assert "mean 204.3 V" in working
    assert "2.12 % by the NEMA rule" in working
    assert "Negative-sequence factor" in working


@pytest.mark.parametrize(("seen", "outcome"), [("240", "healthy"), ("205", "low"), ("270", "high"), ("60", "none")])
def test_single_phase(seen: str, outcome: str) -> None:
    assert run(machine("single"), (f"{VOLTS}_single", seen)).findings[0].outcome == outcome


def test_silent_when_the_supply_is_off() -> None:
    dead = run(machine(), (VOLTS, "0 0 0"))
    assert dead.findings == ()
    assert "the supply is off" in dead.unanswered[0].why


def test_expected() -> None:
    shown = expect(machine(), VOLTS)
    assert shown is not None
    assert shown.lines == ("187 to 229 V (208 V supply, ± 10 %)", "all three within 1 % of their mean")
