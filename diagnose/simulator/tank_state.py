"""What the tanks do at rest, on filling and on heating up."""

from __future__ import annotations

from copy import deepcopy

from diagnose.simulator.bench import Bench
from diagnose.simulator.parts import Tank
from diagnose.simulator.rinsing import rest_flow
from diagnose.simulator.service import Service
from diagnose.simulator.spilling import lost_outside, nightly
from diagnose.simulator.waterway import rinse_flow

__all__ = [
    "fill_minutes",
    "fill_short",
    "heat_minutes",
    "hottest",
    "least_of",
    "loses",
    "lost_at_rest",
    "needed_minutes",
    "overflows",
    "runs_in",
]

_NEVER = 90.0  # minutes after which nobody waits
_BARED = 0.28  # of a tank's water that is left when its heater begins to show, under the low-water cut-out: judgement


def least_of(bench: Bench, tank: str) -> float:
    """The plate's least for a tank, [K]."""
    return bench.plant.plate["rinse_tank_temperature" if tank == "rinse" else "wash_temperature"]


def fill_minutes(bench: Bench) -> float:
    """From empty to the mark of the wash tank, [min]; 90 where it never gets there."""
    full = next((s.time for s in bench.filling if s.levels["wash"] >= 0.93), None)
    return _NEVER if full is None else max(full / 60.0, 0.1)


def heat_minutes(bench: Bench, tank: str, by_dial: bool = False) -> float:
    """From full to the plate's least of a tank, or until its dial says so, [min]; 90 where it never gets there."""
    part = bench.plant.tanks[tank]
    if by_dial and part.dial_stuck is not None:
        return _NEVER
    least = least_of(bench, tank) - 0.5 - (part.dial_offset if by_dial else 0.0)
    full: float | None = None
    for sample in bench.filling:  # which is worked out no further than it is looked at
        if sample.levels[tank] >= 0.9:
            full = sample.time if full is None else full
            if sample.moment.temperatures[tank] >= least:
                return max(1.0, (sample.time - full) / 60.0)
    return _NEVER


def hottest(bench: Bench, tank: str) -> float:
    """Of a tank's water over late service, or drawn low with its heat switched on, [K].

    The thermostat's bulb then hangs in the air and calls; only the low-water cut-out takes the heat away.
    """
    usual = bench.temperature(tank)
    part = bench.plant.tanks[tank]
    if part.low_cutout or part.drawn_hot <= 0.0 or part.heater.power <= 0.0:
        return usual
    kept = f"drawn low {tank}"
    if kept not in bench.kept:
        plant = deepcopy(bench.plant)
        low: Tank = plant.tanks[tank]
        low.fill_dead, low.fill_held, low.fill_leak, low.thermostat.stuck = True, False, 0.0, True
        state = deepcopy(bench.service.state)
        state.running = False
        for of in ("mass", "heat", "detergent", "soil"):
            state.flowing[f"{of} {tank}"] *= _BARED
        run = Service(plant, state, 0.0)
        run.advance(part.drawn_hot)
        bench.kept[kept] = run.state.temperature(tank)
    found = bench.kept[kept]
    assert isinstance(found, float)
    return max(usual, found)


def needed_minutes(bench: Bench, tank: str) -> float:
    """The same for a sound heater on sound water, [min]: heat over power."""
    part = bench.plant.tanks[tank]
    inlet = bench.plant.plate["booster_inlet"]
    rise = max(least_of(bench, tank) - inlet, 4.0)
    return max(2.0, 4.12e6 * part.volume * rise / (0.93 * part.heater.power) / 60.0)


def runs_in(bench: Bench) -> float:
    """Water that comes into the tanks while no rack is there and all is full, [m3/s]."""
    plant = bench.plant
    fills = 0.0
    for tank in plant.tanks.values():
        held = tank.fill_held or tank.says_low
        fills += tank.fill_leak + (tank.fill_flow * tank.fill_open if held and not tank.fill_dead else 0.0)
    robbed = rinse_flow(plant.water, plant.rinse, 0.0).robbed
    return fills + robbed + (0.0 if plant.rinse.tops_up else rest_flow(bench))


def lost_at_rest(bench: Bench) -> float:
    """Water that leaves the tanks at rest otherwise than over the lip, [m3/s]."""
    plant = bench.plant
    return sum(t.drain_leak for t in plant.tanks.values()) + lost_outside(bench)


def overflows(bench: Bench) -> float:
    """How loudly running over at rest is complained of."""
    share = max(0.0, runs_in(bench) - lost_at_rest(bench)) / bench.plant.rinse.rated_flow
    thrown = sum(t.thrown for t in bench.plant.tanks.values()) / bench.plant.rinse.rated_flow
    pumped = 1.0 + 2.0 * min(thrown, 1.0) if thrown > 0.03 else 0.0
    return max(pumped, 1.5 + 6.0 * min(share, 1.0) if share > 0.03 else 0.0)


def loses(bench: Bench) -> float:
    """How loudly a falling level is complained of."""
    plant = bench.plant
    sprays = sum(p.joint_leak for p in plant.pumps.values()) + sum(t.thrown for t in plant.tanks.values())
    share = (lost_at_rest(bench) + sprays) / plant.rinse.rated_flow
    night = nightly(bench)  # seen in the morning where it is not seen at work
    carried = 3.0 * max(
        bench.sign("rinse goes past the tank"), bench.sign("water carried out"), bench.sign("water drawn back")
    )
    held_off = 2.0 * bench.sign("cut-out says low")
    by_day = 2.0 + 6.0 * min(share, 1.0) if share > 0.03 else 0.0
    by_night = 1.5 + 1.5 * night if night > 0.15 else 0.0
    mist = 1.5 * bench.sign("inner curtain gone")
    return max(by_day, by_night, carried, held_off, mist)


def fill_short(bench: Bench) -> bool:
    """Whether the fill brings much less than a sound one while racks carry water out."""
    tank = bench.plant.tanks["wash"]
    return tank.fill_dead or tank.fills_to < 0.9 or tank.fill_open < 0.5


def cold_tank(bench: Bench) -> str:
    """Which tank of two is the colder against its least: `wash_tank` or `rinse_tank`."""
    over = {name: bench.temperature(name) - least_of(bench, name) for name in ("wash", "rinse")}
    return "wash_tank" if over["wash"] <= over["rinse"] else "rinse_tank"
