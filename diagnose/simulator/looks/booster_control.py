"""What can be read of the booster's control while it works."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import flashes
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_HEATED = ("electric", "steam", "gas")
_ELECTRIC = ("electric",)
_LEAST = 355.37 - 0.6  # K, the published 180 °F of a hot-water rinse (FDA Food Code 4-501.112), as a dial tells it
_MOST = 363.3  # K, 194 °F


def never_called(bench: Bench) -> bool:
    """Whether the control never gives the heat its command."""
    booster = bench.plant.booster
    return not booster.allowed or booster.thermostat.stuck is False or bench.plant.power.control_share < 0.6


def stays_on(bench: Bench) -> bool:
    """Whether the heat never goes out."""
    booster = bench.plant.booster
    return booster.heater.welded or booster.thermostat.stuck is True


def cut_out_at(bench: Bench) -> float:
    """Outlet temperature at which the heat is cut, [K]."""
    control = bench.plant.booster.thermostat
    if stays_on(bench) or bench.plant.booster.heater.steam.valve_leaks > 0.02:
        return bench.plant.booster.heater.high_limit
    return control.setting + control.width / 2 - control.offset + 0.25 * max(0.0, control.lag - 20.0) * 0.35


def stops_early(bench: Bench) -> bool:
    """Whether the heat is cut while the rinse is still short."""
    return not never_called(bench) and cut_out_at(bench) < bench.plant.plate["rinse_temperature"] + 1.0


def _sways(bench: Bench) -> tuple[float, float]:
    warm = sorted(s.moment.temperatures["manifold"] for s in bench.rinse_trace) or [bench.plant.air.room]
    return warm[len(warm) // 10], warm[-1 - len(warm) // 10]


@look("booster_control.heat_light", booster=_HEATED)
def heat_light(bench: Bench) -> Answer:
    """When the heat lamp is on."""
    if never_called(bench):
        return bench.seen("dark", sure=0.98)
    if bench.plant.booster.thermostat.stuck is True:
        return bench.seen("never_out", sure=0.96)
    if bench.plant.booster.thermostat.lag > 30.0:
        return bench.seen("comes_late", "with_rinse", sure=0.92)
    return bench.seen("out_early" if stops_early(bench) else "with_rinse", "with_rinse", sure=0.94)


@look("booster_control.swing", booster=_HEATED)
def swing(bench: Bench) -> Answer:
    """The rinse thermometer over five racks."""
    low, high = _sways(bench)
    off = bench.rinse_panel - bench.manifold
    low, high = low + off, high + off
    if bench.sign("booster soaks hot in pauses") > 0.15 or (high > _MOST and low > _LEAST):
        return bench.seen("too_hot", "swings", sure=0.93)
    if high - low > 8.3 and high > _LEAST:
        return bench.seen("swings", "steady_low", sure=0.93)
    if bench.sign("water sinks at rush") > 0.15:
        return bench.seen("sinks", "steady_low", sure=0.93)
    if bench.sign("water cold at first") > 0.15 or bench.sign("booster steam air-bound") > 0.15:
        return bench.seen("climbs", "steady_low", sure=0.92)
    return bench.seen("steady_low" if bench.rinse_panel < _LEAST else "steady_good", "sinks", sure=0.95)


@look("booster_control.switch_look", booster=_HEATED)
def switch_look(bench: Bench) -> Answer:
    """The heat switch."""
    return bench.noticed("booster heat switch off", "off", "on", sure=0.98)


@look("booster_control.water_in_booster", booster=_HEATED)
def water_in_booster(bench: Bench) -> Answer:
    """Solid water from the booster."""
    return bench.noticed("booster not full", "not_full", "solid", sure=0.97)


@look("booster_control.heat_off_rinse", booster=_HEATED)
def heat_off_rinse(bench: Bench) -> Answer:
    """The heat switched off at its switch: what still heats is past it."""
    plant = bench.plant
    if plant.water.temperature > plant.plate["booster_inlet"] + 8.0:
        return bench.seen("supply_hot", "falls", sure=0.97)
    if plant.booster.heater.welded or bench.sign("booster steam valve leaks") > 0.15:
        return bench.seen("still_heated", "falls", sure=0.96)
    return bench.seen("falls", sure=0.98)


@look("booster_control.contactor_pulls", booster=_ELECTRIC)
def contactor_pulls(bench: Bench) -> Answer:
    """What the contactor does while racks run."""
    if stays_on(bench):
        return bench.seen("stays_in", sure=0.97)
    if never_called(bench) or not bench.plant.booster.heater.coil_works:
        return bench.seen("stays_out", sure=0.98)
    if bench.sign("booster heat short-cycles") > 0.15:
        return bench.seen("cycles", "drops_early", sure=0.95)
    return bench.seen("drops_early" if stops_early(bench) else "in_and_out", "in_and_out", sure=0.95)


@look("booster_control.control_chain", booster=_HEATED)
def control_chain(bench: Bench) -> Answer:
    """Where the volts end along the chain, during a call."""
    return bench.strongest(
        "all_through",
        0.97,
        booster_control_fuse_blown="at_fuse",
        booster_heat_switch_off="at_switch",
        booster_not_full="at_low_water",
        **{"booster_low-water_device_limed": "at_low_water"},
        booster_thermostat_open="at_thermostat",
        booster_limit_button_out="at_limit",
        booster_coil_open="coil_idle",
    )


@look("booster_control.coil_volts", booster=_ELECTRIC)
def coil_volts(bench: Bench) -> Answer:
    """Volts at the coil during the call."""
    if never_called(bench):
        return bench.seen("dead", sure=0.98)
    if bench.plant.power.control_share * min(bench.heating.standing.volts) < 0.85 * bench.plant.plate["volts"]:
        return bench.seen("low", sure=0.97)
    if bench.sign("booster heat short-cycles") > 0.15:
        return bench.seen("low", "right", sure=0.9)
    return bench.seen("right" if bench.plant.booster.heater.coil_works else "right_but_out", sure=0.98)


@look("booster_control.pole_drop", booster=_ELECTRIC)
def pole_drop(bench: Bench) -> Answer:
    """Volts across each closed pole."""
    heater = bench.plant.booster.heater
    if not heater.welded and (never_called(bench) or not heater.coil_works or not heater.feed_open):
        return bench.seen("not_in", sure=0.98)
    return bench.seen("all_small" if all(heater.poles) else "one_full", sure=0.98)


@look("booster_control.which_cuts", booster=_HEATED)
def which_cuts(bench: Bench) -> Answer:
    """Which device is open when the heat stops early."""
    if never_called(bench):
        return bench.seen("no_call_at_all", sure=0.97)
    if not stops_early(bench) and bench.sign("booster heat short-cycles") < 0.15:
        return bench.seen("nothing_cuts", "thermostat", sure=0.95)
    return bench.seen("limit" if bench.sign("booster limit cuts early") > 0.0 else "thermostat", sure=0.96)


@look("booster_control.pull_ins", booster=_HEATED)
def pull_ins(bench: Bench) -> Answer:
    """How often the heat pulls in within five minutes of steady rinse."""
    quick = bench.sign("booster heat short-cycles")
    count = 12 + 30 * quick if quick > 0.0 else 1 if bench.manifold < cut_out_at(bench) - 3.0 else 3
    return bench.value("counter", round(count * bench.senses.chance.uniform(0.8, 1.2)))


@look("booster_control.stat_dial", booster=_HEATED)
def stat_dial(bench: Bench) -> Answer:
    """What the thermostat's dial stands at."""
    control = bench.plant.booster.thermostat
    shown = control.setting
    if bench.sign("booster limit cuts early") > 0.0:
        shown = bench.plant.plate["rinse_temperature"] + 5.5
    return bench.value("dial read", shown)


@look("booster_control.cut_out", booster=_HEATED)
def cut_out(bench: Bench) -> Answer:
    """Outlet temperature as the heat is cut, water standing."""
    return bench.value("reference thermometer", cut_out_at(bench))


@look("booster_control.switching_difference", booster=_HEATED)
def switching_difference(bench: Bench) -> Answer:
    """Between the heat going out and coming in again."""
    control = bench.plant.booster.thermostat
    quick = bench.sign("booster heat short-cycles") > 0.15
    width = 0.8 if quick else control.width + 0.06 * max(0.0, control.lag - 20.0)
    return Answer({"": max(0.0, bench.senses.measure("two thermometers", width))})


@look("booster_control.first_spray", booster=_HEATED)
def first_spray(bench: Bench) -> Answer:
    """Manifold in the third and in the fifteenth second after ten idle minutes."""
    if flashes(bench):
        return bench.seen("over_both", "over_then_right", sure=0.95)
    rest = cut_out_at(bench)
    soaked = rest + 6.0 * bench.sign("booster soaks hot in pauses")
    if soaked > _MOST and bench.manifold > _MOST - 0.5:
        return bench.seen("over_both", "over_then_right", sure=0.93)
    if bench.plant.booster.thermostat.lag > 30.0:
        return bench.seen("cold_then_over", "over_then_right", sure=0.6)
    return bench.seen("over_then_right" if soaked > _MOST + 1.0 else "right_both", sure=0.95)
