"""How the house works with the machine, where that shows on its meters."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Habits"]


@dataclass
class Habits:
    """Racks for the covers served, changes of water, what stays on at night, and who else is on the meter."""

    racks: float = 1.0  # sent through over what the ware needs, well filled and once
    changes: float = 2.0  # of the tanks' water a day: once a meal
    overnight: float = 0.0  # W that tank heat, booster and fan take after closing
    others: float = 0.0  # m3/s that other consumers draw past the same meter
    yardstick: float = 0.0  # how far the house holds it against something else, 0 to 1
