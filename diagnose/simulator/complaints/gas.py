"""What the kitchen says of the gas."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.burning import along, burners
from diagnose.simulator.flames import appearance, burning, lit, roars
from diagnose.simulator.gas_parts import INCH
from diagnose.simulator.registry import complaint

__all__: list[str] = []

_SAID = {"blower_only": 5.0, "no_light": 6.0, "drops_out": 5.0, "yellow": 3.0, "patchy": 2.5, "small": 2.0}


def _strength(bench: Bench, name: str) -> float:
    seen = burning(bench, name)
    if seen is None:
        return 0.0
    short = 10.0 * max(0.0, 0.9 - seen.share) if seen.burns else 0.0
    return _SAID.get(appearance(bench, name), 0.0) + short


@complaint("gas_supply", tank_heat=("gas",))
def gas_supply(bench: Bench) -> float:
    """A burner that is called does not light, drops out, burns small, in gaps or yellow; it roars, or breathes."""
    swing = along(bench.plant, lit(bench)).swing / INCH
    breathes = 1.0 + swing if swing > 0.7 else 0.0
    bangs = 2.0 + roars(bench) if roars(bench) > 0.2 else 0.0
    return max(breathes, bangs, *(_strength(bench, name) for name in burners(bench.plant)))
