"""What can be read of the steam on its way to the machine."""

from __future__ import annotations

from diagnose.physics.steam import steam_temperature_at_gauge
from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.steam_flow import steam_heaters
from diagnose.simulator.steam_parts import MAIN
from diagnose.simulator.steam_state import at_rest, calling, gauge, gauge_at_rest, quiet, share

__all__: list[str] = []

_STEAM = ("steam",)
_SHORT, _HIGH = 0.83, 1.27  # of the plate's pressure: what one takes for short and for too much
_WET = 0.1  # water by weight that is noticed
_MAIN_LOW = 0.75 * MAIN  # what the plant says is too little for its main: judgement
_PSI = 6894.757


def _shown(bench: Bench) -> float:
    return share(bench, gauge(bench))


@look("supply_steam.pressure_at_machine", booster=_STEAM)
def pressure_at_machine(bench: Bench) -> Answer:
    """The machine's gauge while it heats."""
    return Answer({"": max(0.0, bench.senses.measure("panel gauge", gauge(bench)))})


@look("supply_steam.pressure_at_rest", booster=_STEAM)
def pressure_at_rest(bench: Bench) -> Answer:
    """The machine's gauge after some minutes in which nothing called."""
    return Answer({"": max(0.0, bench.senses.measure("panel gauge", gauge_at_rest(bench)))})


@look("supply_steam.across_prv", booster=_STEAM)
def across_prv(bench: Bench) -> Answer:
    """Gauges ahead of and behind the reducing valve, against plant and plate."""
    flow = calling(bench)
    if share(bench, flow.main) < _MAIN_LOW:
        return bench.seen("main_is_low", sure=0.97)
    if _shown(bench) > _HIGH:
        return bench.seen("too_much_behind", sure=0.97)
    if _shown(bench) > _SHORT:
        return bench.seen("both_right")
    lost = share(bench, flow.main - flow.inlet) / max(share(bench, flow.main), 1e-6)
    return bench.seen("lost_before_valve" if lost > 0.3 else "lost_in_valve", "lost_in_valve", sure=0.96)


@look("supply_steam.drip_trap", booster=_STEAM)
def drip_trap(bench: Bench) -> Answer:
    """The drip leg, its trap and what runs from it."""
    line = bench.plant.fuel.steam
    if line.undrained > _WET:
        return bench.seen("leg_full", "works", sure=0.96)
    if line.carried > _WET:
        return bench.seen("keeps_coming", "leg_full", sure=0.93)
    return bench.seen("works", "blows_through", sure=0.98)


@look("supply_steam.strainer_blown", booster=_STEAM)
def strainer_blown(bench: Bench) -> Answer:
    """The strainer ahead of the reducing valve, blown down."""
    blocked = bench.plant.fuel.steam.strainer_open < 0.5
    return bench.seen("mud" if blocked else "clean", "clean", sure=0.96)


@look("supply_steam.steam_stop_position", booster=_STEAM)
def steam_stop_position(bench: Bench) -> Answer:
    """How the machine's steam stop stands, and whether the pipe ahead of it is hot."""
    line = bench.plant.fuel.steam
    if line.main <= 0.0 or line.stop_open <= 0.0:
        return bench.seen("shut", "fully_open", sure=0.93)
    return bench.seen("not_open" if line.stop_open < 0.7 else "fully_open", "fully_open", sure=0.96)


@look("supply_steam.main_by_the_clock", booster=_STEAM)
def main_by_the_clock(bench: Bench) -> Answer:
    """The main's gauge with the other users off, then on."""
    alone, beside = share(bench, quiet(bench).main), share(bench, calling(bench).main)
    if alone < _MAIN_LOW:
        return bench.seen("always_low", sure=0.98)
    return bench.seen("falls_with_others" if alone - beside > 0.2 else "steady", "steady", sure=0.96)


@look("supply_steam.steam_when", booster=_STEAM)
def steam_when(bench: Bench) -> Answer:
    """When the steam fails, as opener and loader tell it."""
    line = bench.plant.fuel.steam
    full = share(bench, calling(bench).machine)
    if line.main <= 0.0:
        return bench.seen("none_at_all", sure=0.98)
    if line.slow > 0.0:
        return bench.seen("first_minutes", "with_others", sure=0.94)
    if line.wet > _WET:
        return bench.seen("surges", "at_draw", "first_minutes", sure=0.9)
    if full > _HIGH:
        return bench.seen("too_much", "not_short", sure=0.92)
    if full > _SHORT:
        return bench.seen("not_short", "always_weak", sure=0.96)
    if share(bench, at_rest(bench).machine) < _SHORT + 0.05:
        return bench.seen("always_weak", "at_draw", sure=0.88)
    if share(bench, quiet(bench).machine) > full + 0.1:
        return bench.seen("with_others", "first_minutes", sure=0.92)
    return bench.seen("at_draw", "always_weak", sure=0.9)


@look("supply_steam.pipe_heat", booster=_STEAM)
def pipe_heat(bench: Bench) -> Answer:
    """Bare pipe beside the gauge, under tape and lagging: some degrees under the steam in it."""
    pressure = calling(bench).machine
    room = bench.plant.air.room
    warm = steam_temperature_at_gauge(pressure) - 1.5 if pressure > 0.02 * bench.plant.plate["steam_pressure"] else room
    return bench.value("infrared thermometer", warm)


@look("supply_steam.second_gauge", booster=_STEAM)
def second_gauge(bench: Bench) -> Answer:
    """The machine's gauge against a test gauge."""
    line = bench.plant.fuel.steam
    off = abs(gauge(bench) - calling(bench).machine) > 2.0 * _PSI
    differs = off or line.gauge_stuck is not None
    return bench.seen("differ" if differs else "agree", "agree", sure=0.97)


@look("supply_steam.return_vent", booster=_STEAM)
def return_vent(bench: Bench) -> Answer:
    """The receiver's vent, and the pipe behind each trap."""
    blows = max(h.steam.trap_blows for h in steam_heaters(bench.plant).values())
    return bench.seen("cloud" if blows > 0.1 else "quiet", "quiet", "cloud", sure=0.96)


@look("supply_steam.joint_look", booster=_STEAM)
def joint_look(bench: Bench) -> Answer:
    """Joints, glands and unions of the steam line."""
    return bench.noticed("steam joint blows", "blows", "dry", sure=0.97)
