"""What the feeds give: detergent into the wash, rinse aid and sanitiser into the rinse, and what becomes of it."""

from __future__ import annotations

import math

from diagnose.simulator.feeds import Chemistry, Feed
from diagnose.simulator.plant import Plant
from diagnose.simulator.state import DENSITY

__all__ = ["arrives", "chlorine_on_ware", "delivered", "detergent_fed", "head_turns", "point_share", "rinse_ph"]

_FEEDER = 20.0  # s in which the detergent's feed makes up what lacks, as far as its pump can: judgement
_IN_HAND = 2.2  # times what the rinse carries off that a sound detergent pump can feed: judgement
_HARD = 0.085  # kg/m3, 5 gpg: above it an uncleaned injection point grows shut (common practice)
_HOT = 333.0  # K, 140 °F: above it chlorine gasses off
_GASSES = 0.04  # share a kelvin above: judgement


def head_turns(chemistry: Chemistry, feed: Feed, asked: bool = True) -> bool:
    """Whether a feed's head turns in service when its chemical is `asked` for."""
    return asked and _can_turn(chemistry, feed) and chemistry.box == "works" and feed.told != "never" and not feed.alarm


def _can_turn(chemistry: Chemistry, feed: Feed) -> bool:
    return feed.turns and chemistry.box != "dark" and feed.setting > 0.02


def point_share(plant: Plant) -> float:
    """Share of its passage that lime leaves the injection point: hard water and a point that nobody cleans."""
    if plant.signs.get("injection point neglected", 0.0) < 0.15 or plant.water.hardness <= _HARD:
        return 1.0
    return 0.2


def delivered(feed: Feed, passage: float = 1.0) -> float:
    """Share of a turn's volume that leaves the drum: the tube, its rollers, air, what is blocked or empty."""
    if feed.left <= 0.0 or not feed.primed:
        return 0.0
    return feed.tube * feed.head * (1.0 - feed.air) * feed.pickup * feed.delivery * passage


def arrives(chemistry: Chemistry, feed: Feed, passage: float = 1.0) -> float:
    """Dose at the point of feeding over the usual one, of a feed timed with the rinse."""
    turned = feed.setting if head_turns(chemistry, feed) else 0.0
    return (turned + feed.runs_on) * delivered(feed, passage) * (1.0 - feed.spills) * feed.meets


def detergent_fed(plant: Plant, strength: float, mass: float, wanted: float) -> float:
    """Detergent into the wash tank, [kg/s], at this strength, [kg/kg], in this mass of water, [kg].

    The probe calls as long as it tells less than what is set; the pump makes up at most what it can move.
    """
    chemistry, feed = plant.chemistry, plant.chemistry.detergent
    lacks = wanted * feed.setting - strength * feed.probe
    if lacks <= 0.0 or not head_turns(chemistry, feed) or "detergent" in chemistry.swapped:
        return 0.0
    most = _IN_HAND * wanted * plant.rinse.rated_flow * DENSITY * delivered(feed) * max(1.0, feed.tube)
    return feed.stock * min(most, lacks / max(feed.probe, 0.05) * mass / _FEEDER)


def rinse_ph(plant: Plant, detergent: float) -> float:
    """pH of the final rinse on the ware; `detergent` is the wash's strength over the usual one.

    What is carried over lifts it by two thirds of a unit for each doubling above the usual strength; an acid rinse aid
    fed ten times lowers it by two units: judgement.
    """
    chemistry = plant.chemistry
    ph = chemistry.ph + 0.1 + 0.95 * math.log2(max(detergent, 1.0))
    if "rinse aid" in chemistry.swapped and "detergent" in chemistry.swapped:
        return max(ph, 10.3)
    aid = arrives(chemistry, chemistry.rinse_aid)
    return ph - 2.2 * math.log10(max(aid, 1.0))


def chlorine_on_ware(plant: Plant, flow_share: float, temperature: float, aid: float) -> tuple[float, float]:
    """Chlorine in the jet and on the ware, [mg/L]: dose over water, less what gasses off and what soil eats up.

    `flow_share` is the rinse's flow over the plate's, `temperature` that at the jets, [K]; `aid` the rinse aid over the
    usual dose, which spoils chlorine when it is acid and far too much.
    """
    chemistry = plant.chemistry
    if flow_share <= 0.02 or "sanitiser" in chemistry.swapped:
        return 0.0, 0.0
    feed = chemistry.sanitiser
    dosed = plant.plate["sanitiser_wanted"] * arrives(chemistry, feed, point_share(plant)) * feed.stock / flow_share
    jet = dosed * max(0.15, 1.0 - _GASSES * max(0.0, temperature - _HOT))
    if aid > 2.5:
        jet *= max(0.1, 1.0 - 0.12 * aid)
    eaten = plant.signs.get("wash water carried into the rinse", 0.0)
    return jet, jet * (1.0 - 0.85 * eaten)
