"""Faults of the final-rinse thermometer, its sensor and how it is read."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_HOT = ("hot water",)


def _set_down(plant: Plant, kelvin: float) -> None:
    """Somebody set the booster down by a thermometer that reads high."""
    plant.rinse.thermometer_offset += kelvin
    plant.booster.thermostat.setting -= kelvin + 3.0


@fault(
    "rinse_thermometer.bulb_out",
    (
        "The bulb is out of its well and hangs in the air of the panel.",
        "It takes up little of the water's heat and shows something between room and rinse.",
        "A proved thermometer at the manifold shows the rinse is right.",
    ),
    after="cleaning by the crew",
)
def bulb_out(plant: Plant, severity: float) -> None:
    """It reads far low, and slowly."""
    plant.rinse.thermometer_offset = -(14.0 + 14.0 * severity)
    plant.rinse.thermometer_lag = 45.0
    plant.signs["rinse bulb out of its well"] = 1.0


@fault(
    "rinse_thermometer.bulb_scaled",
    (
        "Scale round the bulb keeps the heat from it.",
        "It follows so slowly that the rack has passed before it has arrived.",
        "Held on long enough it would come to the right figure.",
    ),
    onset="slowly",
)
def bulb_scaled(plant: Plant, severity: float) -> None:
    """A time constant of half a minute and more, and some heat lost along the well."""
    plant.rinse.thermometer_lag = 40.0 + 50.0 * severity
    plant.rinse.thermometer_offset = -(5.0 + 4.0 * severity)
    plant.signs["scale on the rinse bulb"] = 0.5 + 0.5 * severity
    plant.water.hardness = max(plant.water.hardness, 0.2)


@fault(
    "rinse_thermometer.capillary_damaged",
    (
        "The capillary is kinked or cut and has lost its filling.",
        "The dial does not move with the water any more.",
        "It stands where the room puts it.",
    ),
    after="cleaning by the crew",
)
def capillary_damaged(plant: Plant, severity: float) -> None:
    """Stuck low."""
    plant.rinse.thermometer_stuck = 322.0 + 12.0 * (1.0 - severity)
    plant.signs["rinse capillary kinked"] = 0.6 + 0.4 * severity


@fault(
    "rinse_thermometer.calibration_low",
    (
        "The dial's adjustment has slipped: it shows too little by the same amount everywhere.",
        "Water, labels and a second thermometer are right.",
        "In a stirred cup beside a proved probe it stands as far below.",
    ),
)
def calibration_low(plant: Plant, severity: float) -> None:
    """Degrees low."""
    plant.rinse.thermometer_offset = -(6.0 + 5.0 * severity)


@fault(
    "rinse_thermometer.calibration_high",
    (
        "The dial shows too much, and the booster was set down by it.",
        "The panel looks right while the water is too cold.",
        "Labels do not turn, and a second thermometer shows the lack.",
    ),
    sanitising=_HOT,
)
def calibration_high(plant: Plant, severity: float) -> None:
    """Degrees high, and a booster that follows it."""
    _set_down(plant, 4.0 + 4.0 * severity)


@fault(
    "rinse_thermometer.read_at_rest",
    (
        "The dial was read between racks.",
        "Without flow the manifold cools and the dial falls, as it must.",
        "While a rack is rinsed it stands in its band.",
    ),
)
def read_at_rest(plant: Plant, severity: float) -> None:
    """The reading, not the machine."""
    plant.signs["dial read between racks"] = 0.6 + 0.4 * severity


@fault(
    "rinse_thermometer.sensed_at_booster",
    (
        "The bulb sits at the booster instead of at the manifold.",
        "It shows the shell, also when nothing flows, and nothing of what the pipe loses.",
        "The panel looks right while the manifold is colder.",
    ),
    onset="installed",
    sanitising=_HOT,
    booster=("electric", "steam", "gas"),
)
def sensed_at_booster(plant: Plant, severity: float) -> None:
    """It shows the shell; the pipe loses some and the booster was set by it."""
    plant.signs["rinse bulb at the booster"] = 1.0
    plant.rinse.pipe_loss += 40.0 + 50.0 * severity
    plant.rinse.thermometer_offset = 3.0 + 4.0 * severity


@fault(
    "rinse_thermometer.connector_low",
    (
        "Green pins add ohms in series with the sensor.",
        "A sensor whose ohms fall with heat then stands for colder water.",
        "Past the plug the ohms are right.",
    ),
    onset="comes and goes",
)
def connector_low(plant: Plant, severity: float) -> None:
    """Some tens of ohms."""
    plant.rinse.thermometer_offset = -(5.0 + 6.0 * severity)
    plant.signs["rinse plug corroded"] = 0.6 + 0.4 * severity


@fault(
    "rinse_thermometer.connector_high",
    (
        "Wet pins leak beside the sensor, so its ohms read too few.",
        "That stands for hotter water, and the booster was set down by it.",
        "Dried, the ohms rise to what the water is.",
    ),
    onset="comes and goes",
    sanitising=_HOT,
)
def connector_high(plant: Plant, severity: float) -> None:
    """A leak beside the sensor."""
    _set_down(plant, 4.0 + 4.0 * severity)
    plant.signs["rinse plug wet"] = 0.6 + 0.4 * severity


@fault(
    "rinse_thermometer.wrong_probe_low",
    (
        "The probe has another curve than the display is made for.",
        "Right at one temperature, it reads low at the rinse's.",
        "Its ohms in ice are those of the other list.",
    ),
    onset="installed",
    after="parts replaced",
)
def wrong_probe_low(plant: Plant, severity: float) -> None:
    """Low since it was changed."""
    plant.rinse.thermometer_offset = -(7.0 + 6.0 * severity)
    plant.signs["rinse probe of another curve"] = 1.0


@fault(
    "rinse_thermometer.wrong_probe_high",
    (
        "The probe has another curve than the display is made for.",
        "It reads high at the rinse's temperature, and the booster was set down by it.",
        "Its ohms in ice are those of the other list.",
    ),
    onset="installed",
    after="parts replaced",
    sanitising=_HOT,
)
def wrong_probe_high(plant: Plant, severity: float) -> None:
    """High since it was changed."""
    _set_down(plant, 4.0 + 4.0 * severity)
    plant.signs["rinse probe of another curve"] = 1.0


@fault(
    "rinse_thermometer.probe_drifted",
    (
        "Years of heat have raised the probe's ohms.",
        "More ohms stand for colder water.",
        "In ice it is off its own list.",
    ),
    onset="slowly",
)
def probe_drifted(plant: Plant, severity: float) -> None:
    """Degrees low."""
    plant.rinse.thermometer_offset = -(5.0 + 5.0 * severity)
    plant.signs["rinse probe off its list"] = 1.0


@fault(
    "rinse_thermometer.within_error",
    (
        "Two sound thermometers stand a few degrees apart.",
        "Each may be off by its own error, so together they may differ by the sum.",
        "Nothing is wrong with either.",
    ),
)
def within_error(plant: Plant, severity: float) -> None:
    """Told of, within what both may be off."""
    plant.signs["another thermometer contradicts"] = 0.6
    plant.signs["contradiction small"] = 1.0


@fault(
    "rinse_thermometer.second_wrong",
    (
        "The thermometer that contradicts the panel is wrong, or was held where the water had cooled.",
        "The panel agrees with a proved one held in its well.",
        "In ice the other does not show the freezing point, or spray cools on its way.",
    ),
)
def second_wrong(plant: Plant, severity: float) -> None:
    """The kitchen's own thermometer."""
    plant.signs["another thermometer contradicts"] = 0.7 + 0.3 * severity
    plant.signs["second thermometer off"] = 1.0 if severity > 0.5 else 0.0
    plant.signs["second thermometer held in the spray"] = 0.0 if severity > 0.5 else 1.0
