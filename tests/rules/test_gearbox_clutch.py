"""Clutch: what is expected of it, and what the racks want."""

from __future__ import annotations

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import reading

PULL, SLIDE = "gearbox_clutch.clutch_pull", "guide_rails.track_slide"
MACHINE = Machine("m", book().machines["two_tank_electric_208"])


def test_taken_friction() -> None:
    shown = expected(book(), MACHINE, [], PULL)
    assert shown is not None
    assert shown.lines == ("40 to 90 lbf (racks want 36 lbf)",)
    assert "4 × 30 lb × 0.3 = 36 lbf" in shown.working
    assert shown.working[-1] == "100 × (40 ÷ 36 − 1) = 11.11"


def test_friction_from_the_rack_that_was_slid() -> None:
    """9 lbf for a rack of 20 lb is 0.45: four of 30 lb want 54 lbf, more than the lower end gives."""
    shown = expected(book(), MACHINE, [reading(SLIDE, "9 lbf", book=book())], PULL)
    assert shown is not None
    assert shown.lines == ("40 to 90 lbf (racks want 54 lbf)",)
    assert shown.working[-1] == "100 × (40 ÷ 54 − 1) = -25.93"
