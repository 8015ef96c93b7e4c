"""Pressure and current of the wash pump together: each pair of levels, other plates, and the edge."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import RuleRun, expected, findings
from tests.rulebook import reading

SHIPPED = load_book()
PSI, AMPS = "pump.pressure", "pump_motor.line_amps"
PLATE = {"pump_pressure": "8 psi", "wash_motor_amps": "6.8 A"}


def _run(*typed: tuple[str, str], kind: str = "two_tank_electric_208", **own: str) -> RuleRun:
    machine = Machine("m", SHIPPED.machines[kind], own or PLATE)
    return findings(SHIPPED, machine, [reading(*t, book=SHIPPED) for t in typed])


def _duty(psi: str, amps: str, **own: str) -> Finding:
    (found,) = _run((PSI, psi), (AMPS, " ".join([amps] * 3)), **own).findings
    return found


@pytest.mark.parametrize(
    ("psi", "amps", "outcome"),
    [
        ("8", "6.2", "as_plate"),
        ("3.5", "3.6", "moves_little"),
        ("10.8", "4.1", "choked"),
        ("4.5", "7.9", "runs_out"),
        ("5", "5.7", "weak_wheel"),
        ("8.2", "9.0", "drags"),
        ("11", "8.8", "overdriven"),
    ],
)
def test_every_pair_of_levels(psi: str, amps: str, outcome: str) -> None:
    found = _duty(psi, amps)
    assert found.check == "pump.duty"
    assert found.outcome == outcome
    assert found.weights[outcome] > 0.8
    assert set(found.counts) == {f"{PSI} at 0", f"{AMPS} at 0"}


@pytest.mark.parametrize(
    ("pump_pressure", "wash_motor_amps", "outcome"),
    [
        ("6 psi", "5.0 A", "as_plate"),
        ("10 psi", "8.0 A", "moves_little"),
        ("4 psi", "8.0 A", "choked"),
        ("10 psi", "4.0 A", "runs_out"),
        ("10 psi", "5.0 A", "weak_wheel"),
        ("6 psi", "4.0 A", "drags"),
        ("4 psi", "4.0 A", "overdriven"),
    ],
)
def test_the_same_readings_on_other_plates(pump_pressure: str, wash_motor_amps: str, outcome: str) -> None:
    found = _duty("6", "4.6", pump_pressure=pump_pressure, wash_motor_amps=wash_motor_amps)
    assert found.outcome == outcome


def test_at_the_edge_both_are_kept() -> None:
    """6.8 psi is 85 % of 8: in order and low alike."""
    found = _duty("6.8", "6.0")
    assert 0.3 < found.weights["as_plate"] < 0.7
    assert 0.3 < found.weights["weak_wheel"] < 0.7


def test_one_alone_goes_by_its_own_rule() -> None:
    alone = _run((PSI, "4"))
    assert [(f.check, f.outcome, f.rule) for f in alone.findings] == [(PSI, "low", "plain_band")]
    assert any("current was not read" in f.silent for f in alone.firings)
    assert [f.check for f in _run((AMPS, "3.6 3.6 3.6")).findings] == [AMPS]


def test_a_lost_phase_is_left_to_the_currents() -> None:
    done = _run((PSI, "8"), (AMPS, "11.6 11.9 0"))
    assert {f.check: f.outcome for f in done.findings} == {PSI: "good", AMPS: "phase_lost"}


def test_the_other_pump_is_not_mixed_in() -> None:
    done = _run(("motor_overload.which_tripped", "rinse_pump"), (PSI, "4"), (AMPS, "2.0 2.0 2.0"))
    assert "pump.duty" not in {f.check for f in done.findings}


def test_single_phase_and_metric() -> None:
    own = {"pump_pressure": "6 psi", "wash_motor_amps": "9.2 A"}
    (found,) = _run(
        (PSI, "3"), ("pump_motor.line_amps_single", "5.2"), kind="single_tank_electric_240_single_phase", **own
    ).findings
    assert found.outcome == "moves_little"


def test_50_hertz_is_named_where_it_fits() -> None:
    words = _duty("5.55", "4.6").working
    assert words[0] == "Manifold 5.55 psi: 69 % of the plate's 8 psi."
    assert words[1] == "Motor 4.6, 4.6, 4.6 A: 68 % of the 6.8 A nameplate."
    assert "8 psi × (50 Hz ÷ 60)² = 5.556 psi" in words
    assert not any("Hz" in line for line in _duty("4", "4.6").working)


def test_expected_beside_the_prompt() -> None:
    shown = expected(SHIPPED, Machine("m", SHIPPED.machines["two_tank_electric_208"], PLATE), [], PSI)
    assert shown is not None
    assert shown.lines == ("6.8 to 9.6 psi (plate 8 psi)",)
    assert "8 psi × 0.85 = 6.8 psi: the least that counts as in order (judgement)." in shown.working
