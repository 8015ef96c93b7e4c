"""What can be read at the steam booster."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.steam_flow import steam_heaters
from diagnose.simulator.steam_parts import SteamBranch
from diagnose.simulator.steam_state import called, calling, held, share, to_bucket

__all__: list[str] = []

_STEAM = ("steam",)
_COLD = 0.04  # of the plate's pressure: under it a pipe is not steam-hot
_SCANT = 0.3  # likewise: under it a trap makes little and is barely warm
_FILLED = 0.25  # share of a coil under water that is felt at its trap
_SHELL = 0.0004  # m of lime that can be lifted with a nail


def _branch(bench: Bench) -> SteamBranch:
    return bench.plant.booster.heater.steam


def _coil(bench: Bench) -> float:
    return share(bench, calling(bench).coil["booster"])


def _filled(bench: Bench) -> bool:
    """Whether water stands in the coil."""
    return _coil(bench) > 0.1 and calling(bench).filled["booster"] > _FILLED


@look("booster_steam.coil_pressure", booster=_STEAM)
def coil_pressure(bench: Bench) -> Answer:
    """The gauge between valve and coil while racks follow one another."""
    return Answer({"": max(0.0, bench.senses.measure("test gauge", calling(bench).coil["booster"]))})


@look("booster_steam.valve_opens", booster=_STEAM)
def valve_opens(bench: Bench) -> Answer:
    """Knock, and the pipe before and after the valve."""
    if share(bench, calling(bench).machine) < _COLD:
        return bench.seen("cool_before", "not_pulled", sure=0.95)
    if not called(bench, "booster") or bench.sign("booster steam solenoid burnt") > 0.5:
        return bench.seen("not_pulled", sure=0.98)
    stays = _branch(bench).valve_opens < 0.3
    return bench.seen("pulled_but_cool" if stays else "opens", "opens", "not_pulled" if stays else "opens", sure=0.96)


@look("booster_steam.solenoid_volts", booster=_STEAM)
def solenoid_volts(bench: Bench) -> Answer:
    """Volts at the steam solenoid on a call, and whether it knocks."""
    if not called(bench, "booster") and bench.sign("booster coil open") < 0.15:
        return bench.seen("missing", sure=0.99)
    still = _branch(bench).valve_opens < 0.3 or bench.sign("booster coil open") > 0.15
    return bench.seen("right_but_still" if still else "right_and_opens", "right_and_opens", sure=0.95)


@look("booster_steam.trap_temperature", booster=_STEAM)
def trap_temperature(bench: Bench) -> Answer:
    """The pipe before and after the trap after three minutes of racks."""
    if not called(bench, "booster") or _coil(bench) < _COLD:
        return bench.seen("scant", "held", sure=0.95)
    if _filled(bench):
        return bench.seen("held", "scant", sure=0.95)
    if _branch(bench).air > 0.3:
        return bench.seen("held", "working", sure=0.8)
    return bench.seen("scant" if _coil(bench) < _SCANT else "working", "working", sure=0.97)


@look("booster_steam.into_bucket", booster=_STEAM)
def into_bucket(bench: Bench) -> Answer:
    """The trap's outlet opened into a bucket: what comes, and whether the heat comes back."""
    if _branch(bench).floods > 0.3:
        return bench.seen("floods", "no_change", sure=0.93)
    if called(bench, "booster") and to_bucket(bench, "booster") > 1.3:
        return bench.seen("heat_back", "no_change", sure=0.97)
    rated = bench.plant.booster.heater.power
    scant = calling(bench).heat["booster"] < (0.55 if _filled(bench) else 0.35) * rated
    return bench.seen("nothing_comes" if scant else "no_change", "no_change", sure=0.96)


@look("booster_steam.steam_off_cock", booster=_STEAM)
def steam_off_cock(bench: Bench) -> Answer:
    """The cock before the trap with the steam shut off."""
    return bench.seen("runs_on" if _branch(bench).floods > 0.3 else "stops", "stops", sure=0.97)


@look("booster_steam.air_cock", booster=_STEAM)
def air_cock(bench: Bench) -> Answer:
    """The air cock from a cold start."""
    if _filled(bench) or _branch(bench).floods > 0.3:
        return bench.seen("water", "steam_at_once", sure=0.94)
    if _branch(bench).air > 0.3:
        return bench.seen("air", "steam_at_once", sure=0.95)
    nothing = not called(bench, "booster") or _coil(bench) < _COLD
    return bench.seen("air" if nothing else "steam_at_once", "steam_at_once", sure=0.97)


@look("booster_steam.strainer_look", booster=_STEAM)
def strainer_look(bench: Bench) -> Answer:
    """The screen of the booster's own strainer, drawn."""
    return bench.seen("blocked" if _branch(bench).strainer_open < 0.5 else "clear", "clear", sure=0.98)


@look("booster_steam.rise_and_condensate", booster=_STEAM)
def rise_and_condensate(bench: Bench) -> Answer:
    """Condensate weighed for two minutes at full rinse flow."""
    return bench.value("scale", held(bench).condensate)


@look("booster_steam.rise", booster=_STEAM)
def rise(bench: Bench) -> Answer:
    """Probes on the pipes into and out of the booster, after minutes of full flow."""
    return bench.value("two thermometers", held(bench).rise)


@look("booster_steam.coil_look", booster=_STEAM)
def coil_look(bench: Bench) -> Answer:
    """The coil's water side by camera or with the head off."""
    lime = _branch(bench).coil_scale + bench.plant.booster.heater.scale
    return bench.seen("limed" if lime > _SHELL else "bare", "bare", sure=0.96)


@look("booster_steam.pipe_after_valve", booster=_STEAM)
def pipe_after_valve(bench: Bench) -> Answer:
    """The pipe after the valve, ten minutes without a rack."""
    plant = bench.plant
    if plant.fuel.steam.main <= 0.0:
        return bench.seen("cools", sure=0.98)
    if plant.booster.thermostat.stuck is True and called(bench, "booster"):
        return bench.seen("hot_called", "hot_uncalled", sure=0.96)
    passes = steam_heaters(plant)["booster"].welded or _branch(bench).valve_leaks > 0.02
    return bench.seen("hot_uncalled" if passes else "cools", "cools", sure=0.97)
