"""Traverse points as instrument manuals give them after ASHRAE 111 and ISO 3966 (secondary), and the hood rule."""

from __future__ import annotations

import pytest

from diagnose.physics.traverse import hood_flow, points_across, points_of_round, round_area, straight_wanted

INCH, CFM = 0.0254, 0.3048**3 / 60


def test_five_places() -> None:
    """24 in side: 1.78, 6.91, 12.0, 17.09, 22.22 in."""
    assert [x / INCH for x in points_across(24 * INCH)] == pytest.approx([1.78, 6.91, 12.0, 17.09, 22.22], abs=5e-3)


@pytest.mark.parametrize(
    ("inches", "printed"),
    [
        (29, (0.074, 0.288, 0.500, 0.712, 0.926)),
        (33, (0.061, 0.235, 0.437, 0.563, 0.765, 0.939)),
        (40, (0.053, 0.203, 0.366, 0.500, 0.634, 0.797, 0.947)),
    ],
)
def test_shares(inches: float, printed: tuple[float, ...]) -> None:
    assert [x / (inches * INCH) for x in points_across(inches * INCH)] == pytest.approx(printed)


def test_round() -> None:
    assert points_of_round(1.0) == pytest.approx((0.032, 0.135, 0.321, 0.679, 0.865, 0.968))


def test_straight() -> None:
    """10 diameters before, 3 behind; the one of a rectangle is the root of 4 H V over pi."""
    assert straight_wanted(0.2) == pytest.approx((2.0, 0.6))
    assert round_area((4 * 0.3 * 0.4 / 3.14159265) ** 0.5) == pytest.approx(0.12)


def test_hood() -> None:
    """International Mechanical Code as cited: 100 cfm a foot, so 6 ft want 600 cfm."""
    assert hood_flow(6 * 0.3048) / CFM == pytest.approx(600)


def test_points_integrate_a_power_profile() -> None:
    """The places are made for boundary layers: over v = (1 - |2x - 1|)^(1/7) they err by under 1 %."""
    for side in (29 * INCH, 33 * INCH, 40 * INCH):
        places = [x / side for x in points_across(side)]
        mean = sum((1 - abs(2 * x - 1)) ** (1 / 7) for x in places) / len(places)
        assert mean == pytest.approx(7 / 8, rel=0.01)
