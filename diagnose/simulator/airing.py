"""Steam that leaves the machine in service, where and when; how wet the room's air is, and what drips."""

from __future__ import annotations

from dataclasses import replace

from diagnose.physics.air_state import dew_point, relative_humidity
from diagnose.physics.moist_air import humidity_ratio
from diagnose.simulator.airway import ENDS, AirFlow
from diagnose.simulator.bench import Bench
from diagnose.simulator.control import stalls, starts
from diagnose.simulator.moment import Moment, moment_of

__all__ = ["air_now", "dew", "drips", "escapes", "humidity", "rinses_out", "starts_late", "surface"]

_SETTLED = 300.0  # s after which a run is judged
_WETS = 0.03  # kg/kg that the room's air gains with all the wanted exhaust's steam let out into it: judgement
_CEILING = 2.0  # K that ceiling and walls lie under the room's air: judgement
_MUCH = 0.95  # of the wanted exhaust as steam: over what a sound rinse gives off
_LEAST = 0.02  # share of the wanted exhaust that eyes see as steam: judgement


def air_now(bench: Bench) -> AirFlow:
    """Air with the machine started anew, its overloads reset: a fan that can't run up moves none."""
    if not stalls(bench.plant, "fan"):
        return bench.restarted.air
    if "air now" not in bench.kept:
        state = replace(bench.service.state, running=starts(bench.plant), tripped=set(), stalled={"fan"})
        bench.kept["air now"] = moment_of(bench.plant, state, True).air
    found = bench.kept["air now"]
    assert isinstance(found, AirFlow)
    return found


def escapes(bench: Bench, rinsing: bool | None = None) -> dict[str, float]:
    """Steam that leaves at entrance, exit and doors over the exhaust wanted there: the mean of a settled run.

    `rinsing`: only while the final rinse flows, or only while it does not.
    """
    samples = [s.moment for s in bench.service.samples if s.time >= _SETTLED]
    chosen = [m for m in samples if rinsing is None or m.rinsing is rinsing] or [bench.restarted]
    wanted = bench.plant.air.wanted
    found = {end: sum(m.air.escapes[end] for m in chosen) / len(chosen) / wanted[end] for end in ENDS}
    found["doors"] = bench.plant.air.leaks if bench.service.state.running else 0.0
    return found


def rinses_out(bench: Bench) -> bool:
    """Whether steam comes only while the final rinse flows, and much more than a sound rinse gives off."""
    on, off = escapes(bench, rinsing=True), escapes(bench, rinsing=False)
    only = max(on["entrance"], on["exit"]) > 0.05 and max(off["entrance"], off["exit"]) < _LEAST
    air = bench.plant.air
    rising = max((s.moment.air.steam["exit"] for s in bench.service.samples), default=0.0) / air.wanted["exit"]
    return only and rising > _MUCH * (1.0 + 3.0 * (air.gap["exit"] + air.held["exit"]))


def starts_late(bench: Bench) -> bool:
    """Whether the first minutes are clear and steam comes later: the fan has dropped out."""
    early = [_all(bench, s.moment) for s in bench.service.samples if 20.0 <= s.time <= 90.0]
    late = [_all(bench, s.moment) for s in bench.service.samples if s.time > _SETTLED]
    return bool(early and late) and max(early) < 0.05 and sum(late) / len(late) > _LEAST


def _all(bench: Bench, moment: Moment) -> float:
    return sum(moment.air.escapes.values()) / sum(bench.plant.air.wanted.values())


def humidity(bench: Bench) -> float:
    """Of the room's air, as a fraction: the weather's, and the steam that came out of machine and sinks."""
    air = bench.plant.air
    lost = escapes(bench)
    share = sum(lost[end] * air.wanted[end] for end in ENDS) / sum(air.wanted.values()) + 0.4 * lost["doors"]
    ratio = humidity_ratio(air.room, air.humidity) + _WETS * min(share, 0.6) + air.moist
    return min(0.99, relative_humidity(air.room, min(ratio, humidity_ratio(air.room, 0.99))))


def dew(bench: Bench) -> float:
    """Dew point of the room's air, [K]."""
    return dew_point(humidity_ratio(bench.plant.air.room, humidity(bench)))


def surface(bench: Bench, place: str) -> float:
    """Temperature of what is wet at a place, [K]: ceiling, a cold pipe or grille, metal that the exhaust warms."""
    air = bench.plant.air
    if place in ("duct", "hood_edge"):
        return air.room + 5.0
    if air.surface is not None and place == air.surface_at:
        return air.surface
    if place == "one_spot":
        return dew(bench) + 1.5
    return air.room - _CEILING


def drips(bench: Bench) -> dict[str, float]:
    """How strongly it drips, by place: 0 for not at all."""
    air, sign = bench.plant.air, bench.sign
    sweats = {}
    for place in ("wide", "pipe", "grille"):
        if place == "wide" or place == air.surface_at:
            over = dew(bench) - surface(bench, place)
            sweats[place] = 0.25 * over + 1.0 if over > 0.5 else 0.0
    return {
        "wide": max(sweats["wide"], 4.0 * sign("walls run in the morning")),
        "pipe": sweats.get("pipe", 0.0),
        "grille": max(sweats.get("grille", 0.0), 4.0 * sign("cooler pan runs over")),
        "one_spot": 4.0 * sign("water from above"),
        "duct": 4.0 * max(sign("drips back from the duct"), sign("drops at the duct's joints")),
        "hood_edge": 4.0 * max(sign("gutter stands full"), sign("filters drip")),
    }
