"""The machine as it is built: every part sound, sized from the plate."""

from __future__ import annotations

from dataclasses import dataclass, field

from diagnose.simulator.conveyor_parts import RunTimer
from diagnose.simulator.habits import Habits
from diagnose.simulator.parts import (
    Air,
    Booster,
    Burner,
    Chemistry,
    Control,
    Conveyor,
    Fuel,
    Heater,
    Motor,
    Power,
    Pump,
    RinseLine,
    Tank,
    Thermostat,
    Water,
)
from diagnose.simulator.plate import Plate

__all__ = ["Plant"]

_PSI = 6894.757
_ROOM = 299.15
# Wash pumps of racks conveyors move some 100 to 200 gpm: judgement, by the motor's power at half efficiency.
_PUMP_SHARE = 0.45
# Usual amps of a motor a watt at 230 V, three-phase and single-phase: judgement, small motors.
_AMPS_PER_WATT = {3: 3.6 / 746, 1: 8.0 / 746}
_USUAL_POWER = {"prewash": 560.0, "wash": 1490.0, "rinse": 746.0, "drive": 250.0, "fan": 370.0}


@dataclass
class Plant:
    """All parts of one machine. `signs` are things to be seen, heard, smelt or felt, how marked each is (0 to 1)."""

    plate: Plate
    power: Power
    water: Water
    fuel: Fuel
    booster: Booster
    rinse: RinseLine
    tanks: dict[str, Tank]
    pumps: dict[str, Pump]
    motors: dict[str, Motor]
    conveyor: Conveyor
    air: Air
    chemistry: Chemistry
    control: Control
    habits: Habits = field(default_factory=Habits)
    signs: dict[str, float] = field(default_factory=dict)

    @classmethod
    def built(cls, plate: Plate) -> Plant:
        """A sound machine, connected and set as the plate says."""
        volts = plate["volts"]
        phases = int(plate.traits["phases"])
        flow, pressure = plate["rinse_flow"], plate["rinse_pressure"]
        wanted_static = pressure + 20 * _PSI
        inlet = plate["booster_inlet"] if plate.traits["booster"] != "none" else plate["rinse_temperature"] + 11.0
        tanks = {name: _tank(plate, name) for name in plate.tanks}
        return cls(
            plate=plate,
            power=Power(volts, phases, plate["frequency"], source_ohms=0.008 * volts / max(_amps(plate), 10.0)),
            # Supply and pipes that leave 5 psi in hand at rated flow: judgement.
            water=Water(
                inlet, wanted_static + 15 * _PSI, 3.0 * max(flow, len(tanks) * plate["fill_flow"]) / pressure**0.5
            ),
            fuel=Fuel(),
            booster=Booster(
                _heater(plate, "booster"), plate["booster_volume"], Thermostat(plate["rinse_temperature"] + 5.5)
            ),
            # A small regulator falls off by about three tenths from rest to its rated flow: judgement.
            rinse=RinseLine(1.3 * pressure, flow, flow / pressure**0.5, droop=0.3 * pressure),
            tanks=tanks,
            pumps={name: _pump(plate, name) for name in plate.tanks},
            motors={name: _motor(plate, name) for name in plate.motors},
            conveyor=Conveyor(plate["conveyor_speed"], RunTimer(plate["run_on"])),
            air=Air({"entrance": plate["vent_entrance"], "exit": plate["vent_exit"]}, room=_ROOM),
            chemistry=Chemistry(),
            control=Control(),
        )


def _amps(plate: Plate) -> float:
    return (plate.get("booster_power", 0.0) + plate.get("tank_power", 0.0)) / plate["volts"]


def _heater(plate: Plate, which: str) -> Heater:
    volts = plate["volts"]
    connection = str(plate.traits["connection"])
    if which == "booster":
        kind = str(plate.traits["booster"])
        power = plate.get("booster_power", 0.0) if kind == "electric" else booster_heat(plate)
        burner = Burner(power / 0.8, 0.8) if kind == "gas" else None
        return Heater(kind, power, plate.get("booster_volts", volts), connection, burner=burner)
    kind = str(plate.traits["tank_heat"])
    usual = 20e3 if which == "rinse" else 15e3
    rated = plate.get("rinse_tank_power" if which == "rinse" else "tank_power", plate.get("tank_power", usual))
    if which == "prewash":
        return Heater("none", 0.0, volts, connection)
    burner = None
    if kind == "gas":
        rated = 0.7 * plate.get("tank_gas_input", rated / 0.7)  # a share of the burner's input: judgement
        burner = Burner(rated / 0.7, 0.7, case_loss=0.08)  # what an open box under a tank loses: judgement
    joined = "single" if plate.traits["phases"] == 1 else connection
    return Heater(kind, rated, plate.get("tank_volts", volts), joined, burner=burner)


def booster_heat(plate: Plate) -> float:
    """Heat a sound booster that is not electric can give, [W]: what the plate's rise wants and a tenth in hand."""
    if plate.traits["booster"] == "none":
        return 0.0
    if "gas_input" in plate.figures:
        return 0.8 * plate["gas_input"]  # an efficiency of 80 %: common practice
    rise = plate["rinse_temperature"] + 3.0 - plate["booster_inlet"]
    return 1.1 * 4.12e6 * plate["rinse_flow"] * rise


def _tank(plate: Plate, name: str) -> Tank:
    volume = plate["rinse_tank_volume"] if name == "rinse" else plate["wash_tank_volume"]
    least = plate["rinse_tank_temperature"] if name == "rinse" else plate["wash_temperature"]
    return Tank(volume, _heater(plate, name), Thermostat(least + 3.5), fill_flow=plate["fill_flow"])


def _pump(plate: Plate, name: str) -> Pump:
    pressure = plate["pump_pressure"]
    power = plate.get("prewash_motor_power" if name == "prewash" else f"{name}_motor_power", _USUAL_POWER[name])
    return Pump(pressure, _PUMP_SHARE * power / (pressure + 15e3))


def _motor(plate: Plate, name: str) -> Motor:
    power = plate.get(f"{name}_motor_power", _USUAL_POWER[name])
    phases = int(plate.traits["phases"])
    amps = plate.get(f"{name}_motor_amps", power * _AMPS_PER_WATT[phases] * 230.0 / plate["volts"])
    return Motor(power, amps, load=0.6 if name == "drive" else 0.85, trip_class=plate["overload_class"])
