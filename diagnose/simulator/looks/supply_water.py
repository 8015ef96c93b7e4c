"""What can be read of the building's hot water."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_PSI = 6894.757


def _wanted(bench: Bench) -> float:
    plate = bench.plant.plate
    return plate["booster_inlet"] if plate.traits["booster"] != "none" else plate["rinse_temperature"]


def _short(bench: Bench) -> float:
    """How far the inlet lies under what the machine wants, [K]."""
    return _wanted(bench) - bench.plant.water.temperature


@look("supply_water.inlet_temperature")
def inlet_temperature(bench: Bench) -> Answer:
    """Water entering after two minutes of rinse: what stood in the pipe has gone by then, mostly."""
    cold = 6.0 * bench.sign("water cold at first")
    return bench.value("reference thermometer", bench.plant.water.temperature - cold)


@look("supply_water.inlet_run_in")
def inlet_run_in(bench: Bench) -> Answer:
    """Ten minutes of rinse from a rest."""
    if bench.plant.water.temperature < bench.plant.water.cold + 8.0:
        return bench.seen("cold", "lukewarm", sure=0.96)
    if bench.sign("water cold at first") > 0.15:
        return bench.seen("cold_then_hot", "hot_throughout", sure=0.96)
    if bench.sign("water sinks at rush") > 0.15:
        return bench.seen("hot_then_cold", "lukewarm", sure=0.94)
    return bench.seen("lukewarm" if _short(bench) > 3.5 else "hot_throughout", "hot_throughout", sure=0.96)


@look("supply_water.heater_outlet")
def heater_outlet(bench: Bench) -> Answer:
    """The building heater's outlet while the rinse flows."""
    water = bench.plant.water
    sound = _wanted(bench) + 2.0 + max(0.0, water.temperature - _wanted(bench) - 1.0)
    return bench.value("reference thermometer", sound - water.outlet_short)


@look("supply_water.heater_state")
def heater_state(bench: Bench) -> Answer:
    """The building's heater looked at."""
    if bench.sign("building heater set low") > 0.15:
        return bench.seen("rests_low", "rests_right", sure=0.94)
    if bench.sign("building heater never rests") > 0.15:
        return bench.seen("runs_without_rest", "locked_out", "rests_right", sure=0.92)
    return bench.seen("rests_right", "runs_without_rest", sure=0.95)


@look("supply_water.others_drawing")
def others_drawing(bench: Bench) -> Answer:
    """Whether another fixture draws, and shutting it helps."""
    return bench.noticed("another fixture draws", "comes_back", "nobody", sure=0.95)


@look("supply_water.circulation")
def circulation(bench: Bench) -> Answer:
    """The circulation's return pipe."""
    return bench.noticed("circulation return cold", "returns_cold", "returns_warm", sure=0.96)


@look("supply_water.stations_shut")
def stations_shut(bench: Bench) -> Answer:
    """Every hose station and mixing tap closed."""
    if bench.sign("mixing station open") > 0.15:
        return bench.seen("climbs", "open_no_change", sure=0.95)
    return bench.seen("none_open", "open_no_change", sure=0.9)


@look("supply_water.crossing_test")
def crossing_test(bench: Bench) -> Answer:
    """The station's hot stop closed, its nozzle shut."""
    return bench.noticed("cold crosses at a station", "cold_flows", "stops", sure=0.96)


@look("supply_water.across_tempering")
def across_tempering(bench: Bench) -> Answer:
    """A tempering valve in the machine's line."""
    return bench.noticed("tempering valve mixes cold", "mixes_cold", "no_valve", sure=0.96)


@look("supply_water.branch_traced")
def branch_traced(bench: Bench) -> Answer:
    """Where the machine's pipe comes from, and how far."""
    return bench.strongest(
        "short_from_hot", 0.96, piped_to_the_cold_main="from_cold", branch_long_and_uncirculated="long_from_hot"
    )


@look("supply_water.pressure_ahead")
def pressure_ahead(bench: Bench) -> Answer:
    """Pressure just ahead of the regulator while the rinse flows."""
    plant = bench.plant
    rinse = bench.rinsing.standing.rinse
    wide = 8.0 * plant.rinse.jets
    factors = (plant.water.factor, wide * plant.water.stop_open, wide * plant.water.strainer_open)
    lost = sum((rinse.flow / max(f, 1e-9)) ** 2 for f in factors)
    return Answer({"": max(0.0, bench.senses.measure("test gauge", plant.water.static - lost))})


@look("supply_water.stop_position")
def stop_position(bench: Bench) -> Answer:
    """All stop valves from the main to the machine."""
    closed = max(bench.sign("stop valve not open"), 0.0)
    return Answer(outcome=bench.senses.notice(closed, "not_open", "all_open", 0.96))


@look("supply_water.strainer_seen")
def strainer_seen(bench: Bench) -> Answer:
    """The line strainer's screen."""
    return bench.noticed("line strainer full", "blocked", "clean", sure=0.98)


@look("supply_water.neighbour_taps")
def neighbour_taps(bench: Bench) -> Answer:
    """The nearest hot tap opened fully."""
    static = bench.plant.water.static
    if static < 2 * _PSI:
        return bench.seen("dry", sure=1.0)
    return bench.seen("weak" if static < 24 * _PSI else "strong", "strong", sure=0.93)


@look("supply_water.branch_sized")
def branch_sized(bench: Bench) -> Answer:
    """Size, length and kinks of the branch."""
    return bench.noticed("branch narrow", "narrow", "wide", sure=0.94)


@look("supply_water.check_valve_sides")
def check_valve_sides(bench: Bench) -> Answer:
    """Pressures on both sides of the check valve."""
    return bench.noticed("check valve hisses", "apart", "alike", sure=0.96)
