"""Gas at rest and firing, and the meter against the manifold: one reading alone says neither."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from tests.rule_examples import book
from tests.rulebook import run

REST, FIRING, DROOP = "supply_gas.inlet_at_rest", "supply_gas.inlet_firing", "supply_gas.droop"
CLOCKED, MANIFOLD = "tank_heater_gas.gas_clocked", "tank_heater_gas.manifold_pressure"
JETS = "tank_heater_gas.input_for_pressure"


def machine(pressure: str = "3.5 inWG", gas: str = "80000 BTU/h") -> Machine:
    own = {"gas_pressure": pressure, "tank_gas_input": gas}
    return Machine("m", book().machines["single_tank_gas_208"], own)


@pytest.mark.parametrize(
    ("rest", "firing", "outcome"),
    [
        ("7.8", "5.4", "falls"),  # both within 5 to 10.5 inWG, and 31 % lost
        ("7", "6.4", "holds"),
        ("3.5", "3.2", "low_at_rest"),
        ("0", "0", "low_at_rest"),
        ("13", "9", "high_at_rest"),  # firing alone looks right
        ("1.95 kPa", "1.3 kPa", "falls"),
    ],
)
def test_droop(rest: str, firing: str, outcome: str) -> None:
    (found,) = run(machine(), (REST, rest), (FIRING, firing), book=book()).findings
    assert (found.check, found.outcome) == (DROOP, outcome)
    assert set(found.counts) == {f"{REST} at 0", f"{FIRING} at 0"}


def test_firing_alone_is_left_to_its_band() -> None:
    (found,) = run(machine(), (FIRING, "5.4"), book=book()).findings
    assert (found.check, found.outcome) == (FIRING, "good")


@pytest.mark.parametrize(
    ("clocked", "manifold", "outcome"),
    [
        ("56000", "3.5", "less"),  # 80,000 belong to 3.5 inWG
        ("64000", "2.24", "as_pressure"),  # 80,000 × √(2.24 ÷ 3.5) = 64,000
        ("110000", "3.5", "more"),
        ("80000", "3.5", "as_pressure"),
    ],
)
def test_the_meter_against_the_manifold(clocked: str, manifold: str, outcome: str) -> None:
    done = run(machine(), (CLOCKED, clocked), (MANIFOLD, manifold), book=book())
    found = next(f for f in done.findings if f.check == JETS)
    assert found.outcome == outcome
    assert found.counts == (f"{CLOCKED} at 0",)
    assert found.consults == (f"{MANIFOLD} at 0",)
    assert {f.check for f in done.findings} == {JETS, MANIFOLD}


def test_another_plate_turns_the_same_readings() -> None:
    """64,000 BTU/h at 2.24 inWG: as it should on 80,000 at 3.5, too little on 80,000 at 2.24."""
    for pressure, outcome in (("3.5 inWG", "as_pressure"), ("2.24 inWG", "less")):
        done = run(machine(pressure), (CLOCKED, "64000"), (MANIFOLD, "2.24"), book=book())
        assert next(f for f in done.findings if f.check == JETS).outcome == outcome


def test_what_does_not_burn_is_left_to_the_bands() -> None:
    done = run(machine(), (CLOCKED, "0"), (MANIFOLD, "0"), book=book())
    assert {f.check: f.outcome for f in done.findings} == {CLOCKED: "none", MANIFOLD: "none"}


def test_working() -> None:
    done = run(machine(), (CLOCKED, "64000"), (MANIFOLD, "2.24"), book=book())
    found = next(f for f in done.findings if f.check == JETS)
    assert any("√(2.24 ÷ 3.5)" in line for line in found.working)
