"""Faults of the dish room: the air it gets and loses, what blows at the machine, and what is cold or wet above it."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_MOVED = "machine or tables moved"
_PAST = "Steam is pushed out there faster than the vent takes it, with fan and dampers in order."
_ALONE = "Alone it does little; both ways closed, the exhaust starves and steam comes out at both ends."
_DEW = "Whatever lies under the air's dew point is wetted by it."


@fault(
    "room_air.makeup_off",
    (
        "The room's make-up air is off, or its filter lets none through.",
        "What the exhaust takes then has to come by doors and grilles.",
        _ALONE,
    ),
)
def makeup_off(plant: Plant, severity: float) -> None:
    """Off, tripped or felted."""
    plant.air.supply = 0.25 - 0.2 * severity


@fault(
    "room_air.room_shut_tight",
    (
        "Grilles and gaps of the room are closed.",
        "With the make-up air running nothing is missed; without it only cracks are left to draw from.",
        _ALONE,
    ),
    onset="installed",
)
def room_shut_tight(plant: Plant, severity: float) -> None:
    """Taped, boarded, brushed."""
    plant.air.ways = 0.6 - 0.15 * severity


@fault(
    "room_air.kitchen_hoods_pull",
    (
        "The cooking hoods take more air than the kitchen is given and draw the rest out of the dish room.",
        "The room goes under suction, which the exhaust fan has to win against, and air drifts out past the ends.",
        "With the hoods off the suction is gone.",
    ),
    onset="comes and goes",
)
def kitchen_hoods_pull(plant: Plant, severity: float) -> None:
    """Turned up, or one more of them."""
    plant.air.hoods = 1.9 + 0.7 * severity
    plant.air.ways = 0.92


@fault(
    "room_air.through_draught",
    (
        "The room of the soiled side stands under pressure against that of the clean side.",
        "The machine's tunnel is the shortest way between them, so air blows through it past the strips.",
        "The end it leaves at steams hard, the other never.",
    ),
    onset="installed",
    after=_MOVED,
)
def through_draught(plant: Plant, severity: float) -> None:
    """More than dampers win against."""
    plant.air.between = 9.0 + 14.0 * severity


@fault(
    "room_air.portable_fan",
    ("A portable fan blows along the machine.", "Its air is faster than what the vent draws in at the end.", _PAST),
)
def portable_fan(plant: Plant, severity: float) -> None:
    """Set up against the heat."""
    plant.air.draught["exit"] = 0.5 + 0.6 * severity
    plant.signs["portable fan blows"] = 1.0


@fault(
    "room_air.outside_door_open",
    ("A door to outdoors stands open beside the machine.", "The wind comes in by it across an end, in gusts.", _PAST),
    onset="comes and goes",
)
def outside_door_open(plant: Plant, severity: float) -> None:
    """Wedged open."""
    plant.air.draught["entrance"] = 0.42 + 0.5 * severity
    plant.signs["outside door open"] = 1.0


@fault(
    "room_air.supply_grille",
    ("A grille overhead blows down on an end.", "Its stream is faster than what the vent draws in there.", _PAST),
    onset="installed",
    after="newly connected",
)
def supply_grille(plant: Plant, severity: float) -> None:
    """Its vanes point at it."""
    plant.air.draught["exit"] = 0.4 + 0.4 * severity
    plant.air.supply = 1.0 + 0.1 * severity
    plant.signs["grille blows down"] = 1.0


@fault(
    "room_air.as_designed",
    (
        "In the first minutes duct and room are cold.",
        "The little moisture that passes a sound curtain turns to fog in cold air and is seen.",
        "Once the duct is warm the fog is gone, with every flow and temperature in its band.",
    ),
    onset="installed",
)
def as_designed(plant: Plant, severity: float) -> None:
    """A whiff."""
    plant.signs["whiff at the start"] = 0.5 + 0.5 * severity


@fault(
    "room_air.pipe_sweats",
    (
        "A cold pipe runs over the machine without insulation.",
        "Ordinary kitchen air has its dew point above that pipe's skin.",
        "It beads along its length by day and night, under a dry ceiling.",
    ),
    onset="installed",
    after="plumbing work",
)
def pipe_sweats(plant: Plant, severity: float) -> None:
    """Some 50 °F."""
    plant.air.surface = 284.5 - 2.5 * severity
    plant.air.surface_at = "pipe"


@fault(
    "room_air.roof_cold",
    ("Ceiling or wall has lost its insulation.", "In cold weather its inner side falls far under the room.", _DEW),
    onset="comes and goes",
)
def roof_cold(plant: Plant, severity: float) -> None:
    """Wet or fallen insulation."""
    plant.air.surface = 284.5 - 3.0 * severity
    plant.air.surface_at = "wide"
    plant.signs["in cold weather only"] = 1.0


@fault(
    "room_air.makeup_cold",
    ("Make-up air comes in unheated.", "It chills its grille and the tiles round it on cold days.", _DEW),
    onset="comes and goes",
)
def makeup_cold(plant: Plant, severity: float) -> None:
    """Its heater is off."""
    plant.air.surface = 284.0 - 4.0 * severity
    plant.air.surface_at = "grille"
    plant.signs["in cold weather only"] = 1.0


@fault(
    "room_air.cooler_pan",
    (
        "The drain of a ceiling cooler's pan is blocked.",
        "What its coil takes out of the air fills the pan and runs over its edge.",
        "It drips as long as the cooling runs, dish machine or not.",
    ),
    onset="slowly",
)
def cooler_pan(plant: Plant, severity: float) -> None:
    """Slime in its drain."""
    plant.signs["cooler pan runs over"] = 0.5 + 0.5 * severity


@fault(
    "room_air.roof_leaks",
    (
        "Water comes through the roof or from a pipe of the floor above.",
        "It gathers on a tile and falls at one spot, after rain or when water runs upstairs.",
        "It was never steam, so machine and room air are in order.",
    ),
    onset="comes and goes",
)
def roof_leaks(plant: Plant, severity: float) -> None:
    """One brown ring."""
    plant.signs["water from above"] = 0.5 + 0.5 * severity


@fault(
    "room_air.left_hot",
    (
        "Tanks are left full and hot at closing with the fan off.",
        "All night they give off vapour into a room that cools.",
        "By morning ceiling and walls run; with the fan on they dry within the first hour.",
    ),
    onset="comes and goes",
)
def left_hot(plant: Plant, severity: float) -> None:
    """Every evening."""
    plant.signs["walls run in the morning"] = 0.5 + 0.5 * severity


@fault(
    "room_air.other_source",
    (
        "A sink, kettle, hose or stacks of hot racks steam in the room.",
        "Their vapour raises the dew point of the room's air over its ceiling.",
        "Both ends of the machine stay clear.",
    ),
)
def other_source(plant: Plant, severity: float) -> None:
    """As much as a machine gives off."""
    plant.air.moist = 0.011 + 0.006 * severity
