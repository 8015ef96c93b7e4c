"""What can be read of steam that enters a tank: through a leaking coil, or by its injector."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.steam_state import tank_calling

__all__: list[str] = []

_COIL, _INJECTOR = ("steam coil",), ("steam injector",)
_BREAKS = 0.1  # of an injector's steam through the surface: it is seen and felt


@look("tank_control.level_watch", tank_heat=_COIL)
def level_watch(bench: Bench) -> Answer:
    """Level after ten minutes with the fill shut and steam on: a quarter inch is seen, some 3 kg of water."""
    rises = 600.0 * tank_calling(bench).stays["wash"] > 1.5 or bench.plant.tanks["wash"].fill_leak > 0.0
    return bench.seen("rises" if rises else "steady", "steady", sure=0.97)


@look("tank_control.coil_test", tank_heat=_COIL)
def coil_test(bench: Bench) -> Answer:
    """The coil under test pressure, tank drained."""
    return bench.seen("weeps" if bench.plant.tanks["wash"].heater.steam.hole > 0.02 else "holds", "holds", sure=0.97)


def _worst(bench: Bench) -> tuple[str, float]:
    """The injector whose steam breaks through most, and the share of its steam that does; of none, the wash tank's."""
    flow = tank_calling(bench)
    shares = {n: flow.bursts[n] / (flow.bursts[n] + flow.stays[n] + 1e-9) for n in bench.plant.tanks if n in flow.stays}
    name = max(shares, key=lambda each: shares[each])
    return (name, shares[name]) if shares[name] > 0.01 else ("wash", 0.0)


@look("tank_control.injector_watch", tank_heat=_INJECTOR)
def injector_watch(bench: Bench) -> Answer:
    """The water above the injectors, pumps off."""
    return bench.seen("breaks_through" if _worst(bench)[1] > _BREAKS else "crackles", "crackles", sure=0.97)


@look("tank_control.injector_pressure", tank_heat=_INJECTOR)
def injector_pressure(bench: Bench) -> Answer:
    """A gauge before the injector of the tank that thumps, while it runs."""
    pressure = tank_calling(bench).coil[_worst(bench)[0]]
    return Answer({"": max(0.0, bench.senses.measure("test gauge", pressure))})
