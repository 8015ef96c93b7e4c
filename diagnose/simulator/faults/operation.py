"""How the machine is loaded, fed and unloaded."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
# Shares of racks that jam and how marked a sign is: judgement throughout.


@fault(
    "operation.racks_broken",
    (
        "Broken or warped racks are in use.",
        "Where the pawl or the rail wants an edge, there is none.",
        "Only those racks stop, wherever they happen to be.",
    ),
    onset="slowly",
    conveyor=_RACKS,
)
def racks_broken(plant: Plant, severity: float) -> None:
    """Every tenth rack to every fourth."""
    plant.conveyor.jams += 0.08 + 0.17 * severity
    plant.signs["racks broken"] = 0.5 + 0.5 * severity


@fault(
    "operation.racks_mixed",
    (
        "Racks of two sizes run together.",
        "A narrower one turns between the rails, a wider one wedges.",
        "The old ones pass as ever.",
    ),
    conveyor=_RACKS,
)
def racks_mixed(plant: Plant, severity: float) -> None:
    """Every tenth rack to every fourth."""
    plant.conveyor.jams += 0.08 + 0.17 * severity
    plant.signs["racks of two sizes"] = 0.5 + 0.5 * severity


@fault(
    "operation.ware_overhangs",
    (
        "Ware stands out over the rack.",
        "It meets a curtain rod, an arm or the rail, and the pawls push on.",
        "The rack turns or stops, always with such a load.",
    ),
    conveyor=_RACKS,
)
def ware_overhangs(plant: Plant, severity: float) -> None:
    """Every tenth rack to every fourth."""
    plant.conveyor.jams += 0.08 + 0.17 * severity
    plant.signs["ware overhangs"] = 0.5 + 0.5 * severity


@fault(
    "operation.loaded_crooked",
    (
        "Racks are set on askew or heavy on one side.",
        "One corner meets the rail first and the pawls turn the rack about it.",
        "With other hands at the load end nothing happens.",
    ),
    onset="comes and goes",
    conveyor=_RACKS,
)
def loaded_crooked(plant: Plant, severity: float) -> None:
    """Every tenth rack to every fourth."""
    plant.conveyor.jams += 0.08 + 0.17 * severity
    plant.signs["racks fed askew"] = 0.5 + 0.5 * severity


@fault(
    "operation.pushed_in",
    (
        "Racks are pushed in against the conveyor or pulled from it.",
        "They ride up on each other or stand between two pawls.",
        "It happens at the rush, and bends pawls over the months.",
    ),
    onset="comes and goes",
    conveyor=_RACKS,
)
def pushed_in(plant: Plant, severity: float) -> None:
    """Every tenth rack to every fourth."""
    plant.conveyor.jams += 0.08 + 0.17 * severity
    plant.signs["racks pushed or pulled"] = 0.5 + 0.5 * severity


@fault(
    "operation.wrong_side",
    (
        "Racks go in with the wrong side first.",
        "Under that side the pawls find no bar to push.",
        "Turned by a quarter they go.",
    ),
    conveyor=_RACKS,
)
def wrong_side(plant: Plant, severity: float) -> None:
    """Every tenth rack to every fourth."""
    plant.conveyor.jams += 0.08 + 0.17 * severity
    plant.signs["racks wrong side first"] = 0.5 + 0.5 * severity


@fault(
    "operation.nested",
    (
        "Pieces cover one another in the rack.",
        "No spray reaches what another piece covers, and no drop runs off it.",
        "Every piece that stands free is clean and dry.",
    ),
)
def nested(plant: Plant, severity: float) -> None:
    """Covered pieces."""
    plant.signs["ware nested"] = 0.35 + 0.6 * severity


@fault(
    "operation.stacked_wet",
    (
        "Ware is stacked as it comes.",
        "Drying takes two minutes of standing in air.",
        "A rack left alone is dry.",
    ),
)
def stacked_wet(plant: Plant, severity: float) -> None:
    """Stacked at once."""
    plant.signs["stacked at once"] = 0.35 + 0.6 * severity


@fault(
    "operation.low_heat_wet",
    (
        "A chemical rinse leaves the ware lukewarm.",
        "Its heat is too little to dry it in two minutes.",
        "It is dry after eight or ten, as designed.",
    ),
    onset="installed",
    after="newly connected",
    sanitising=("chemical",),
)
def low_heat_wet(plant: Plant, severity: float) -> None:
    """As designed."""
    plant.signs["ware expected dry at once"] = 0.35 + 0.6 * severity


@fault(
    "operation.hands_soiled",
    (
        "Hands that scrap also take the clean ware.",
        "What is on the gloves goes onto rims and handles.",
        "The ware left the machine bright.",
    ),
)
def hands_soiled(plant: Plant, severity: float) -> None:
    """Smears like fingers."""
    plant.signs["hands soil the ware"] = 0.35 + 0.6 * severity


@fault(
    "operation.racks_soiled",
    (
        "The racks themselves or the clean table are dirty.",
        "Where ware touches them it takes their grease.",
        "The lines lie where the bars are.",
    ),
    onset="slowly",
)
def racks_soiled(plant: Plant, severity: float) -> None:
    """Lines under plates."""
    plant.signs["racks soiled"] = 0.35 + 0.6 * severity
