"""Faults of the tank's thermometer: the wash tank's."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RIGHT = "The water itself is right, as a second thermometer shows."


def _off(plant: Plant, kelvin: float) -> None:
    plant.tanks["wash"].dial_offset = kelvin


@fault(
    "tank_thermometer.pointer_low",
    ("The pointer stands low by the same amount everywhere.", "Nothing at probe, plug or lead is wrong.", _RIGHT),
)
def pointer_low(plant: Plant, severity: float) -> None:
    """Low by a fixed amount."""
    _off(plant, -(6.0 + 5.0 * severity))


@fault(
    "tank_thermometer.pointer_high",
    (
        "The pointer stands high by the same amount, and hides a tank that is too cold.",
        "The heat was set by it.",
        "A second thermometer shows the lack.",
    ),
)
def pointer_high(plant: Plant, severity: float) -> None:
    """High, and the thermostat set down by it."""
    _off(plant, 6.0 + 5.0 * severity)
    plant.tanks["wash"].thermostat.setting -= 7.0 + 5.0 * severity


@fault(
    "tank_thermometer.probe_not_in_water",
    (
        "The probe is pulled back or caked and feels little of the water.",
        "It shows something between air and water, and late.",
        _RIGHT,
    ),
    after="cleaning by the crew",
)
def probe_not_in_water(plant: Plant, severity: float) -> None:
    """Far low."""
    _off(plant, -(10.0 + 9.0 * severity))
    plant.signs["tank probe pulled back"] = 0.6 + 0.4 * severity


@fault(
    "tank_thermometer.probe_at_heat",
    (
        "The probe touches the heater and feels it instead of the water.",
        "It shows more than the tank has while the heat is on.",
        "The tank is colder than it looks.",
    ),
    after="parts replaced",
)
def probe_at_heat(plant: Plant, severity: float) -> None:
    """High, and the thermostat set down by it."""
    _off(plant, 7.0 + 5.0 * severity)
    plant.tanks["wash"].thermostat.setting -= 8.0 + 5.0 * severity
    plant.signs["tank probe at the heater"] = 1.0


@fault(
    "tank_thermometer.plug_low",
    ("Green pins add ohms in series with the sensor.", "More ohms stand for colder water.", _RIGHT),
    onset="comes and goes",
)
def plug_low(plant: Plant, severity: float) -> None:
    """Corroded."""
    _off(plant, -(6.0 + 5.0 * severity))
    plant.signs["tank plug corroded"] = 0.6 + 0.4 * severity


@fault(
    "tank_thermometer.plug_high",
    (
        "Wet pins leak beside the sensor.",
        "Fewer ohms stand for hotter water, and the heat was set down by it.",
        "The tank is colder than it looks.",
    ),
    onset="comes and goes",
)
def plug_high(plant: Plant, severity: float) -> None:
    """Wet."""
    _off(plant, 6.0 + 5.0 * severity)
    plant.tanks["wash"].thermostat.setting -= 7.0 + 5.0 * severity
    plant.signs["tank plug wet"] = 0.6 + 0.4 * severity


@fault(
    "tank_thermometer.probe_curve_low",
    (
        "The probe has another curve than its display, or has drifted.",
        "Its ohms stand for colder water, plug and pins being bright.",
        _RIGHT,
    ),
    onset="installed",
    after="parts replaced",
)
def probe_curve_low(plant: Plant, severity: float) -> None:
    """Reads low."""
    _off(plant, -(6.0 + 5.0 * severity))
    plant.signs["tank probe of another curve"] = 1.0


@fault(
    "tank_thermometer.probe_curve_high",
    (
        "The probe has another curve than its display.",
        "Its ohms stand for hotter water, and the heat was set down by it.",
        "The tank is colder than it looks.",
    ),
    onset="installed",
    after="parts replaced",
)
def probe_curve_high(plant: Plant, severity: float) -> None:
    """Reads high."""
    _off(plant, 6.0 + 5.0 * severity)
    plant.tanks["wash"].thermostat.setting -= 7.0 + 5.0 * severity
    plant.signs["tank probe of another curve"] = 1.0


@fault(
    "tank_thermometer.lead_broken",
    ("The sensor's lead is broken.", "Endless ohms stand for the coldest figure there is.", _RIGHT),
)
def lead_broken(plant: Plant, severity: float) -> None:
    """Stuck at the bottom."""
    plant.tanks["wash"].dial_stuck = 283.0
    plant.signs["tank lead broken"] = 1.0
