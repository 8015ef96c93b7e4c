"""Exhaust at both ends: total and share."""

from __future__ import annotations

import pytest

from tests.rulebook import expect, machine, run

IN, OUT = "vent_dampers.flow_entrance", "vent_dampers.flow_exit"


@pytest.mark.parametrize(
    ("entrance", "exit_", "outcome"),
    [
        ("205", "395", "as_wanted"),
        ("90", "190", "total_short"),
        ("100", "390", "entrance_short"),
        ("210", "220", "exit_short"),
        ("340", "690", "total_high"),
    ],
)
def test_balance(entrance: str, exit_: str, outcome: str) -> None:
    (found,) = run(machine(), (IN, entrance), (OUT, exit_)).findings
    assert found.check == "vent_dampers.balance"
    assert found.outcome == outcome
    assert set(found.counts) == {f"{IN} at 0", f"{OUT} at 0"}


def test_one_end_alone_goes_by_its_band() -> None:
    done = run(machine(), (IN, "100"))
    assert [(f.check, f.outcome, f.rule) for f in done.findings] == [(IN, "low", "plain_band")]
    assert any("both ends" in f.silent for f in done.firings)


def test_ends_measured_at_different_stages_stay_apart() -> None:
    done = run(machine(), (IN, "100", 0), (OUT, "400", 1))
    assert [f.rule for f in done.findings] == ["plain_band", "plain_band"]


def test_working() -> None:
    working = run(machine(), (IN, "100"), (OUT, "390")).findings[0].working
    assert working[0] == "100 cfm + 390 cfm = 490 cfm; entrance 20 %, exit 80 %."
    assert working[1] == "Wanted: 200 cfm and 400 cfm; here 82 % of that in all."


def test_shares_are_worked() -> None:
    working = run(machine(), (IN, "100"), (OUT, "390")).findings[0].working
    assert "100 × 100 ÷ (100 + 390) = 20.41" in working


@pytest.mark.parametrize(("power", "share"), [("20 kW", 20), ("10 kW", 41)])
def test_too_much_air_is_told_as_heat_of_the_tank(power: str, share: int) -> None:
    """430 cfm beyond the wanted take 4.1 kW at 3 % saturated; the same air, another heater."""
    found = run(machine(tank_power=power), (IN, "340"), (OUT, "690")).findings[0]
    assert found.outcome == "total_high"
    assert found.working[-1] == f"That is 4.1 kW from the tank, {share} % of its heater's {power}."


def test_what_is_expected_of_an_end() -> None:
    shown = expect(machine(), IN)
    assert shown is not None
    assert shown.lines == ("170 to 250 cfm (200 cfm wanted)",)
    assert shown.working[-1] == "100 × 200 ÷ (200 + 400) = 33.33"
