"""The stories of the demonstration transcripts; run as a module to tell them anew."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from diagnose.model import load_book
from tests.golden.teller import Story, tell

__all__ = ["STORIES"]

_NOTE = "Demonstration: the site and everything that happens there are invented. Lines with > are the answers typed."

_HOT = {
    "rinse_thermometer.panel_reading": "187",
    "rinse_thermometer.reference_reading": "188",
    "rinse_gauge.flow_pressure": "20",
    "rinse_gauge.static_pressure": "22",
    "supply_water.inlet_temperature": "140",
    "booster_electric.line_amps": "83 83 84",
    "booster_electric.terminal_ohms": "2.9 2.9 2.9",
    "supply_power.line_volts": "208 207 208",
    "rinse_arms.flow_measured": "4.2",
}
_OPEN = {
    **_HOT,
    "rinse_thermometer.panel_reading": "172",
    "rinse_thermometer.reference_reading": "173 F",
    "booster_electric.line_amps": "48 48 83",
    "booster_electric.terminal_ohms": "8.7 4.3 4.3",
}
# A single tank of 15 kW on 110 °F water, and what water that runs away takes from it.
_WARM = {
    "rinse_thermometer.panel_reading": "186",
    "rinse_thermometer.reference_reading": "187",
    "supply_water.inlet_temperature": "112",
    "supply_power.line_volts": "479 480 478",
    "tank_control.tank_panel": "163",
    "tank_control.tank_reference": "164",
    "tank_thermometer.reference_reading": "164",
    "tank_control.wash_temperature": "163",
    "tank_heater_electric.line_amps": "18 18 18",
    "drain_overflow.overflow_rate": "0",
}
_WEEPS = {
    **_WARM,
    "tank_control.tank_panel": "148",
    "tank_control.tank_reference": "149",
    "tank_thermometer.reference_reading": "149",
    "tank_control.wash_temperature": "148",
    "drain_overflow.overflow_rate": "1.9",
}

STORIES = (
    Story(
        name="rinse_cold_one_element",
        header=("Final rinse too cold: one heating element of an electric booster is open.", _NOTE),
        machine="two_tank_electric_208",
        site="Quay Street canteen, invented",
        faults=("booster_electric.element_open",),
        complaints="water not hot at the end",
        context={"last_done": "nothing lately", "since": "days, suddenly", "pattern": "always", "hardness": "hard"},
        shows={"element_open": _OPEN, "": _HOT},
        asides={"booster_electric.line_amps": ("w",)},
    ),
    Story(
        name="rinse_cold_lying_gauge",
        header=("Final rinse too cold, says the panel: the thermometer lies, the rinse is hot enough.", _NOTE),
        machine="two_tank_electric_208",
        site="Pier School kitchen, invented",
        faults=("rinse_thermometer.calibration_low",),
        complaints="the dial stays at 160",
        context={"since": "grew worse over weeks", "pattern": "always", "age": "over 10 years"},
        shows={"calibration_low": {**_HOT, "rinse_thermometer.panel_reading": "168"}, "": _HOT},
        asides={"rinse_thermometer.reference_reading": ("t",)},
    ),
    Story(
        name="rinse_cold_two_faults",
        header=("Final rinse too cold by two faults together: cold supply, and one heating element open.", _NOTE),
        machine="two_tank_electric_208",
        site="Harbour Hostel, invented",
        faults=("supply_water.heater_set_low", "booster_electric.element_open"),
        complaints="rinse not getting hot",
        context={"last_done": "plumbing work", "pattern": "always"},
        shows={
            "heater_set_low + element_open": {
                **_OPEN,
                "rinse_thermometer.panel_reading": "149",
                "rinse_thermometer.reference_reading": "150",
                "supply_water.inlet_temperature": "118",
                "supply_water.heater_outlet": "121",
            },
            "heater_set_low": {
                **_HOT,
                "rinse_thermometer.panel_reading": "165",
                "rinse_thermometer.reference_reading": "166",
                "supply_water.inlet_temperature": "118",
                "supply_water.heater_outlet": "121",
            },
            "element_open": _OPEN,
            "": _HOT,
        },
    ),
    Story(
        name="rinse_cold_interrupted",
        header=(
            "Final rinse too cold: the pressure is too high, so that more water flows than the booster heats.",
            "The job is paused in the middle and resumed.",
            _NOTE,
        ),
        machine="two_tank_electric_208",
        site="Millpond Home, invented",
        faults=("pressure_regulator.set_high",),
        complaints="last rinse not hot",
        context={"last_done": "plumbing work", "since": "since the last work"},
        shows={
            "set_high": {
                **_HOT,
                "rinse_thermometer.panel_reading": "176",
                "rinse_thermometer.reference_reading": "177",
                "rinse_gauge.flow_pressure": "34",
                "rinse_gauge.static_pressure": "36",
                "rinse_arms.flow_measured": "5.5",
            },
            "": _HOT,
        },
        pause_before="rinse_gauge.flow_pressure",
    ),
    Story(
        name="wash_cold_fill_weeps",
        header=(
            "Wash tank too cold though its heater is sound: the fill valve weeps, and water runs away all day.",
            "The letter f shows how a figure is worked out.",
            _NOTE,
        ),
        machine="single_tank_remote_booster_480",
        site="Lock House kitchen, invented",
        faults=("drain_overflow.fill_weeps",),
        complaints="wash water is lukewarm",
        context={"since": "grew worse over weeks", "pattern": "always", "hardness": "hard"},
        shows={"fill_weeps": _WEEPS, "": _WARM},
        asides={
            "drain_overflow.overflow_rate": ("f",),
            "tank_heater_electric.line_amps": ("f",),
            "tank_control.heat_up_time": ("f",),
        },
    ),
    Story(
        name="steam_out_exit_damper",
        header=("Steam coming out of the machine: the damper at the exit end is shut.", _NOTE),
        machine="two_tank_electric_208",
        site="Old Mill canteen, invented",
        faults=("vent_dampers.exit_shut",),
        complaints="fog in the dish room",
        context={"last_done": "cleaning by the crew", "since": "today, suddenly"},
        shows={
            "exit_shut": {"vent_dampers.flow_entrance": "215", "vent_dampers.flow_exit": "85"},
            "": {"vent_dampers.flow_entrance": "205", "vent_dampers.flow_exit": "390"},
        },
    ),
    Story(
        name="racks_jam_pawl",
        header=("Racks jam: a pawl of the conveyor bar is broken.", _NOTE),
        machine="single_tank_electric_208",
        site="Ferry Lane school, invented",
        faults=("conveyor_bar_pawls.pawl_broken",),
        complaints="racks get stuck halfway",
        context={"pattern": "always", "age": "over 10 years"},
    ),
    Story(
        name="motor_trips_overload_set_low",
        header=(
            "A motor trips on its overload: the overload is set under the nameplate after parts were replaced.",
            _NOTE,
        ),
        machine="two_tank_electric_208",
        site="Station Buffet, invented",
        faults=("motor_overload.pump_set_low",),
        complaints="pump cuts out, have to push the reset",
        context={"last_done": "parts replaced", "since": "since the last work", "pattern": "after running a while"},
        shows={
            "pump_set_low": {"pump_motor.line_amps": "6.6 6.7 6.6", "motor_overload.pump_setting": "5.0"},
            "": {"pump_motor.line_amps": "6.6 6.7 6.6", "motor_overload.pump_setting": "6.8"},
        },
        asides={"motor_overload.pump_setting": ("w 1",)},
    ),
)


def main() -> None:
    folder = Path(__file__).resolve().parents[2] / "transcripts_demo"
    book = load_book()
    for story in STORIES:
        if not sys.argv[1:] or story.name in sys.argv[1:]:
            with tempfile.TemporaryDirectory() as scratch:
                (folder / f"{story.name}.txt").write_text(tell(story, book, Path(scratch)), "utf-8")


if __name__ == "__main__":
    main()
