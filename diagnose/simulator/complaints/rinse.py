"""What the kitchen says of the final rinse."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import complaint

__all__: list[str] = []


@complaint("rinse_cold")
def rinse_cold(bench: Bench) -> float:
    """The panel shows less than the plate's least, or ware comes out cool and labels do not turn."""
    least = bench.plant.plate["rinse_temperature"]
    return max(0.0, least - 0.5 - min(bench.rinse_panel, bench.manifold)) if bench.rinse_trace else 0.0


@complaint("rinse_hot")
def rinse_hot(bench: Bench) -> float:
    """Steam and a panel above the published 194 °F (FDA Food Code 4-501.112)."""
    return max(0.0, bench.rinse_panel - 363.7)
