"""Draughts and suction of the dish room, a robbed rinse, a slamming valve, low tanks, leaks and meters: by hand."""

from __future__ import annotations

import pytest

from diagnose.simulator import FAULTS, Simulated
from diagnose.simulator.airway import air_flow, draughts
from diagnose.simulator.plant import Plant
from diagnose.simulator.service import serve
from diagnose.simulator.sounding import surge
from diagnose.simulator.tank_state import hottest
from diagnose.simulator.using import at_rest, energy_over, per_rack, water_over
from diagnose.simulator.waterway import rinse_flow
from tests.unit.simulator.plates import plate
from tests.unit.simulator.test_balances import assert_closed

KIND = "two_tank_electric_208"
ALONE = "single_tank_electric_208"  # nothing runs over into its tank
GAL = 3.785411784e-3
SUCTION = -10.0  # Pa, room_pressure of knowledge/limits/air.toml


def built(*faults: str, severity: float = 0.6) -> Plant:
    plant = Plant.built(plate(KIND))
    for name in faults:
        FAULTS[name].apply(plant, severity)
    return plant


def flows(*faults: str) -> tuple[dict[str, float], float]:
    """Steam that escapes at each end, four fifths of the wanted exhaust rising, and the room's pressure."""
    air = built(*faults).air
    found = air_flow(air, fan_turns=True, steaming={end: 0.8 * flow for end, flow in air.wanted.items()})
    return found.escapes, found.room


def test_a_pressure_between_the_sides_blows_through_and_out_at_one_end() -> None:
    plant = built()
    plant.air.between = 15.0  # sqrt(2 * 15 Pa / 1.2 kg/m3) is 5.0 m/s, and 0.12 of it gets past strips
    assert draughts(plant.air) == pytest.approx({"entrance": 0.0, "exit": 0.60}, abs=1e-3)
    plant.air.between = -15.0
    assert draughts(plant.air) == pytest.approx({"entrance": 0.60, "exit": 0.0}, abs=1e-3)
    escapes, _ = flows("room_air.through_draught")
    assert escapes["exit"] > 0.0
    assert escapes["entrance"] == 0.0


def test_a_room_starves_only_where_both_ways_in_are_closed() -> None:
    for alone in ("room_air.makeup_off", "room_air.room_shut_tight"):
        escapes, room = flows(alone)
        assert max(escapes.values()) == 0.0
        assert room > SUCTION
    escapes, room = flows("room_air.makeup_off", "room_air.room_shut_tight")
    assert min(escapes.values()) > 0.0
    assert room < SUCTION


def test_a_fill_behind_the_booster_shares_the_flow_by_area() -> None:
    plant = built()
    alone = rinse_flow(plant.water, plant.rinse, 1.0)
    plant.rinse.robbed = 0.5
    both, shut = rinse_flow(plant.water, plant.rinse, 1.0), rinse_flow(plant.water, plant.rinse, 0.0)
    assert both.robbed / both.flow == pytest.approx(0.5)  # as the areas, at one pressure
    assert both.jets < alone.jets
    assert both.flow == pytest.approx(plant.rinse.jets * both.jets**0.5)
    assert (shut.flow, shut.jets) == (0.0, 0.0)
    assert shut.robbed > both.robbed  # the regulator droops less


def test_a_valve_that_slams_makes_most_of_the_whole_blow() -> None:
    """Joukowsky: 985 kg/m3 by 1300 m/s by 1.1 m/s are 1.41 MPa, 204 psi; a rinse at its rated flow."""
    sim = Simulated(plate(KIND), (("frame_pipes.valve_hammers", 1.0),), seed=2)
    rated = sim.bench.rinsing.standing.rinse.flow / sim.bench.plant.rinse.rated_flow
    assert surge(sim.bench) - sim.bench.plant.water.static == pytest.approx(1.4086e6 * rated, rel=1e-3)
    assert surge(sim.bench) > 150 * 6894.757 > surge(Simulated(plate(KIND), seed=2).bench)


def test_what_is_left_in_a_low_tank_climbs_by_power_over_its_mass() -> None:
    sim = Simulated(plate(ALONE), (("level_control.cut_out_bridged", 0.1),), seed=2)
    tank, start = sim.bench.plant.tanks["wash"], sim.bench.service.state.temperature("wash")
    climbed = hottest(sim.bench, "wash") - start
    walls = tank.loss * (start + climbed / 2.0 - sim.bench.plant.air.room)
    heat = sim.bench.heating.heat["wash"] - walls
    mass = 0.28 * sim.bench.service.state.flowing["mass wash"]
    assert climbed == pytest.approx(heat * tank.drawn_hot / (mass * 4186.0), rel=0.05)
    whole = Simulated(plate(ALONE), seed=2)
    assert hottest(whole.bench, "wash") == whole.bench.temperature("wash")


def test_a_level_falls_by_the_leak_over_the_tanks_surface() -> None:
    sim = Simulated(plate(KIND), (("tank_body.seam_cracked", 0.5),), seed=2)
    leak = sim.bench.plant.tanks["wash"].shell_leak
    read = sim.read("tank_body.level_drop").values
    assert read["fall"] * read["length"] * read["width"] == pytest.approx(leak * 600.0, rel=0.2)
    assert at_rest(sim.bench) == pytest.approx(leak)


def test_what_the_meters_count() -> None:
    sound = Simulated(plate(KIND), seed=2)
    assert water_over(sound.bench) == pytest.approx(1.0, abs=0.05)
    assert energy_over(sound.bench) == pytest.approx(1.0, abs=0.05)
    # 4.2 gpm for the 17.2 s that a rack of 20 in takes at 5.8 ft/min are 1.2 gal
    assert per_rack(sound.bench) == pytest.approx(1.2 * GAL, rel=0.06)
    night = Simulated(plate(KIND), (("water_use.on_overnight", 0.6),), seed=2)
    assert energy_over(night.bench) > 1.15 > water_over(night.bench)
    shared = Simulated(plate(KIND), (("water_use.meter_shared", 0.6),), seed=2)
    assert water_over(shared.bench) > 1.15 > energy_over(shared.bench)


@pytest.mark.parametrize(
    "name",
    ["tank_body.baffle_out", "tank_body.delivery_joint", "tank_body.carried_out", "rinse_valve.fill_takes_rinse"],
)
def test_water_that_goes_new_ways_is_booked(name: str) -> None:
    plant = built(name, severity=0.8)
    assert_closed(plant, serve(plant, minutes=5.0), hot=True)
