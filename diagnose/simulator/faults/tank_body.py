"""Faults by which a tank loses its water, and by which water comes onto the floor."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_MOVED = "machine or tables moved"
_HEAD = "The tank's head presses water out day and night, pump on or off."
_BY_NIGHT = "By day the fill makes it up; by morning the level has sunk, and the waste pipe was dry."


@fault(
    "tank_body.baffle_out",
    (
        "The plate between the two tanks is out, or stands off its stop.",
        "With both pumps on one throws its water over to the other's side.",
        "One level falls and its fill runs, the other climbs and runs over; at rest both hold.",
    ),
    after="cleaning by the crew",
    tanks=(2,),
)
def baffle_out(plant: Plant, severity: float) -> None:
    """A gallon a minute and more changes sides."""
    plant.tanks["rinse"].thrown = 5e-5 + 1.2e-4 * severity
    plant.signs["baffle out"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.seam_cracked",
    ("A weld or bend of the tank is cracked.", _HEAD, _BY_NIGHT),
    onset="slowly",
    after=_MOVED,
)
def seam_cracked(plant: Plant, severity: float) -> None:
    """An inch in half an hour to two hours."""
    plant.tanks["wash"].shell_leak = 4e-6 + 7e-6 * severity
    plant.signs["weld wet"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.flange_weeps",
    ("A gasket or gland in the tank's wall weeps.", _HEAD, _BY_NIGHT),
    after="parts replaced",
)
def flange_weeps(plant: Plant, severity: float) -> None:
    """Drops from its lowest bolt."""
    plant.tanks["wash"].shell_leak = 3.2e-6 + 6e-6 * severity
    plant.signs["flange wet"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.drain_joint",
    ("The drain valve's joint or stem drips on its outside.", _HEAD, _BY_NIGHT),
    onset="slowly",
    after="plumbing work",
)
def drain_joint(plant: Plant, severity: float) -> None:
    """Beside the waste, not into it."""
    plant.tanks["wash"].shell_leak = 3.2e-6 + 6e-6 * severity
    plant.signs["drain joint wet"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.delivery_joint",
    (
        "The joint between pump and manifold is not tight.",
        "The pump's pressure drives a jet out there, and the jets are left with a little less.",
        "The level falls while it washes only; at rest nothing drips.",
    ),
    after="parts replaced",
)
def delivery_joint(plant: Plant, severity: float) -> None:
    """A gallon in some minutes."""
    plant.pumps["wash"].joint_leak = 2e-5 + 4e-5 * severity
    plant.pumps["wash"].jets_off += 0.02 + 0.05 * severity
    plant.signs["delivery joint sprays"] = 0.7 + 0.3 * severity


@fault(
    "tank_body.carried_out",
    (
        "Cups, bowls and pans stand right side up.",
        "They come out full of water that belongs in the tank.",
        "Without racks the level holds.",
    ),
    onset="comes and goes",
)
def carried_out(plant: Plant, severity: float) -> None:
    """Up to a gallon in two racks."""
    plant.conveyor.carries = 0.4 + 1.2 * severity
    plant.signs["water carried out"] = 0.6 + 0.4 * severity
    plant.signs["ware carries water out"] = 0.1 * severity


@fault(
    "tank_body.waste_splashes",
    (
        "The waste pipe ends beside the floor sink or high over it.",
        "A draining tank's stream jumps over the rim.",
        "The sink itself takes all that reaches it.",
    ),
    onset="installed",
    after=_MOVED,
)
def waste_splashes(plant: Plant, severity: float) -> None:
    """Three gallons a minute beside it."""
    plant.signs["waste splashes"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.supply_joint",
    (
        "A union, stem or hose of the water pipes drips.",
        "The main's pressure drives it by day and night, machine on or off.",
        "It is clear water that has not been in a tank.",
    ),
    after="plumbing work",
)
def supply_joint(plant: Plant, severity: float) -> None:
    """A cup to a gallon in an hour."""
    plant.water.drips = 0.3e-6 + 1.2e-6 * severity
    plant.signs["pipe drips"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.breaker_spits",
    (
        "The vacuum breaker's float does not seat at once.",
        "Each time the rinse opens or shuts a squirt gets past it.",
        "Between racks the pipe is empty and it is dry.",
    ),
    onset="slowly",
)
def breaker_spits(plant: Plant, severity: float) -> None:
    """Half a cup each rack."""
    plant.signs["rinse breaker spits"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.table_seam_open",
    (
        "The joint of a table and the machine, or a seam of the table, is open.",
        "What wet racks drip runs through it instead of home.",
        "Minutes after the last rack it is dry.",
    ),
    onset="slowly",
    after=_MOVED,
    conveyor=_RACKS,
)
def table_seam_open(plant: Plant, severity: float) -> None:
    """Its sealing has gone."""
    plant.signs["table seam open below"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.table_falls_away",
    (
        "A table falls away from the machine.",
        "What wet racks drip runs to its far end and over the rim.",
        "Two dozen racks leave a bucket there.",
    ),
    onset="installed",
    after=_MOVED,
    conveyor=_RACKS,
)
def table_falls_away(plant: Plant, severity: float) -> None:
    """By a level."""
    plant.signs["table falls away"] = 0.6 + 0.4 * severity


@fault(
    "tank_body.crew_splash",
    (
        "Pre-rinse spray, dripping ware and hoses wet the floor.",
        "None of it leaves the machine.",
        "Papers under the machine stay dry while the working place is wet.",
    ),
    onset="comes and goes",
)
def crew_splash(plant: Plant, severity: float) -> None:
    """One shift more than another."""
    plant.signs["floor wetted by hand"] = 0.6 + 0.4 * severity
