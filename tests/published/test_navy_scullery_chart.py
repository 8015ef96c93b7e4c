"""U.S. Navy, Engineman training manual NAVEDTRA 14076, chapter 7, table 7-4, scullery machines (public domain).

Its chart has five symptoms, in our words here and, for the ware and the wash pressure, in the test beside this one;
before the chart stands a list of what to inspect and lubricate. Each pair of symptom and cause, and whatever an
inspection would find, must be a path in our tree, on a machine that can have it.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, fits, load_book
from diagnose.rules.bands import limit_end
from diagnose.units import parse_quantity

BOOK = load_book()

# (symptom, what the chart gives as cause, our complaint, our cause, a machine that can have it)
PAIRS = [
    (
        "racks slip off the chain conveyor",
        "chain tension has changed; both chains must be reset alike",
        "racks_jam",
        "conveyor_bar_pawls.chains_uneven",
        "chain_two_tank_electric_480",
    ),
    (
        "racks slip off the chain conveyor",
        "chain tension has changed on both: reset the idler sprockets",
        "racks_jam",
        "conveyor_chain.tension_low",
        "chain_two_tank_electric_480",
    ),
    ("water on the floor", "door leaks: its gasket", "floor_water", "doors.gasket_worn", "two_tank_electric_208"),
    ("water on the floor", "door leaks: realign it", "floor_water", "doors.hangs_crooked", "two_tank_gas_208"),
    ("water on the floor", "torn curtain", "floor_water", "curtains.entrance_torn", "flight_prewash_steam_480"),
    ("water on the floor", "misplaced curtain", "floor_water", "curtains.exit_wrong_way", "two_tank_electric_208"),
    (
        "water in the wrong tank",
        "curtain between them",
        "tank_loses_water",
        "curtains.inner_missing",
        "two_tank_gas_208",
    ),
    (
        "water on the floor",
        "spray leaves its tank",
        "floor_water",
        "doors.spray_at_seam",
        "single_tank_steam_208",
    ),
    (
        "final rinse below 180 °F",
        "booster does not heat enough: descale the coil",
        "rinse_cold",
        "booster_steam.coil_limed",
        "two_tank_steam_208",
    ),
    (
        "final rinse below 180 °F",
        "booster does not heat enough: mend leaks",
        "rinse_cold",
        "booster_steam.coil_leaks",
        "two_tank_steam_208",
    ),
    (
        "final rinse below 180 °F",
        "thermostat wants calibrating",
        "rinse_cold",
        "booster_control.stat_set_low",
        "two_tank_electric_208",
    ),
    (
        "final rinse below 180 °F",
        "thermostat wants replacing",
        "rinse_cold",
        "booster_control.stat_drifted",
        "two_tank_electric_208",
    ),
    ("spray pressure low", "nozzles or slots plugged", "wash_weak", "spray_arms.jets_limed", "two_tank_electric_208"),
    ("spray pressure low", "strainer baskets plugged", "wash_weak", "pump.suction_blocked", "two_tank_electric_208"),
    ("spray pressure low", "baskets plugged", "wash_weak", "scrap_screens.trays_blinded", "two_tank_electric_208"),
    ("spray pressure low", "pump belts slipping", "wash_weak", "pump.belt_slips", "two_tank_electric_208"),
    ("pumps opened yearly", "erosion of the impeller", "wash_weak", "pump.impeller_worn", "two_tank_electric_208"),
]

# (what the list has inspected or greased, what neglect of it comes to: our complaint, our cause, a machine)
INSPECTED = [
    ("chain tension, slack", "racks_jam", "conveyor_chain.tension_low", "chain_two_tank_electric_480"),
    ("chain tension, too tight", "motor_trips", "conveyor_chain.tension_high", "chain_two_tank_electric_480"),
    ("lugs opposite each other", "racks_jam", "conveyor_chain.chains_mismatched", "chain_two_tank_electric_480"),
    ("guide sprockets on their shaft", "racks_jam", "conveyor_chain.sprocket_shifted", "chain_two_tank_electric_480"),
    ("the same of a belt", "flight_jams", "flight_conveyor.sprocket_shifted", "flight_gas_208"),
    ("doors counterbalanced", "steam_out", "doors.hangs_crooked", "two_tank_electric_208"),
    ("thermometer of a tank", "wash_cold", "tank_thermometer.pointer_low", "single_tank_gas_208"),
    ("thermometer of the rinse", "rinse_cold", "rinse_thermometer.calibration_low", "two_tank_electric_208"),
    ("gauges", "gauge_disbelieved", "rinse_gauge.needle_low", "two_tank_electric_208"),
    ("thermostat of a tank", "wash_cold", "tank_control.stat_drifted", "two_tank_electric_208"),
    ("thermostat of the booster", "rinse_cold", "booster_control.stat_drifted", "two_tank_electric_240"),
    ("mixing valve", "rinse_cold", "supply_water.tempering_low", "single_tank_electric_400_50"),
    ("pump and motor bearings greased", "motor_trips", "pump_motor.bearing_worn", "two_tank_electric_208"),
    ("gearbox filled", "motor_trips", "drive_motor.reducer_stiff", "two_tank_electric_208"),
    ("conveyor shaft bearings greased", "conveyor_pace", "flight_conveyor.bearing_dry", "flight_prewash_electric_480"),
    ("sprockets greased", "racks_jam", "conveyor_chain.idler_seized", "chain_two_tank_electric_480"),
    ("pumps opened yearly for erosion", "wash_weak", "pump.impeller_worn", "two_tank_electric_208"),
]


@pytest.mark.parametrize(("what", "complaint", "cause", "machine"), INSPECTED, ids=lambda x: str(x)[:30])
def test_what_is_inspected_is_a_path_in_our_tree(what: str, complaint: str, cause: str, machine: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines[machine]))
    assert fits(Machine("x", BOOK.machines[machine]), BOOK.complaints[complaint].fits)
    assert cause in tree.causes_under(complaint), what


@pytest.mark.parametrize(("symptom", "says", "complaint", "cause", "machine"), PAIRS, ids=lambda x: str(x)[:30])
def test_the_pair_is_a_path_in_our_tree(symptom: str, says: str, complaint: str, cause: str, machine: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines[machine]))
    assert fits(Machine("x", BOOK.machines[machine]), BOOK.complaints[complaint].fits)
    assert cause in tree.causes_under(complaint), f"{symptom}: {says}"


def test_the_chart_is_named_as_a_source_where_it_is_used() -> None:
    assert any(c.basis.source == "navedtra_14076" for c in BOOK.causes.values())


@pytest.mark.parametrize("kind", ["single_tank_electric_208", "two_tank_electric_208"])
def test_the_manuals_older_wash_band_does_not_govern(kind: str) -> None:
    """NAVEDTRA 14163 washes at 140 to 160 °F; the Food Code 4-501.110(A) and the data plate ask for more."""
    machine = Machine("x", BOOK.machines[kind])
    unit = parse_quantity("140 F", "temperature").unit
    least = limit_end(BOOK, machine, "wash_tank_least", "low", unit)
    assert least.value >= limit_end(BOOK, None, "tank_temperature", "low", unit).value > 140.0
