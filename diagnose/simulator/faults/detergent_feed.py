"""Faults of the detergent's feed."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "detergent_feed.set_high",
    (
        "The detergent's set point is far too high.",
        "The tank charges to two or three times its strength and holds it.",
        "What is carried into the rinse grows with it: film on glass, and a rinse that is alkaline.",
    ),
    after="chemical call or delime",
)
def set_high(plant: Plant, severity: float) -> None:
    """Up to three times."""
    plant.chemistry.detergent.setting = 1.7 + 1.3 * severity
    plant.signs["detergent set too high"] = 0.6 + 0.4 * severity


@fault(
    "detergent_feed.probe_limed",
    (
        "Lime covers the faces of the probe, and it tells less than is there.",
        "The feed goes on until even the covered probe is content.",
        "The true strength then is a multiple of the set one.",
    ),
    onset="slowly",
)
def probe_limed(plant: Plant, severity: float) -> None:
    """Tells three fifths to a quarter."""
    plant.chemistry.detergent.probe = 0.56 - 0.28 * severity
    plant.signs["detergent probe limed"] = 0.6 + 0.4 * severity


@fault(
    "detergent_feed.stock_out",
    (
        "The detergent's container is empty, or what is left does not reach the pickup.",
        "The head turns without a pause and moves air.",
        "The rinse thins the wash out within half an hour.",
    ),
)
def detergent_out(plant: Plant, severity: float) -> None:
    """Empty."""
    plant.chemistry.detergent.left = 0.0


@fault(
    "detergent_feed.sucks_air",
    (
        "The detergent's suction side draws air at a joint.",
        "Each turn moves slugs of liquid between bubbles.",
        "The pump runs all the time and the tank never reaches its strength.",
    ),
)
def detergent_air(plant: Plant, severity: float) -> None:
    """Four fifths and more of it air."""
    plant.chemistry.detergent.air = 0.8 + 0.17 * severity


@fault(
    "detergent_feed.tube_flat",
    (
        "The squeeze tube has gone flat and holds little a turn.",
        "In a quiet hour the pump still keeps up; at the rush the rinse carries off more than it can move.",
        "The strength sinks with the number of racks.",
    ),
    onset="slowly",
)
def detergent_tube(plant: Plant, severity: float) -> None:
    """A sixth to a fifteenth of a new tube's volume."""
    plant.chemistry.detergent.tube = 0.17 - 0.1 * severity


@fault(
    "detergent_feed.set_low",
    (
        "The detergent's set point is too low for soil and water.",
        "The feed does what it is told: it charges, stops and holds, only too thin.",
        "Fat and tea stay on the ware while every part works.",
    ),
    after="chemical call or delime",
)
def detergent_low(plant: Plant, severity: float) -> None:
    """Two fifths to a tenth of the usual strength."""
    plant.chemistry.detergent.setting = 0.38 - 0.25 * severity


@fault(
    "detergent_feed.probe_bridged",
    (
        "Something conducts between the probe's faces or in its plug.",
        "The control believes in a strong wash and rests in plain water.",
        "Taken off, the lead makes the feed start at once.",
    ),
)
def probe_bridged(plant: Plant, severity: float) -> None:
    """Tells far too much."""
    plant.chemistry.detergent.probe = 30.0


@fault(
    "detergent_feed.wrong_product",
    (
        "The detergent is one for sinks or for other water.",
        "It lowers the water's surface tension and holds the air that the jets beat in.",
        "The feed, the probe and the drop test may all be right, and it foams and cleans poorly all the same.",
    ),
    after="chemical call or delime",
)
def wrong_product(plant: Plant, severity: float) -> None:
    """Suds, and a part of the cleaning."""
    plant.chemistry.suds += 0.3 + 0.4 * severity
    plant.signs["another detergent"] = 0.8 + 0.2 * severity
    plant.chemistry.detergent.stock *= 0.75 - 0.3 * severity


@fault(
    "detergent_feed.pickups_swapped",
    (
        "The pickups of detergent and rinse aid stand in each other's drums.",
        "The wash gets a surfactant and no alkali, the rinse alkali and no surfactant.",
        "So the wash is thin and foams, and the ware leaves slippery and dries hazy.",
    ),
    after="chemical call or delime",
)
def pickups_swapped(plant: Plant, severity: float) -> None:
    """Changed over."""
    plant.chemistry.swapped = ("detergent", "rinse aid")
