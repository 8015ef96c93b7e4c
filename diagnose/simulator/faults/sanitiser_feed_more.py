"""Faults that make the sanitiser too strong, or seem to."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_CHEMICAL = ("chemical",)
# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "sanitiser_feed.set_high",
    (
        "The pump is set too fast or its time too long.",
        "Two or three times the dose in the same water is two or three times the strength.",
        "It smells at the exit and bleaches cloths.",
    ),
    after="chemical call or delime",
    sanitising=_CHEMICAL,
)
def set_high(plant: Plant, severity: float) -> None:
    """Up to three and a half times."""
    plant.chemistry.sanitiser.setting = 1.7 + 1.8 * severity


@fault(
    "sanitiser_feed.tube_large",
    (
        "A squeeze tube of larger bore was fitted.",
        "What a turn moves grows with the square of the bore: half as much again gives 2.25 times the dose.",
        "Setting and speed are as ever, and the rinse too strong.",
    ),
    after="parts replaced",
    sanitising=_CHEMICAL,
)
def tube_large(plant: Plant, severity: float) -> None:
    """A third to two thirds wider."""
    plant.chemistry.sanitiser.tube = (1.33 + 0.33 * severity) ** 2


@fault(
    "sanitiser_feed.runs_on",
    (
        "The pump goes on turning when the rinse has stopped: a relay that hangs.",
        "What it moves in the pause waits in the pipe for the next rack.",
        "So the first rack gets a multiple, and the jug is empty in days.",
    ),
    sanitising=_CHEMICAL,
)
def runs_on(plant: Plant, severity: float) -> None:
    """As much again to twice as much more in the pauses."""
    plant.chemistry.sanitiser.runs_on = 0.8 + 1.3 * severity


@fault(
    "sanitiser_feed.siphons",
    (
        "The resting tube does not close, and the jug stands higher than the injection point.",
        "Stock runs in by its own weight, and faster in the draught of the rinse.",
        "The rinse is too strong, most of all after a pause.",
    ),
    sanitising=_CHEMICAL,
)
def siphons(plant: Plant, severity: float) -> None:
    """Nearly as much again to twice as much more."""
    plant.chemistry.sanitiser.runs_on = 0.8 + 1.2 * severity
    plant.chemistry.sanitiser.siphons = True


@fault(
    "sanitiser_feed.stock_strong",
    (
        "A stronger product stands at the feed than it is set for.",
        "The millilitres are as ever, each with twice the chlorine.",
        "Strips and smell rose with the new jug.",
    ),
    after="chemical call or delime",
    sanitising=_CHEMICAL,
)
def stock_strong(plant: Plant, severity: float) -> None:
    """Up to two and a half times."""
    plant.chemistry.sanitiser.stock = 1.65 + 0.85 * severity
    plant.signs["another sanitiser"] = 0.6 + 0.4 * severity


@fault(
    "sanitiser_feed.bleach_poured",
    (
        "Somebody pours bleach into a tank by hand.",
        "The wash itself then smells of it and turns a strip.",
        "It comes in spells, and a little goes over with the ware.",
    ),
    onset="comes and goes",
)
def bleach_poured(plant: Plant, severity: float) -> None:
    """50 to 200 ppm in the wash."""
    plant.signs["bleach in the wash"] = 0.4 + 0.6 * severity


@fault(
    "sanitiser_feed.spilled",
    (
        "A chemical stands open or was spilled beside the machine.",
        "It evaporates there, whether the machine runs or not.",
        "On the ware everything is as it should be.",
    ),
)
def spilled(plant: Plant, severity: float) -> None:
    """A smell at the jugs."""
    plant.signs["chlorine at the jugs"] = 0.4 + 0.6 * severity
    plant.signs["chemical spilled"] = 0.5 + 0.5 * severity


@fault(
    "sanitiser_feed.strip_late",
    (
        "The strip is held to its card after a minute and not at once.",
        "Its colour goes on deepening with time.",
        "What is written down is twice what is there.",
    ),
    sanitising=_CHEMICAL,
)
def strip_late(plant: Plant, severity: float) -> None:
    """Half as much again to two and a half times."""
    plant.signs["strips read late"] = 0.4 + 0.6 * severity
