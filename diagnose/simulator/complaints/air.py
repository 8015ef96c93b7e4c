"""What the kitchen says of steam and drips."""

from __future__ import annotations

from diagnose.simulator.airing import drips, escapes
from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import complaint

__all__: list[str] = []


@complaint("steam_out")
def steam_out(bench: Bench) -> float:
    """Steam rolls out at an end, or rises from doors and covers."""
    lost = escapes(bench)
    ends = max(lost["entrance"], lost["exit"])
    seen = min(9.0, 0.6 + 9.0 * ends) if ends > 0.02 else 0.0
    return max(seen, 8.0 * lost["doors"], 2.0 * bench.sign("whiff at the start"))


@complaint("room_drips")
def room_drips(bench: Bench) -> float:
    """Drops from ceiling, duct, hood, pipes or grilles."""
    return min(6.0, max(drips(bench).values()))
