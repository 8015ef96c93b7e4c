"""Planned maintenance of galley equipment, MIP 6512, U.S. Navy, as shown in training slides (secondary).

Quarterly: lubricate; clean the regulator's strainer; look at the Y strainer and those in line and at the solenoid. Once
a year: calibrate the thermometers. Every 24 months: try the booster's relief valve.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book

BOOK = load_book()
HERE = build_tree(BOOK, Machine("", BOOK.machines["two_tank_electric_208"]))

# What is maintained, in our words; the fault it prevents, and the complaint that fault brings.
POINTS = [
    ("strainer in the line to the rinse", "supply_water.line_strainer_blocked", "rinse_pressure_low"),
    ("thermometers calibrated once a year", "rinse_thermometer.calibration_low", "gauge_disbelieved"),
    ("thermometers calibrated once a year", "rinse_thermometer.calibration_high", "gauge_disbelieved"),
    ("relief valve tried every 24 months", "relief_valve.opens_early", "relief_valve_blows"),
]


@pytest.mark.parametrize(("point", "cause", "complaint"), POINTS, ids=[cause for _, cause, _ in POINTS])
def test_what_is_maintained_has_its_fault_in_our_tree(point: str, cause: str, complaint: str) -> None:
    assert cause in HERE.causes_under(complaint), point


def test_the_interval_of_the_relief_valve_is_said() -> None:
    cause = BOOK.causes["relief_valve.opens_early"]
    assert "24 months" in " ".join((cause.shows, cause.why, cause.basis.where or "", *cause.repair))
