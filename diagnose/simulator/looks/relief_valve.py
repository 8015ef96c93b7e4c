"""What can be read at the booster's relief valve."""

from __future__ import annotations

from diagnose.physics.expansion import expanded_volume
from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import relief_state
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_HOTTEST = 363.0  # K, to where the density of water is reckoned; hotter it grows little more
_HEATED = ("electric", "steam", "gas")


def _stamp(bench: Bench) -> float:
    return bench.plant.plate.get("relief_pressure", 862e3)


@look("relief_valve.when_blows", booster=_HEATED)
def when_blows(bench: Bench) -> Answer:
    """When water or steam comes from the relief pipe."""
    said = {"dry": "never", "always": "always", "pauses": "in_pauses", "rinse end": "rinse_end"}
    state = relief_state(bench)
    return bench.seen({**said, "night": "at_night", "steam": "steam_blows"}[state], "in_pauses", sure=0.93)


@look("relief_valve.standing_pair", booster=_HEATED)
def standing_pair(bench: Bench) -> Answer:
    """Pressure at the booster right after a rinse, and as the heat is cut."""
    opens = _stamp(bench) * bench.plant.rinse.relief_share
    after = min(bench.plant.water.static, opens)
    hot = min(opens, after + (6e5 if bench.plant.rinse.shut_in else 1.5e4))
    return bench.values("test gauge", {"after a rinse": after, "heat cut": hot})


@look("relief_valve.caught", booster=_HEATED)
def caught(bench: Bench) -> Answer:
    """Water from the relief pipe between the last rack and the end of heating."""
    booster = bench.plant.booster
    cold, hot = bench.plant.water.temperature, min(booster.thermostat.setting, _HOTTEST)
    grown = expanded_volume(booster.volume, cold, hot) if hot > cold else 0.0
    state = relief_state(bench)
    volume = {"dry": 0.0, "pauses": grown, "rinse end": 0.3 * grown, "night": 2.5 * grown, "steam": 6 * grown}
    return Answer({"": max(0.0, bench.senses.measure("bucket and watch", volume.get(state, 3.0 * grown)))})


@look("relief_valve.opening_pressure", booster=_HEATED)
def opening_pressure(bench: Bench) -> Answer:
    """The pressure at which it begins to pass water, by the stamp it has."""
    stamped = 0.6 if bench.sign("relief stamp too low") > 0.0 else 1.0
    share = 1.0 if stamped < 1.0 else bench.plant.rinse.relief_share
    if bench.sign("relief seat dirty") > 0.15:
        share = 0.5
    return bench.value("test gauge", share * _stamp(bench))


@look("relief_valve.stamp_read", booster=_HEATED)
def stamp_read(bench: Bench) -> Answer:
    """Its stamp beside the booster's plate."""
    return bench.noticed("relief stamp too low", "too_low", "fits_plate", sure=0.97)


@look("relief_valve.tank_tapped", booster=_HEATED)
def tank_tapped(bench: Bench) -> Answer:
    """The expansion tank tapped."""
    return bench.strongest("sound", 0.95, expansion_tank_full="full", no_expansion_tank="no_tank")


@look("relief_valve.lever_flushed", booster=_HEATED)
def lever_flushed(bench: Bench) -> Answer:
    """The lever lifted three times with the booster cooled: what heat or the night's pressure lifts is dry."""
    if relief_state(bench) != "always":
        return bench.seen("was_dry", "goes_on", sure=0.95)
    dirty = bench.sign("relief seat dirty")
    return bench.seen("stops" if 0.0 < dirty < 0.85 else "goes_on", "goes_on", sure=0.9)


@look("relief_valve.pipe_traced", booster=_HEATED)
def pipe_traced(bench: Bench) -> Answer:
    """Towels at three heights, heat off: what only heat or the night's pressure lifts is mostly dry then."""
    if bench.sign("joint above relief drips") > 0.15:
        return bench.seen("from_above", "from_within", sure=0.95)
    if relief_state(bench) == "always":
        return bench.seen("from_within", "dry", sure=0.95)
    return bench.seen("dry", "from_within", sure=0.98 if relief_state(bench) == "dry" else 0.75)
