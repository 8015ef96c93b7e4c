"""The simulated machine against published and hand-computed values, each with its source beside it."""

from __future__ import annotations

import math

import pytest

from diagnose.physics.heat import TRADE_HEAT
from diagnose.physics.motors import nema_unbalance
from diagnose.physics.protection import PICKUP, trip_time_constant
from diagnose.simulator.airway import air_flow
from diagnose.simulator.electrics import bank_flow, line_volts, motor_flow
from diagnose.simulator.parts import Air, Heater, Motor, Power, RinseLine, Water
from diagnose.simulator.plant import Plant
from diagnose.simulator.plate import Plate
from diagnose.simulator.service import Service
from diagnose.simulator.state import start_state
from diagnose.simulator.waterway import rinse_flow

PSI = 6894.757
GPM = 3.785411784e-3 / 60
STIFF = 1e-6  # ohm of a supply that does not sag


def bank(volts: float, watts: float, connection: str = "delta") -> tuple[Power, Heater]:
    power = Power(volts, 3, 60.0, source_ohms=STIFF, joint_ohms=[STIFF] * 3)
    return power, Heater("electric", watts, volts, connection)


# Ohm's law for a delta bank, worked by hand (electric heat, balanced line current I = P / (sqrt 3 V)).
@pytest.mark.parametrize(("watts", "volts", "amps"), [(15e3, 208.0, 41.64), (18e3, 240.0, 43.30), (36e3, 480.0, 43.30)])
def test_a_sound_bank_draws_its_balanced_current(watts: float, volts: float, amps: float) -> None:
    flow = bank_flow(*bank(volts, watts))
    assert flow.amps == pytest.approx((amps,) * 3, rel=2e-3)
    assert flow.power == pytest.approx(watts, rel=1e-3)


def test_one_delta_element_open_leaves_two_thirds() -> None:
    """Ohm's law: 24.0, 24.0, 41.6 A of 41.6, and two thirds of the power (not three quarters)."""
    power, heater = bank(208.0, 15e3)
    heater.elements[0] = 0.0
    flow = bank_flow(power, heater)
    assert sorted(flow.amps) == pytest.approx([24.0, 24.0, 41.6], rel=3e-3)
    assert flow.power == pytest.approx(10e3, rel=1e-3)


def test_one_line_lost_leaves_half() -> None:
    """Ohm's law: 36.1, 36.1, 0 A of 41.6, half the power."""
    power, heater = bank(208.0, 15e3)
    power.line_open.add(1)
    flow = bank_flow(power, heater)
    assert sorted(flow.amps) == pytest.approx([0.0, 36.06, 36.06], abs=0.1)
    assert flow.power == pytest.approx(7.5e3, rel=1e-3)


def test_240_volt_elements_on_208_volts_give_three_quarters() -> None:
    """Power goes with the square of the volts: (208/240)² = 0.751."""
    power, heater = bank(208.0, 15e3)
    heater.volts = 240.0
    assert bank_flow(power, heater).power == pytest.approx(15e3 * (208 / 240) ** 2, rel=1e-3)


# The trade's rise: kW x 3412 / (500 gpm); 15 kW into 2.5 gpm 40.9 F°, 30 kW into 4.5 gpm 45.5 F°, worked by hand.
@pytest.mark.parametrize(("watts", "gpm", "rise"), [(15e3, 2.5, 40.9), (18e3, 3.0, 40.9), (30e3, 4.5, 45.5)])
def test_booster_rise(watts: float, gpm: float, rise: float) -> None:
    """A rinse held on until the shell is steady, the thermostat calling throughout."""
    plant = _machine(booster_power=watts, rinse_flow=gpm * GPM)
    plant.booster.thermostat.stuck = True
    plant.power.source_ohms = STIFF
    plant.booster.loss = 0.0
    plant.rinse.actuator = "held"
    service = Service(plant, start_state(plant, hot=True), 0.0)
    service.advance(600.0)
    flow = service.moment().standing.rinse.flow
    found = (service.state.flowing["booster"] - plant.water.temperature) * 1.8
    at_rated = found * flow / (gpm * GPM)
    assert at_rated == pytest.approx(rise, rel=0.03)  # the trade's 500 against water's own figure: 1.4 %
    assert found == pytest.approx(watts / (TRADE_HEAT * flow) * 1.8, rel=0.03)


# Square-root law of pressure (ratios worked by hand): half the pressure 0.707 of the flow, a quarter 0.5.
@pytest.mark.parametrize(("share", "ratio"), [(0.5, 0.7071), (0.25, 0.5), (1.5, 1.2247)])
def test_flow_goes_with_the_root_of_pressure(share: float, ratio: float) -> None:
    flow, pressure = 4.2 * GPM, 20 * PSI
    water = Water(333.15, 80 * PSI, 1.0)
    line = RinseLine(pressure * share, flow, flow / pressure**0.5)
    assert rinse_flow(water, line, 1.0).flow == pytest.approx(flow * ratio, rel=1e-3)


def test_worn_jets_take_more_water_at_less_pressure() -> None:
    """Jets worn to 1.3 of their area, behind a supply that then has no pressure in hand: flow up, pressure down."""
    flow, pressure = 4.2 * GPM, 20 * PSI
    water = Water(333.15, 26 * PSI, 2.0 * flow / pressure**0.5)
    line = RinseLine(pressure, flow, flow / pressure**0.5)
    sound = rinse_flow(water, line, 1.0)
    line.jets_wear = 1.3
    worn = rinse_flow(water, line, 1.0)
    assert worn.flow > 1.03 * sound.flow
    assert worn.jets < 0.95 * sound.jets
    assert worn.flow == pytest.approx(1.3 * flow * (worn.jets / pressure) ** 0.5, rel=1e-6)


# DOE, Motor Systems Tip Sheet 7 (2012): current unbalance is six to ten times the voltage unbalance.
@pytest.mark.parametrize("low", [0.94, 0.96, 0.98])
def test_unbalanced_volts_unbalance_the_current(low: float) -> None:
    power = Power(460.0, 3, 60.0, line_share=[1.0, 1.0, low], source_ohms=STIFF, joint_ohms=[STIFF] * 3)
    motor = Motor(746.0, 1.8)
    volts = nema_unbalance(line_volts(power))
    amps = nema_unbalance(motor_flow(power, motor, 1.0, 460.0).amps)
    assert 5.5 <= amps / volts <= 11.0


# DOE, Motor Systems Tip Sheet 7: the rise of a winding's heat is about twice the square of the unbalance in per cent.
def test_unbalance_heats_the_winding() -> None:
    power = Power(460.0, 3, 60.0, source_ohms=STIFF, joint_ohms=[STIFF] * 3)
    motor = Motor(746.0, 1.8)
    balanced = motor_flow(power, motor, 1.0, 460.0).heating
    power.line_share[2] = 0.925
    unbalance = 100 * nema_unbalance(line_volts(power))
    found = motor_flow(power, motor, 1.0, 460.0).heating / balanced
    assert unbalance == pytest.approx(2.6, abs=0.4)
    assert 1.0 + 1.0 * unbalance**2 / 100 <= found <= 1.0 + 4.0 * unbalance**2 / 100


def test_a_lost_phase_drives_the_others_up() -> None:
    """At the same working load the two lines that are left carry the root of three times as much (worked by hand)."""
    power = Power(460.0, 3, 60.0, source_ohms=STIFF, joint_ohms=[STIFF] * 3)
    motor = Motor(746.0, 1.8)
    sound = motor_flow(power, motor, 0.8, 460.0)
    power.line_open.add(0)
    lost = motor_flow(power, motor, 0.8, 460.0)
    assert min(lost.amps) == 0.0
    assert max(lost.amps) / max(sound.amps) == pytest.approx(math.sqrt(3), rel=0.01)


# IEC 60947-4-1, trip classes at 7.2 times the setting from cold: 10 in 4 to 10 s, 20 in 6 to 20, 30 in 9 to 30.
@pytest.mark.parametrize(("trip_class", "low", "high"), [(10.0, 4.0, 10.0), (20.0, 6.0, 20.0), (30.0, 9.0, 30.0)])
def test_trip_time_by_class(trip_class: float, low: float, high: float) -> None:
    plant = _machine()
    motor = plant.motors["wash"]
    motor.trip_class = trip_class
    motor.locked = True
    motor.dial = max(motor_flow(plant.power, motor, 1.0, plant.plate["volts"]).amps) / motor.amps / 7.2
    service = Service(plant, start_state(plant, hot=True), 0.0)
    service.advance(60.0, step=0.1)
    assert service.state.trips
    assert low <= service.state.trips[0][0] <= high + 0.2


# IEC 60255-149, thermal replica: t = tau ln((k**2 - 0) / (k**2 - 1)), k over the pick-up current, solved by hand.
def test_trip_time_follows_the_thermal_replica() -> None:
    plant = _machine()
    motor = plant.motors["wash"]
    motor.locked = True
    drawn = max(motor_flow(plant.power, motor, 1.0, plant.plate["volts"]).amps) / motor.amps
    motor.dial = drawn / 3.0
    service = Service(plant, start_state(plant, hot=True), 0.0)
    service.advance(120.0, step=0.1)
    k = 3.0 / PICKUP
    wanted = trip_time_constant(motor.trip_class) * math.log(k**2 / (k**2 - 1.0))
    assert service.state.trips[0][0] == pytest.approx(wanted, rel=0.05)


def test_vent_balance() -> None:
    """200 cfm at the entrance and 400 at the exit of 600 in all: shares by the dampers' openings, worked by hand."""
    air = Air({"entrance": 0.0944, "exit": 0.1888})
    still = {"entrance": 0.0, "exit": 0.0}
    sound = air_flow(air, True, still)
    assert sound.exhaust["entrance"] == pytest.approx(0.0944, rel=0.01)
    assert sound.exhaust["exit"] == pytest.approx(0.1888, rel=0.01)
    air.damper["exit"] = 0.5
    half = air_flow(air, True, still)
    assert half.exhaust["exit"] == pytest.approx(half.exhaust["entrance"], rel=1e-6)
    assert half.total < sound.total
    assert half.exhaust["entrance"] > sound.exhaust["entrance"]
    # Fan laws: at 80 % of its speed a fan moves 80 % of the air through the same duct.
    air.damper["exit"], air.fan = 1.0, 0.8
    assert air_flow(air, True, still).total == pytest.approx(0.8 * sound.total, rel=1e-6)


def _machine(**figures: float) -> Plant:
    """A single tank with an electric booster, invented."""
    traits: dict[str, str | int | bool] = {
        "tanks": 1,
        "prewash": False,
        "sanitising": "hot water",
        "booster": "electric",
        "booster_place": "built in",
        "tank_heat": "electric",
        "phases": 3,
        "connection": "delta",
        "vents": "both ends",
        "table_turn": False,
        "conveyor": "pawl bar",
        "motor_protection": "overload relay",
    }
    plate = {"volts": 208.0, "booster_power": 18e3, "rinse_flow": 3.0 * GPM, "tank_power": 15e3, **figures}
    return Plant.built(Plate(traits, plate))
