"""Faults of the rinse aid's feed."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "rinse_aid_feed.stock_out",
    (
        "The rinse aid's jug is empty.",
        "Its head turns and moves air.",
        "Without it water stands on the ware in beads, and what it holds dries to rings.",
    ),
)
def aid_out(plant: Plant, severity: float) -> None:
    """Empty."""
    plant.chemistry.rinse_aid.left = 0.0


@fault(
    "rinse_aid_feed.sucks_air",
    (
        "The rinse aid's suction side draws air.",
        "Slugs and bubbles give each rack another dose.",
        "On the whole it is too little, and ware beads.",
    ),
)
def aid_air(plant: Plant, severity: float) -> None:
    """Three fifths and more of it air."""
    plant.chemistry.rinse_aid.air = 0.66 + 0.3 * severity


@fault(
    "rinse_aid_feed.tube_flat",
    (
        "The rinse aid's squeeze tube has gone flat.",
        "A turn moves a third of what it did.",
        "The dose fell from week to week, and spots came with it.",
    ),
    onset="slowly",
)
def aid_tube(plant: Plant, severity: float) -> None:
    """A third to a tenth of the dose."""
    plant.chemistry.rinse_aid.tube = 0.36 - 0.24 * severity


@fault(
    "rinse_aid_feed.dial_low",
    (
        "The rinse aid's dose is set too small for this water.",
        "Line, head and tube do what they should.",
        "Below a few tens of parts in a million the water no longer runs off as a film.",
    ),
    after="chemical call or delime",
)
def aid_low(plant: Plant, severity: float) -> None:
    """A quarter and less of the usual dose."""
    plant.chemistry.rinse_aid.setting = 0.24 - 0.18 * severity


@fault(
    "rinse_aid_feed.inlet_shut",
    (
        "The fitting in the rinse pipe is grown shut.",
        "The head pushes against it, the line swells and the column stands.",
        "Hardly any rinse aid gets into the rinse.",
    ),
    onset="slowly",
)
def aid_inlet(plant: Plant, severity: float) -> None:
    """A quarter and less of its passage."""
    plant.chemistry.rinse_aid.delivery = 0.25 - 0.22 * severity


@fault(
    "rinse_aid_feed.overfeeds",
    (
        "Rinse aid is fed many times too much.",
        "The surfactant foams in the last tank and dries to streaks and colours.",
        "An acid product also lowers the rinse's pH and lets chlorine go.",
    ),
    after="chemical call or delime",
)
def aid_over(plant: Plant, severity: float) -> None:
    """Four to ten times."""
    plant.chemistry.rinse_aid.setting = 4.0 + 6.0 * severity
