"""What the kitchen says of the tanks."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import complaint
from diagnose.simulator.spilling import worst_wet
from diagnose.simulator.tank_state import (
    fill_minutes,
    heat_minutes,
    hottest,
    least_of,
    loses,
    needed_minutes,
    overflows,
)

__all__: list[str] = []

_SLACK = 0.8  # K that nobody speaks of


def _cold(bench: Bench, tank: str) -> float:
    shown = min(bench.dial(tank), bench.temperature(tank))
    return max(0.0, least_of(bench, tank) - _SLACK - shown)


@complaint("wash_cold")
def wash_cold(bench: Bench) -> float:
    """The wash tank's dial, or the water, is under its least at the rush."""
    return max(_cold(bench, "wash"), 3.0 * bench.sign("begun before it was hot"))


@complaint("rinse_tank_cold", tanks=(2,))
def rinse_tank_cold(bench: Bench) -> float:
    """The power-rinse tank likewise."""
    return _cold(bench, "rinse")


@complaint("tank_hot")
def tank_hot(bench: Bench) -> float:
    """A tank far over what it is set for, by its dial or by its steam."""
    found = [2.0 * bench.sign("hot water lies on top"), 2.0 * bench.sign("hot as meant, thought too hot")]
    for name, tank in bench.plant.tanks.items():
        if tank.heater.power > 0.0:
            found.append(max(bench.dial(name), hottest(bench, name)) - least_of(bench, name) - 14.5)
    return max(0.0, *found)


@complaint("heat_up_slow")
def heat_up_slow(bench: Bench) -> float:
    """By its dial it takes from full half as long again as its heat makes it, or it never gets there."""
    found = [1.5 * bench.sign("heats as its kilowatts allow")]
    for name, tank in bench.plant.tanks.items():
        if tank.heater.power > 0.0:
            needed = needed_minutes(bench, name)
            found.append(min(9.0, 3.0 * (heat_minutes(bench, name, by_dial=True) / needed - 1.6)))
    return max(0.0, *found)


@complaint("tank_fill_slow")
def tank_fill_slow(bench: Bench) -> float:
    """The wash tank takes half as long again to fill as its valve makes it."""
    tank = bench.plant.tanks["wash"]
    sound = tank.volume / max(tank.fill_flow, 1e-9) / 60.0
    return max(0.0, min(9.0, 4.0 * (fill_minutes(bench) / sound - 1.5)))


@complaint("tank_overfills")
def tank_overfills(bench: Bench) -> float:
    """Water runs away at the overflow without a rack, or stands over its lip."""
    return max(
        overflows(bench),
        4.0 * bench.sign("waste backs up"),
        4.0 * bench.sign("overflow choked"),
        1.5 * bench.sign("overflow runs as it must"),
    )


@complaint("tank_loses_water")
def tank_loses_water(bench: Bench) -> float:
    """The level falls by itself."""
    return loses(bench)


@complaint("floor_water")
def floor_water(bench: Bench) -> float:
    """Water on the floor."""
    wet = worst_wet(bench)
    return wet.loud if wet is not None else 0.0
