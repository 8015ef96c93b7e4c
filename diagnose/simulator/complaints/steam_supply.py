"""What the kitchen says of the steam."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import complaint
from diagnose.simulator.steam_flow import COIL, steam_heaters
from diagnose.simulator.steam_state import at_rest, called, gauge, share, tank_calling

__all__: list[str] = []

_THERE, _COOL = 0.6, 0.4  # of the plate's pressure: steam is at the machine, and a coil feels cool; judgement


@complaint("steam_supply", booster=("steam",))
def steam_supply(bench: Bench) -> float:
    """A gauge that is low or past its mark, a coil that stays cold, bangs, hisses and clouds."""
    shown = share(bench, gauge(bench))
    rest = share(bench, at_rest(bench).machine)
    parts = steam_heaters(bench.plant)
    said = [
        8.0 * (0.82 - shown),
        3.0 * (shown - 1.3),
        3.0 * (rest - 1.5),  # the safety valve
        5.0 * bench.sign("steam bangs"),
        3.0 * bench.sign("steam line cold at first"),
        4.0 * bench.sign("steam joint blows"),
    ]
    for heater in parts.values():
        said.append(8.0 * heater.steam.trap_blows - 1.0)
        said.append(2.0 if heater.steam.valve_leaks > 0.03 else 0.0)  # it hisses
    said.extend(_cold_coils(bench))
    return max(0.0, *said)


def _cold_coils(bench: Bench) -> list[float]:
    """Coils that stay cold while their heat is asked for, though the machine's gauge is right."""
    flow, parts = tank_calling(bench), steam_heaters(bench.plant)
    found = [0.0]
    for name, heater in parts.items():
        branch = heater.steam
        if called(bench, name) and share(bench, flow.machine) > _THERE:
            found.append(5.0 * (_COOL - share(bench, flow.coil[name])))
        if heater.kind in COIL:
            found.extend((3.0 * (flow.filled[name] - 0.3), 2.0 * branch.air - 0.8))
    return found
