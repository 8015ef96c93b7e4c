"""Air through the machine: what the fan takes at each end, and the steam it does not take."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.simulator.parts import Air

__all__ = ["ENDS", "AirFlow", "air_flow"]

ENDS = ("entrance", "exit")
# Shape of fan and gaps: judgement. A fan wheel turning backwards still moves about a third of its air.
_BACKWARDS = 0.35
_THROUGH_CURTAIN = 1.5  # times more steam passes an end without its curtain for each half of it that is missing


@dataclass(frozen=True)
class AirFlow:
    """Exhaust at each end, steam brought to each end and steam that escapes there, all [m3/s]."""

    exhaust: dict[str, float]
    steam: dict[str, float]
    escapes: dict[str, float]

    @property
    def total(self) -> float:
        return sum(self.exhaust.values())


def air_flow(air: Air, fan_turns: bool, steaming: dict[str, float]) -> AirFlow:
    """Flows with these rates of steam, [m3/s], rising towards each end with sound curtains.

    Fan and duct share one suction: dampers pass air by their opening times its root; the duct's resistance and the
    fan's own curve take a part of what the fan gives when more is let in.
    """
    speed = air.fan * (_BACKWARDS if air.fan_backwards else 1.0) if fan_turns else 0.0
    wanted = sum(air.wanted.values())
    opened = {end: air.wanted[end] * max(air.damper[end], 0.0) for end in ENDS}
    openings = sum(opened.values()) / wanted
    # At the wanted flow the dampers take 1 of suction, duct and fan 0.3 each: 1.6 in all. Judgement.
    resists = 0.3 + 0.3 / max(air.duct_open, 1e-3) ** 2 + 1.0 / max(openings, 1e-3) ** 2
    # Air that can't come in is a suction against the fan.
    pull = 1.6 * speed**2 * (0.35 + 0.65 * air.makeup)
    total = wanted * (pull / resists) ** 0.5
    exhaust = {end: total * opened[end] / max(sum(opened.values()), 1e-9) for end in ENDS}
    steam, escapes = {}, {}
    for end in ENDS:
        rising = steaming[end] * (1.0 + _THROUGH_CURTAIN * 2.0 * air.gap[end])
        # Room air that comes in through a wider gap uses up exhaust; a draught pushes steam out past it.
        taken = exhaust[end] / (1.0 + 0.8 * air.gap[end])
        steam[end] = rising
        escapes[end] = max(0.0, rising * (1.0 + 1.2 * air.draught[end]) - taken)
    return AirFlow(exhaust, steam, escapes)
