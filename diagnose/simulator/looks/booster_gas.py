"""What can be read of the gas booster."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.burning import Flame, burner_of, inlet_pressure
from diagnose.simulator.faults.booster_gas import burner
from diagnose.simulator.flames import FUR, INLET, appearance, burning, called, lit
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.state import CP, DENSITY

__all__: list[str] = []

_GAS = ("gas",)
_SHELL = 0.0008  # m, 1/32 in of lime
_KETTLES = 0.001  # m of lime under which water boils with a noise: judgement


def _flame(bench: Bench) -> Flame | None:
    return burning(bench, "booster")


def _positive(bench: Bench, instrument: str, value: float) -> Answer:
    return Answer({"": max(0.0, bench.senses.measure(instrument, value))})


@look("booster_gas.start_watched", booster=_GAS)
def start_watched(bench: Bench) -> Answer:
    """One start through the sight glass."""
    seen = appearance(bench, "booster")
    instead: dict[str, tuple[str, ...]] = {
        "blue": ("small",),
        "small": ("blue_and_stays",),
        "patchy": ("small",),
        "yellow": ("blue_and_stays",),
    }
    instead["breathes"] = ("small", "blue_and_stays")
    truth = "blue_and_stays" if seen == "blue" else seen
    return bench.seen(truth, *instead.get(seen, ()), sure=0.98 if seen == "blue" else 0.93)


@look("booster_gas.kettle_noise", booster=_GAS)
def kettle_noise(bench: Bench) -> Answer:
    """Rumble while it burns."""
    seen = _flame(bench)
    if seen is None or not seen.burns:
        return bench.seen("quiet")
    limed = burner(bench.plant).lime > _KETTLES
    return bench.seen("kettles", "quiet", sure=0.9) if limed else bench.seen("quiet", "kettles", sure=0.98)


@look("booster_gas.manifold_pressure", booster=_GAS)
def manifold_pressure(bench: Bench) -> Answer:
    """Behind the valve while it burns, the kitchen's other burners lit."""
    seen = _flame(bench)
    return _positive(bench, "manometer", seen.manifold if seen is not None and seen.burns else 0.0)


@look("booster_gas.gas_clocked", booster=_GAS)
def gas_clocked(bench: Bench) -> Answer:
    """The meter's dial against the watch, the booster alone."""
    seen = burning(bench, "booster", alone=True)
    share = 0.0
    if seen is not None:
        share = seen.share if seen.burns else seen.share * seen.alight
    return _positive(bench, "gas meter", burner(bench.plant).input * share)


@look("booster_gas.rise", booster=_GAS)
def rise(bench: Bench) -> Answer:
    """Inlet to outlet while it burns and water flows."""
    flow = bench.heating.standing.rinse.flow * DENSITY
    seen = _flame(bench)
    if flow <= 0.0 or seen is None:
        return bench.value("two thermometers", 0.0)
    lost = bench.plant.booster.loss * (bench.heating.temperatures["booster"] - bench.plant.air.room)
    return bench.value(
        "two thermometers", max(0.0, (seen.heat_alight if seen.burns else seen.heat) - lost) / (flow * CP)
    )


@look("booster_gas.flame_current", booster=_GAS)
def flame_current(bench: Bench) -> Answer:
    """Microamperes thirty seconds after lighting."""
    seen = _flame(bench)
    if seen is None or (not seen.burns and seen.why != "proof"):
        return bench.seen("no_flame")
    return bench.seen("weak" if burner(bench.plant).proved < 2.0 else "strong", sure=1.0)


@look("booster_gas.ignitor_look", booster=_GAS)
def ignitor_look(bench: Bench) -> Answer:
    """A trial with the gas shut."""
    if not called(bench, "booster") or not _air(bench):
        return bench.seen("no_trial")
    weak = burner(bench.plant).spark < 0.6
    return bench.seen("weak_or_none", "strong", sure=0.95) if weak else bench.seen("strong", "weak_or_none", sure=0.99)


def _air(bench: Bench) -> bool:
    part = burner(bench.plant)
    return part.draught - part.hoods_draw >= 1.0


@look("booster_gas.valve_signal", booster=_GAS)
def valve_signal(bench: Bench) -> Answer:
    """Volts at the valve and pressure behind it in the trial."""
    if not called(bench, "booster") or not _air(bench):
        return bench.seen("no_volts")
    if inlet_pressure(bench.plant, lit(bench)) < 0.9 * INLET:
        return bench.seen("volts_poor_inlet")
    return bench.seen("volts_and_gas" if burner(bench.plant).valve_works else "volts_no_gas")


@look("booster_gas.air_draught", booster=_GAS)
def air_draught(bench: Bench) -> Answer:
    """Draught at the air switch with the hoods off and on."""
    if not called(bench, "booster"):
        return bench.seen("blower_still")
    part = burner(bench.plant)
    proved = part.draught - part.hoods_draw >= 1.2
    return bench.seen("proved" if proved else "short")


@look("booster_gas.flue_temperature", booster=_GAS)
def flue_temperature(bench: Bench) -> Answer:
    """After ten minutes of full draw."""
    seen = _flame(bench)
    room, water = bench.plant.air.room, bench.heating.temperatures["booster"]
    still = room + 0.3 * max(0.0, water - room)  # warmed by the water alone
    return bench.value("flue thermometer", seen.flue if seen is not None and seen.burns else still)


@look("booster_gas.flue_gas", booster=_GAS)
def flue_gas(bench: Bench) -> Answer:
    """Carbon monoxide, air-free."""
    seen = _flame(bench)
    return _positive(bench, "flue analyser", seen.carbon_monoxide if seen is not None and seen.burns else 0.0)


@look("booster_gas.fire_side_look", booster=_GAS)
def fire_side_look(bench: Bench) -> Answer:
    """Passages seen with lamp and mirror."""
    part = burner_of(bench.plant, "booster")
    sooted = part is not None and part.soot > FUR
    return bench.seen("sooted" if sooted else "open_passages", "open_passages", sure=0.97)


@look("booster_gas.water_side_look", booster=_GAS)
def water_side_look(bench: Bench) -> Answer:
    """The exchanger's water side with a small camera."""
    return bench.seen("limed" if burner(bench.plant).lime > _SHELL else "bare", "bare", sure=0.96)


@look("booster_gas.burner_look", booster=_GAS)
def burner_look(bench: Bench) -> Answer:
    """Ports and jets against the light."""
    return bench.seen("blocked" if burner(bench.plant).jets_open < 0.95 else "all_open", "all_open", sure=0.97)


@look("booster_gas.jet_stamp", booster=_GAS)
def jet_stamp(bench: Bench) -> Answer:
    """The number on a jet against the plate's table."""
    return bench.seen("other" if abs(burner(bench.plant).bore - 1.0) > 0.06 else "as_plate", sure=1.0)
