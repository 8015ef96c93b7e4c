"""Inlet temperature against the rise this booster can give."""

from __future__ import annotations

import pytest

from tests.rulebook import expect, machine, run

INLET = "supply_water.inlet_temperature"


@pytest.mark.parametrize(
    ("kind", "seen", "outcome"),
    [
        ("delta", "140", "enough"),  # 140 + 49 = 189
        ("delta", "110", "too_cold"),  # 110 + 49 = 159
        ("delta", "175", "too_hot"),
        ("wye", "60 C", "enough"),  # 60 + 26 = 86 °C
        ("wye", "48 C", "too_cold"),
        ("single", "130", "too_cold"),  # 130 + 44.5 = 174.5
        ("gas", "135", "enough"),  # 135 + 50 = 185
        ("gas", "120", "too_cold"),
        ("steam", "140", "enough"),
        ("steam", "130", "too_cold"),
        ("chemical", "125", "enough"),
        ("chemical", "110", "too_cold"),
        ("chemical", "160", "too_hot"),
    ],
)
def test_by_kind_of_booster(kind: str, seen: str, outcome: str) -> None:
    assert run(machine(kind), (INLET, seen)).findings[0].outcome == outcome


def test_low_volts_on_the_plate_need_hotter_water() -> None:
    """30 kW elements for 240 V on a 208 V plate give 22.5 kW: 37 F°, so 131 °F is no longer enough."""
    assert run(machine(booster_volts="240 V"), (INLET, "138")).findings[0].outcome == "too_cold"
    assert run(machine(), (INLET, "138")).findings[0].outcome == "enough"


def test_too_much_flow_is_not_blamed_on_the_water() -> None:
    """The verdict goes by the rated flow; what arrives at the flow there is now is only told."""
    found = run(machine(), ("rinse_arms.flow_measured", "6 gpm"), (INLET, "140")).findings
    inlet = next(f for f in found if f.check == INLET)
    assert inlet.outcome == "enough"
    assert any("= 174" in line for line in inlet.working)


def test_soft_at_the_edge_and_silent_without_a_limit() -> None:
    weights = run(machine(), (INLET, "131.3")).findings[0].weights
    assert 0.3 < weights["too_cold"] < 0.7


def test_expected() -> None:
    shown = expect(machine(), INLET)
    assert shown is not None
    assert shown.lines[0].startswith("131 °F or more: 30 kW into 4.2 gpm gives 49 F°")
    assert expect(machine("chemical"), INLET) is not None
