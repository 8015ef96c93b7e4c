"""What the burners do on a bench: which are called, how each burns, what the kitchen sees of it."""

from __future__ import annotations

from dataclasses import replace

from diagnose.simulator.bench import Bench
from diagnose.simulator.burning import Flame, burner_of, burners, flame, rest_pressure, why_unlit
from diagnose.simulator.gas_parts import INCH
from diagnose.simulator.heating import heats

__all__ = ["FUR", "INLET", "appearance", "burning", "called", "lit", "main_burner", "roars"]

FUR = 0.15  # of the passages' width from which soot is seen: judgement
INLET = 5.0 * INCH  # Pa, common practice for natural gas ahead of the valve
# What an eye tells from a good flame: judgement.
_SMALL = 0.87  # share of the rated gas
_BREATHES = 0.08  # swing from which a flame is seen to swell and sink, over the rated gas
_GAPS = 0.93  # share of the jets' area that is free
_YELLOW = 150.0  # ppm of carbon monoxide that goes with yellow tips
_MOST = 10.5 * INCH  # Pa at rest above which burners roar: common practice


def called(bench: Bench, name: str) -> bool:
    """Whether a burner's control gives it the order with its water cold: the end of service, all calling that can."""
    plant = bench.plant
    controls = {"booster": plant.booster.thermostat, **{n: t.thermostat for n, t in plant.tanks.items()}}
    state = replace(bench.service.state, calls={n: c.stuck is not False for n, c in controls.items()})
    part = plant.booster.heater if name == "booster" else plant.tanks[name].heater
    return part.feed_open and heats(plant, state, name)


def lit(bench: Bench) -> list[str]:
    """Burners that are called and burn."""
    return [n for n in burners(bench.plant) if called(bench, n) and why_unlit(bench.plant, n)[1] > 0.0]


def burning(bench: Bench, name: str, alone: bool = False) -> Flame | None:
    """How a burner burns, all else on the line burning as at the rush, or alone; none where it is not called."""
    if burner_of(bench.plant, name) is None or not called(bench, name):
        return None
    firing = [name] if alone else lit(bench)
    return flame(bench.plant, name, firing, bench.heating.temperatures[name], others=not alone)


def main_burner(bench: Bench) -> str:
    """The burner at whose valve the supply is read: the booster's, or else the wash tank's."""
    return "booster" if burner_of(bench.plant, "booster") is not None else "wash"


def appearance(bench: Bench, name: str) -> str:
    """What is seen: nothing, blower_only, no_light, drops_out, small, breathes, patchy, yellow, or blue."""
    seen, burner = burning(bench, name), burner_of(bench.plant, name)
    if seen is None or burner is None:
        return "nothing"
    if not seen.burns:
        return {"air": "blower_only", "proof": "drops_out"}.get(seen.why, "no_light")
    if seen.carbon_monoxide > _YELLOW:
        return "yellow"
    if burner.jets_open < _GAPS:
        return "patchy"
    if seen.share - seen.trough > _BREATHES:
        return "breathes"
    return "small" if seen.trough < _SMALL else "blue"


def roars(bench: Bench) -> float:
    """By how much the gas at rest stands over what burners bear, [inches of water]."""
    return max(0.0, rest_pressure(bench.plant.fuel.gas) - _MOST) / INCH
