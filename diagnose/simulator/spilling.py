"""Water that leaves the machine onto the floor: how much, where it comes first, when, and what kind of water."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.simulator.bench import Bench
from diagnose.simulator.rinsing import relief_state
from diagnose.simulator.washing import ware

__all__ = ["Wet", "lost_outside", "nightly", "wet_places", "worst_wet"]

_DROPS = 1.0e-5  # m3/s, 0.16 gpm: a leak that fills a bucket in a quarter of an hour is spoken of loudly; judgement
_JET = 6.0e-5  # m3/s at a pump's joint, a gallon a minute, likewise
_NIGHT = 8.0 * 3600.0  # s from closing to opening
_HALF = 0.5  # of a gross sign: spray past strips or an edge wets the floor less than a leak does; judgement
_WHEN_RELIEF = {"always": "always", "night": "never", "pauses": "with_rinse", "rinse end": "with_rinse"}


@dataclass(frozen=True)
class Wet:
    """One way onto the floor: how loudly it is complained of, and the outcomes that eyes would choose for it."""

    loud: float
    place: str
    when: str
    kind: str


def lost_outside(bench: Bench) -> float:
    """Water that leaves the tanks at rest past shell, joints and seals, not at the waste pipe, [m3/s]."""
    plant = bench.plant
    return sum(t.shell_leak for t in plant.tanks.values()) + sum(p.seal_leak for p in plant.pumps.values())


def nightly(bench: Bench) -> float:
    """Largest share of a tank's water that seeps away in a night, its fill off."""
    plant = bench.plant
    found = (
        (tank.shell_leak + plant.pumps[name].seal_leak) * _NIGHT / tank.volume for name, tank in plant.tanks.items()
    )
    return min(1.0, max(found))


def wet_places(bench: Bench) -> list[Wet]:
    """Every way onto the floor that there is now."""
    plant, sign = bench.plant, bench.sign
    runs = bench.service.state.running
    seeps = lost_outside(bench)
    sprays = sum(p.joint_leak for p in plant.pumps.values()) if runs else 0.0
    edges = max(sign("door not latched"), sign("door crooked"), sign("door gasket flat"), sign("spray spits at a door"))
    suds = max(ware(bench).foam[name] for name in ("at_once", "with_soaked", "with_protein", "with_any"))
    relief = relief_state(bench) if plant.booster.heater.kind != "none" else "dry"
    tables = max(sign("table seam open below"), sign("table falls away"))
    ends = {end: plant.air.gap[end] if runs else 0.0 for end in ("entrance", "exit")}
    ends["exit"] = max(ends["exit"], sign("spray over curtain") if runs else 0.0)
    found = [
        Wet(2.0 + 5.0 * min(1.0, seeps / _DROPS) if seeps > 2e-7 else 0.0, "underneath", "always", "soapy"),
        Wet(2.0 + 5.0 * min(1.0, sprays / _JET) if sprays > 1e-6 else 0.0, "underneath", "with_pump", "soapy"),
        Wet(4.0 * sign("waste backs up"), "at_drain", "draining", "grey"),
        Wet(4.0 * sign("waste splashes"), "at_drain", "draining", "soapy"),
        Wet(4.0 * sign("overflow choked"), "along_doors", "with_rinse", "soapy"),
        Wet(_marked(edges, 4.0) if runs else 0.0, "along_doors", "with_pump", "soapy"),
        Wet(_marked(ends["entrance"], 3.0), "loading_end", "with_pump", "soapy"),
        Wet(_marked(ends["exit"], 3.0), "clean_end", "with_pump", "soapy"),
        Wet(_marked(sign("rinse jets askew"), 3.0), "clean_end", "with_rinse", "clear"),
        Wet(_marked(suds - 0.15, 4.0) if runs else 0.0, "along_doors", "with_pump", "suds"),
        Wet(0.0 if relief == "dry" else 2.5, "at_pipe", _WHEN_RELIEF.get(relief, "always"), "clear"),
        Wet(4.0 * sign("pipe drips"), "from_above", "always", "clear"),
        Wet(4.0 * sign("rinse breaker spits"), "from_above", "with_rinse", "clear"),
        Wet(4.0 * tables, "along_table", "with_work", "clear"),
        Wet(4.0 * sign("floor wetted by hand"), "working_place", "with_work", "clear"),
    ]
    return [each for each in found if each.loud > 0.0]


def worst_wet(bench: Bench) -> Wet | None:
    """The loudest of them; None on a dry floor."""
    return max(wet_places(bench), key=lambda each: each.loud, default=None)


def _marked(sign: float, most: float) -> float:
    return most * (sign - 0.4 * _HALF) if sign > _HALF else 0.0
