"""Faults of the exhaust's duct, flap, cap and hood."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_HOOD = ("hood",)
_SHORT = "Both ends lack the same share of air, and steam comes out at both."
_MOVED = "machine or tables moved"


@fault(
    "exhaust_duct.clogged",
    (
        "Lint and grease have narrowed the duct.",
        "Resistance goes with the square of the speed in what is left, so suction before the fan is high, air short.",
        _SHORT,
    ),
    onset="slowly",
)
def clogged(plant: Plant, severity: float) -> None:
    """At the bends first."""
    plant.air.duct_open = 0.42 - 0.2 * severity
    plant.signs["duct choked"] = 0.5 + 0.5 * severity


@fault(
    "exhaust_duct.water_lies",
    (
        "Condensate lies in a sag of the duct.",
        "It grows as the machine runs and narrows the duct more and more.",
        _SHORT,
    ),
    onset="installed",
    after=_MOVED,
)
def water_lies(plant: Plant, severity: float) -> None:
    """A flexible piece hangs in a belly."""
    plant.air.duct_open = 0.44 - 0.18 * severity
    plant.signs["water lies in the duct"] = 0.6 + 0.4 * severity
    plant.signs["drops at the duct's joints"] = 0.2 + 0.2 * severity


@fault(
    "exhaust_duct.backdraft_stuck",
    (
        "The flap behind the fan hangs shut or half shut.",
        "The fan presses against it: little air, little suction before the fan, little work.",
        _SHORT,
    ),
)
def backdraft_stuck(plant: Plant, severity: float) -> None:
    """Gummed or rusted."""
    plant.air.after_open = 0.32 - 0.15 * severity
    plant.signs["flap stuck"] = 0.6 + 0.4 * severity


@fault(
    "exhaust_duct.parted",
    ("A joint of the duct stands open.", "The fan draws from the loft what it should draw from the machine.", _SHORT),
    after=_MOVED,
)
def parted(plant: Plant, severity: float) -> None:
    """Its screws or strap have gone."""
    plant.air.parted = 0.5 + 0.5 * severity
    plant.air.duct_open = 0.75
    plant.signs["duct joint open"] = 0.6 + 0.4 * severity


@fault(
    "exhaust_duct.access_door_off",
    (
        "An access door before the fan is off.",
        "The wheel gets air without resistance and moves more than its motor is made for, the machine gets less.",
        "The overload opens after some while, and then both ends steam.",
    ),
    after="cleaning by the crew",
)
def access_door_off(plant: Plant, severity: float) -> None:
    """Not put back."""
    plant.air.let_in = 0.5 + 0.4 * severity
    plant.signs["duct door off"] = 1.0


@fault(
    "exhaust_duct.hood_filters_clogged",
    (
        "The hood's filters are felted with lint and fat.",
        "They take the pressure that should move air.",
        "Steam curls out under the hood's edge, and the filters drip.",
    ),
    onset="slowly",
    vents=_HOOD,
)
def hood_filters_clogged(plant: Plant, severity: float) -> None:
    """Not washed for weeks."""
    plant.air.filters_open = 0.42 - 0.17 * severity
    plant.signs["filters drip"] = 0.15 + 0.2 * severity


@fault(
    "exhaust_duct.cap_screen_furred",
    (
        "Lint has furred the screen of the cap.",
        "Behind the fan it takes about a tenth of the air.",
        "Alone nobody sees that; with another small loss both ends begin to steam.",
    ),
    onset="slowly",
)
def cap_screen_furred(plant: Plant, severity: float) -> None:
    """Grey felt with holes."""
    plant.air.after_open = 0.62 - 0.15 * severity
    plant.signs["cap screen furred"] = 0.6 + 0.4 * severity


@fault(
    "exhaust_duct.connector_leaks",
    (
        "The sleeve before the fan is slit, or an adapter joint gapes.",
        "Room air comes in there and takes about a tenth from the machine.",
        "Alone nobody sees that; with another small loss both ends begin to steam.",
    ),
    onset="slowly",
)
def connector_leaks(plant: Plant, severity: float) -> None:
    """A slit that whistles."""
    plant.air.let_in = 0.2 + 0.14 * severity
    plant.signs["slit sleeve"] = 0.5 + 0.5 * severity


@fault(
    "exhaust_duct.duct_bare",
    (
        "The duct runs without insulation through a cold space.",
        "Exhaust that is nearly full of water gives it off on cold metal.",
        "It runs back down the duct and out of vent or hood.",
    ),
    onset="comes and goes",
    after="newly connected",
)
def duct_bare(plant: Plant, severity: float) -> None:
    """In cold weather."""
    plant.signs["duct bare and cold"] = 0.6 + 0.4 * severity
    plant.signs["drips back from the duct"] = 0.5 + 0.5 * severity


@fault(
    "exhaust_duct.seam_against_fall",
    (
        "A seam of the duct is lapped against the fall of water.",
        "Condensate that runs down inside comes out there.",
        "The air is as it should be.",
    ),
    onset="installed",
    after=_MOVED,
)
def seam_against_fall(plant: Plant, severity: float) -> None:
    """Or never sealed."""
    plant.signs["wet seam of the duct"] = 0.6 + 0.4 * severity
    plant.signs["drips back from the duct"] = 0.5 + 0.5 * severity


@fault(
    "exhaust_duct.gutter_blocked",
    (
        "The hood's gutter or its drain is blocked.",
        "What the filters drain stands in it and runs over the edge.",
        "The air is as it should be.",
    ),
    onset="slowly",
    vents=_HOOD,
)
def gutter_blocked(plant: Plant, severity: float) -> None:
    """It stands full."""
    plant.signs["gutter stands full"] = 0.5 + 0.5 * severity
