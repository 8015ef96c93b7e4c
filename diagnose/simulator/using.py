"""What the house's meters count in a day: water and heat, over what the plate and good ways of work make."""

from __future__ import annotations

from diagnose.simulator.airing import air_now
from diagnose.simulator.bench import Bench
from diagnose.simulator.burning import burners, taken
from diagnose.simulator.habits import Habits
from diagnose.simulator.rinsing import rest_flow
from diagnose.simulator.state import CP, DENSITY
from diagnose.simulator.tank_state import lost_at_rest, runs_in

__all__ = ["at_rest", "energy_over", "per_rack", "water_over"]

# A day of the usual house, judgement throughout: so many hours' worth of the plate's racks, so long ready without a
# rack, and so long with the water on.
_HOURS_OF_RACKS, _READY, _WATER_ON = 2.0 * 3600.0, 5.0 * 3600.0, 16.0 * 3600.0
_NIGHT = 8.0 * 3600.0
_TO_AIR = 4000.0  # W that the wanted exhaust takes out of tanks and room
_CLOSE, _SPREAD = 1.35, 2.0  # time from rack to rack over the shortest: sent one behind the other, and over a day
_IDLING = 0.25  # of the ready hours that pumps run on where nothing stops them


def per_rack(bench: Bench, gaps: float = _CLOSE) -> float:
    """Water on the machine's branch for one rack of many, tanks full and their fill shut, [m3].

    `gaps` is the time from rack to rack over the shortest there can be: close on each other is not edge to edge.
    """
    plant = bench.plant
    belt, line = plant.conveyor, plant.rinse
    between = gaps / plant.plate["racks_per_hour"]
    length = plant.plate["rack_length"] * line.actuator_share
    held = min(length / max(belt.speed * belt.pace, 1e-3) + line.run_over, between)
    if line.actuator == "held":
        held = between
    idle = 0.0 if line.tops_up else rest_flow(bench)
    rinse = bench.rinsing.standing.rinse.flow
    return rinse * held + idle * (between - held) + plant.water.drips * between


def at_rest(bench: Bench) -> float:
    """What the machine's branch counts with full tanks and no rack, and others on the same meter, [m3/s]."""
    plant = bench.plant
    return runs_in(bench) + lost_at_rest(bench) + plant.water.drips + plant.habits.others


def water_over(bench: Bench) -> float:
    """A day's water over what a sound machine and good ways of work take."""
    plant = bench.plant
    a_rack = _sound_rack(bench)
    usual = _day(bench, a_rack, Habits())
    return (_day(bench, per_rack(bench, _SPREAD), plant.habits) + at_rest(bench) * _WATER_ON) / usual


def energy_over(bench: Bench) -> float:
    """A day's heat and power, that in the hot water too, over the same."""
    plant = bench.plant
    lift = DENSITY * CP * (plant.plate["rinse_temperature"] - plant.water.cold)
    usual = lift * _day(bench, _sound_rack(bench), Habits()) + _TO_AIR * _READY
    seeps = runs_in(bench) + lost_at_rest(bench)
    hot = _day(bench, per_rack(bench, _SPREAD), plant.habits) + seeps * _WATER_ON
    air = air_now(bench).total / sum(plant.air.wanted.values())
    runs_on = sum(plant.motors[name].power for name in plant.pumps) if plant.conveyor.table.jumped else 0.0
    now = lift * hot + _TO_AIR * max(air, 0.5) * _READY + plant.habits.overnight * _NIGHT + runs_on * _IDLING * _READY
    return now / usual / _burnt(bench)


def _burnt(bench: Bench) -> float:
    """Share of a clean burner's heat that the dirtiest still brings into its water; 1 without gas."""
    room = bench.plant.air.room
    found = [taken(b, 1.0, room + 50.0, room)[0] / b.efficiency for b in burners(bench.plant).values()]
    return max(0.3, min(1.0, *found)) if found else 1.0


def _sound_rack(bench: Bench) -> float:
    plant = bench.plant
    held = min(plant.plate["rack_length"] / plant.conveyor.speed, 1.0 / plant.plate["racks_per_hour"])
    return plant.rinse.rated_flow * held


def _day(bench: Bench, a_rack: float, habits: Habits) -> float:
    """Water of racks and of changes in a day, [m3]."""
    plant = bench.plant
    racks = plant.plate["racks_per_hour"] * _HOURS_OF_RACKS
    tanks = sum(tank.volume for tank in plant.tanks.values())
    return racks * habits.racks * a_rack + habits.changes * tanks
