"""What can be read at the electric tank heater."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.electrics import element_ohms
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.tank_state import cold_tank

__all__: list[str] = []

_ELECTRIC = ("electric",)
_ENDLESS = 999e3  # what an open circuit is typed as, ohm


@look("tank_heater_electric.line_amps", tank_heat=_ELECTRIC, phases=(3,))
def line_amps(bench: Bench) -> Answer:
    """The three line currents while the wash tank's bank heats."""
    amps = bench.heating.standing.banks["wash"].amps
    return bench.each("clamp meter", L1=amps[0], L2=amps[1], L3=amps[2])


@look("tank_heater_electric.line_amps_single", tank_heat=_ELECTRIC, phases=(1,))
def line_amps_single(bench: Bench) -> Answer:
    """The current of a single-phase bank while it heats."""
    return bench.value("clamp meter", bench.heating.standing.banks["wash"].amps[0])


@look("tank_heater_electric.terminal_ohms", tank_heat=_ELECTRIC, phases=(3,))
def terminal_ohms(bench: Bench) -> Answer:
    """Ohms between the bank's terminals, isolated."""
    heater = bench.plant.tanks["wash"].heater
    sound = element_ohms(heater)
    a, b, c = (sound / g if g > 0.0 else 1e12 for g in heater.elements)
    if heater.connection == "delta":
        pairs = {"T1-T2": _beside(a, b + c), "T2-T3": _beside(b, c + a), "T3-T1": _beside(c, a + b)}
    else:
        pairs = {"T1-T2": a + b, "T2-T3": b + c, "T3-T1": c + a}
    return bench.values("ohmmeter", {place: min(ohms, _ENDLESS) for place, ohms in pairs.items()})


def _beside(one: float, other: float) -> float:
    return one * other / (one + other)


@look("tank_heater_electric.element_ohms", tank_heat=_ELECTRIC)
def each_element(bench: Bench) -> Answer:
    """Each element alone, links off: a lead that is off does not show."""
    heater, plate = bench.plant.tanks["wash"].heater, bench.plant.plate
    burnt = heater.elements.count(0.0) if bench.sign("tank element burnt") > 0.0 else 0
    if burnt:
        return bench.seen("one_open" if burnt == 1 else "more_open", sure=0.99)
    over = (heater.volts / plate.get("tank_volts", plate["volts"])) ** 2
    return bench.seen("all_high" if over > 1.2 else "all_good", sure=0.98)


@look("tank_heater_electric.terminals_look", tank_heat=_ELECTRIC)
def terminals_look(bench: Bench) -> Answer:
    """Leads and links under the cover."""
    return bench.strongest("sound", 0.95, tank_lead_burnt_off="off", tank_links_not_as_drawn="as_not_drawn")


@look("tank_heater_electric.element_stamp", tank_heat=_ELECTRIC)
def element_stamp(bench: Bench) -> Answer:
    """Volts stamped on the flanges."""
    plate = bench.plant.plate
    higher = bench.plant.tanks["wash"].heater.volts > 1.08 * plate.get("tank_volts", plate["volts"])
    return bench.seen("higher" if higher else "as_supply", sure=0.98)


@look("tank_heater_electric.feed_present", tank_heat=_ELECTRIC)
def feed_present(bench: Bench) -> Answer:
    """Volts at the contactor's line side."""
    volts, rated = bench.heating.standing.volts, bench.plant.plate["volts"]
    if not bench.plant.tanks["wash"].heater.feed_open or max(volts) < 0.2 * rated:
        return bench.seen("dead", sure=0.99)
    if min(volts) < 0.7 * rated:
        return bench.seen("one_missing", sure=0.98)
    return bench.seen("low" if max(volts) < 0.95 * rated else "all_there", sure=0.98)


@look("tank_heater_electric.breaker_look", tank_heat=_ELECTRIC)
def breaker_look(bench: Bench) -> Answer:
    """How its breaker stands."""
    return bench.strongest("on", 0.97, tank_breaker_tripped="tripped", tank_breaker_off="off")


@look("tank_heater_electric.insulation", tank_heat=_ELECTRIC)
def insulation(bench: Bench) -> Answer:
    """From the bank to the shell, isolated."""
    return bench.value("insulation tester", bench.plant.tanks["wash"].heater.earth_ohms)


@look("tank_heater_electric.which_tank", tank_heat=_ELECTRIC, tanks=(2,))
def which_tank(bench: Bench) -> Answer:
    """Which of the two tanks is the cold one."""
    return bench.seen(cold_tank(bench), sure=0.98)


@look("tank_heater_electric.pole_drop", tank_heat=_ELECTRIC)
def pole_drop(bench: Bench) -> Answer:
    """Volts from line to load across each closed pole."""
    heater = bench.plant.tanks["wash"].heater
    return bench.seen("sound" if all(heater.poles) else "one_open", sure=0.98)
