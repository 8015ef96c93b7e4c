"""Steam from the main to the coils: heat by steam's temperature, condensate by its latent heat, and where it is lost.

Saturation temperatures and latent heats are those that a library of the IAPWS release gives.
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from iapws import IAPWS97

from diagnose.simulator import FAULTS, LOOKS, Simulated
from diagnose.simulator.plant import Plant
from diagnose.simulator.state import State, start_state
from diagnose.simulator.steam_flow import SteamFlow, steam_flow, steam_heaters
from tests.unit.simulator.plates import BOOK, TYPES, plate
from tests.unit.simulator.survey import outcome

STEAM = tuple(kind for kind in TYPES if plate(kind).has(booster="steam"))
TWO = "two_tank_steam_208"
MINE = ("supply_steam.", "booster_steam.", "tank_heater_steam.", "hot_spots.")
AIR = 101325.0


def flow(plant: Plant, on: Mapping[str, bool] | None = None, state: State | None = None) -> SteamFlow:
    state = state or start_state(plant, hot=True)
    return steam_flow(plant, state, on if on is not None else dict.fromkeys(steam_heaters(plant), True))


def library(gauge: float) -> tuple[float, float]:
    """Temperature, [K], and latent heat, [J/kg], of saturated steam."""
    wet, dry = IAPWS97(P=(gauge + AIR) / 1e6, x=0), IAPWS97(P=(gauge + AIR) / 1e6, x=1)
    return float(wet.T), 1e3 * float(dry.h - wet.h)


@pytest.mark.parametrize("kind", STEAM)
def test_heat_is_what_the_condensate_gave_up(kind: str) -> None:
    """Condensate times the latent heat at the plate's pressure; within what the pressure in the coil falls short."""
    plant = Plant.built(plate(kind))
    found = flow(plant)
    latent = library(plant.plate["steam_pressure"])[1]
    for name, heater in steam_heaters(plant).items():
        if heater.kind != "steam injector":
            assert found.heat[name] == pytest.approx(found.drained[name] * latent, rel=0.002)


def test_a_coil_gives_by_the_difference_from_steam_to_water() -> None:
    """The booster alone, its water at two temperatures: heats as the differences at the coil's own pressure."""
    plant = Plant.built(plate(TWO))
    given = []
    for water in (340.0, 355.0):
        state = start_state(plant, hot=True)
        state.flowing["booster"] = water
        found = flow(plant, {"booster": True}, state)
        given.append(found.heat["booster"] / (library(found.coil["booster"])[0] - water))
    assert given[0] == pytest.approx(given[1], rel=0.003)


def test_a_low_boiler_leaves_what_is_lost_on_the_way() -> None:
    """A main at half the plate's pressure: no valve can add to it, and the loss goes with the square of the flow."""
    plant = Plant.built(plate(TWO))
    plant.fuel.steam.main = 0.5
    rated = plant.plate["steam_pressure"]
    full, one = flow(plant), flow(plant, {"wash": True})
    assert full.main == one.main == pytest.approx(0.5 * rated)
    drawn = [sum(f.drained.values()) for f in (full, one)]
    lost = [f.main - f.machine for f in (full, one)]
    assert lost[0] / lost[1] == pytest.approx((drawn[0] / drawn[1]) ** 2, rel=0.02)


def test_wet_steam_keeps_its_pressure_and_gives_less() -> None:
    sound, wet = Plant.built(plate(TWO)), Plant.built(plate(TWO))
    wet.fuel.steam.undrained = 0.3
    assert flow(wet).machine == pytest.approx(flow(sound).machine, rel=0.03)
    for name in steam_heaters(sound):
        assert flow(wet).heat[name] == pytest.approx(0.7 * flow(sound).heat[name], rel=0.04)


def test_a_return_that_backs_up_is_cured_by_a_bucket_and_a_closed_trap_is_not() -> None:
    for fault, cured in (("return_backs_up", True), ("trap_closed", False)):
        sim = Simulated(plate(TWO), ((f"booster_steam.{fault}", 0.7),), seed=3)
        assert (sim.read("booster_steam.into_bucket").outcome == "heat_back") is cured


def test_steam_from_a_hole_stays_in_the_tank_as_water() -> None:
    """What a hole lets out by weight is what its heat makes at the plate's latent heat."""
    plant = Plant.built(plate(TWO))
    without = flow(plant).heat["wash"]
    plant.tanks["wash"].heater.steam.hole = 0.4
    found = flow(plant)
    latent = library(plant.plate["steam_pressure"])[1]
    assert found.stays["wash"] * latent == pytest.approx(found.heat["wash"] - without, rel=0.05)
    assert found.stays["rinse"] == 0.0


def test_without_steam_nothing_is_warmed() -> None:
    for kind in STEAM:
        plant = Plant.built(plate(kind))
        plant.fuel.steam.main = 0.0
        found = flow(plant)
        assert not any((*found.heat.values(), *found.coil.values(), found.machine))


@pytest.mark.parametrize("kind", [TWO, "two_tank_injector_480"])
def test_a_sound_machine_reads_good(kind: str) -> None:
    sim = Simulated(plate(kind), seed=4)
    assert not sim.complaints()
    for check in (each for each in LOOKS if each.startswith(MINE) and sim.can_read(each)):
        said = outcome(kind, check, sim.read(check))
        assert said == "no finding" or BOOK.checks[check].outcomes[said].good, check


def test_every_cause_and_check_of_steam_is_there() -> None:
    assert {c for c in BOOK.causes if c.startswith(MINE)} <= set(FAULTS)
    assert {n for n, c in BOOK.checks.items() if n.startswith(MINE) and not c.computed} <= set(LOOKS)
