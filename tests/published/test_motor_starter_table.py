"""TM 5-3895-374-24-1, troubleshooting table of the motor starter (public domain).

Its four symptoms, in our words, with what the table gives as cause. Each pair must be a path in our tree, under the
complaint a kitchen would make of it, on a machine that can have it.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book

BOOK = load_book()
TRIPS, HOLDS = "overload trips", "overload does not trip"
NOISY, STAYS_OUT = "magnet is noisy", "starter does not pick up"

# (symptom, what the table gives as cause, our complaint, our cause)
PAIRS = [
    (TRIPS, "sustained load: too much water", "motor_trips", "pump.arm_open"),
    (TRIPS, "sustained load: drag", "motor_trips", "pump.seal_seized"),
    (TRIPS, "loose or corroded joint in the power circuit", "motor_trips", "motor_overload.hot_terminal"),
    (TRIPS, "wrong heater", "motor_trips", "motor_overload.range_too_small"),
    (TRIPS, "coil volts over 110 %: the supply is high", "motor_trips", "supply_power.wrong_service_high"),
    (HOLDS, "wrong heater", "motor_trips", "motor_overload.set_high"),
    (HOLDS, "mechanism binds", "motor_trips", "motor_overload.mechanism_bound"),
    (HOLDS, "damaged by an earlier short", "motor_trips", "motor_overload.mechanism_bound"),
    (HOLDS, "contact welded", "motor_trips", "contactor.poles_welded"),
    (NOISY, "shading coil broken", "noise", "contactor.shading_ring_broken"),
    (NOISY, "faces dirty", "noise", "contactor.shading_ring_broken"),
    (NOISY, "low volts: the supply", "noise", "supply_power.sags_at_rush"),
    (NOISY, "low volts: the tap", "noise", "contactor.control_tap_high"),
    (STAYS_OUT, "no control volts: fuse", "no_start", "control_circuit.secondary_fuse"),
    (STAYS_OUT, "no control volts: transformer", "no_start", "control_circuit.transformer_dead"),
    (STAYS_OUT, "no control volts: contact open", "no_start", "door_interlock.switch_dead"),
    (STAYS_OUT, "low volts: the supply", "no_start", "supply_power.sags_at_rush"),
    (STAYS_OUT, "low volts: the tap", "no_start", "contactor.control_tap_high"),
    (STAYS_OUT, "obstruction", "no_start", "contactor.armature_held"),
    (STAYS_OUT, "coil open", "no_start", "contactor.pump_coil_open"),
    (STAYS_OUT, "coil open", "no_start", "control_circuit.master_relay_dead"),
    (STAYS_OUT, "coil of other volts", "no_start", "contactor.coil_wrong_volts"),
    (STAYS_OUT, "coil open", "conveyor_dead", "contactor.drive_coil_open"),
    (STAYS_OUT, "obstruction", "conveyor_dead", "contactor.armature_held"),
]


@pytest.mark.parametrize(("symptom", "says", "complaint", "cause"), PAIRS, ids=lambda x: str(x)[:32])
def test_the_pair_is_a_path_in_our_tree(symptom: str, says: str, complaint: str, cause: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines["two_tank_electric_208"]))
    assert cause in tree.causes_under(complaint), f"{symptom}: {says}"


# What the table says of a symptom must stand in the words of the cause as well, not only in its name.
SAID = [
    ("motor_overload.mechanism_bound", ["short", "slide"]),
    ("motor_overload.set_high", ["heater", "nameplate"]),
    ("motor_overload.hot_terminal", ["screw"]),
    ("contactor.shading_ring_broken", ["ring", "faces"]),
    ("contactor.armature_held", ["wedge", "lint"]),
    ("contactor.coil_wrong_volts", ["label"]),
]


@pytest.mark.parametrize(("cause", "words"), SAID, ids=lambda x: str(x)[:32])
def test_the_reason_stands_in_the_cause(cause: str, words: list[str]) -> None:
    entry = BOOK.causes[cause]
    text = " ".join([entry.title, entry.shows, entry.why, *entry.repair]).casefold()
    assert [w for w in words if w not in text] == []
