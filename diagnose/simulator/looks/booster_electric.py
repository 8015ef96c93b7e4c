"""What can be read at the electric booster."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.electrics import element_ohms
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_ELECTRIC = ("electric",)
_ENDLESS = 999e3  # what an open circuit is typed as, ohm


@look("booster_electric.line_amps", booster=_ELECTRIC, phases=(3,))
def line_amps(bench: Bench) -> Answer:
    """The three line currents while the booster heats."""
    amps = bench.heating.standing.banks["booster"].amps
    return bench.each("clamp meter", L1=amps[0], L2=amps[1], L3=amps[2])


@look("booster_electric.line_amps_single", booster=_ELECTRIC, phases=(1,))
def line_amps_single(bench: Bench) -> Answer:
    """The current of a single-phase booster while it heats."""
    return bench.value("clamp meter", bench.heating.standing.banks["booster"].amps[0])


@look("booster_electric.terminal_ohms", booster=_ELECTRIC, phases=(3,))
def terminal_ohms(bench: Bench) -> Answer:
    """Ohms between the bank's terminals, isolated."""
    heater = bench.plant.booster.heater
    sound = element_ohms(heater)
    a, b, c = (sound / g if g > 0.0 else 1e12 for g in heater.elements)
    if heater.connection == "delta":
        pairs = {"T1-T2": _beside(a, b + c), "T2-T3": _beside(b, c + a), "T3-T1": _beside(c, a + b)}
    else:
        pairs = {"T1-T2": a + b, "T2-T3": b + c, "T3-T1": c + a}
    return bench.values("ohmmeter", {place: min(ohms, _ENDLESS) for place, ohms in pairs.items()})


def _beside(one: float, other: float) -> float:
    return one * other / (one + other)


@look("booster_electric.element_ohms", booster=_ELECTRIC)
def each_element(bench: Bench) -> Answer:
    """Each element alone, links off: a lead that is off does not show."""
    heater, plate = bench.plant.booster.heater, bench.plant.plate
    burnt = heater.elements.count(0.0) if bench.sign("booster element burnt") > 0.0 else 0
    if burnt:
        return bench.seen("one_open" if burnt == 1 else "more_open", sure=0.99)
    over = (heater.volts / plate.get("booster_volts", plate["volts"])) ** 2
    return bench.seen("all_high" if over > 1.2 else "all_good", sure=0.98)


@look("booster_electric.terminals_look", booster=_ELECTRIC)
def terminals_look(bench: Bench) -> Answer:
    """Leads and links under the cover."""
    return bench.strongest("sound", 0.95, booster_lead_burnt_off="off", booster_links_not_as_drawn="as_not_drawn")


@look("booster_electric.element_stamp", booster=_ELECTRIC)
def element_stamp(bench: Bench) -> Answer:
    """Volts stamped on the flanges."""
    plate = bench.plant.plate
    higher = bench.plant.booster.heater.volts > 1.08 * plate.get("booster_volts", plate["volts"])
    return bench.seen("higher" if higher else "as_supply", sure=0.98)


@look("booster_electric.feed_present", booster=_ELECTRIC)
def feed_present(bench: Bench) -> Answer:
    """Volts at the contactor's line side."""
    volts, rated = bench.heating.standing.volts, bench.plant.plate["volts"]
    if not bench.plant.booster.heater.feed_open or max(volts) < 0.2 * rated:
        return bench.seen("dead", sure=0.99)
    if min(volts) < 0.7 * rated:
        return bench.seen("one_missing", sure=0.98)
    return bench.seen("low" if max(volts) < 0.95 * rated else "all_there", sure=0.98)


@look("booster_electric.breaker_look", booster=_ELECTRIC)
def breaker_look(bench: Bench) -> Answer:
    """How its breaker stands."""
    return bench.strongest("on", 0.97, booster_breaker_tripped="tripped", booster_breaker_off="off")


@look("booster_electric.insulation", booster=_ELECTRIC)
def insulation(bench: Bench) -> Answer:
    """From the bank to the shell, isolated."""
    return bench.value("insulation tester", bench.plant.booster.heater.earth_ohms)


@look("booster_electric.plate_rise", booster=_ELECTRIC)
def plate_rise(bench: Bench) -> Answer:
    """The plate's kilowatts against the rise needed on this water."""
    plant = bench.plant
    rated = plant.plate.get("booster_power", 0.0) / (4.12e6 * plant.rinse.rated_flow)
    meant = plant.signs.get("booster plate promises too little", 0.0) > 0.0
    needed = plant.plate["rinse_temperature"] - (plant.water.temperature if meant else plant.plate["booster_inlet"])
    return bench.seen("short" if rated < needed - 1.0 else "enough", sure=0.95)
