"""TM 5-683 / NAVFAC MO-116, electrical interior facilities, table 5-2: motor control (public domain).

Where the table's cause is a fault of its own, the pair of symptom and cause must be a path in our tree under the
complaint it belongs to. Where it is the reason behind a ruined part, the cause of that part must name it, so that the
new part does not go the same way.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book

BOOK = load_book()
WELDED, CHATTER = "contacts weld together", "contacts chatter"
COIL, PANEL = "coil does not live long", "panel overheats"

# (symptom, what the table gives as cause, our complaint, our cause)
PAIRS = [
    (WELDED, "the conveyor can't be stopped", "table_full_runs", "contactor.poles_welded"),
    (WELDED, "a tank's heat can't be stopped", "tank_hot", "tank_control.contactor_welded"),
    (WELDED, "a motor goes on past its overload", "motor_trips", "contactor.poles_welded"),
    (CHATTER, "broken shading ring", "stops_midrun", "contactor.shading_ring_broken"),
    (CHATTER, "broken shading ring", "noise", "contactor.shading_ring_broken"),
    (CHATTER, "poor interlock contact", "stops_midrun", "contactor.hold_contact_poor"),
    (CHATTER, "poor interlock contact", "stops_table_empty", "contactor.hold_contact_poor"),
    (CHATTER, "low volts: the tap", "stops_midrun", "contactor.control_tap_high"),
    (CHATTER, "low volts: the supply", "stops_midrun", "supply_power.sags_at_rush"),
    (COIL, "the pump's", "no_start", "contactor.pump_coil_open"),
    (COIL, "the conveyor's", "conveyor_dead", "contactor.drive_coil_open"),
    (COIL, "the master relay's", "no_start", "control_circuit.master_relay_dead"),
    (COIL, "a booster's", "rinse_cold", "booster_control.coil_open"),
    (PANEL, "frequent starts", "motor_trips", "motor_overload.stopped_for_each_rack"),
    (PANEL, "frequent starts", "motor_trips", "motor_overload.box_hot"),
]

# (symptom, our cause, the table's reasons as our text has them)
WELDS = ["weak spring", "rough faces", "inrush", "jogged", "low coil volts", "dirt", "short"]
REASONS = [
    (WELDED, "contactor.poles_welded", WELDS),
    (COIL, "contactor.pump_coil_open", ["more than 110 %", "magnet that never closed", "box over 104"]),
    (COIL, "control_circuit.master_relay_dead", ["over 110 %", "magnet's gap", "box at 120"]),
    (PANEL, "motor_overload.box_hot", ["frequent starts"]),
]


@pytest.mark.parametrize(("symptom", "says", "complaint", "cause"), PAIRS, ids=lambda x: str(x)[:32])
def test_the_pair_is_a_path_in_our_tree(symptom: str, says: str, complaint: str, cause: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines["two_tank_electric_208"]))
    assert cause in tree.causes_under(complaint), f"{symptom}: {says}"


@pytest.mark.parametrize(("symptom", "cause", "reasons"), REASONS, ids=lambda x: str(x)[:32])
def test_the_reason_stands_behind_the_ruined_part(symptom: str, cause: str, reasons: list[str]) -> None:
    why = BOOK.causes[cause].why.casefold()
    assert [r for r in reasons if r.casefold() not in why] == [], symptom
