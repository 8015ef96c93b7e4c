"""What the kitchen says of burning smells."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import complaint
from diagnose.simulator.smelling import worst

__all__: list[str] = []


@complaint("burning_smell")
def burning_smell(bench: Bench) -> float:
    """Something smells burnt, or the box is hot."""
    smell = worst(bench)
    if smell is None:
        return 0.0
    alarming = 1.0 if smell.kind in ("dust", "rubber", "oil", "brakes") else 2.0
    return alarming + 2.0 * smell.mark
