"""Dampers with a handle: nothing changes without one, and each kind of blade opens as it should."""

from __future__ import annotations

import pytest

from diagnose.simulator.airway import ENDS, air_flow
from diagnose.simulator.blades import KINDS, Blade
from diagnose.simulator.parts import Air

STILL = {"entrance": 0.0, "exit": 0.0}
WANTED = {"entrance": 0.0944, "exit": 0.1888}


@pytest.mark.parametrize("kind", KINDS)
def test_opens_all_the_way(kind: str) -> None:
    blade = Blade(kind, 2.0, leak=0.02)
    opened = [blade.opening(nth / 20.0) for nth in range(21)]
    assert opened == sorted(opened)
    assert opened[-1] == pytest.approx(2.0)
    assert 0.0 < opened[0] < 0.15


def test_a_handle_without_a_blade_does_nothing() -> None:
    plain, turned = Air(dict(WANTED)), Air(dict(WANTED), handle={"entrance": 0.1, "exit": 0.3})
    assert air_flow(plain, True, STILL) == air_flow(turned, True, STILL)


def test_a_blade_at_its_right_place_is_the_right_opening() -> None:
    air = Air(dict(WANTED), blades={end: Blade("slide", 1.0) for end in ENDS})
    assert air_flow(air, True, STILL).total == pytest.approx(sum(WANTED.values()), rel=0.01)


def test_closing_one_end_raises_the_other() -> None:
    air = Air(dict(WANTED), blades={end: Blade("butterfly", 2.0) for end in ENDS})
    before = air_flow(air, True, STILL).exhaust
    air.handle["exit"] = 0.5
    after = air_flow(air, True, STILL).exhaust
    assert after["exit"] < before["exit"]
    assert after["entrance"] > before["entrance"]


def test_a_fault_of_the_blade_stays_with_a_handle() -> None:
    """A blade that has dropped across its duct narrows whatever the handle says."""
    air = Air(dict(WANTED), blades={end: Blade("butterfly", 2.0) for end in ENDS})
    sound = air_flow(air, True, STILL).exhaust["exit"]
    air.damper["exit"] = 0.3
    assert air_flow(air, True, STILL).exhaust["exit"] < sound
