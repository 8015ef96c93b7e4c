"""Faults of wash arms, their jets, and the screens before them."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "spray_arms.jets_limed",
    (
        "Lime narrows the slots of the wash jets.",
        "The pump works against more resistance, so it moves less at a higher pressure and its motor draws less.",
        "Less water in thinner fans takes less soil off.",
    ),
    onset="slowly",
)
def jets_limed(plant: Plant, severity: float) -> None:
    """Three quarters to a third of their area left."""
    plant.pumps["wash"].jets_open *= 0.72 - 0.4 * severity
    plant.pumps["wash"].misses += 0.1 * severity
    plant.signs["wash jets limed"] = 0.6 + 0.4 * severity


@fault(
    "spray_arms.manifold_choked",
    (
        "Something sits in the manifold between the near arms and the far ones.",
        "The near arms keep the pump's pressure, the far ones get what passes the obstruction.",
        "In all the pump moves less, against more pressure, and draws less.",
    ),
)
def manifold_choked(plant: Plant, severity: float) -> None:
    """The far half of the jets cut off by degrees."""
    plant.pumps["wash"].jets_open *= 0.72 - 0.25 * severity
    plant.pumps["wash"].misses += 0.12 + 0.2 * severity
    plant.signs["far wash arm weak"] = 0.5 + 0.5 * severity


@fault(
    "spray_arms.jets_missing",
    (
        "Some wash jets are gone or worn wide, and water pours from them in a rope.",
        "The open area takes pressure from all others; more flow at less pressure loads the motor more.",
        "Where the jet was nothing is washed, and elsewhere the fans fall short.",
    ),
    after="cleaning by the crew",
)
def jets_missing(plant: Plant, severity: float) -> None:
    """A quarter to three quarters more area."""
    plant.pumps["wash"].jets_off += 0.28 + 0.45 * severity
    plant.pumps["wash"].misses += 0.1 * severity
    plant.signs["wash jet missing"] = 0.6 + 0.4 * severity


@fault(
    "spray_arms.joint_leaks",
    (
        "The seal between a wash arm and the manifold lets a sheet of water off inside the tank.",
        "It is area beside the jets: pressure falls, flow and current rise.",
        "From outside nothing is seen but a spray that lacks reach.",
    ),
    after="cleaning by the crew",
)
def joint_leaks(plant: Plant, severity: float) -> None:
    """A leak of a quarter to four fifths of the jets' area."""
    plant.pumps["wash"].jets_off += 0.28 + 0.5 * severity
    plant.signs["wash arm loose"] = 0.6 + 0.4 * severity


@fault(
    "spray_arms.arm_turned",
    (
        "The arms stand in each other's places, or turned.",
        "Pressure, flow and current are as they should be; only where the water goes is wrong.",
        "One side or layer of the rack is hardly met, and the spray goes out at the curtains.",
    ),
    after="cleaning by the crew",
)
def arm_turned(plant: Plant, severity: float) -> None:
    """A third to two thirds of the spray beside the ware."""
    plant.pumps["wash"].misses += 0.25 + 0.3 * severity
    plant.signs["wash arms misplaced"] = 0.6 + 0.4 * severity


@fault(
    "scrap_screens.screen_out",
    (
        "A screen is out or torn, and crumbs go through the pump into the jets.",
        "Filled jets raise the pressure at the manifold and lower flow and current.",
        "What passes the jets lands on clean ware.",
    ),
    after="cleaning by the crew",
)
def screen_out(plant: Plant, severity: float) -> None:
    """Jets filled by degrees, crumbs in the water."""
    plant.pumps["wash"].jets_open *= 0.75 - 0.35 * severity
    plant.pumps["wash"].misses += 0.1 * severity
    plant.signs["soil in the wash jets"] = 0.6 + 0.4 * severity
    plant.signs["scrap screen out"] = 0.7 + 0.3 * severity
    plant.signs["crumbs in the spray"] = 0.3 + 0.6 * severity


@fault(
    "scrap_screens.trays_blinded",
    (
        "The trays are felted over and the water stands on them and not over the suction.",
        "The pump takes faster than the trays let through, and draws air.",
        "Stopped for half a minute the pond runs through and the next minute is strong again.",
    ),
)
def trays_blinded(plant: Plant, severity: float) -> None:
    """Air with the water."""
    plant.pumps["wash"].air += 0.12 + 0.22 * severity
    plant.signs["scrap trays felted"] = 0.6 + 0.4 * severity
    plant.signs["scrap baskets full"] = 0.7 + 0.3 * severity
