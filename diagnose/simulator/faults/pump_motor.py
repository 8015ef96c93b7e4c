"""Faults of the wash pump's motor."""

from __future__ import annotations

import math

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_THREE, _ONE = (3,), (1,)


def leaks(plant: Plant, name: str, severity: float) -> None:
    """A winding that leaks to its frame: from megohms down to a few kilohms, decade by decade."""
    plant.motors[name].earth_ohms = 10.0 ** (4.0 - severity)


@fault(
    "pump_motor.winding_leaks",
    (
        "Water or age has let the winding leak to the frame.",
        "What leaks comes back through the earth wire and not through the line.",
        "The earth-leakage device opens as the pump starts.",
    ),
    onset="slowly",
    after="cleaning by the crew",
)
def winding_leaks(plant: Plant, severity: float) -> None:
    """Wet in the terminal box."""
    leaks(plant, "wash", severity)
    plant.signs["pump terminal box wet"] = 0.6 + 0.4 * severity


@fault(
    "pump_motor.turns_shorted",
    (
        "Some turns of one winding are shorted together.",
        "They carry a large current of their own and the line that feeds them carries more.",
        "The motor growls and heats however light its load.",
    ),
    onset="slowly",
)
def turns_shorted(plant: Plant, severity: float) -> None:
    """One line far over the others."""
    plant.motors["wash"].winding_short = 0.35 + 0.4 * severity
    plant.signs["pump motor growls"] = 0.5 + 0.5 * severity


@fault(
    "pump_motor.leads_misjoined",
    (
        "The motor is joined for twice the volts it gets.",
        "Torque falls to a quarter, which a pump full of water is more than.",
        "It hums near standstill until its overload opens.",
    ),
    onset="installed",
    after="parts replaced",
)
def leads_misjoined(plant: Plant, severity: float) -> None:
    """Joined for the higher voltage."""
    plant.motors["wash"].volts_share = 2.0
    plant.signs["pump leads joined wrong"] = 1.0


@fault(
    "pump_motor.plate_volts_above_supply",
    (
        "The motor is made for more volts than it gets.",
        "It makes its torque by more slip and more current.",
        "Its overload, set as the plate says, opens after a while.",
    ),
    onset="installed",
    after="parts replaced",
)
def plate_volts_above_supply(plant: Plant, severity: float) -> None:
    """A 230 V motor on 208 V or lower."""
    plant.motors["wash"].volts_share = 1.52 + 0.04 * severity
    plant.signs["pump plate volts above"] = 1.0


@fault(
    "pump_motor.motor_too_small",
    (
        "The new motor has less power than the old one.",
        "The pump takes what it always took.",
        "The motor runs over its plate.",
    ),
    onset="installed",
    after="parts replaced",
)
def motor_too_small(plant: Plant, severity: float) -> None:
    """A size smaller."""
    plant.motors["wash"].load *= 1.4 + 0.3 * severity
    plant.signs["pump motor smaller"] = 1.0


@fault(
    "pump_motor.lead_open",
    (
        "One lead between overload and winding is open.",
        "Two lines carry the whole work, and from rest it only hums.",
        "The overload opens in seconds.",
    ),
    phases=_THREE,
)
def lead_open(plant: Plant, severity: float) -> None:
    """A splice burnt through."""
    plant.motors["wash"].terminal_open = {1}
    plant.signs["pump splice burnt"] = 1.0


@fault(
    "pump_motor.bearing_worn",
    (
        "A bearing has run dry or is worn out.",
        "It growls and takes work of its own.",
        "The motor runs warm, then over its plate.",
    ),
    onset="slowly",
)
def bearing_worn(plant: Plant, severity: float) -> None:
    """Rough even bare."""
    plant.motors["wash"].drag += 0.25 + 0.3 * severity
    plant.signs["pump bearing growls"] = 0.5 + 0.5 * severity


@fault(
    "pump_motor.cooling_choked",
    (
        "Fan or fins are felted, broken or walled in.",
        "The motor makes the heat it always made and can't shed it.",
        "Its current is as ever, its case is not.",
    ),
    onset="slowly",
)
def cooling_choked(plant: Plant, severity: float) -> None:
    """Lint and grease in the grille."""
    motor = plant.motors["wash"]
    motor.cooling = 0.52 - 0.2 * severity
    if plant.plate.traits["motor_protection"] == "thermal protector":
        motor.early = math.sqrt(motor.cooling)  # a protector in the winding feels its heat, not the line's current
    plant.signs["pump cooling choked"] = 0.5 + 0.5 * severity


@fault(
    "pump_motor.capacitor_weak",
    (
        "The capacitor has lost its capacity.",
        "The start winding's current is too small and too late to turn the rotor from rest.",
        "It hums until its protector opens.",
    ),
    onset="slowly",
    phases=_ONE,
)
def capacitor_weak(plant: Plant, severity: float) -> None:
    """Its share of the label falls."""
    plant.motors["wash"].starts = False
    plant.signs["pump capacitor weak"] = 0.4 + 0.6 * severity


@fault(
    "pump_motor.start_switch_stuck",
    (
        "The start switch stays closed.",
        "The start winding goes on carrying current it is made for seconds of.",
        "The motor runs loud and hot until its protector opens.",
    ),
    phases=_ONE,
)
def start_switch_stuck(plant: Plant, severity: float) -> None:
    """No click as it runs up."""
    plant.motors["wash"].winding_short = 0.8 + 0.5 * severity
    plant.signs["pump start switch sticks"] = 1.0
    plant.signs["pump motor hums on start winding"] = 0.5
