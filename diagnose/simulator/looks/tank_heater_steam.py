"""What can be read of the wash tank's steam coil or injector."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.steam_parts import SteamBranch
from diagnose.simulator.steam_state import called, share, tank_calling

__all__: list[str] = []

_COIL, _EITHER, _INJECTOR = ("steam coil",), ("steam coil", "steam injector"), ("steam injector",)
_COLD = 0.04  # of the plate's pressure: under it a pipe is not steam-hot
_SCANT = 0.12  # likewise: under it a trap makes little and stays lukewarm
_FILLED = 0.25  # share of a coil under water that is felt at its trap
_SHELL = 0.0004  # m of lime that can be lifted with a spatula


def _branch(bench: Bench) -> SteamBranch:
    return bench.plant.tanks["wash"].heater.steam


def _pressure(bench: Bench) -> float:
    return share(bench, tank_calling(bench).coil["wash"])


def _filled(bench: Bench) -> bool:
    """Whether water stands in the coil."""
    return _pressure(bench) > 0.1 and tank_calling(bench).filled["wash"] > _FILLED


@look("tank_heater_steam.coil_pressure", tank_heat=_EITHER)
def coil_pressure(bench: Bench) -> Answer:
    """A test gauge behind the tank's valve, the tank calling."""
    return Answer({"": max(0.0, bench.senses.measure("test gauge", tank_calling(bench).coil["wash"]))})


@look("tank_heater_steam.condensate", tank_heat=_COIL)
def condensate(bench: Bench) -> Answer:
    """Condensate weighed while the coil heats, with what blows through its trap."""
    flow, heater = tank_calling(bench), bench.plant.tanks["wash"].heater
    blown = heater.steam.trap_blows * _pressure(bench) ** 0.5
    weighed = flow.drained["wash"] * (1.0 + blown)
    return Answer({"": max(0.0, bench.senses.measure("scale", weighed))})


@look("tank_heater_steam.valve_opens", tank_heat=_EITHER)
def valve_opens(bench: Bench) -> Answer:
    """Knock, and the pipe ahead of and behind the valve."""
    if share(bench, tank_calling(bench).machine) < _COLD:
        return bench.seen("cool_before", "not_called", sure=0.95)
    if not called(bench, "wash"):
        return bench.seen("not_called", sure=0.98)
    return bench.seen("still" if _branch(bench).valve_opens < 0.3 else "opens", "opens", sure=0.97)


@look("tank_heater_steam.trap_temperature", tank_heat=_COIL)
def trap_temperature(bench: Bench) -> Answer:
    """The coil's trap, before and behind, after ten minutes of a call."""
    if not called(bench, "wash") or _pressure(bench) < _SCANT or _filled(bench):
        return bench.seen("lukewarm", "working", sure=0.95)
    far = _branch(bench).air > 0.3
    return bench.seen("far_end_cool" if far else "working", "working", sure=0.9)


@look("tank_heater_steam.air_cock", tank_heat=_COIL)
def air_cock(bench: Bench) -> Answer:
    """The cock ahead of the trap, opened a little from cold."""
    if _filled(bench):
        return bench.seen("water", "steam", sure=0.95)
    return bench.seen("air" if _branch(bench).air > 0.3 else "steam", "steam", sure=0.96)


@look("tank_heater_steam.strainer_look", tank_heat=_EITHER)
def strainer_look(bench: Bench) -> Answer:
    """The screen of the branch's strainer, drawn."""
    return bench.seen("blocked" if _branch(bench).strainer_open < 0.5 else "clear", "clear", sure=0.98)


@look("tank_heater_steam.coil_look", tank_heat=_COIL)
def coil_look(bench: Bench) -> Answer:
    """The coil, tank drained."""
    lime = _branch(bench).coil_scale + bench.plant.tanks["wash"].heater.scale
    return bench.seen("limed" if lime > _SHELL else "bare", "bare", sure=0.97)


@look("tank_heater_steam.injector_holes", tank_heat=_INJECTOR)
def injector_holes(bench: Bench) -> Answer:
    """The injector's holes against a lamp."""
    return bench.seen("blocked" if _branch(bench).holes_open < 0.75 else "open", "open", sure=0.97)
