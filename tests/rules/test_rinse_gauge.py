"""Rinse pressure flowing and at rest."""

from __future__ import annotations

import pytest

from tests.rulebook import expect, machine, run

FLOWING, REST = "rinse_gauge.flow_pressure", "rinse_gauge.static_pressure"


@pytest.mark.parametrize(
    ("flowing", "rest", "outcome"),
    [
        ("20", "23", "steady"),
        ("20", "60", "creeps_up"),
        (None, "60", "creeps_up"),
        ("32", "36", "steady"),  # a regulator set too high is not a leaking seat
        ("8", "22", "steady"),  # what falls away when it flows is lost in strainer, valve or pipe
        ("9", "10", "supply_low"),
    ],
)
def test_rest(flowing: str | None, rest: str, outcome: str) -> None:
    typed = [(REST, rest)] + ([(FLOWING, flowing)] if flowing else [])
    found = next(f for f in run(machine(), *typed).findings if f.check == REST)
    assert found.outcome == outcome
    assert bool(found.consults) == (flowing is not None)


def test_gauge_error_near_the_limit_is_said() -> None:
    found = run(machine(rinse_pressure_least="15 psi"), (FLOWING, "14")).findings[0]
    assert "Within the gauge's error" in found.says
    assert 0.6 < found.weights["low"] < 0.95


def test_silent_without_bands_or_plate() -> None:
    assert run(machine(), (REST, "-1 psi")).findings[0].outcome == "supply_low"
    assert run(machine(), ("pump.look", "turns_right")).findings[0].rule == "chosen_outcome"


def test_expected() -> None:
    shown = expect(machine(), REST, (FLOWING, "18"))
    assert shown is not None
    assert shown.lines == ("18 to 28 psi, steady (flowing pressure read and a little)",)
    band = expect(machine(), FLOWING)
    assert band is not None
    assert band.lines[0].startswith("15 to 25 psi")


def test_why_this_number() -> None:
    shown = expect(machine(), REST, (FLOWING, "18"))
    assert shown is not None
    assert shown.working[0].endswith("18 psi (measured).")
    assert "18 psi + 10 psi = 28 psi: above that it lets water past (judgement)." in shown.working


def test_the_working_says_what_the_pressure_drives() -> None:
    found = run(machine(), (FLOWING, "12")).findings[0]
    assert "4.2 gpm × √(12 psi ÷ 20 psi) = 3.253 gpm" in found.working
    metric = run(machine(), (FLOWING, "0.8 bar")).findings[0]
    assert any("L/min × √(0.8 bar" in line for line in metric.working)
