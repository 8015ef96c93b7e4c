"""What can be read at the final-rinse valve."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import blade_pulled, rest_flow
from diagnose.simulator.senses import Answer

__all__ = ["has_coil"]


def _share(bench: Bench, rack: bool) -> float:
    """Flow over the rated one, with a rack or at rest."""
    flow = bench.rinsing.standing.rinse.flow if rack else rest_flow(bench)
    return flow / bench.plant.rinse.rated_flow


def _overflow_runs(bench: Bench) -> bool:
    tanks = bench.plant.tanks.values()
    runs = any(t.fill_leak > 0.01 * bench.plant.rinse.rated_flow or t.fill_held for t in tanks)
    return runs or bench.plant.rinse.robbed > 0.01


def has_coil(bench: Bench) -> bool:
    """Whether a coil opens the rinse valve: a lever valve has none."""
    return not bench.plant.rinse.lever


@look("rinse_valve.water_at_rest")
def water_at_rest(bench: Bench) -> Answer:
    """What comes from the arms without a rack."""
    share = _share(bench, rack=False)
    if share > 0.5:
        return bench.seen("full_spray", sure=1.0)
    if share > 0.01:
        return bench.seen("trickle", "dry", sure=0.95)
    if _overflow_runs(bench):
        return bench.seen("overflow_only", "dry", sure=0.92)
    return bench.seen("dry", "trickle", sure=0.9 if bench.sign("arms drip a while") > 0.0 else 0.97)


@look("rinse_valve.command_removed")
def command_removed(bench: Bench) -> Answer:
    """The command taken away while water runs at rest."""
    if _share(bench, rack=False) <= 0.01:
        return bench.seen("nothing_ran", sure=1.0)
    by_command = bench.plant.rinse.actuator == "held" or bench.plant.rinse.tops_up
    return bench.seen("stops" if by_command else "runs_on", "runs_on", sure=0.96)


@look("rinse_valve.loss_across")
def loss_across(bench: Bench) -> Answer:
    """Pressure ahead of the valve less that behind it."""
    line = bench.plant.rinse
    rinse = bench.rinsing.standing.rinse
    passage = 8.0 * line.jets * max(line.valve_opens, 1e-4)
    lost = (rinse.flow / passage) ** 2 if rinse.flow > 0.0 else rinse.before if line.valve_opens <= 0.0 else 0.0
    return Answer({"": max(0.0, bench.senses.measure("test gauge", lost))})


@look("rinse_valve.valve_inside")
def valve_inside(bench: Bench) -> Answer:
    """Seat, diaphragm and pilot holes."""
    return bench.strongest(
        "clean", 0.95, grit_at_rinse_valve_seat="grit_or_split", rinse_valve_limed_inside="stiff_or_pilot_limed"
    )


@look("rinse_valve.fill_stopped")
def fill_stopped(bench: Bench) -> Answer:
    """The stop of the tank fill closed."""
    if _share(bench, rack=False) > 0.01:
        return bench.seen("runs_on", sure=1.0)
    return bench.seen("comes_to_rest" if _overflow_runs(bench) else "still_anyway", "runs_on", sure=0.97)


@look("rinse_valve.rinse_comes")
def rinse_comes(bench: Bench) -> Answer:
    """What comes from the last arms with a rack under them."""
    if bench.sign("rinse arm off") > 0.0 and _share(bench, rack=True) > 0.3:
        return bench.seen("pours", sure=1.0)
    share = _share(bench, rack=True)
    if share < 0.03:
        return bench.seen("nothing", sure=1.0)
    weak = bench.rinsing.standing.rinse.jets < 0.45 * bench.plant.plate["rinse_pressure"] or share < 0.4
    return bench.seen("weak" if weak else "full", "full", "weak", sure=0.96)


@look("rinse_valve.pull_tried", has_coil)
def pull_tried(bench: Bench) -> Answer:
    """A blade at the coil, and whether water comes."""
    if not blade_pulled(bench):
        return bench.seen("no_pull", "pulls_dry", sure=0.96)
    return bench.seen("pulls_and_flows" if _share(bench, rack=True) > 0.03 else "pulls_dry", sure=1.0)


@look("rinse_valve.coil_ohms", has_coil)
def coil_ohms(bench: Bench) -> Answer:
    """Ohms of its coil."""
    return bench.seen("in_range" if bench.plant.rinse.coil_sound else "open_or_short", sure=0.99)


@look("rinse_valve.opened_by_hand")
def opened_by_hand(bench: Bench) -> Answer:
    """Opened at its lever or override."""
    plant = bench.plant
    stuck = bench.sign("rinse valve limed inside") > 0.0 and plant.rinse.valve_opens < 0.2
    narrow = min(plant.water.stop_open, plant.water.strainer_open, plant.rinse.regulator_open)
    if plant.water.static < 3 * 6894.757 or narrow < 0.02 or (stuck and plant.rinse.valve_opens <= 0.0):
        return bench.seen("no_water", "little", sure=0.93)
    return bench.seen("little" if stuck or narrow < 0.1 else "full_water", "full_water", sure=0.95)


@look("rinse_valve.linkage_look")
def linkage_look(bench: Bench) -> Answer:
    """The lever that follows the rinse arm."""
    return bench.noticed("rinse linkage off", "left_behind", "follows", sure=0.97)


@look("rinse_valve.body_look")
def body_look(bench: Bench) -> Answer:
    """Its arrow and its hand override."""
    return bench.strongest("right", 0.97, rinse_valve_arrow_against_the_flow="against", rinse_override_open="override")


@look("rinse_valve.drip_time")
def drip_time(bench: Bench) -> Answer:
    """How long it drips after the spray."""
    if _share(bench, rack=False) > 0.008:
        return bench.seen("goes_on", "dry_later", sure=0.96)
    if bench.sign("arms drip a while") > 0.15:
        return bench.seen("dry_later", "dry_soon", sure=0.94)
    return bench.seen("dry_soon", "dry_later", sure=0.9)
