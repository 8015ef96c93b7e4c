"""What can be read of the tank's gas burner: the wash tank's."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.burning import Flame, inlet_pressure
from diagnose.simulator.faults.tank_heater_gas import burner
from diagnose.simulator.flames import FUR, INLET, appearance, burning, lit
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_GAS = ("gas",)
_SHELL = 0.0012  # m of lime that a spatula finds: judgement


def _flame(bench: Bench) -> Flame | None:
    seen = burning(bench, "wash")
    return seen if seen is not None and seen.burns else None


@look("tank_heater_gas.burner_watched", tank_heat=_GAS)
def burner_watched(bench: Bench) -> Answer:
    """From call to flame, through the sight glass."""
    seen = appearance(bench, "wash")
    if seen == "blue":
        return bench.seen("blue_and_full", "small", sure=0.985)
    # This burner has no blower: without its draught nothing is tried.
    truth = "nothing" if seen == "blower_only" else seen
    instead: dict[str, tuple[str, ...]] = {
        "small": ("blue_and_full",),
        "patchy": ("small",),
        "yellow": ("blue_and_full",),
    }
    instead["breathes"] = ("small", "blue_and_full")
    return bench.seen(truth, *instead.get(seen, ()), sure=0.93)


@look("tank_heater_gas.valve_signal", tank_heat=_GAS)
def valve_signal(bench: Bench) -> Answer:
    """Volts at the main valve and pressure behind it in a trial."""
    part, seen = burner(bench.plant), burning(bench, "wash")
    if seen is None or seen.why in ("air", "proof", "spark"):
        return bench.seen("no_volts")
    if inlet_pressure(bench.plant, lit(bench)) < 0.9 * INLET:
        return bench.seen("volts_poor_inlet")
    return bench.seen("volts_and_gas" if part.valve_works else "volts_no_gas")


@look("tank_heater_gas.manifold_pressure", tank_heat=_GAS)
def manifold_pressure(bench: Bench) -> Answer:
    """Behind the valve while it burns."""
    seen = _flame(bench)
    return Answer({"": max(0.0, bench.senses.measure("manometer", seen.manifold if seen is not None else 0.0))})


@look("tank_heater_gas.gas_clocked", tank_heat=_GAS)
def gas_clocked(bench: Bench) -> Answer:
    """The meter's dial against the watch, this burner alone."""
    seen = burning(bench, "wash", alone=True)
    share = 0.0
    if seen is not None:
        share = seen.share if seen.burns else seen.share * seen.alight
    return Answer({"": max(0.0, bench.senses.measure("gas meter", burner(bench.plant).input * share))})


@look("tank_heater_gas.flue_temperature", tank_heat=_GAS)
def flue_temperature(bench: Bench) -> Answer:
    """Ten minutes alight."""
    seen = _flame(bench)
    room, water = bench.plant.air.room, bench.heating.temperatures["wash"]
    still = room + 0.3 * max(0.0, water - room)  # warmed by the water alone
    return bench.value("flue thermometer", seen.flue if seen is not None else still)


@look("tank_heater_gas.surface_look", tank_heat=_GAS)
def surface_look(bench: Bench) -> Answer:
    """Water side and fire side, drained and cool."""
    part = burner(bench.plant)
    if part.lime > _SHELL:
        return bench.seen("limed", "bare", sure=0.97)
    return bench.seen("sooted", "bare", sure=0.97) if part.soot > FUR else bench.seen("bare")


@look("tank_heater_gas.jet_stamp", tank_heat=_GAS)
def jet_stamp(bench: Bench) -> Answer:
    """The stamp on a jet against the plate's table."""
    return bench.seen("other" if abs(burner(bench.plant).bore - 1.0) > 0.06 else "as_plate")
