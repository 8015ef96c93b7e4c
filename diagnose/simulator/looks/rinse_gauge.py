"""What can be read at the rinse pressure gauge."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import gauge_flowing, rest_pressure
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_PSI = 6894.757


@look("rinse_gauge.flow_pressure")
def flow_pressure(bench: Bench) -> Answer:
    """The panel's gauge while it rinses; told from between racks it shows nothing."""
    shown = bench.senses.measure("needle read", gauge_flowing(bench))
    return Answer({"": max(0.0, shown)})


@look("rinse_gauge.static_pressure")
def static_pressure(bench: Bench) -> Answer:
    """What stands behind the regulator after five minutes without flow."""
    return Answer({"": max(0.0, bench.senses.measure("test gauge", rest_pressure(bench)))})


@look("rinse_gauge.against_test_gauge")
def against_test_gauge(bench: Bench) -> Answer:
    """Panel gauge beside a test gauge, both while it flows."""
    true = bench.senses.measure("test gauge", bench.rinsing.standing.rinse.jets)
    line = bench.plant.rinse
    panel = line.gauge_stuck if line.gauge_stuck is not None else true * line.gauge_factor + line.gauge_offset
    off = (max(panel, 0.0) - true) / _PSI
    return bench.seen("panel_low" if off < -2.0 else "panel_high" if off > 2.0 else "agree", "agree", sure=0.97)


@look("rinse_gauge.needle_moves")
def needle_moves(bench: Bench) -> Answer:
    """How the needle goes from before a rack to after it."""
    line = bench.plant.rinse
    if bench.sign("gauge ahead of the valve") > 0.0:
        return bench.seen("drops", "up_at_once", sure=0.95)
    if bench.sign("gauge needle creeps") > 0.15:
        return bench.seen("up_slowly", "up_at_once", sure=0.92)
    if abs(line.gauge_offset) > 3 * _PSI:
        return bench.seen("off_zero", "up_at_once", sure=0.9)
    return bench.seen("up_at_once", "up_slowly", sure=0.96)


@look("rinse_gauge.when_read")
def when_read(bench: Bench) -> Answer:
    """When the figure was read that was complained of."""
    between = max(bench.sign("pressure told from between racks"), bench.sign("gauge ahead of the valve"))
    return Answer(outcome=bench.senses.notice(between, "between_racks", "while_spraying", 0.93))
