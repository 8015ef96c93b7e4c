"""Faults of the sanitiser's feed, its stock, and of those who read its strips."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_CHEMICAL = ("chemical",)
# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "sanitiser_feed.stock_empty",
    (
        "The sanitiser's jug is empty or its pickup hangs above what is left.",
        "The pump turns with every rinse and moves air.",
        "The rinse has no chlorine at all.",
    ),
    sanitising=_CHEMICAL,
)
def stock_empty(plant: Plant, severity: float) -> None:
    """Empty."""
    plant.chemistry.sanitiser.left = 0.0


@fault(
    "sanitiser_feed.air_in_line",
    (
        "The pickup line draws air at a joint or a crack.",
        "A pump that squeezes bubbles moves less liquid, and less at one rack than at the next.",
        "The strength in the rinse falls in the same share.",
    ),
    sanitising=_CHEMICAL,
)
def air_in_line(plant: Plant, severity: float) -> None:
    """Two fifths to nearly all of it air."""
    plant.chemistry.sanitiser.air = 0.38 + 0.5 * severity


@fault(
    "sanitiser_feed.pump_dead",
    (
        "The sanitiser's pump does not turn: motor, gears or its own supply.",
        "Rinse and other feeds run as ever.",
        "Nothing is fed and the strip stays white.",
    ),
    sanitising=_CHEMICAL,
)
def pump_dead(plant: Plant, severity: float) -> None:
    """Still."""
    plant.chemistry.sanitiser.turns = False


@fault(
    "sanitiser_feed.wrong_signal",
    (
        "The feed is driven by another signal than the final rinse's.",
        "It turns when no rinse flows, and rests while it does.",
        "The mean dose may even be right while the ware gets little of it.",
    ),
    onset="installed",
    after="electrical work",
    sanitising=_CHEMICAL,
)
def wrong_signal(plant: Plant, severity: float) -> None:
    """Out of step with the rinse."""
    plant.chemistry.sanitiser.told = "at other times"
    plant.chemistry.sanitiser.meets = 0.6 - 0.45 * severity


@fault(
    "sanitiser_feed.tube_worn",
    (
        "The squeeze tube has taken a set and does not spring open behind the roller.",
        "It fills only in part, so each turn moves less.",
        "The strength in the rinse falls with it, week by week.",
    ),
    onset="slowly",
    sanitising=_CHEMICAL,
)
def tube_worn(plant: Plant, severity: float) -> None:
    """Seven tenths to a fifth of a new tube."""
    plant.chemistry.sanitiser.tube = 0.68 - 0.45 * severity


@fault(
    "sanitiser_feed.set_low",
    (
        "The pump is set too slow or its time too short.",
        "Everything works and is sound, only the dose is small.",
        "Dose over water is strength: half the dose is half the strength.",
    ),
    after="chemical call or delime",
    sanitising=_CHEMICAL,
)
def set_low(plant: Plant, severity: float) -> None:
    """Seven tenths to a third of the dose."""
    plant.chemistry.sanitiser.setting = 0.68 - 0.35 * severity
    plant.signs["sanitiser time short"] = 1.0 if severity > 0.7 else 0.0  # slow, or (gross) timed too short


@fault(
    "sanitiser_feed.point_blocked",
    (
        "Lime or crystals close the injection point or its check valve.",
        "The pump pushes against it, the line swells and slips back.",
        "A part of the dose or nothing gets into the rinse.",
    ),
    onset="slowly",
    sanitising=_CHEMICAL,
)
def point_blocked(plant: Plant, severity: float) -> None:
    """Three fifths to nothing of its passage."""
    plant.chemistry.sanitiser.delivery = 0.6 * (1.0 - severity)


@fault(
    "sanitiser_feed.line_split",
    (
        "The line between pump and injection point is split.",
        "The right dose leaves the jug and a part of it runs down outside.",
        "So the floor smells of it and the rinse is weak.",
    ),
    sanitising=_CHEMICAL,
)
def line_split(plant: Plant, severity: float) -> None:
    """Two fifths to nearly all lost."""
    plant.chemistry.sanitiser.spills = 0.4 + 0.55 * severity
    plant.signs["chlorine at the jugs"] = 0.4 + 0.6 * severity


@fault(
    "sanitiser_feed.stock_stale",
    (
        "The stock has aged in warmth and light.",
        "Hypochlorite breaks down by itself, the faster the warmer it stands.",
        "The same millilitres then carry half the chlorine.",
    ),
    onset="slowly",
    sanitising=_CHEMICAL,
)
def stock_stale(plant: Plant, severity: float) -> None:
    """Seven tenths to a quarter of its strength."""
    plant.chemistry.sanitiser.stock = 0.7 - 0.45 * severity
    plant.signs["sanitiser jug old"] = 0.6 + 0.4 * severity


@fault(
    "sanitiser_feed.stock_wrong",
    (
        "A weaker product was delivered, or the jug was filled up with water.",
        "The pump moves what it is set for.",
        "Each millilitre carries less chlorine, so the strip reads less.",
    ),
    after="chemical call or delime",
    sanitising=_CHEMICAL,
)
def stock_wrong(plant: Plant, severity: float) -> None:
    """Seven tenths to a third of its strength."""
    plant.chemistry.sanitiser.stock = 0.68 - 0.35 * severity
    plant.signs["another sanitiser"] = 0.6 + 0.4 * severity


@fault(
    "sanitiser_feed.tubes_swapped",
    (
        "The sanitiser's pickup stands in another chemical's drum.",
        "Pump and line do what they should with the wrong liquid.",
        "No chlorine reaches the ware.",
    ),
    after="chemical call or delime",
    sanitising=_CHEMICAL,
)
def tubes_swapped(plant: Plant, severity: float) -> None:
    """Swapped."""
    plant.chemistry.swapped = (*plant.chemistry.swapped, "sanitiser")


@fault(
    "sanitiser_feed.eaten_up",
    (
        "Wash water and soil come into the rinse with the ware.",
        "Chlorine oxidises them first and is used up by it.",
        "In the jet the strength is right, on the ware little of it is left.",
    ),
    sanitising=_CHEMICAL,
)
def eaten_up(plant: Plant, severity: float) -> None:
    """Half to four fifths eaten."""
    plant.signs["wash water carried into the rinse"] = 0.4 + 0.55 * severity


@fault(
    "sanitiser_feed.rinse_overheated",
    (
        "The rinse is far hotter than a chemical one is meant to be.",
        "Chlorine leaves hot water as gas before it has worked.",
        "It smells at both ends and the strip reads low.",
    ),
    after="plumbing work",
    sanitising=_CHEMICAL,
)
def rinse_overheated(plant: Plant, severity: float) -> None:
    """155 to 180 °F."""
    plant.water.temperature = 341.0 + 14.0 * severity
    plant.signs["chlorine at the exit"] = 0.5 + 0.5 * severity


@fault(
    "sanitiser_feed.strips_old",
    (
        "The strips have aged or drawn moisture.",
        "Their dye answers to half of the chlorine that is there.",
        "The rinse is right; another bottle of strips shows it.",
    ),
    onset="slowly",
    sanitising=_CHEMICAL,
)
def strips_old(plant: Plant, severity: float) -> None:
    """Read seven tenths to a fifth."""
    plant.signs["old strips"] = 0.35 + 0.5 * severity
