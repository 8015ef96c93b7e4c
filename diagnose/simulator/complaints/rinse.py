"""What the kitchen says of the final rinse."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import complaint
from diagnose.simulator.rinsing import gauge_at_rest, gauge_flowing, relief_state, rest_flow, run_over
from diagnose.simulator.spilling import worst_wet
from diagnose.simulator.tank_state import loses, overflows
from diagnose.simulator.using import energy_over, water_over

__all__: list[str] = []

_PSI = 6894.757
_HOT = 363.7  # K, the published maximum of 194 °F (FDA Food Code 4-501.112), rounded up to what a dial tells
_HEATED = ("hot water",)


@complaint("rinse_cold")
def rinse_cold(bench: Bench) -> float:
    """The panel shows less than the plate's least, or ware comes out cool and labels do not turn."""
    if not bench.rinse_trace:
        return 0.0
    least = bench.plant.plate["rinse_temperature"]
    cold = least - 0.6 - min(bench.rinse_panel, bench.manifold)
    slack = 6.0 * max(bench.sign("water cold at first"), bench.sign("water sinks at rush"))
    at_rest = 2.0 * bench.sign("dial read between racks")
    return max(0.0, cold, slack if slack > 1.5 else 0.0, at_rest)


@complaint("rinse_hot", sanitising=_HEATED)
def rinse_hot(bench: Bench) -> float:
    """Steam and a panel above the published most."""
    soaks = 2.5 * bench.sign("booster soaks hot in pauses")
    return max(0.0, soaks, bench.rinse_panel - _HOT, bench.manifold - _HOT) if bench.rinse_trace else 0.0


@complaint("rinse_pressure_low")
def rinse_pressure_low(bench: Bench) -> float:
    """The gauge stands under the plate's least while it rinses, or the spray is limp."""
    if bench.rinsing.standing.rinse.flow < 0.15 * bench.plant.rinse.rated_flow:
        return 0.0
    least = bench.plant.plate.get("rinse_pressure_least", 15 * _PSI)
    short = (least - gauge_flowing(bench)) / _PSI - 0.3
    return max(0.0, short)


@complaint("rinse_pressure_high")
def rinse_pressure_high(bench: Bench) -> float:
    """The gauge stands over the plate's most, or far over it between racks."""
    most = bench.plant.plate.get("rinse_pressure_most", 25 * _PSI)
    over = (gauge_flowing(bench) - most) / _PSI - 0.3
    at_rest = (gauge_at_rest(bench) - most) / _PSI - 8.0
    return max(0.0, over, 0.3 * at_rest)


@complaint("rinse_none")
def rinse_none(bench: Bench) -> float:
    """Nothing, or a trickle, comes though a rack stands in the rinse."""
    flow = bench.rinsing.standing.rinse.flow / bench.plant.rinse.rated_flow
    moving = bench.rinsing.moving or bench.sign("rinse held back") > 0.0
    return 9.0 if flow < 0.15 and moving else 0.0


@complaint("rinse_runs_on")
def rinse_runs_on(bench: Bench) -> float:
    """Water comes without a rack, or long after it."""
    flow = rest_flow(bench) / bench.plant.rinse.rated_flow
    return max(
        8.0 * min(flow, 1.0) + 1.0 if flow > 0.02 else 0.0,
        3.0 if run_over(bench) > 4.0 else 0.0,
        2.0 * bench.sign("arms drip a while"),
    )


@complaint("relief_valve_blows", booster=("electric", "steam", "gas"))
def relief_valve_blows(bench: Bench) -> float:
    """Water or steam comes from the relief pipe."""
    return {"dry": 0.0}.get(relief_state(bench), 5.0)


@complaint("gauge_disbelieved")
def gauge_disbelieved(bench: Bench) -> float:
    """What the panel shows and what is felt, seen or measured by others do not agree."""
    said = 3.0 * max(bench.sign("another thermometer contradicts"), bench.sign("gauge read at rest"))
    off = abs(bench.rinse_panel - bench.manifold) / 1.2 - 2.5 if bench.rinse_trace else 0.0
    gauge = abs(gauge_flowing(bench) - bench.rinsing.standing.rinse.jets) / (2.0 * _PSI) - 2.0
    dials = [abs(bench.dial(n) - bench.temperature(n)) / 1.2 - 2.5 for n in bench.plant.tanks]
    return max(0.0, said, off, gauge, *dials)


@complaint("uses_too_much")
def uses_too_much(bench: Bench) -> float:
    """More on the day's meters than plate and good ways of work make, or so it is held to be.

    Who sees water run, or miss it, says that; the bill comes weeks later and is spoken of where it says more.
    """
    over = max(water_over(bench), energy_over(bench)) - 1.15
    billed = min(3.0, 0.7 + 1.3 * over) if over > 0.0 else 0.0
    wet = worst_wet(bench)
    seen = max(overflows(bench), loses(bench), wet.loud if wet is not None else 0.0)
    return max(1.5 * bench.plant.habits.yardstick, billed if billed > seen else 0.0)
