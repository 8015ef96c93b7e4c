"""Rinse flow against what the pressure should drive."""

from __future__ import annotations

import pytest

from tests.rulebook import expect, machine, run

FLOW, PRESSURE = "rinse_arms.flow_measured", "rinse_gauge.flow_pressure"


@pytest.mark.parametrize(
    ("pressure", "flow", "outcome"),
    [
        ("20", "4.2", "as_expected"),
        ("12", "3.3", "as_expected"),  # 4.2 × √0.6 = 3.25: low with low is upstream, the jets are sound
        ("12", "4.6", "more_than_expected"),  # low pressure with high flow: jets or end cap
        ("22", "2.8", "less_than_expected"),
        ("30", "5.1", "as_expected"),
        ("1.4 bar", "16 L/min", "as_expected"),
    ],
)
def test_flow_against_pressure(pressure: str, flow: str, outcome: str) -> None:
    found = run(machine(), (PRESSURE, f"{pressure}"), (FLOW, f"{flow}")).findings
    assert next(f for f in found if f.check == FLOW).outcome == outcome


def test_pressure_is_consulted_not_counted() -> None:
    done = run(machine(), (PRESSURE, "12"), (FLOW, "4.6"))
    flow = next(f for f in done.findings if f.check == FLOW)
    assert flow.counts == (f"{FLOW} at 0",)
    assert flow.consults == (f"{PRESSURE} at 0",)
    assert flow.working[0] == "4.2 gpm × √(12 psi ÷ 20 psi) = 3.253 gpm"


def test_without_pressure_the_plate_is_less_sure() -> None:
    alone = run(machine(), (FLOW, "5.2")).findings[0].weights["more_than_expected"]
    with_it = run(machine(), (PRESSURE, "20"), (FLOW, "5.2")).findings
    assert alone < next(f for f in with_it if f.check == FLOW).weights["more_than_expected"]


def test_pressure_of_an_earlier_stage_does_not_serve() -> None:
    found = run(machine(), (PRESSURE, "12", 0), (FLOW, "4.2", 1)).findings
    assert next(f for f in found if f.check == FLOW).outcome == "as_expected"


def test_silent_without_a_rated_flow() -> None:
    assert run(machine(rinse_flow="0 gpm"), (FLOW, "4")).findings == ()


def test_expected() -> None:
    shown = expect(machine(), FLOW, (PRESSURE, "12"))
    assert shown is not None
    assert shown.lines == ("4.2 gpm × √(12 psi ÷ 20 psi) = 3.3 gpm through sound jets",)


def test_why_this_number() -> None:
    shown = expect(machine(rinse_flow="4.2 gpm"), FLOW, (PRESSURE, "12"))
    assert shown is not None
    assert shown.working[0] == "Rated final-rinse flow: 4.2 gpm (data plate)."
    assert "Flow pressure of the final rinse: 20 psi (type's figure, assumed)." in shown.working
    assert "4.2 gpm × √(12 psi ÷ 20 psi) = 3.253 gpm" in shown.working


def test_the_same_reading_on_another_plate_says_another_thing() -> None:
    typed = ((PRESSURE, "12"), (FLOW, "4.6"))
    for rated, outcome in (
        ("4.2 gpm", "more_than_expected"),
        ("6 gpm", "as_expected"),
        ("8 gpm", "less_than_expected"),
    ):
        found = run(machine(rinse_flow=rated), *typed).findings
        assert next(f for f in found if f.check == FLOW).outcome == outcome
