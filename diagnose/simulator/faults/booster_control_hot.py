"""Faults of what switches the booster's heat: sensors that mislead it, and heat that does not stop."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_HEATED = ("electric", "steam", "gas")
_ELECTRIC = ("electric",)
_ON = "Between racks the water goes on warming, past 194 °F, where it flashes as it leaves the jets."


@fault(
    "booster_control.stat_set_high",
    ("The thermostat is set too high.", _ON, "Turned down, the rinse follows."),
    booster=_HEATED,
)
def stat_set_high(plant: Plant, severity: float) -> None:
    """Set up."""
    plant.booster.thermostat.setting += 8.0 + 7.0 * severity
    plant.signs["booster dial turned up"] = 1.0


@fault(
    "booster_control.stat_stuck",
    ("The thermostat's contact does not open.", _ON, "In a hot bath it stays closed above its dial."),
    booster=_HEATED,
)
def stat_stuck(plant: Plant, severity: float) -> None:
    """Calls always."""
    plant.booster.thermostat.stuck = True
    plant.signs["booster thermostat stays closed"] = 1.0


@fault(
    "booster_control.contactor_welded",
    ("The contactor's poles have welded.", _ON, "The coil has no volts, and the bank draws its full current."),
    booster=_ELECTRIC,
)
def contactor_welded(plant: Plant, severity: float) -> None:
    """Poles stay in."""
    plant.booster.heater.welded = True
    plant.signs["booster poles welded"] = 1.0


@fault(
    "booster_control.inlet_hot",
    (
        "The building's water comes hotter than the booster is meant for.",
        "With its heat off the rinse stays hot, and the inlet pipe is as hot.",
        "Where it adds anything at all the rinse passes its most.",
    ),
    after="plumbing work",
    booster=_HEATED,
)
def inlet_hot(plant: Plant, severity: float) -> None:
    """Near the rinse's own temperature."""
    plant.water.temperature = 365.0 + 4.0 * severity
    plant.water.outlet_short = 0.0


@fault(
    "booster_control.sensor_plug_hot",
    (
        "A wet plug leaks beside the sensor, so it stands for hotter water.",
        "The heat is cut early.",
        "Past the plug the ohms are more.",
    ),
    onset="comes and goes",
    booster=_HEATED,
)
def sensor_plug_hot(plant: Plant, severity: float) -> None:
    """Reads high."""
    plant.booster.thermostat.offset = 8.0 + 7.0 * severity
    plant.signs["booster plug wet"] = 0.6 + 0.4 * severity


@fault(
    "booster_control.sensor_curve_hot",
    (
        "The probe has another curve than its control.",
        "It stands for hotter water than there is, and the heat is cut early.",
        "Its ohms are off its control's list while its plug is bright.",
    ),
    onset="installed",
    after="parts replaced",
    booster=_HEATED,
)
def sensor_curve_hot(plant: Plant, severity: float) -> None:
    """Reads high since it was changed."""
    plant.booster.thermostat.offset = 8.0 + 7.0 * severity
    plant.signs["booster probe of another curve"] = 1.0


@fault(
    "booster_control.sensor_plug_cold",
    (
        "Green pins add ohms in series with the sensor.",
        "It stands for colder water, so the heat runs past its setting.",
        "Past the plug the ohms are fewer.",
    ),
    onset="comes and goes",
    booster=_HEATED,
)
def sensor_plug_cold(plant: Plant, severity: float) -> None:
    """Reads low."""
    plant.booster.thermostat.offset = -(8.0 + 7.0 * severity)
    plant.signs["booster plug corroded"] = 0.6 + 0.4 * severity


@fault(
    "booster_control.sensor_curve_cold",
    (
        "The probe has another curve than its control.",
        "It stands for colder water than there is, so the heat runs past its setting.",
        "Its ohms are off its control's list while its plug is bright.",
    ),
    onset="installed",
    after="parts replaced",
    booster=_HEATED,
)
def sensor_curve_cold(plant: Plant, severity: float) -> None:
    """Reads low since it was changed."""
    plant.booster.thermostat.offset = -(8.0 + 7.0 * severity)
    plant.signs["booster probe of another curve"] = 1.0


@fault(
    "booster_control.stat_wide",
    (
        "The thermostat lets the water fall far before it calls again.",
        "Between going out and coming in lie tens of degrees.",
        "The rinse swings about its figure, over it at the top and under it at the bottom.",
    ),
    onset="slowly",
    booster=_HEATED,
)
def stat_wide(plant: Plant, severity: float) -> None:
    """Ten kelvin and more."""
    plant.booster.thermostat.width = 13.0 + 9.0 * severity
    plant.booster.thermostat.setting += 2.0
    plant.signs["booster difference wide"] = 0.6 + 0.4 * severity


@fault(
    "booster_control.soak_hot",
    (
        "Standing water soaks up the heat that is left in the elements in every pause.",
        "The first spray after a pause is over its figure, the next ones are right.",
        "Nothing is set wrong: the pause was long.",
    ),
    booster=_HEATED,
)
def soak_hot(plant: Plant, severity: float) -> None:
    """Only the first spray."""
    plant.signs["booster soaks hot in pauses"] = 0.6 + 0.4 * severity
