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
