"""What a logger on a plate reads."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import plate_trace
from diagnose.simulator.senses import Answer

__all__: list[str] = []


@look("rinse_proof.trace", sanitising=("hot water",))
def trace(bench: Bench) -> Answer:
    """The twelve hottest seconds of a plate, one after another."""
    return bench.values("reference thermometer", {f"s{n}": t for n, t in enumerate(plate_trace(bench), 1)})
