"""Faults of the conveyor's motor and of what it turns."""

from __future__ import annotations

from diagnose.simulator.faults.pump_motor import leaks
from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_OVER = "The conveyor's motor runs over its plate and its overload opens."


def _drags(plant: Plant, severity: float, sign: str, much: float = 0.5) -> None:
    plant.motors["drive"].drag += much + 0.4 * severity
    plant.signs[sign] = 0.5 + 0.5 * severity


@fault(
    "drive_motor.reducer_stiff",
    ("The reducer's oil is gone, or water stands in it.", "Gears rub where they should roll.", _OVER),
    onset="slowly",
)
def reducer_stiff(plant: Plant, severity: float) -> None:
    """It whines all the time."""
    _drags(plant, severity, "reducer whines")


@fault(
    "drive_motor.chain_tight",
    ("The drive chain is set too tight.", "It presses on both bearings with every turn.", _OVER),
    after="parts replaced",
)
def chain_tight(plant: Plant, severity: float) -> None:
    """No slack at all."""
    _drags(plant, severity, "drive chain tight and rumbles")


@fault(
    "drive_motor.brake_drags",
    ("The motor's brake does not let go wholly.", "The motor works against it.", _OVER),
)
def brake_drags(plant: Plant, severity: float) -> None:
    """No click as it starts."""
    _drags(plant, severity, "drive brake holds", 0.7)


@fault(
    "drive_motor.track_fouled",
    ("Lime, glass or a bent bar makes the conveyor heavy.", "It jerks at one place of the stroke.", _OVER),
    onset="slowly",
)
def track_fouled(plant: Plant, severity: float) -> None:
    """Heavy without a motor as well."""
    plant.conveyor.drag += 0.8 + 0.5 * severity
    plant.signs["track groans at one place"] = 0.5 + 0.5 * severity


@fault(
    "drive_motor.bearing_worn",
    ("A bearing of the motor is worn.", "It rumbles and takes work of its own.", _OVER),
    onset="slowly",
)
def bearing_worn(plant: Plant, severity: float) -> None:
    """Rough with the chain off."""
    _drags(plant, severity, "drive bearing rumbles")


@fault(
    "drive_motor.winding_leaks",
    (
        "Wet has let the winding leak to its frame.",
        "What leaks comes back by the earth.",
        "The earth-leakage device opens as the conveyor starts.",
    ),
    after="cleaning by the crew",
)
def winding_leaks(plant: Plant, severity: float) -> None:
    """Hosed down once too often."""
    leaks(plant, "drive", severity)


@fault(
    "drive_motor.turns_shorted",
    ("Turns of a winding are shorted together.", "One line carries far more than the others.", _OVER),
    onset="slowly",
)
def turns_shorted(plant: Plant, severity: float) -> None:
    """It growls and heats."""
    plant.motors["drive"].winding_short = 0.65 + 0.4 * severity
    plant.signs["drive motor growls"] = 0.4 + 0.5 * severity


@fault(
    "drive_motor.leads_misjoined",
    ("The new motor is joined for twice the volts it gets.", "Its torque is a quarter.", _OVER),
    onset="installed",
    after="parts replaced",
)
def leads_misjoined(plant: Plant, severity: float) -> None:
    """It hums, or just turns."""
    plant.motors["drive"].volts_share = 2.0
    plant.signs["drive leads joined wrong"] = 1.0


@fault(
    "drive_motor.motor_too_small",
    ("The new motor has less power or a faster shaft.", "The conveyor asks what it always asked.", _OVER),
    onset="installed",
    after="parts replaced",
)
def motor_too_small(plant: Plant, severity: float) -> None:
    """Over its plate with no rack in."""
    plant.motors["drive"].load *= 2.0 + 0.3 * severity
    plant.conveyor.pace *= 1.06
    plant.signs["drive motor smaller or faster"] = 1.0


@fault(
    "drive_motor.capacitor_weak",
    (
        "The conveyor motor's capacitor is weak.",
        "The start winding can't turn the rotor from rest.",
        "It hums until its protector opens.",
    ),
    onset="slowly",
    phases=(1,),
)
def capacitor_weak(plant: Plant, severity: float) -> None:
    """Its share of the label falls."""
    plant.motors["drive"].starts = False
    plant.signs["drive capacitor weak"] = 0.4 + 0.6 * severity


@fault(
    "drive_motor.more_poles",
    ("The new motor has more poles.", "Speed is the frequency over the pairs of poles.", "Racks crawl."),
    onset="installed",
    after="parts replaced",
)
def more_poles(plant: Plant, severity: float) -> None:
    """Two thirds of the pace."""
    plant.conveyor.pace *= 2.0 / 3.0
    plant.signs["drive motor other rpm"] = 1.0


_PACE = "A motor's speed follows the frequency of its current."


@fault(
    "drive_motor.runs_on_50",
    ("A motor for 60 Hz runs on 50 Hz.", _PACE, "Racks go five sixths of their pace."),
    onset="installed",
    after="newly connected",
)
def runs_on_50(plant: Plant, severity: float) -> None:
    """Slow from the first day."""
    plant.conveyor.pace *= 50.0 / 60.0
    plant.power.frequency *= 50.0 / 60.0


@fault(
    "drive_motor.runs_on_60",
    ("A motor for 50 Hz runs on 60 Hz.", _PACE, "Racks go a fifth faster."),
    onset="installed",
    after="newly connected",
)
def runs_on_60(plant: Plant, severity: float) -> None:
    """Fast from the first day."""
    plant.conveyor.pace *= 60.0 / 50.0
    plant.power.frequency *= 60.0 / 50.0


@fault("drive_motor.speed_set_low", ("The speed controller stands under its mark.", _PACE, "Racks crawl."))
def speed_set_low(plant: Plant, severity: float) -> None:
    """Turned down."""
    plant.conveyor.pace *= 0.84 - 0.2 * severity
    plant.signs["speed dial low"] = 1.0


@fault(
    "drive_motor.speed_set_high",
    ("The speed controller stands over its mark.", _PACE, "Ware is through before it is clean."),
)
def speed_set_high(plant: Plant, severity: float) -> None:
    """Turned up to get through."""
    plant.conveyor.pace *= 1.15 + 0.25 * severity
    plant.signs["speed dial high"] = 1.0
