"""Faults of the feeds' control, lines and heads that any chemical can have."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "chemical_feeds.box_unpowered",
    (
        "The feeds' control has no supply, so none of its heads turns.",
        "Wash, heat and rinse have their own circuit and go on as ever.",
        "The wash thins out as the rinse runs through it: after a tank's volume a third of its strength is left.",
    ),
    after="electrical work",
)
def box_unpowered(plant: Plant, severity: float) -> None:
    """Dark."""
    plant.chemistry.box = "dark"


@fault(
    "chemical_feeds.signal_missing",
    (
        "The machine's signal does not arrive at the feeds' control.",
        "The control lives and its buttons turn the heads, but it never learns that wash or rinse runs.",
        "Without the signal nothing is fed, whatever the settings.",
    ),
    after="electrical work",
)
def signal_missing(plant: Plant, severity: float) -> None:
    """No signal."""
    plant.chemistry.box = "no signal"


@fault(
    "chemical_feeds.alarm_lockout",
    (
        "The low-level switch of the pickup hangs and tells an empty drum that is full.",
        "The control holds that feed so that it does not pump air.",
        "The chemical stays away until the switch is freed or the alarm reset.",
    ),
)
def alarm_lockout(plant: Plant, severity: float) -> None:
    """The detergent's feed, or (milder) the rinse aid's."""
    feed = plant.chemistry.detergent if severity > 0.5 else plant.chemistry.rinse_aid
    feed.alarm = True


@fault(
    "chemical_feeds.set_off",
    (
        "One feed's setting stands at nought or in its service position.",
        "Its head turns at the button and never by itself.",
        "What is not fed is washed out by the rinse water or missing from it at once.",
    ),
    after="chemical call or delime",
)
def set_off(plant: Plant, severity: float) -> None:
    """The detergent's feed, or (milder) the rinse aid's."""
    feed = plant.chemistry.detergent if severity > 0.5 else plant.chemistry.rinse_aid
    feed.setting = 0.0
    plant.signs["a feed set to nought"] = 1.0


@fault(
    "chemical_feeds.not_primed",
    (
        "The drum was changed and the long line behind its pickup is full of air.",
        "A dose of a few millilitres a rack takes a dozen racks and more to fill it.",
        "Until then the head turns and nothing arrives.",
    ),
    after="chemical call or delime",
)
def not_primed(plant: Plant, severity: float) -> None:
    """Air in the detergent's line, or (milder) the rinse aid's."""
    feed = plant.chemistry.detergent if severity > 0.5 else plant.chemistry.rinse_aid
    feed.primed = False


@fault(
    "chemical_feeds.pickup_blocked",
    (
        "Gel or crystals close the strainer at the foot of the pickup.",
        "The head pulls a vacuum that flattens the line, and next to nothing passes.",
        "The drum stays full while the chemical is missing.",
    ),
    onset="slowly",
)
def pickup_blocked(plant: Plant, severity: float) -> None:
    """A tenth and less of the detergent, or (milder) of the rinse aid."""
    feed = plant.chemistry.detergent if severity > 0.5 else plant.chemistry.rinse_aid
    feed.pickup = 0.14 - 0.12 * severity


@fault(
    "chemical_feeds.head_open",
    (
        "The head's cover is not home, and its rollers do not close the tube.",
        "What one roller pushes forward flows back under the next.",
        "The head turns freely and the column in its line stands.",
    ),
    after="chemical call or delime",
)
def head_open(plant: Plant, severity: float) -> None:
    """The detergent's head, or (milder) the rinse aid's."""
    feed = plant.chemistry.detergent if severity > 0.5 else plant.chemistry.rinse_aid
    feed.head = 0.08 * (1.0 - severity)


@fault(
    "chemical_feeds.delivery_blocked",
    (
        "The end of the detergent's line is crusted shut, or the line is kinked.",
        "The head pushes against it: the tube swells and slips back.",
        "The drum hardly sinks and the wash goes thin.",
    ),
    onset="slowly",
)
def delivery_blocked(plant: Plant, severity: float) -> None:
    """A sixth and less of its passage left."""
    plant.chemistry.detergent.delivery = 0.18 - 0.16 * severity


@fault(
    "chemical_feeds.tank_charged",
    (
        "The wash holds its strength, so its probe has nothing to call for.",
        "The head rests until the rinse has thinned the tank below the set point.",
        "A resting head is then what is meant, and a drop test shows it.",
    ),
)
def tank_charged(plant: Plant, severity: float) -> None:
    """As designed, and taken for a fault."""
    plant.signs["tank well charged"] = 0.5 + 0.5 * severity
