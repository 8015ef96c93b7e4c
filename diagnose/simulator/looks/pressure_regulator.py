"""What can be read at the rinse's pressure regulator."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import regulator_set, rest_pressure
from diagnose.simulator.senses import Answer
from diagnose.simulator.waterway import rinse_flow

__all__: list[str] = []

_PSI = 6894.757


@look("pressure_regulator.screw_response")
def screw_response(bench: Bench) -> Answer:
    """The screw turned a turn each way with the rinse flowing: a turn is worth about a quarter of the pressure."""
    plant = bench.plant
    line = plant.rinse
    now = rinse_flow(plant.water, line, 1.0).jets
    wanted = plant.plate["rinse_pressure"]
    if bench.rinsing.standing.rinse.flow <= 0.0:
        return bench.seen("will_not_rise", sure=1.0)  # nothing flows, whatever the screw does
    if line.regulator_wide or bench.sign("regulator range too high") > 0.0:
        return bench.seen("will_not_fall", "high_and_follows", sure=0.95)
    kept = line.set_pressure
    line.set_pressure = 1.3 * kept
    up = rinse_flow(plant.water, line, 1.0).jets
    line.set_pressure = kept
    if now < 0.85 * wanted:
        follows = up > 1.1 * now + 0.5 * _PSI
        return bench.seen("low_and_follows" if follows else "will_not_rise", "low_and_follows", sure=0.94)
    if now > 1.2 * wanted:
        return bench.seen("high_and_follows", "will_not_fall", sure=0.96)
    if up < 1.05 * now:
        return bench.seen("will_not_rise", "right_and_follows", sure=0.94)
    return bench.seen("right_and_follows", "low_and_follows", sure=0.96)


@look("pressure_regulator.droop_line")
def droop_line(bench: Bench) -> Answer:
    """Right behind the regulator: at rest, then flowing."""
    plant, line = bench.plant, bench.plant.rinse
    flow = rinse_flow(plant.water, line, 1.0)
    through = flow.flow + flow.robbed
    after_valve = (through / (8.0 * line.jets * max(line.valve_opens, 1e-6))) ** 2
    offered = flow.before + after_valve  # the rinse valve sits behind the regulator: what it loses stands here
    held = offered if line.regulator_wide else regulator_set(bench) - line.droop * through / line.rated_flow
    flowing = min(offered, held)
    at_rest, while_flowing = (
        max(0.0, bench.senses.measure("test gauge", p)) for p in (rest_pressure(bench), max(flowing, 0.0))
    )
    return Answer({"at rest": at_rest, "flowing": while_flowing})


@look("pressure_regulator.bypass_seen")
def bypass_seen(bench: Bench) -> Answer:
    """A pipe round it, or none at all."""
    return bench.strongest("none_or_shut", 0.97, bypass_stands_open="open_or_passing", no_regulator="no_regulator")


@look("pressure_regulator.screen_seen")
def screen_seen(bench: Bench) -> Answer:
    """Its inlet screen drawn."""
    return bench.noticed("regulator screen full", "blocked", "clean", sure=0.98)


@look("pressure_regulator.arrow_seen")
def arrow_seen(bench: Bench) -> Answer:
    """The arrow on its body."""
    return bench.noticed("regulator arrow against the flow", "against", "with_the_flow", sure=0.97)


@look("pressure_regulator.range_on_tag")
def range_on_tag(bench: Bench) -> Answer:
    """The range stamped on it."""
    return bench.noticed("regulator range too high", "range_above", "range_fits", sure=0.95)


@look("pressure_regulator.outlet_plug")
def outlet_plug(bench: Bench) -> Answer:
    """Water at a plug ahead of it, and behind it."""
    water, line = bench.plant.water, bench.plant.rinse
    ahead = min(water.stop_open, water.strainer_open)
    if water.static < 3 * _PSI or ahead < 0.03:
        return bench.seen("neither", "both", sure=0.97)
    if line.regulator_open < 0.02:
        return bench.seen("ahead_only", "both", sure=0.96)
    return bench.seen("both", "neither" if ahead < 0.1 else "both", sure=0.93)
