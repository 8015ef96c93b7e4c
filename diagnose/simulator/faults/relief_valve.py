"""Faults of the booster's relief valve and of what makes it open."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_HEATED = ("electric", "steam", "gas")


@fault(
    "relief_valve.seat_dirty",
    (
        "Grit or lime lies on the seat, so the valve does not shut.",
        "It drips at any pressure, hot or cold.",
        "Flushed by its lever it may stop.",
    ),
    booster=_HEATED,
)
def seat_dirty(plant: Plant, severity: float) -> None:
    """A steady drip."""
    plant.signs["relief seat dirty"] = 0.5 + 0.5 * severity


@fault(
    "relief_valve.opens_early",
    (
        "The spring has weakened and lets go under its stamp.",
        "What the main and the water's growth put on it is then enough.",
        "A gauge beside it shows at which pressure it begins.",
    ),
    onset="slowly",
    booster=_HEATED,
)
def opens_early(plant: Plant, severity: float) -> None:
    """It opens at what stands on the line at rest."""
    stamp = plant.plate.get("relief_pressure", 862e3)
    plant.rinse.relief_share = min(0.8, plant.water.static / stamp) * (1.0 - 0.15 * severity)


@fault(
    "relief_valve.rating_low",
    (
        "The valve is stamped for less than stands on this line.",
        "It opens at its stamp, as it must.",
        "The stamp does not fit the booster's plate.",
    ),
    onset="installed",
    after="parts replaced",
    booster=_HEATED,
)
def rating_low(plant: Plant, severity: float) -> None:
    """Stamp under the standing pressure."""
    stamp = plant.plate.get("relief_pressure", 862e3)
    plant.rinse.relief_share = min(0.6, 0.95 * plant.water.static / stamp)
    plant.signs["relief stamp too low"] = 1.0


@fault(
    "relief_valve.expansion_trapped",
    (
        "A check valve and the shut rinse valve leave the heated water no room.",
        "Water grows by about a fiftieth from 140 to 190 °F, so its pressure climbs until the valve lets that go.",
        "It spits in the pauses, while the booster heats.",
    ),
    onset="installed",
    after="plumbing work",
    booster=_HEATED,
)
def expansion_trapped(plant: Plant, severity: float) -> None:
    """No expansion tank behind a check valve."""
    plant.rinse.shut_in = True
    plant.signs["no expansion tank"] = 1.0


@fault(
    "relief_valve.tank_flat",
    (
        "The expansion tank has lost its air and is full of water.",
        "The heated water finds no cushion, so the pressure climbs to the relief valve's.",
        "It sounds full and no air comes at its valve.",
    ),
    onset="slowly",
    booster=_HEATED,
)
def tank_flat(plant: Plant, severity: float) -> None:
    """A full expansion tank."""
    plant.rinse.shut_in = True
    plant.signs["expansion tank full"] = 1.0


@fault(
    "relief_valve.other_joint",
    (
        "A joint above the valve drips and the water runs down its pipe.",
        "The valve itself is dry.",
        "Towels at three heights show where it comes from.",
    ),
    booster=_HEATED,
)
def other_joint(plant: Plant, severity: float) -> None:
    """A drip from above."""
    plant.signs["joint above relief drips"] = 0.5 + 0.5 * severity
