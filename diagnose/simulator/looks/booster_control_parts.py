"""What can be read of the parts of the booster's control, isolated."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.looks.booster_control import cut_out_at
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.sensing import sensor_resistance

__all__: list[str] = []

_HEATED = ("electric", "steam", "gas")
_ELECTRIC = ("electric",)


@look("booster_control.limit_button", booster=_HEATED)
def limit_button(bench: Bench) -> Answer:
    """Whether the high limit has tripped."""
    out = bench.service.state.limited.get("booster", False)
    out = out or bench.sign("booster limit button out") > 0.15
    return bench.seen("tripped" if out else "closed", sure=0.98)


@look("booster_control.low_water_look", booster=_HEATED)
def low_water_look(bench: Bench) -> Answer:
    """Probe, float or paddle."""
    return bench.noticed("booster low-water device limed", "limed_or_stuck", "sound", sure=0.95)


@look("booster_control.fuse_ohms", booster=_HEATED)
def fuse_ohms(bench: Bench) -> Answer:
    """The control fuse."""
    return bench.noticed("booster control fuse blown", "blown", "whole", sure=0.99)


@look("booster_control.coil_ohms", booster=_ELECTRIC)
def coil_ohms(bench: Bench) -> Answer:
    """Ohms of the coil, and its armature."""
    return bench.noticed("booster coil open", "open_or_jammed", "sound", sure=0.98)


@look("booster_control.pole_ohms", booster=_ELECTRIC)
def pole_ohms(bench: Bench) -> Answer:
    """Ohms through each pole, out and pushed in."""
    heater = bench.plant.booster.heater
    if heater.welded:
        return bench.seen("welded", sure=0.98)
    return bench.seen("open_and_make" if all(heater.poles) else "no_make", sure=0.97)


@look("booster_control.stat_bath", booster=_HEATED)
def stat_bath(bench: Bench) -> Answer:
    """Where the thermostat opens in a hot bath: its own contact, without the sensor's plug."""
    control = bench.plant.booster.thermostat
    if control.stuck is False:
        return bench.seen("never_closed", sure=0.97)
    if control.stuck is True:
        return bench.seen("never_opens", sure=0.97)
    drifted = bench.sign("booster thermostat drifted") > 0.0
    return bench.seen("below_dial" if drifted else "at_dial", "at_dial", sure=0.96)


@look("booster_control.sensor_look", booster=_HEATED)
def sensor_look(bench: Bench) -> Answer:
    """How the bulb or sensor lies."""
    return bench.strongest(
        "home_and_clean", 0.95, scale_on_the_booster_sensor="limed", **{"booster_heat_short-cycles": "not_home"}
    )


@look("booster_control.sensor_ohms", booster=_HEATED)
def sensor_ohms(bench: Bench) -> Answer:
    """Ohms of the sensor right after a cut-out."""
    plate, control = bench.plant.plate, bench.plant.booster.thermostat
    if control.stuck is False:
        return bench.value("ohmmeter", 1e6)
    electrical = max(
        bench.sign("booster plug wet"),
        bench.sign("booster plug corroded"),
        bench.sign("booster probe of another curve"),
    )
    warm = cut_out_at(bench) + (control.offset if electrical > 0.15 else 0.0)
    return bench.value("ohmmeter", sensor_resistance(plate["sensor_ohms_25"], plate["sensor_ohms_80"], warm))


@look("booster_control.sensor_plug", booster=_HEATED)
def sensor_plug(bench: Bench) -> Answer:
    """The plug at the probe."""
    return bench.strongest("bright", 0.95, booster_plug_corroded="corroded", booster_plug_wet="wet")
