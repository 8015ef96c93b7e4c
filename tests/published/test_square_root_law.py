"""Q = K √P in the form of NFPA 13, with values printed by three calculators; ratios DERIVED."""

from __future__ import annotations

import pytest

from diagnose.physics.flow import flow_at, flow_at_pressure, pressure_for
from diagnose.physics.supply import restriction_left, supply_factor
from tests.rulebook import machine, run


@pytest.mark.parametrize(
    ("pressure", "exact", "printed"),
    [(7.0, 14.816, 14.82), (10.0, 17.709, 17.71), (50.0, 39.598, 39.6)],  # K 5.6 gpm/√psi
)
def test_k_5_6(pressure: float, exact: float, printed: float) -> None:
    assert flow_at(5.6, pressure) == pytest.approx(exact, abs=5e-4)
    assert flow_at(5.6, pressure) == pytest.approx(printed, abs=6e-3)
    assert pressure_for(5.6, exact) == pytest.approx(pressure, abs=1e-3)  # inverse, printed by a fourth


@pytest.mark.parametrize(("pressure", "share"), [(10, 0.707), (5, 0.500), (30, 1.225)])  # DERIVED, from 20 psi
def test_ratios(pressure: float, share: float) -> None:
    assert flow_at_pressure(1.0, 20.0, pressure) == pytest.approx(share, abs=5e-4)


def test_metric_factor() -> None:
    """K in L/min and √bar is 14.4 times K in gpm and √psi."""
    litres, bar_in_psi = 3.785411784, 14.503774
    assert flow_at(1.0, bar_in_psi) * litres == pytest.approx(14.4, abs=0.05)


@pytest.mark.parametrize(
    ("flowing", "rest", "outcome"),
    [
        # Behind the regulator 20 psi that creeps to 60 with no flow is a leaking seat; 4-501.113 is flow pressure.
        ("20", "60", "creeps_up"),
        ("20", "23", "steady"),
    ],
)
def test_at_rest_against_flowing(flowing: str, rest: str, outcome: str) -> None:
    found = run(machine(), ("rinse_gauge.flow_pressure", flowing), ("rinse_gauge.static_pressure", rest)).findings
    assert next(f for f in found if f.check == "rinse_gauge.static_pressure").outcome == outcome


def test_static_says_nothing_of_a_restriction() -> None:
    """60 psi at rest with 20 flowing is usual; 60 with 6 is a restriction upstream, at the same 60 at rest."""
    sound = supply_factor(60.0, 20.0, 4.2)
    at_six = flow_at_pressure(4.2, 20.0, 6.0)  # what the jets pass at 6 psi
    choked = supply_factor(60.0, 6.0, at_six)
    assert choked / sound == pytest.approx(0.47, abs=0.01)
    assert restriction_left(60.0, 6.0, at_six, 20.0, 4.2) == pytest.approx(choked / sound)


@pytest.mark.parametrize(("rest", "flowing", "outcome"), [("60", "20", "good"), ("60", "6", "low")])
def test_only_the_flowing_pressure_is_judged(rest: str, flowing: str, outcome: str) -> None:
    found = run(machine(), ("rinse_gauge.flow_pressure", flowing), ("rinse_gauge.static_pressure", rest)).findings
    assert next(f for f in found if f.check == "rinse_gauge.flow_pressure").outcome == outcome
