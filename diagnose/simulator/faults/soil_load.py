"""What the ware and the crew bring: soil, suds, worn ware; and water past its hours."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "soil_load.not_scrapped",
    (
        "Food rides into the machine on the plates.",
        "The wash water takes up several times the soil that the rinse carries off.",
        "It comes back onto the ware as crumbs and smears.",
    ),
)
def not_scrapped(plant: Plant, severity: float) -> None:
    """Up to two and a half times the usual soil in the water; what is coarse stays on ware and trays."""
    plant.chemistry.soil = 1.5 + 0.9 * severity
    plant.signs["food on the ware"] = 0.5 + 0.5 * severity


@fault(
    "soil_load.dried_on",
    (
        "The soil has dried or baked on.",
        "Water has to soak it before a spray can lift it, and a pass of a minute is too short for that.",
        "The rest of the same plate is bright.",
    ),
)
def dried_on(plant: Plant, severity: float) -> None:
    """A third to nine tenths of it."""
    plant.chemistry.dried = 0.3 + 0.6 * severity


@fault(
    "soil_load.prewash_idle",
    (
        "The pre-wash holds nothing back.",
        "What it used to catch arrives in the wash tank.",
        "That water fouls within the hour.",
    ),
    prewash=(True,),
)
def prewash_idle(plant: Plant, severity: float) -> None:
    """Its spray blocked."""
    plant.pumps["prewash"].suction_open = 0.05
    plant.chemistry.soil = 1.5 + 0.9 * severity
    plant.signs["pre-wash idle"] = 0.6 + 0.4 * severity


@fault(
    "soil_load.tank_spent",
    (
        "The wash water is past its hours.",
        "Fat and fine soil gather faster than the rinse's overflow takes them off.",
        "The detergent is used up on them, and specks come back onto the ware.",
    ),
)
def tank_spent(plant: Plant, severity: float) -> None:
    """Several times the usual soil."""
    plant.chemistry.old += 0.5 + 0.7 * severity
    plant.signs["wash water hours old"] = 1.0


@fault(
    "soil_load.scum_stays",
    (
        "The water stands under the overflow's lip, so nothing skims it.",
        "Fat floats and only goes where the surface runs over.",
        "A fresh fill has its skin of fat within half an hour.",
    ),
)
def scum_stays(plant: Plant, severity: float) -> None:
    """Half an inch to an inch under the lip."""
    tank = plant.tanks["wash"]
    tank.lip = tank.fills_to = 0.97 - 0.03 * severity


@fault(
    "soil_load.starch_film",
    (
        "Starch or protein has built up on the ware pass by pass.",
        "A wash that does not quite take it off leaves a base for the next.",
        "Iodine turns starch blue-black.",
    ),
    onset="slowly",
)
def starch_film(plant: Plant, severity: float) -> None:
    """A film on old ware."""
    plant.signs["starch film"] = 0.35 + 0.6 * severity


@fault(
    "soil_load.metal_marks",
    (
        "Metal rubs off cutlery, trays or bare aluminium onto harder glaze.",
        "What is left are lines as from a pencil.",
        "No detergent dissolves it, a scouring paste takes it.",
    ),
    onset="slowly",
)
def metal_marks(plant: Plant, severity: float) -> None:
    """Grey lines."""
    plant.signs["metal marks"] = 0.35 + 0.6 * severity


@fault(
    "soil_load.ware_worn",
    (
        "Glass is etched, glaze gone, plastic scratched.",
        "The surface itself scatters light.",
        "Nothing takes off what is not on it; new pieces stay clear.",
    ),
    onset="slowly",
)
def ware_worn(plant: Plant, severity: float) -> None:
    """Clouds and scratches."""
    plant.signs["ware worn"] = 0.35 + 0.6 * severity


@fault(
    "soil_load.plastic_holds_water",
    (
        "Plastic stores little heat and water does not wet it evenly.",
        "China dries by its own heat in two minutes; a plastic cup has none left after half of one.",
        "The machine does what it should.",
    ),
    onset="installed",
)
def plastic_holds_water(plant: Plant, severity: float) -> None:
    """Much plastic."""
    plant.signs["much plastic ware"] = 0.35 + 0.6 * severity


@fault(
    "soil_load.presoak_carried",
    (
        "Pre-soak comes into the wash with the ware.",
        "It is made to wet and to foam, and the jets beat air into it.",
        "An hour without soaked racks lets the foam sink.",
    ),
    onset="comes and goes",
)
def presoak_carried(plant: Plant, severity: float) -> None:
    """Foam after soaked racks."""
    plant.signs["pre-soak on the ware"] = 0.35 + 0.6 * severity


@fault(
    "soil_load.soap_poured",
    (
        "Hand soap or a floor cleaner got into the tank.",
        "A spoonful lowers the surface tension of all the water.",
        "It foams hot and before the first rack.",
    ),
    after="cleaning by the crew",
)
def soap_poured(plant: Plant, severity: float) -> None:
    """Suds."""
    plant.chemistry.suds += 0.35 + 0.6 * severity


@fault(
    "soil_load.protein_load",
    (
        "Milk, egg or flour in the wash foams.",
        "Protein holds coarse bubbles that fall within minutes.",
        "It follows certain ware and ends with it.",
    ),
    onset="comes and goes",
)
def protein_load(plant: Plant, severity: float) -> None:
    """Foam with certain racks."""
    plant.signs["milk, egg or dough on the ware"] = 0.35 + 0.6 * severity


@fault(
    "soil_load.fill_bubbles",
    (
        "A fresh fill is full of bubbles while detergent dissolves and the water is cool.",
        "Hot, they burst.",
        "It ends by itself before the rush.",
    ),
    onset="comes and goes",
)
def fill_bubbles(plant: Plant, severity: float) -> None:
    """Bubbles that go."""
    plant.signs["loose bubbles after a fill"] = 0.35 + 0.6 * severity
