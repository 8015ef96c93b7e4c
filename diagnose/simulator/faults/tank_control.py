"""Faults of what switches the tank's heat."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_NONE = "No heat goes in, and the tank sinks towards the water that runs into it."
_ON = "The heat does not stop, and the tank climbs until it boils or its limit opens."


def _barred(plant: Plant, sign: str) -> None:
    plant.tanks["wash"].heater.coil_works = False
    plant.signs[sign] = 1.0


@fault(
    "tank_control.set_low",
    (
        "The tank's thermostat is set too low.",
        "It is satisfied before the water is hot enough.",
        "Turned up, the tank follows.",
    ),
)
def set_low(plant: Plant, severity: float) -> None:
    """Set down."""
    plant.tanks["wash"].thermostat.setting -= 8.0 + 9.0 * severity
    plant.signs["tank dial turned down"] = 1.0


@fault(
    "tank_control.set_high",
    (
        "The tank's thermostat is set too high.",
        "It calls until the water is hotter than it should be.",
        "Turned down, the tank follows.",
    ),
)
def set_high(plant: Plant, severity: float) -> None:
    """Set up."""
    plant.tanks["wash"].thermostat.setting += 15.0 + 8.0 * severity
    plant.signs["tank dial turned up"] = 1.0


@fault(
    "tank_control.stat_drifted",
    ("The thermostat opens well below its dial.", "The heat goes out early.", "Its dial stands right."),
    onset="slowly",
)
def stat_drifted(plant: Plant, severity: float) -> None:
    """Opens early."""
    plant.tanks["wash"].thermostat.offset = 8.0 + 9.0 * severity
    plant.signs["tank thermostat drifted"] = 1.0


@fault("tank_control.thermostat_open", ("The thermostat never closes.", "The chain ends at it.", _NONE))
def thermostat_open(plant: Plant, severity: float) -> None:
    """Never calls."""
    plant.tanks["wash"].thermostat.stuck = False
    plant.signs["tank thermostat open"] = 1.0


@fault("tank_control.limit_tripped", ("The tank's high limit waits for its button.", "The chain ends at it.", _NONE))
def limit_tripped(plant: Plant, severity: float) -> None:
    """Its button stands out."""
    _barred(plant, "tank limit button out")


@fault(
    "tank_control.coil_open",
    ("What the thermostat switches does not pull.", "Volts stand there and nothing moves.", _NONE),
)
def coil_open(plant: Plant, severity: float) -> None:
    """Coil or relay open."""
    _barred(plant, "tank heat coil open")


@fault(
    "tank_control.heat_switch_off",
    ("The tank-heat switch is off.", "The chain ends at the switch.", _NONE),
    after="cleaning by the crew",
)
def heat_switch_off(plant: Plant, severity: float) -> None:
    """Off."""
    _barred(plant, "tank heat switch off")


@fault(
    "tank_control.thermostat_stuck",
    ("The thermostat's contact does not open.", _ON, "At its lowest setting it stays closed."),
)
def thermostat_stuck(plant: Plant, severity: float) -> None:
    """Calls always."""
    plant.tanks["wash"].thermostat.stuck = True
    plant.signs["tank thermostat stays closed"] = 1.0


@fault(
    "tank_control.contactor_welded",
    ("The poles of the tank's contactor have welded.", _ON, "The coil has no volts."),
    tank_heat=("electric",),
)
def contactor_welded(plant: Plant, severity: float) -> None:
    """Poles stay in."""
    plant.tanks["wash"].heater.welded = True
    plant.signs["tank poles welded"] = 1.0


@fault(
    "tank_control.gas_valve_stuck",
    ("The burner's gas valve does not close.", _ON, "Without voltage the main flame burns on."),
    tank_heat=("gas",),
)
def gas_valve_stuck(plant: Plant, severity: float) -> None:
    """Burns on."""
    plant.tanks["wash"].heater.welded = True
    plant.signs["tank gas valve stays open"] = 1.0


@fault(
    "tank_control.steam_valve_leaks",
    ("The steam valve leaks through.", _ON, "The pipe beyond it stays hot without a call."),
    onset="slowly",
    tank_heat=("steam coil", "steam injector"),
)
def steam_valve_leaks(plant: Plant, severity: float) -> None:
    """Leaks when shut."""
    plant.tanks["wash"].heater.welded = True
    plant.signs["tank steam valve leaks"] = 0.6 + 0.4 * severity


@fault(
    "tank_control.bulb_out",
    (
        "The thermostat's bulb hangs out of its clamp.",
        "It feels little of the water's warmth and calls too long.",
        "The tank swings far, and over its figure.",
    ),
)
def bulb_out(plant: Plant, severity: float) -> None:
    """Feels colder, and late."""
    plant.tanks["wash"].thermostat.offset = -(15.0 + 7.0 * severity)
    plant.tanks["wash"].thermostat.lag = 240.0
    plant.signs["tank bulb out of its clamp"] = 1.0


@fault(
    "tank_control.gauge_reads_low",
    (
        "The tank's thermometer reads low, and the thermostat was turned up to please it.",
        "The water is hotter than it should be while the dial looks right.",
        "A second thermometer shows it.",
    ),
)
def gauge_reads_low(plant: Plant, severity: float) -> None:
    """Reads low; set up by it."""
    tank = plant.tanks["wash"]
    tank.dial_offset = -(12.0 + 6.0 * severity)
    tank.thermostat.setting += 16.0 + 7.0 * severity
    plant.signs["tank dial turned up"] = 1.0


@fault(
    "tank_control.hot_as_meant",
    ("The tank is as hot as its plate asks.", "Somebody took it for too hot.", "Nothing is wrong."),
)
def hot_as_meant(plant: Plant, severity: float) -> None:
    """A belief."""
    plant.signs["hot as meant, thought too hot"] = 0.6 + 0.4 * severity


@fault(
    "tank_control.unstirred",
    ("The heat runs with the pump off.", "Hot water lies on top, over cooler.", "Stirred, it is right."),
)
def unstirred(plant: Plant, severity: float) -> None:
    """Layers."""
    plant.signs["hot water lies on top"] = 0.6 + 0.4 * severity


@fault(
    "tank_control.cold_ware",
    (
        "Racks of cold or heavy ware take more heat than usual.",
        "A rack takes heat by its mass and by how cold it comes.",
        "In the pause the tank comes back.",
    ),
)
def cold_ware(plant: Plant, severity: float) -> None:
    """Heavier racks."""
    plant.conveyor.ware = 2.4 + 2.0 * severity
    plant.signs["ware cold or heavy"] = 0.6 + 0.4 * severity


@fault(
    "tank_control.begun_cold",
    (
        "Racks go through before the tank is hot.",
        "In the first half hour heat goes into racks and tank at once.",
        "Later it holds.",
    ),
)
def begun_cold(plant: Plant, severity: float) -> None:
    """Told of, from the start of service."""
    plant.signs["begun before it was hot"] = 0.6 + 0.4 * severity


@fault(
    "tank_control.as_built",
    (
        "It heats as fast as its kilowatts allow.",
        "Heat over power gives the minutes that were measured.",
        "Nothing is wrong.",
    ),
)
def as_built(plant: Plant, severity: float) -> None:
    """A belief."""
    plant.signs["heats as its kilowatts allow"] = 0.8 + 0.2 * severity


@fault(
    "tank_control.bulbs_swapped",
    (
        "The two tanks' thermostats are crossed.",
        "Each switches the other tank's heat: one gets too much and one too little.",
        "Turning one down stops the other's heat.",
    ),
    onset="installed",
    after="parts replaced",
    tanks=(2,),
)
def bulbs_swapped(plant: Plant, severity: float) -> None:
    """Each rules the other: the wash climbs to where the rinse tank's is satisfied."""
    wash, rinse = plant.tanks["wash"], plant.tanks["rinse"]
    wash.thermostat.setting += 18.0 + 6.0 * severity
    rinse.thermostat.setting -= 14.0
    plant.signs["tank thermostats crossed"] = 1.0


@fault(
    "tank_control.fill_hot",
    (
        "The building's hot line fills the machine hotter than it wants.",
        "No heater of its own is at work.",
        "It is hot straight from the fill.",
    ),
    onset="installed",
    sanitising=("chemical",),
)
def fill_hot(plant: Plant, severity: float) -> None:
    """A hot main."""
    plant.water.temperature += 22.0 + 8.0 * severity
