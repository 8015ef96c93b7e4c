"""What can be read of the dish room: when it steams, what moves its air, what drips there."""

from __future__ import annotations

from dataclasses import replace

from diagnose.physics.air_state import humidity_of_wet_bulb, relative_humidity
from diagnose.physics.moist_air import humidity_ratio
from diagnose.simulator.airing import air_now, dew, drips, escapes, humidity, rinses_out, starts_late, surface
from diagnose.simulator.airway import ENDS, air_flow, draughts
from diagnose.simulator.bench import Bench
from diagnose.simulator.control import stalls
from diagnose.simulator.parts import Air
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.steaming import steam_rates

__all__: list[str] = []

_STIR = 0.06  # m/s that air moves in a room with nothing blowing: judgement
_SEEN = 0.03  # share of the wanted exhaust that is seen as steam at an end
_BETTER = 0.6  # of what it was: what eyes call clearly less
_PRESSES = 5.0  # Pa between soiled and clean side that a tissue shows through the machine
_WORKS = 0.6  # of the air wanted that a supply unit in order brings, or a free way would pass: judgement
_BY_MORNING = 0.97  # humidity of the room after a night over hot tanks: judgement


def _lost(bench: Bench, air: Air) -> float:
    """Steam at the worse end over the exhaust wanted there, were the room's air so."""
    plant, moment = bench.plant, bench.restarted
    steaming = steam_rates(plant, moment.temperatures, moment.standing.rinse, moment.standing.motors["fan"].turns)
    turns = moment.standing.motors["fan"].turns and not stalls(plant, "fan")
    flow = air_flow(air, turns, steaming)
    return max(flow.escapes[end] / air.wanted[end] for end in ENDS)


def _clears(bench: Bench, **changed: object) -> bool:
    """Whether steam that is there grows clearly less with the room changed so."""
    air = bench.plant.air
    now = _lost(bench, air)
    return now > _SEEN and _lost(bench, replace(air, **changed)) < _BETTER * now  # type: ignore[arg-type]


@look("room_air.when_steam")
def when_steam(bench: Bench) -> Answer:
    """Loader and unloader asked, start, pause and rush watched."""
    lost = escapes(bench)
    if max(lost.values()) < _SEEN:
        whiff = bench.sign("whiff at the start") > 0.15
        return bench.seen("first_minutes" if whiff else "not_at_all", "not_at_all", sure=0.97)
    if starts_late(bench) or bench.sign("water lies in the duct") > 0.15:
        return bench.seen("after_a_while", "all_the_time", sure=0.94)
    air = bench.plant.air
    still = dict.fromkeys(ENDS, 0.0)
    if lost["doors"] < _SEEN and _clears(bench, ways=1.0, hoods=0.0, between=0.0, draught=still):
        return bench.seen("with_the_room", "all_the_time", sure=0.9)
    worst = "entrance" if lost["entrance"] > lost["exit"] else "exit"
    if rinses_out(bench) or air.held[worst] > 0.1:
        return bench.seen("in_puffs", "all_the_time", sure=0.93)
    return bench.seen("all_the_time", "in_puffs", "after_a_while", sure=0.94)


@look("room_air.door_test")
def door_test(bench: Bench) -> Answer:
    """A door to the corridor by a hand: a free way in, or a longer way through the machine."""
    if abs(bench.plant.air.between) > _PRESSES:
        return bench.seen("more", "no_difference", sure=0.92)
    return bench.seen("less" if _clears(bench, ways=1.0) else "no_difference", "no_difference", "more", sure=0.96)


@look("room_air.blowers_look")
def blowers_look(bench: Bench) -> Answer:
    """A tissue at each end followed upwind."""
    if abs(bench.plant.air.between) > _PRESSES:
        return bench.seen("through", "nothing", sure=0.94)
    found = {
        "fan": bench.sign("portable fan blows"),
        "outside": bench.sign("outside door open"),
        "grille": bench.sign("grille blows down"),
    }
    return bench.worst(found, "nothing", sure=0.97)


@look("room_air.end_draught")
def end_draught(bench: Bench) -> Answer:
    """Air across the worse end, machine and its fan off."""
    blown = max(draughts(bench.plant.air).values())
    return Answer({"": max(0.0, bench.senses.measure("anemometer", (_STIR**2 + blown**2) ** 0.5))})


@look("room_air.room_pressure")
def room_pressure_read(bench: Bench) -> Answer:
    """Dish room over the corridor; where the machine stands in a wall, its two sides."""
    air = bench.plant.air
    room = air_now(bench).room
    return bench.value("room manometer", air.between if abs(air.between) > abs(room) else room)


@look("room_air.hoods_test")
def hoods_test(bench: Bench) -> Answer:
    """Steam with the cooking hoods off."""
    return bench.seen("clears" if _clears(bench, hoods=0.0) else "no_difference", "no_difference", sure=0.97)


@look("room_air.makeup_look")
def makeup_look(bench: Bench) -> Answer:
    """Supply unit, its switch and filters."""
    return bench.seen("off_or_blocked" if bench.plant.air.supply < _WORKS else "runs", "runs", sure=0.98)


@look("room_air.ways_look")
def ways_look(bench: Bench) -> Answer:
    """Grilles, gaps and hatches, the doors shut."""
    return bench.seen("all_shut" if bench.plant.air.ways < 0.7 else "open_way", "open_way", sure=0.97)


@look("room_air.makeup_flows")
def makeup_flows(bench: Bench) -> Answer:
    """What other hoods take and the supply brings."""
    air = bench.plant.air
    wanted = sum(air.wanted.values())
    flows = {"hoods": air.hoods * wanted, "supply": air.supply * wanted}
    return Answer({k: max(0.0, bench.senses.measure("hood traverse", v)) if v else 0.0 for k, v in flows.items()})


def _where(bench: Bench) -> str:
    """The wettest place; nowhere, where nothing drips."""
    found = drips(bench)
    place = max(found, key=lambda each: found[each])
    return place if found[place] > 0.0 else "nowhere"


@look("room_air.where_drips")
def where_drips(bench: Bench) -> Answer:
    """Ceiling, pipes, duct and hood looked at from the floor with a lamp."""
    place = _where(bench)
    if place == "nowhere":
        return bench.seen("nowhere", "wide", sure=0.97)
    return bench.seen(place, "wide", "one_spot", sure=0.94)


@look("room_air.when_drips")
def when_drips(bench: Bench) -> Answer:
    """Opener, loader and closer asked."""
    place = _where(bench)
    if place == "nowhere":
        return bench.seen("not_now", "running", sure=0.97)
    if bench.sign("walls run in the morning") > 0.15 and place == "wide":
        return bench.seen("before_start", "running", sure=0.95)
    if place == "one_spot":
        return bench.seen("after_rain", "always", sure=0.93)
    if bench.sign("cooler pan runs over") > 0.15 or place == "pipe":
        return bench.seen("always", "running", sure=0.92)
    if place == "duct" and bench.sign("water lies in the duct") > 0.15:
        return bench.seen("later", "running", sure=0.93)
    cold = bench.sign("duct bare and cold") if place == "duct" else bench.sign("in cold weather only")
    if cold > 0.15 and place in ("duct", "grille", "wide"):
        return bench.seen("cold_days", "running", "before_start", sure=0.9)
    return bench.seen("running", "later", sure=0.92)


@look("room_air.sweating")
def sweating(bench: Bench) -> Answer:
    """Air, wet sock and wiped surface at the wettest place, as it is when it drips."""
    air = bench.plant.air
    place = _where(bench)
    night = bench.sign("walls run in the morning") > 0.15 and place == "wide"
    ratio = humidity_ratio(air.room, _BY_MORNING if night else humidity(bench))
    metal = surface(bench, "wide" if place == "nowhere" else place)
    if place == "grille" and air.surface_at != "grille":
        metal = dew(bench) + 1.5  # an edge that overflows, not one that sweats
    figures = {"air": air.room, "wet": _wet_bulb(air.room, ratio), "surface": metal}
    read = bench.values("sling thermometers", figures).values
    return Answer({**read, "wet": min(read["wet"], read["air"])})  # a wet sock warmer than the air is read again


def _wet_bulb(room: float, ratio: float) -> float:
    """What a thermometer in a wet sock shows in air with so much water in it, [K]."""
    low, high = room - 30.0, room
    if relative_humidity(room, ratio) >= 0.995:
        return room
    for _ in range(30):
        middle = (low + high) / 2
        low, high = (middle, high) if humidity_of_wet_bulb(room, middle) < ratio else (low, middle)
    return (low + high) / 2


@look("room_air.closing_look")
def closing_look(bench: Bench) -> Answer:
    """How the crew closes."""
    return bench.noticed("walls run in the morning", "left_hot", "closed_well", sure=0.97)


@look("room_air.sources_look")
def sources_look(bench: Bench) -> Answer:
    """What else steams in the room."""
    return bench.seen("other" if bench.plant.air.moist > 0.004 else "nothing_else", "nothing_else", sure=0.97)
