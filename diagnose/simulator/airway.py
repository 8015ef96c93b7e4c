"""Air through the machine: what the fan takes at each end, and the steam it does not take."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.simulator.parts import Air

__all__ = ["ENDS", "AirFlow", "Draw", "air_flow", "draughts", "drawn_off", "fan_load", "room_pressure", "with_steam"]

ENDS = ("entrance", "exit")
# Shares of the pressure at the wanted flow, in a common unit; the shape of fan and run is judgement.
_UNIT = 100.0  # Pa: with dampers and duct about 110 Pa before the fan, in the middle of what is usual
_DAMPERS, _DUCT, _AFTER, _FAN = 0.7, 0.4, 0.2, 0.4
_SHUT_OFF = _DAMPERS + _DUCT + _AFTER + _FAN
_FILTERS = 0.3  # what falls off at a hood's clean filters, within the dampers' share: judgement
_BACKWARDS = 0.35  # of its air a wheel with forward-curved blades still moves when it turns backwards: judgement
# Such a wheel asks a quarter of its work without flow, and more with the square of the flow: judgement on its shape.
_IDLE = 0.25
_ROOM = 25.0  # Pa over ways of 0.7 of the free ones, all of the exhaust drawn through them; judgement
_WIND = 0.1  # of the speed that the room's suction drives through its openings is felt across an end; judgement
_BEARS = 5.0  # Pa of suction that is not felt there
_MOST_WIND = 0.8  # m/s of it
_PAST_STRIPS = 0.12  # of the speed that a pressure between soiled and clean side would drive freely: judgement
_BLOWN_ON = 0.6  # most of the steam of the end that the wind comes in at which it takes to the other: judgement
_THROUGH_CURTAIN = 3.0  # times more steam passes an end without its curtain: judgement
_AT_DOORS = 0.5  # of the wanted exhaust: what would come out of a machine without doors; judgement


@dataclass(frozen=True)
class AirFlow:
    """Exhaust at each end, steam brought to each end and steam that escapes there and at doors, all [m3/s]."""

    exhaust: dict[str, float]
    steam: dict[str, float]
    escapes: dict[str, float]
    doors: float  # steam out of doors, covers and holes
    suction: float  # Pa just before the fan
    room: float  # Pa of the room over the corridor

    @property
    def total(self) -> float:
        return sum(self.exhaust.values())


@dataclass(frozen=True)
class _Run:
    """The run as openings, each the flow over the wanted one that a unit of pressure drives through it."""

    ends: Mapping[str, float]
    box: float  # both ends and a parted joint
    upstream: float  # box and duct
    all: float  # with what is let in before the fan

    @property
    def from_room(self) -> float:
        """Share of the fan's air that the machine's ends take."""
        return self.upstream / self.all * sum(self.ends.values()) / self.box


@dataclass(frozen=True)
class Draw:
    """What the air does whatever steam rises: exhaust [m3/s], gaps and wind at each end, pressures [Pa]."""

    exhaust: dict[str, float]
    gap: dict[str, float]  # share of the curtain that is missing or held open
    wind: dict[str, float]  # m/s that push steam out past the exhaust
    carried: float  # share of the other end's steam that the wind takes to the end in its lee
    lee: str
    doors: float  # share of all steam that leaves there
    suction: float
    room: float


def drawn_off(air: Air, fan_turns: bool) -> Draw:
    """Fan, duct and dampers share one suction.

    Every opening passes air by the root of the pressure across it, and the fan gives less pressure the more it moves.
    A room that lets too little air in takes its suction off the fan's.
    """
    wanted = sum(air.wanted.values())
    run = _run(air)
    moved = _moved(air, run, fan_turns)
    taken = moved * run.from_room
    opened = sum(run.ends.values())
    exhaust = {end: wanted * taken * run.ends[end] / opened for end in ENDS}
    pressure = room_pressure(air, taken)
    wind = min(_MOST_WIND, _WIND * (2.0 * max(0.0, -pressure - _BEARS) / 1.2) ** 0.5)
    through, lee = _wind_through(air)
    gap = {end: min(1.0, air.gap[end] + air.held[end] + (air.thrown if end == "exit" else 0.0)) for end in ENDS}
    blown = {end: speed + wind for end, speed in draughts(air).items()}
    suction = _UNIT * (moved / run.all) ** 2
    return Draw(exhaust, gap, blown, min(_BLOWN_ON, through), lee, air.leaks * _AT_DOORS, suction, pressure)


def air_flow(air: Air, fan_turns: bool, steaming: Mapping[str, float]) -> AirFlow:
    """Flows with these rates of steam, [m3/s], rising towards each end with sound curtains."""
    return with_steam(drawn_off(air, fan_turns), steaming)


def with_steam(drawn: Draw, steaming: Mapping[str, float]) -> AirFlow:
    """The same with what the air does already known."""
    steam, escapes = {}, {}
    carried = drawn.carried * steaming["entrance" if drawn.lee == "exit" else "exit"]
    for end in ENDS:
        gap = drawn.gap[end]
        rising = steaming[end] * (1.0 + _THROUGH_CURTAIN * gap)
        # Room air that comes in through a wider gap uses up exhaust; a draught pushes steam out past it.
        kept = drawn.exhaust[end] / (1.0 + 0.8 * gap)
        steam[end] = rising
        pushed = rising + (carried if end == drawn.lee else -carried)
        escapes[end] = max(0.0, pushed * (1.0 + 1.2 * drawn.wind[end]) - kept)
    doors = drawn.doors * sum(steaming.values())
    return AirFlow(drawn.exhaust, steam, escapes, doors, drawn.suction, drawn.room)


def draughts(air: Air) -> dict[str, float]:
    """Speed of the room's air across each end, [m/s], without what the vents draw in: blown at it, or through it."""
    through, lee = _wind_through(air)
    return {end: air.draught[end] + (through if end == lee else 0.0) for end in ENDS}


def _wind_through(air: Air) -> tuple[float, str]:
    """Speed of air through the machine by the pressure between its two sides, [m/s], and the end where it leaves."""
    return _PAST_STRIPS * (2.0 * abs(air.between) / 1.2) ** 0.5, "exit" if air.between >= 0.0 else "entrance"


def fan_load(air: Air) -> float:
    """Load of the fan's motor over its sound one: the wheel's work grows with the air it moves and its speed's cube."""
    if not air.fan_linked:
        return 0.1
    moved = _moved(air, _run(air), True) / max(air.fan, 1e-3)
    return float((_IDLE + (1.0 - _IDLE) * moved**2) * air.fan**3)


def room_pressure(air: Air, taken: float) -> float:
    """Of the dish room over its corridor, [Pa], while the machine takes a share of its wanted exhaust from it."""
    lacks = taken + air.hoods - air.supply
    return -_ROOM * (1.0 / max(air.ways, 0.05) ** 2 - 1.0) * lacks * abs(lacks) if air.ways < 1.0 else 0.0


def _run(air: Air) -> _Run:
    wanted = sum(air.wanted.values())
    felted = _FILTERS / _DAMPERS * (1.0 / max(air.filters_open, 0.05) ** 2 - 1.0)
    ends = {end: air.wanted[end] / wanted * (max(_opening(air, end), 0.02) ** -2 + felted) ** -0.5 for end in ENDS}
    box = sum(ends.values()) + air.parted
    upstream = (_DAMPERS / box**2 + _DUCT / max(air.duct_open, 0.02) ** 2) ** -0.5
    return _Run(ends, box, upstream, upstream + air.let_in)


def _opening(air: Air, end: str) -> float:
    """Of an end's damper over the right one: as it stands, or as its handle sets the blade."""
    blade = air.blades.get(end)
    return air.damper[end] * (blade.opening(air.handle[end]) if blade else 1.0)


def _moved(air: Air, run: _Run, turns: bool) -> float:
    """What goes through the fan over the wanted exhaust."""
    if not turns or not air.fan_linked:
        return 0.0
    speed = air.fan * (_BACKWARDS if air.fan_backwards else 1.0)
    pull = _SHUT_OFF * speed**2 * air.wheel
    resists = _FAN + _AFTER / max(air.after_open, 0.02) ** 2 + 1.0 / run.all**2

    def left(flow: float) -> float:
        return pull - resists * flow**2 + room_pressure(air, flow * run.from_room) / _UNIT

    if air.ways >= 1.0:
        return float((pull / resists) ** 0.5)
    low, high = 0.0, 2.0
    for _ in range(30):
        middle = (low + high) / 2
        low, high = (middle, high) if left(middle) > 0.0 else (low, middle)
    return low
