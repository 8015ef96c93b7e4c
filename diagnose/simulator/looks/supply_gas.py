"""What can be read of the gas line up to the burners' valves."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.burning import along, inlet_pressure, rest_pressure
from diagnose.simulator.flames import lit, main_burner, roars
from diagnose.simulator.gas_parts import INCH
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_GAS = ("gas",)
_LEAST = 5.0 * INCH  # Pa, common practice for natural gas ahead of the valve
_SINKS = 1.5 * INCH  # Pa that a cook notices at the burners: judgement
_SMALL_BRANCH = 3.7 * INCH  # Pa ahead of other appliances below which their flames look small: judgement


def _alone(bench: Bench) -> float:
    """Inlet with the main burner alone, [Pa]."""
    return inlet_pressure(bench.plant, [n for n in lit(bench) if n == main_burner(bench)], others=False)


def _read(bench: Bench, pressure: float) -> Answer:
    return Answer({"": max(0.0, bench.senses.measure("manometer", pressure))})


@look("supply_gas.inlet_firing", tank_heat=_GAS)
def inlet_firing(bench: Bench) -> Answer:
    """At the valve's inlet while all burns as at the rush."""
    return _read(bench, inlet_pressure(bench.plant, lit(bench)))


@look("supply_gas.inlet_at_rest", tank_heat=_GAS)
def inlet_at_rest(bench: Bench) -> Answer:
    """The same with nothing firing."""
    return _read(bench, rest_pressure(bench.plant.fuel.gas))


@look("supply_gas.gas_cock_position", tank_heat=_GAS)
def gas_cock_position(bench: Bench) -> Answer:
    """How handle and connector lie."""
    if bench.plant.fuel.gas.shut:
        return bench.noticed("gas valve across its pipe", "across", "in_line", sure=0.9)
    askew = bench.plant.fuel.gas.cock_open < 0.6
    return bench.seen("askew" if askew else "in_line", "in_line", sure=0.95)


@look("supply_gas.others_firing", tank_heat=_GAS)
def others_firing(bench: Bench) -> Answer:
    """The main burner alone, then all together."""
    alone, together = _alone(bench), inlet_pressure(bench.plant, lit(bench))
    if alone < _LEAST:
        return bench.seen("low_alone", "falls", sure=0.97)
    falls = together < _LEAST or alone - together > 1.5 * INCH
    return bench.seen("falls" if falls else "holds", "holds", sure=0.97)


@look("supply_gas.others_burn", tank_heat=_GAS)
def others_burn(bench: Bench) -> Answer:
    """How range and fryer burn."""
    line = bench.plant.fuel.gas
    if line.off and line.dead_branch:
        return bench.seen("dead", "well", sure=0.95)
    if line.off:
        return bench.seen("well", "dead", sure=0.97)
    if line.sinks * (1.0 + line.others) > _SINKS:
        return bench.seen("sink", "small", sure=0.9)
    if roars(bench) > 0.3:
        return bench.seen("roar", "well", sure=0.85)
    found = along(bench.plant, lit(bench))
    small = found.branch + found.swing / 2 < _SMALL_BRANCH
    return bench.seen("small", "well", sure=0.9) if small else bench.seen("well", "small", sure=0.99)


@look("supply_gas.interlock_look", tank_heat=_GAS)
def interlock_look(bench: Bench) -> Answer:
    """The ventilation's panel."""
    return bench.seen("holds_off" if bench.plant.fuel.gas.held else "proved", sure=1.0)


@look("supply_gas.lighting_tries", tank_heat=_GAS)
def lighting_tries(bench: Bench) -> Answer:
    """Whether it lights better with each try."""
    aired = bench.plant.fuel.gas.aired > 0.0
    return bench.seen("better" if aired else "usual", "usual", sure=0.95)


@look("supply_gas.across_branch", tank_heat=_GAS)
def across_branch(bench: Bench) -> Answer:
    """Ahead of strainer and cock, and behind them, firing."""
    found = along(bench.plant, lit(bench))
    if max(found.strainer, found.cock) > 0.5 * INCH:
        lost = "lost_in_strainer" if found.strainer > found.cock else "lost_in_cock"
        return bench.seen(lost, "lost_in_strainer", "lost_in_cock", sure=0.96)
    return bench.seen("low_before" if found.branch < _LEAST else "alike", sure=0.98)


@look("supply_gas.pressure_swings", tank_heat=_GAS)
def pressure_swings(bench: Bench) -> Answer:
    """Half an hour of firing."""
    if along(bench.plant, lit(bench)).swing > 0.7 * INCH:
        return bench.seen("swings", "stands", sure=0.95)
    line = bench.plant.fuel.gas
    sinks = not line.off and line.sinks * (1.0 + line.others) > 0.5 * INCH
    return bench.seen("sinks" if sinks else "stands", "stands", sure=0.96)
