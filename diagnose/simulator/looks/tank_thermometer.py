"""What can be read of the tank's thermometer."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.sensing import sensor_resistance

__all__: list[str] = []


@look("tank_thermometer.reference_reading")
def reference_reading(bench: Bench) -> Answer:
    """A second thermometer in the tank complained of: the wash tank, or the colder one against its least."""
    return bench.value("reference thermometer", bench.temperature("wash"))


@look("tank_thermometer.probe_look")
def probe_look(bench: Bench) -> Answer:
    """How the probe sits, tank drained."""
    return bench.strongest(
        "deep_and_clean", 0.96, tank_probe_pulled_back="back_or_caked", tank_probe_at_the_heater="at_the_heater"
    )


@look("tank_thermometer.sensor_ohms")
def sensor_ohms(bench: Bench) -> Answer:
    """Ohms at the display's end, with the tank hot."""
    plate, tank = bench.plant.plate, bench.plant.tanks["wash"]
    if bench.sign("tank lead broken") > 0.0:
        return bench.value("ohmmeter", 1e6)
    signs = ("tank plug corroded", "tank plug wet", "tank probe of another curve")
    electrical = max(bench.sign(name) for name in signs) > 0.15
    warm = bench.temperature("wash") + (tank.dial_offset if electrical else 0.0)
    return bench.value("ohmmeter", sensor_resistance(plate["sensor_ohms_25"], plate["sensor_ohms_80"], warm))


@look("tank_thermometer.plug_look")
def plug_look(bench: Bench) -> Answer:
    """The plug at the probe."""
    return bench.strongest("bright", 0.95, tank_plug_corroded="corroded", tank_plug_wet="wet")
