"""Of several pumps the readings belong to the one that was said to have tripped, and to its own plate."""

from __future__ import annotations

import pytest

from diagnose.job.assess import assess
from diagnose.job.case import Case, case_state
from diagnose.model import load_book

BOOK = load_book()


@pytest.mark.parametrize(
    ("tripped", "amps", "outcome"),
    [
        ("pump", "6.0 6.1 5.9 A", "healthy"),  # 6.8 A nameplate
        ("rinse_pump", "6.0 6.1 5.9 A", "high"),  # 3.8 A nameplate
        ("rinse_pump", "3.4 3.4 3.5 A", "healthy"),
    ],
)
def test_the_plate_follows_the_pump(tripped: str, amps: str, outcome: str) -> None:
    readings = {"motor_overload.which_tripped": tripped, "pump_motor.line_amps": amps}
    case = Case(machine="two_tank_electric_208", complaints=["motor_trips"], readings=readings)
    found = assess(BOOK, case_state(case, BOOK)).findings
    assert next(f for f in found if f.check == "pump_motor.line_amps").outcome == outcome


def test_the_overload_setting_follows_too() -> None:
    readings = {"motor_overload.which_tripped": "rinse_pump", "motor_overload.pump_setting": "3.8 A"}
    case = Case(machine="two_tank_electric_208", complaints=["motor_trips"], readings=readings)
    found = assess(BOOK, case_state(case, BOOK)).findings
    assert next(f for f in found if f.check == "motor_overload.pump_setting").outcome == "as_nameplate"


@pytest.mark.parametrize(
    ("tripped", "amps", "outcome"),
    [
        ("prewash_pump", "1.6 1.6 1.7 A", "healthy"),  # 1.7 A nameplate
        ("prewash_pump", "2.9 2.9 2.9 A", "high"),
        ("pump", "2.9 2.9 2.9 A", "healthy"),  # 3.0 A nameplate
    ],
)
def test_the_pre_wash_pump_has_a_plate_of_its_own(tripped: str, amps: str, outcome: str) -> None:
    readings = {"motor_overload.which_tripped": tripped, "pump_motor.line_amps": amps}
    case = Case(machine="two_tank_prewash_electric_480", complaints=["motor_trips"], readings=readings)
    found = assess(BOOK, case_state(case, BOOK)).findings
    assert next(f for f in found if f.check == "pump_motor.line_amps").outcome == outcome
