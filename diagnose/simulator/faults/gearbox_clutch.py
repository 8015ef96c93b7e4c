"""Faults of clutch, gearbox, coupling, drive chain and belt of the conveyor."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

# Pulls at which a clutch or belt gives way, over the sound machine's pull, and how marked a sign is: judgement.


@fault(
    "gearbox_clutch.clutch_worn",
    (
        "The clutch's facings are worn or glazed.",
        "Friction falls, and with it the pull the clutch can pass on.",
        "One rack goes; with four the bar slows and stands while the motor turns.",
    ),
    onset="slowly",
)
def clutch_worn(plant: Plant, severity: float) -> None:
    """Weak under the pull of a full machine."""
    plant.conveyor.slips_at = min(plant.conveyor.slips_at, 1.1 - 0.28 * severity)
    plant.signs["clutch faces glazed"] = 0.5 + 0.5 * severity


@fault(
    "gearbox_clutch.clutch_wet",
    (
        "Water or oil has got between the clutch plates.",
        "A film carries the plates apart and they slide with a squeal.",
        "Dry again, the same plates hold.",
    ),
    onset="comes and goes",
    after="cleaning by the crew",
)
def clutch_wet(plant: Plant, severity: float) -> None:
    """While it is wet."""
    plant.conveyor.slips_at = min(plant.conveyor.slips_at, 1.08 - 0.3 * severity)
    plant.signs["clutch plates wet"] = 0.5 + 0.5 * severity
    plant.signs["clutch squeals"] = 0.3 + 0.2 * severity


@fault(
    "gearbox_clutch.clutch_spring_loose",
    (
        "The clutch's nut has run back or its spring is broken.",
        "What presses the plates together is gone, and so is most of the pull.",
        "The bar stands at the second rack, from one day to the next.",
    ),
)
def clutch_spring_loose(plant: Plant, severity: float) -> None:
    """Under twenty pounds."""
    plant.conveyor.slips_at = min(plant.conveyor.slips_at, 0.76 - 0.3 * severity)
    plant.signs["clutch nut run back"] = 0.6 + 0.4 * severity


@fault(
    "gearbox_clutch.clutch_set_low",
    (
        "The clutch is set a little low.",
        "It still holds the pull of a full machine.",
        "Where the track is rough or the table steep as well, it lets go.",
    ),
    onset="installed",
    after="parts replaced",
)
def clutch_set_low(plant: Plant, severity: float) -> None:
    """Thirty to thirty-eight pounds."""
    plant.conveyor.slips_at = min(plant.conveyor.slips_at, 1.5 - 0.25 * severity)
    plant.signs["clutch nut little back"] = 0.5 + 0.5 * severity


@fault(
    "gearbox_clutch.clutch_too_tight",
    (
        "The clutch is screwed down or rusted fast.",
        "It passes on whatever the motor gives.",
        "A held rack breaks before the clutch lets go.",
    ),
    after="parts replaced",
)
def clutch_too_tight(plant: Plant, severity: float) -> None:
    """Over ninety pounds."""
    plant.conveyor.slips_at = 4.0 + 2.0 * severity
    plant.signs["clutch nut run down"] = 0.6 + 0.4 * severity


@fault(
    "gearbox_clutch.key_sheared",
    (
        "The key between gearbox shaft and crank or sprocket is sheared.",
        "The shaft turns inside the hub.",
        "Motor and gears run, and nothing behind them moves.",
    ),
)
def key_sheared(plant: Plant, severity: float) -> None:
    """Cut through."""
    plant.conveyor.drive.parted = "hub"


@fault(
    "gearbox_clutch.coupling_broken",
    (
        "The coupling's insert is gone.",
        "The motor half turns and the gearbox half stands.",
        "With no load but itself the motor draws little.",
    ),
)
def coupling_broken(plant: Plant, severity: float) -> None:
    """Rubber crumbs below."""
    plant.conveyor.drive.parted = "coupling"


@fault(
    "gearbox_clutch.drive_chain_slack",
    (
        "The drive chain hangs slack.",
        "Under load it climbs the sprocket and jumps a tooth.",
        "Each jump is a piece of travel lost, the heavier the racks the more.",
    ),
    onset="slowly",
)
def drive_chain_slack(plant: Plant, severity: float) -> None:
    """Over half an inch a foot."""
    plant.conveyor.drive.sag = 0.055 + 0.03 * severity
    plant.signs["drive chain slack"] = 0.5 + 0.5 * severity
    plant.signs["drive chain clicks and bangs"] = 0.3 + 0.4 * severity


@fault(
    "gearbox_clutch.gear_stripped",
    (
        "The worm wheel of the gearbox has lost its teeth.",
        "Input and motor turn, the output lurches or stands.",
        "Bronze from the wheel glitters in the oil.",
    ),
    onset="slowly",
)
def gear_stripped(plant: Plant, severity: float) -> None:
    """No teeth left where they are wanted."""
    plant.conveyor.drive.parted = "gear"
    plant.signs["gears growl and lurch"] = 0.4 + 0.4 * severity


@fault(
    "gearbox_clutch.gearing_slow",
    (
        "A sprocket or reducer of another ratio drives the conveyor.",
        "For each turn of the motor the bar travels less.",
        "Empty or full it is slow by the same share.",
    ),
    onset="installed",
    after="parts replaced",
)
def gearing_slow(plant: Plant, severity: float) -> None:
    """Teeth 17 to 20, or 14 to 20."""
    plant.conveyor.pace *= 0.86 - 0.16 * severity
    plant.signs["geared down"] = 1.0


@fault(
    "gearbox_clutch.gearing_fast",
    (
        "A sprocket or reducer of another ratio drives the conveyor.",
        "For each turn of the motor the bar travels more.",
        "Ware spends less time in the sprays.",
    ),
    onset="installed",
    after="parts replaced",
)
def gearing_fast(plant: Plant, severity: float) -> None:
    """Teeth 20 to 17, or 20 to 14."""
    plant.conveyor.pace *= 1.16 + 0.24 * severity
    plant.signs["geared up"] = 1.0


@fault(
    "gearbox_clutch.belt_slides",
    (
        "The belt between motor and reducer is slack or glazed.",
        "It grips for an empty conveyor and slides under racks.",
        "Strokes grow fewer the fuller the machine is.",
    ),
    onset="slowly",
)
def belt_slides(plant: Plant, severity: float) -> None:
    """A tenth to a third lost when full."""
    plant.conveyor.drive.grips = 0.98 - 0.4 * severity
    plant.signs["drive belt slack and shining"] = 0.5 + 0.5 * severity
    plant.signs["drive belt squeals"] = 0.25 + 0.25 * severity
