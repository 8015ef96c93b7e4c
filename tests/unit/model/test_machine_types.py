"""Every type of machine holds together: its invented figures are judged by the physics they must obey."""

from __future__ import annotations

import math

import pytest

from diagnose.model import Machine, load_book
from diagnose.physics.conveyor import dwell, racks_an_hour
from diagnose.physics.gas import gas_rise
from diagnose.physics.heat import heat_up_time, rise_of_flow
from diagnose.units import parse_quantity

TYPES = load_book().machines
MOTORS = ("wash", "rinse", "prewash", "drive", "fan")
NAMES = sorted(TYPES)


def machine(name: str) -> Machine:
    return Machine(name, TYPES[name])


def si(name: str, figure: str) -> float:
    found = machine(name).plate(figure)
    assert found is not None, f"{name} has no {figure}"
    return found.si


def has(name: str, figure: str) -> bool:
    return figure in TYPES[name].plate


def line_factor(name: str) -> float:
    return math.sqrt(3) if TYPES[name].traits["phases"] == 3 else 1.0


def fed_amps(name: str) -> float:
    """Amperes in a line with all that hangs on the machine's own breaker running; a remote booster has its own."""
    kinds = TYPES[name].traits
    heat = 0.0
    if kinds["tank_heat"] == "electric":
        heat += sum(si(name, f) for f in ("tank_power", "rinse_tank_power") if has(name, f))
    if kinds["booster"] == "electric" and kinds["booster_place"] == "built in":
        heat += si(name, "booster_power")
    motors = sum(si(name, f"{m}_motor_amps") for m in MOTORS if has(name, f"{m}_motor_amps"))
    return heat / (line_factor(name) * si(name, "volts")) + motors


def test_the_kinds_of_the_trade_are_there() -> None:
    """Every value of every trait stands on some machine, and what belongs together stands together."""
    kinds = [t.traits for t in TYPES.values()]
    wanted: list[dict[str, str | int | bool]] = [
        {"tanks": 1, "prewash": True},
        {"tanks": 2, "prewash": True},
        {"tanks": 2, "sanitising": "chemical"},
        {"tanks": 2, "booster": "gas", "tank_heat": "gas"},
        {"booster": "steam", "booster_place": "remote", "vents": "hood", "prewash": False},
        {"tanks": 1, "tank_heat": "steam coil"},
        {"tank_heat": "steam injector"},
        {"phases": 1, "sanitising": "chemical"},
        {"phases": 3, "motor_protection": "thermal protector"},
        {"conveyor": "chain"},
        {"conveyor": "flight", "booster": "electric", "prewash": True},
        {"conveyor": "flight", "booster": "steam"},
        {"conveyor": "flight", "booster": "gas"},
    ]
    for what in wanted:
        assert any(what.items() <= each.items() for each in kinds), what
    volts = {(t.plate["volts"], t.plate["frequency"], t.traits["phases"]) for t in TYPES.values()}
    for supply in (("208 V", 3), ("208 V", 1), ("240 V", 3), ("240 V", 1), ("480 V", 3)):
        assert (supply[0], "60 Hz", supply[1]) in volts
    assert {("400 V", "50 Hz", 3), ("230 V", "50 Hz", 1)} <= volts


@pytest.mark.parametrize("name", NAMES)
def test_traits_go_together(name: str) -> None:
    kinds = TYPES[name].traits
    assert (kinds["connection"] == "single") == (kinds["phases"] == 1)
    assert (kinds["booster"] == "none") == (kinds["booster_place"] == "none") == (kinds["sanitising"] == "chemical")
    assert has(name, "rinse_motor_amps") == (kinds["tanks"] == 2)
    assert has(name, "prewash_motor_amps") == bool(kinds["prewash"])
    assert has(name, "rinse_tank_volume") == (kinds["tanks"] == 2)
    assert has(name, "steam_pressure") == ("steam" in f"{kinds['booster']} {kinds['tank_heat']}")
    assert has(name, "rack_length") == has(name, "racks_per_hour") == (kinds["conveyor"] != "flight")
    assert has(name, "conveyor_stroke")


@pytest.mark.parametrize("name", NAMES)
def test_temperatures_are_those_of_the_code(name: str) -> None:
    """Food Code 4-501.110 and 4-501.112: 160 °F, two tanks 150 °F, chemical 120 °F; final rinse 180 °F at least."""
    kinds = TYPES[name].traits
    least = {"chemical": 120.0, "hot water": 160.0 if kinds["tanks"] == 1 else 150.0}[str(kinds["sanitising"])]
    slack = 0.5  # of a degree, for plates in whole degrees Celsius
    assert si(name, "wash_temperature") >= parse_quantity(f"{least} °F", "temperature").si - slack
    if kinds["sanitising"] == "hot water":
        assert si(name, "rinse_temperature") >= parse_quantity("180 °F", "temperature").si - slack
        assert si(name, "booster_inlet") < si(name, "rinse_temperature")


@pytest.mark.parametrize("name", NAMES)
def test_the_booster_can_do_what_the_plate_asks(name: str) -> None:
    kinds = TYPES[name].traits
    if kinds["booster"] not in ("electric", "gas"):
        assert not has(name, "booster_power")
        assert not has(name, "gas_input")
        return
    flow, wanted = si(name, "rinse_flow"), si(name, "rinse_temperature") - si(name, "booster_inlet")
    if kinds["booster"] == "electric":
        rise = rise_of_flow(si(name, "booster_power"), flow)
    else:
        rise = gas_rise(si(name, "gas_input"), 0.8, flow)
    assert 0.98 <= rise / wanted <= 1.4


@pytest.mark.parametrize("name", NAMES)
def test_a_tank_heats_up_in_the_time_that_is_usual(name: str) -> None:
    """From cold mains at 60 °F, half an hour or so; fed with hot water it is a matter of minutes."""
    kinds = TYPES[name].traits
    if kinds["tank_heat"] == "gas":
        power = 0.7 * si(name, "tank_gas_input")
    else:
        power = si(name, "tank_power")
    cold = parse_quantity("60 °F", "temperature").si
    minutes = heat_up_time(si(name, "wash_tank_volume"), si(name, "wash_temperature") - cold, power) / 60
    assert 10 <= minutes <= 45


@pytest.mark.parametrize("name", NAMES)
def test_motors_draw_what_their_power_takes(name: str) -> None:
    """Efficiency times power factor of small motors, full load: three to nine tenths."""
    for motor in MOTORS:
        if not has(name, f"{motor}_motor_power"):
            continue
        taken = line_factor(name) * si(name, "volts") * si(name, f"{motor}_motor_amps")
        assert 0.28 <= si(name, f"{motor}_motor_power") / taken <= 0.9, motor


@pytest.mark.parametrize("name", NAMES)
def test_the_breaker_carries_the_loads_with_a_quarter_in_hand(name: str) -> None:
    breaker, smallest = si(name, "breaker_amps"), 15.0
    assert breaker * 1.005 >= 1.25 * fed_amps(name)
    assert breaker <= max(smallest, 1.75 * fed_amps(name))


@pytest.mark.parametrize("name", NAMES)
def test_speed_racks_and_zones_agree(name: str) -> None:
    speed = si(name, "conveyor_speed")
    assert 20 <= dwell(si(name, "wash_zone"), speed) <= 50
    assert 8 <= dwell(si(name, "rinse_zone"), speed) <= 20
    if has(name, "rack_length"):
        counted = racks_an_hour(speed, si(name, "rack_length"), 0.0) / si(name, "racks_per_hour")
        assert 0.98 <= counted <= 1.02
    if has(name, "rinse_per_rack"):
        water = si(name, "rinse_flow") * dwell(si(name, "rack_length"), speed) / si(name, "rinse_per_rack")
        assert 0.9 <= water <= 1.1
