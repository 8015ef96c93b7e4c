"""Faults of the water: its hardness, its salts, what it carries."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_CHEMICAL = ("chemical",)
# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "water_quality.hard_unsoftened",
    (
        "The supply is hard and no softener stands before the machine.",
        "Where a drop dries, its lime stays: 18 grains a gallon are 308 mg in each litre.",
        "Water does not take it off again, an acid does.",
    ),
    onset="installed",
    after="newly connected",
)
def hard_unsoftened(plant: Plant, severity: float) -> None:
    """10 to 25 grains a gallon at the machine."""
    chemistry = plant.chemistry
    chemistry.softener = False
    chemistry.raw_hardness = chemistry.soft_hardness = plant.water.hardness = 0.175 + 0.26 * severity
    plant.signs["no softener"] = 1.0


@fault(
    "water_quality.softener_exhausted",
    (
        "The softener's resin has taken up all it can and is not regenerated.",
        "Raw water then comes out of it as it went in.",
        "Lime films the ware from one day to the next.",
    ),
    onset="suddenly",
)
def softener_exhausted(plant: Plant, severity: float) -> None:
    """Three fifths and more of the raw hardness comes through."""
    chemistry = plant.chemistry
    chemistry.soft_hardness = plant.water.hardness = chemistry.raw_hardness * (0.62 + 0.33 * severity)
    plant.signs["softener without salt"] = 0.35 + 0.6 * severity


@fault(
    "water_quality.bypass_open",
    (
        "The bypass round the softener stands open in part.",
        "Raw water mixes with soft behind it, in the share that goes round.",
        "Behind the softener the test is soft, at the machine it is not.",
    ),
    after="plumbing work",
)
def bypass_open(plant: Plant, severity: float) -> None:
    """Half to nearly all goes round."""
    chemistry = plant.chemistry
    chemistry.soft_hardness = 0.01
    plant.water.hardness = 0.01 + (chemistry.raw_hardness - 0.01) * (0.52 + 0.43 * severity)
    plant.signs["softener bypass open"] = 0.4 + 0.55 * severity


@fault(
    "water_quality.point_uncleaned",
    (
        "Nobody has cleaned the injection point for months.",
        "Where alkali meets hard water, lime falls out at the very spot.",
        "In soft water it does no harm by itself.",
    ),
    onset="slowly",
    sanitising=_CHEMICAL,
)
def point_uncleaned(plant: Plant, severity: float) -> None:
    """A white collar."""
    plant.signs["injection point neglected"] = 0.5 + 0.5 * severity


@fault(
    "water_quality.solids_high",
    (
        "The water is soft and yet full of dissolved salts.",
        "A softener gives sodium for lime, it takes no salt out.",
        "Drops dry to round rims that a wet cloth takes off.",
    ),
    onset="installed",
    after="newly connected",
)
def solids_high(plant: Plant, severity: float) -> None:
    """600 to 1,300 mg/L."""
    plant.chemistry.solids = 0.6 + 0.7 * severity


@fault(
    "water_quality.brine_carried",
    (
        "The softener does not rinse its brine out after regenerating.",
        "For some hours each litre carries salt into the rinse.",
        "It dries to spots, until the pipe has run clear.",
    ),
    onset="comes and goes",
)
def brine_carried(plant: Plant, severity: float) -> None:
    """Four to eight tenths of a gram a litre."""
    plant.chemistry.brine = 0.4 + 0.4 * severity


@fault(
    "water_quality.iron_brown",
    (
        "The water carries iron or manganese.",
        "Alkali, heat and chlorine turn it to rust, which settles on ware.",
        "The veil is tan to brown, and only acid takes it off.",
    ),
    onset="slowly",
)
def iron_brown(plant: Plant, severity: float) -> None:
    """Three to nine tenths of a milligram a litre."""
    plant.chemistry.iron = (0.3 + 0.6 * severity) * 1e-3


@fault(
    "water_quality.grit_in_rinse",
    (
        "Scale or rust has come loose in the rinse's pipes.",
        "The final rinse is the last water on the ware, and what it throws stays.",
        "It is hard and sharp, not soft like food.",
    ),
    after="plumbing work",
)
def grit_in_rinse(plant: Plant, severity: float) -> None:
    """Grains."""
    plant.signs["grit in the rinse"] = 0.4 + 0.6 * severity


@fault(
    "water_quality.alkaline_supply",
    (
        "The supply itself is alkaline.",
        "At a higher pH less of the chlorine stands in the form that kills.",
        "The same strength then asks for a warmer rinse, or works more slowly.",
    ),
    onset="installed",
    after="newly connected",
    sanitising=_CHEMICAL,
)
def alkaline_supply(plant: Plant, severity: float) -> None:
    """pH 8.5 to 9.6."""
    plant.chemistry.ph = 8.5 + 1.1 * severity
