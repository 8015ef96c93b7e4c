"""What meters, bills and questions tell of the water and heat that are used."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.using import at_rest, energy_over, per_rack, water_over

__all__: list[str] = []

_RACKS, _FLIGHT = ("pawl bar", "chain"), ("flight",)
_MORE = 1.15  # of the usual that a house sees on its bills: judgement


@look("water_use.what_rose")
def what_rose(bench: Bench) -> Answer:
    """Two read bills beside the covers of the same weeks."""
    water, energy = water_over(bench) > _MORE, energy_over(bench) > _MORE
    told = "both" if water and energy else "water" if water else "energy" if energy else "neither"
    return bench.seen(told, "both", "water", sure=0.95)


@look("water_use.per_rack", conveyor=_RACKS)
def rack_water(bench: Bench) -> Answer:
    """The branch's meter over twenty racks, by twenty."""
    return bench.value("water meter", per_rack(bench))


@look("water_use.per_hour", conveyor=_FLIGHT)
def hour_water(bench: Bench) -> Answer:
    """The branch's meter over ten minutes, the belt covered: the rinse hardly stops."""
    return bench.value("water meter", bench.rinsing.standing.rinse.flow + bench.plant.water.drips)


@look("water_use.at_rest")
def rest_water(bench: Bench) -> Answer:
    """The meter over a quarter of an hour with full tanks and no rack."""
    return Answer({"": max(0.0, bench.senses.measure("meter's small hand", at_rest(bench)))})


@look("water_use.meter_alone")
def meter_alone(bench: Bench) -> Answer:
    """The meter with the machine's main stop shut."""
    return bench.seen("turns_on" if bench.plant.habits.others > 1e-6 else "stands", "stands", sure=0.97)


@look("water_use.idle_watch", conveyor=_RACKS)
def idle_watch(bench: Bench) -> Answer:
    """Five minutes without a rack."""
    belt = bench.plant.conveyor
    return bench.seen("runs_on" if belt.table.jumped else "stops", "stops", sure=0.97)


@look("water_use.rack_filling", conveyor=_RACKS)
def rack_filling(bench: Bench) -> Answer:
    """Twenty racks counted at the loading end."""
    return bench.seen("half" if bench.plant.habits.racks > 1.25 else "full", "full", sure=0.95)


@look("water_use.changes_asked")
def changes_asked(bench: Bench) -> Answer:
    """How often the water is changed; where the rinse goes to waste it turns thick, and has to be."""
    thick = bench.sign("rinse goes past the tank") > 0.5
    often = bench.plant.habits.changes > 4.0 or thick
    return bench.seen("often" if often else "each_meal", "each_meal", sure=0.8 if thick else 0.96)


@look("water_use.night_asked")
def night_asked(bench: Bench) -> Answer:
    """What is on after closing."""
    by_itself = any(tank.heater.welded or tank.thermostat.stuck is True for tank in bench.plant.tanks.values())
    if bench.plant.habits.overnight > 500.0:
        return bench.seen("left_on", "all_off", sure=0.97)
    return bench.seen("left_on" if by_itself else "all_off", "all_off", sure=0.7 if by_itself else 0.98)


@look("water_use.compared_with")
def compared_with(bench: Bench) -> Answer:
    """Where the figure comes from that they expect."""
    other = bench.plant.habits.yardstick > 0.15
    return bench.seen("other_yardstick" if other else "own_past", "own_past", sure=0.95)
